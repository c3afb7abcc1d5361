// What is to be said about the ties of a pass.
import { lookAt } from '../geometry/path-stretch.js';
import type { Artwork, Shape } from '../model/artwork.js';
import { type Finding, type FindingCode, finding, type Json } from '../model/finding.js';
import type { TieRequest } from '../model/ties.js';
import type { TiedLine, TiePlan, TieRun } from '../ties/plan-ties.js';

/** Stretching beyond this is told: tearing strength goes with the share of the ties. */
const STRETCH_TOLD = 0.05;
const MOST_PLACES = 20;

/** Shapes that are left whole for one reason. */
export interface LeftWhole {
  readonly why: string;
  readonly shapes: readonly Shape[];
}

/** Where the lines are. */
export interface TiePlaces {
  readonly artwork: Artwork;
  readonly runs: readonly TieRun[];
  readonly file: string;
  /** Of lengths as they are on the sheet, where copies may be scaled; places are those on the drawing. */
  readonly mmPerPx: number;
}

function round(value: number, digits: number): number {
  return Number(value.toFixed(digits)) + 0;
}

/** Starts of lines, mm. */
function placesOf(lines: readonly TiedLine[], { artwork, runs }: TiePlaces): readonly (readonly [number, number])[] {
  const { mmPerPx } = artwork.artboard;
  return lines.slice(0, MOST_PLACES).map((line) => {
    const { run, matrix } = runs[line.runs[0]!]!;
    const { x, y } = lookAt(run.segments[0]!, matrix, 0);
    return [round(x * mmPerPx, 2), round(y * mmPerPx, 2)] as const;
  });
}

interface LineNote {
  readonly code: FindingCode;
  readonly lines: readonly TiedLine[];
  readonly message: (where: string) => string;
  readonly remedy: string;
  readonly data: { readonly [key: string]: Json };
}

function noteLines(note: LineNote, places: TiePlaces): readonly Finding[] {
  if (note.lines.length === 0) return [];
  const starts = placesOf(note.lines, places);
  const [xMm, yMm] = starts[0]!;
  const where = `${places.file}, first at ${xMm}, ${yMm} mm`;
  return [
    finding(note.code, {
      message: note.message(where),
      remedy: note.remedy,
      place: { file: places.file, xMm, yMm },
      data: { ...note.data, count: note.lines.length, places: starts },
    }),
  ];
}

/** Lines by their worst. */
function worstFirst(lines: readonly TiedLine[], badness: (line: TiedLine) => number): readonly TiedLine[] {
  return [...lines].sort((a, b) => badness(b) - badness(a));
}

function noteHeld(request: TieRequest, plan: TiePlan, places: TiePlaces): readonly Finding[] {
  const { mmPerPx } = places;
  const few = worstFirst(
    plan.lines.filter(({ ties, wanted }) => ties < wanted),
    ({ ties, wanted }) => wanted - ties,
  );
  const far = worstFirst(
    plan.lines.filter(
      ({ ties, wanted, longestFree }) => ties === wanted && ties > 1 && longestFree * mmPerPx > request.freeMm * 1.25,
    ),
    ({ longestFree }) => longestFree,
  );
  const measuredMm = round((far[0]?.longestFree ?? 0) * mmPerPx, 1);
  return [
    ...noteLines(
      {
        code: 'ties/few',
        lines: few,
        message: (where) =>
          `${few.length === 1 ? 'An outline has' : `${few.length} outlines have`} fewer ties than wanted, ${few[0]?.ties} of ${few[0]?.wanted} (${where}): corners, ends of creases and tight bends leave no room for more.`,
        remedy: 'Make cornerClearMm, creaseEndClearMm or leastRadiusMm smaller, or ask for fewer ties.',
        data: { measured: few[0]?.ties ?? 0, allowed: few[0]?.wanted ?? 0 },
      },
      places,
    ),
    ...noteLines(
      {
        code: 'ties/far-apart',
        lines: far,
        message: (where) =>
          `${far.length === 1 ? 'An outline is' : `${far.length} outlines are`} free over ${measuredMm} mm between two ties; wanted are at most ${request.freeMm} mm (${where}): the line between bends too much or has too many corners.`,
        remedy: 'Make cornerClearMm or leastRadiusMm smaller, or hold the board otherwise there.',
        data: { measuredMm, allowedMm: request.freeMm },
      },
      places,
    ),
  ];
}

function notePattern(request: TieRequest, plan: TiePlan, places: TiePlaces): readonly Finding[] {
  const stretched = worstFirst(
    plan.lines.filter(({ factor }) => Math.abs(factor - 1) > STRETCH_TOLD),
    ({ factor }) => Math.abs(Math.log(factor)),
  );
  const bare = plan.lines.filter(({ ties }) => ties === 0);
  const percent = round(((stretched[0]?.factor ?? 1) - 1) * 100, 1);
  return [
    ...noteLines(
      {
        code: 'ties/stretched',
        lines: stretched,
        message: (where) =>
          `${stretched.length === 1 ? 'A line is' : `${stretched.length} lines are`} of a length that the pattern of ${request.cutMm} mm cut and ${request.tieMm} mm tie does not fit: it is ${percent < 0 ? 'pressed together' : 'stretched'} by ${Math.abs(percent)} % at the worst, told above 5 % (${where}).`,
        remedy: 'Choose a pattern that divides the line, or make the line a little longer or shorter.',
        data: { measuredPercent: percent, allowedPercent: STRETCH_TOLD * 100 },
      },
      places,
    ),
    ...noteLines(
      {
        code: 'ties/line-short',
        lines: bare,
        message: (where) =>
          `${bare.length === 1 ? 'A line is' : `${bare.length} lines are`} too short for the pattern, or all corners and tight bends, and cut through (${where}).`,
        remedy: 'Choose a shorter pattern for this pass.',
        data: {},
      },
      places,
    ),
  ];
}

/** Findings about the ties of a pass. */
export function noteTies(
  request: TieRequest,
  plan: TiePlan,
  whole: readonly LeftWhole[],
  places: TiePlaces,
): readonly Finding[] {
  const left = whole.map(({ why, shapes }) =>
    finding('ties/left-whole', {
      message: `${places.file}: ${shapes.length === 1 ? 'a line gets' : `${shapes.length} lines get`} no ties, because ${why}.`,
      remedy: 'Draw it as a line of its own, without fill and not through a use, styled by class or attribute.',
      place: { file: places.file },
      data: {
        why,
        count: shapes.length,
        ids: shapes.flatMap(({ id }) => (id === '' ? [] : [id])).slice(0, MOST_PLACES),
      },
    }),
  );
  const lines = request.mode === 'hold' ? noteHeld(request, plan, places) : notePattern(request, plan, places);
  return [...left, ...lines];
}
