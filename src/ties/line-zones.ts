// Where along a line no tie may stand.
import type { Matrix } from '../geometry/matrix.js';
import {
  lookAt,
  type MeasuredRun,
  type MeasuredSegment,
  partSegment,
  segmentLength,
} from '../geometry/path-stretch.js';
import type { Stretch } from '../geometry/write-stretch.js';

/** What keeps ties away. Lengths in px. */
export interface ZoneSettings {
  readonly cornerClear: number;
  readonly creaseEndClear: number;
  readonly leastRadius: number;
  /** Ends of creases on the artboard: x, y pairs. */
  readonly creaseEnds: Float64Array;
}

/** Curves are looked at in steps of at most this. @unit px */
const STEP_PX = 1;

/** Zones in order, joined where they touch, cut to the line. A closed line goes round. */
export function joinZones(zones: readonly Stretch[], length: number, closed: boolean): readonly Stretch[] {
  const cut: Stretch[] = [];
  for (const [from, to] of zones) {
    if (to - from >= length) return [[0, length]];
    if (!closed) {
      cut.push([Math.max(0, from), Math.min(length, to)]);
      continue;
    }
    const turns = Math.floor(from / length) * length;
    const [a, b] = [from - turns, to - turns];
    if (b <= length) cut.push([a, b]);
    else cut.push([a, length], [0, b - length]);
  }
  const joined: [number, number][] = [];
  for (const [from, to] of cut.filter(([a, b]) => b >= a).sort((a, b) => a[0] - b[0])) {
    const last = joined.at(-1);
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined;
}

/** Stretches of a segment that bend too much or pass too near to the end of a crease, as lengths along it. */
function listTight(segment: MeasuredSegment, matrix: Matrix, settings: ZoneSettings): readonly Stretch[] {
  const { creaseEnds, creaseEndClear, leastRadius } = settings;
  const steps = Math.min(4096, Math.max(8, Math.ceil(segment.length / STEP_PX)));
  const zones: Stretch[] = [];
  let at = 0;
  for (let step = 0; step < steps; step += 1) {
    const piece = partSegment(segment, step / steps, (step + 1) / steps);
    const length = segment.kind === 'line' ? segment.length / steps : segmentLength(piece, matrix);
    const places = [step, step + 0.5, step + 1].map((place) => lookAt(segment, matrix, place / steps));
    if (places.some(({ radius }) => radius < leastRadius)) zones.push([at, at + length]);
    const { x, y } = places[1]!;
    for (let end = 0; end < creaseEnds.length; end += 2) {
      // A place of this piece is at most half its length nearer than its middle.
      if (Math.hypot(creaseEnds[end]! - x, creaseEnds[end + 1]! - y) < creaseEndClear + length / 2)
        zones.push([at, at + length]);
    }
    at += length;
  }
  return zones;
}

/** Zones of a run in which no part of a tie may stand, corners left out. */
export function listBends(run: MeasuredRun, matrix: Matrix, settings: ZoneSettings): readonly Stretch[] {
  const zones: Stretch[] = [];
  let at = 0;
  for (const segment of run.segments) {
    for (const [from, to] of listTight(segment, matrix, settings)) zones.push([at + from, at + to]);
    at += segment.length;
  }
  return zones;
}

/** Stretches around places. */
export function spreadPlaces(places: readonly number[], clear: number): readonly Stretch[] {
  return places.map((place) => [place - clear, place + clear]);
}
