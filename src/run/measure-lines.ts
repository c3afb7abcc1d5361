// What the lines of a pass ask of a head: stretches between stops, ways with the tool up, lifts.
import { countPieces, type Outline } from '../geometry/outline.js';
import { planTies } from './tie-pattern.js';

/** Ends nearer than this are one place: the tool is not lifted between them. @unit px */
const SAME_PX = 0.001;

/** A line of a pass; `lengthMm` is its exact length, which the points only come near to. */
export interface RunLine {
  readonly outline: Outline;
  readonly lengthMm: number;
}

/** How the lines are run. */
export interface RunMode {
  readonly mmPerPx: number;
  /** A turn sharper than this is a stop; null: only the ends are. */
  readonly stopDegrees: number | null;
  /** Cut and tie lengths; null where the lines are run whole. */
  readonly ties: { readonly cutMm: number; readonly tieMm: number; readonly lifted: boolean } | null;
}

/** What the lines ask of a head. Lengths in mm, once over every line. */
export interface LineFigures {
  readonly lines: number;
  readonly lengthMm: number;
  readonly stretchesMm: readonly number[];
  readonly travelsMm: readonly number[];
  readonly lifts: number;
  readonly ties: number;
  readonly tieLengthMm: number;
  /** Greatest change of the tie pattern on any line, as a share; 0 without ties. */
  readonly greatestStretch: number;
}

/** Straight pieces of an outline: directions and lengths. */
interface Walk {
  /** Length from the start to the start of each piece, and to the end of the last, px. */
  readonly at: readonly number[];
  readonly angle: readonly number[];
}

function walkPieces(outline: Outline): Walk {
  const { points } = outline;
  const pieces = countPieces(outline);
  const at = [0];
  const angle: number[] = [];
  for (let piece = 0; piece < pieces; piece += 1) {
    const next = 2 * piece + 2 < points.length ? 2 * piece + 2 : 0;
    const dx = points[next]! - points[2 * piece]!;
    const dy = points[next + 1]! - points[2 * piece + 1]!;
    at.push(at[piece]! + Math.hypot(dx, dy));
    angle.push(Math.atan2(dy, dx));
  }
  return { at, angle };
}

/** The turn between two directions, from 0 to pi. */
function turnBetween(a: number, b: number): number {
  const turn = Math.abs(a - b) % (2 * Math.PI);
  return turn > Math.PI ? 2 * Math.PI - turn : turn;
}

/** Stops inside a line, as lengths from its start, mm. Only where written segments meet: a curve's chords turn, the tool does not stop. */
function listStops({ outline, lengthMm }: RunLine, mode: RunMode): readonly number[] {
  if (mode.stopDegrees === null) return [];
  const { at, angle } = walkPieces(outline);
  const whole = at.at(-1)!;
  if (!(whole > 0)) return [];
  const limit = (mode.stopDegrees * Math.PI) / 180;
  const stops: number[] = [];
  for (const start of outline.starts) {
    if (start === 0 || start >= angle.length) continue;
    if (turnBetween(angle[start - 1]!, angle[start]!) > limit) stops.push((at[start]! * lengthMm) / whole);
  }
  return stops;
}

/** Stretches of `from`..`to` between the stops inside. */
function cutAtStops(from: number, to: number, stops: readonly number[]): readonly number[] {
  const inside = stops.filter((stop) => stop > from && stop < to);
  const ends = [from, ...inside, to];
  return ends.slice(1).map((end, i) => end - ends[i]!);
}

function firstPoint({ points }: Outline): readonly [number, number] {
  return [points[0]!, points[1]!];
}

function lastPoint(outline: Outline): readonly [number, number] {
  const { points, closed } = outline;
  return closed ? firstPoint(outline) : [points[points.length - 2]!, points[points.length - 1]!];
}

/** Ways from the end of each line to the start of the next. */
function listTravels(lines: readonly RunLine[], mmPerPx: number): readonly number[] {
  return lines.slice(1).map(({ outline }, i) => {
    const [x0, y0] = lastPoint(lines[i]!.outline);
    const [x1, y1] = firstPoint(outline);
    return Math.hypot(x1 - x0, y1 - y0) * mmPerPx;
  });
}

/**
 * What lines ask of a head that runs them in the order given.
 *
 * The way to the first line and back from the last is left out; whoever times a run counts it as start.
 */
export function measureLines(lines: readonly RunLine[], mode: RunMode): LineFigures {
  const stretches: number[] = [];
  const travels = [...listTravels(lines, mode.mmPerPx)];
  // A line that starts where the one before ended is gone on with, as the order of the lines counts it.
  let lifts = lines.length - travels.filter((way) => way <= SAME_PX * mode.mmPerPx).length;
  let ties = 0;
  let tieLength = 0;
  let greatest = 0;
  for (const line of lines) {
    const stops = listStops(line, mode);
    const pattern =
      mode.ties === null ? null : planTies(line.lengthMm, line.outline.closed, mode.ties.cutMm, mode.ties.tieMm);
    if (pattern !== null) {
      ties += pattern.ties;
      tieLength += pattern.ties * pattern.tieMm;
      if (pattern.ties > 0) greatest = Math.max(greatest, Math.abs(pattern.stretch - 1));
    }
    if (pattern === null || mode.ties?.lifted !== true || pattern.ties === 0) {
      stretches.push(...cutAtStops(0, line.lengthMm, stops));
      continue;
    }
    for (let cut = 0; cut < pattern.cuts; cut += 1) {
      const from = cut * (pattern.cutMm + pattern.tieMm);
      stretches.push(...cutAtStops(from, from + pattern.cutMm, stops));
    }
    // On a closed line the tool is up over the last tie already: it comes down once per cut.
    lifts += pattern.cuts - 1;
    for (let tie = 0; tie < pattern.ties; tie += 1) travels.push(pattern.tieMm);
  }
  return {
    lines: lines.length,
    lengthMm: lines.reduce((sum, line) => sum + line.lengthMm, 0),
    stretchesMm: stretches,
    travelsMm: travels,
    lifts,
    ties,
    tieLengthMm: tieLength,
    greatestStretch: greatest,
  };
}
