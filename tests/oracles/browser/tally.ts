// What came of comparing answers with what resolve makes of the same files.

/** Why something is not held against the browser's answer: its own faults and limits, and what it cannot be asked. */
export const NOT_COMPARED = {
  'file refused': 'Both refuse it, or one does: scripts of entities, missing namespaces of attributes, no root of SVG.',
  'root without size': 'The browser lays out nothing where the viewBox or the artboard has no size.',
  'box of type': 'Type is as large as its font; pinbar takes its anchor and says so.',
  'box of a picture': 'Where a side is not said the browser takes that of the picture, which pinbar does not open.',
  'box without size':
    'A rect, circle or ellipse without width or height and a path without a segment draw nothing and have no box; the browser gives the place where they would be.',
  'lone moveto':
    'The browser takes a moveto without a segment into the box of a path with curves, and not into that of lines; nothing is drawn there.',
  'arc as cubics':
    'The browser turns arcs into cubics in single precision; a turn of nearly half is off by up to the root of that. Closed forms decide.',
  'transform about a loose box':
    'The browser joins upright boxes of transformed children, turns arcs into cubics, outlines curves nearly and takes movetos along; a transform about such a box is off with it.',
  'not laid out': 'The browser gives neither box nor matrix.',
  'use under rules that look at neighbours':
    'The content of a use has no nodes; a written-out copy would be matched by other rules.',
  'use unlike its copy':
    'A use that turns about its own box: the browser takes that box without x and y, the table of SVG 2, section 8.10, with them.',
  'hidden use': 'A place in per cent of a use that is not laid out cannot be asked for.',
  'use with too many copies': 'More than can be written out.',
  'size not said': 'Without a size the browser fits the root to its window.',
} as const;

/** A key of NOT_COMPARED. */
export type NotCompared = keyof typeof NOT_COMPARED;

/** Where the two differ. */
export interface Difference {
  readonly file: string;
  /** Row of the element, or -1 for the file. */
  readonly row: number;
  readonly what: string;
  readonly theirs: string;
  readonly ours: string;
}

/** Counts of a comparison. */
export interface Tally {
  files: number;
  shapes: number;
  /** Shapes drawn through a use. */
  copied: number;
  boxes: number;
  /** Boxes of paths with arcs that were also held against closed forms. */
  closedForms: number;
  matrices: number;
  /** Artboards held against the size of the file as a picture. */
  sizes: number;
  values: number;
  readonly left: Map<NotCompared, number>;
  readonly differences: Difference[];
}

/** Nothing compared yet. */
export function createTally(): Tally {
  return {
    files: 0,
    shapes: 0,
    copied: 0,
    boxes: 0,
    closedForms: 0,
    matrices: 0,
    sizes: 0,
    values: 0,
    left: new Map(),
    differences: [],
  };
}

/** Counts what is not compared. */
export function leaveOut(tally: Tally, why: NotCompared, count = 1): void {
  tally.left.set(why, (tally.left.get(why) ?? 0) + count);
}

/** One line for people. */
export function printTally(name: string, tally: Tally): string {
  const { files, shapes, copied, boxes, closedForms, matrices, sizes, values, left, differences } = tally;
  const why = [...left].map(([reason, count]) => `${reason} ${count}`).join(', ');
  return `${name}: ${files} files, ${shapes} shapes (${copied} through a use), ${boxes} boxes (${closedForms} with arcs), ${matrices} matrices, ${sizes} sizes, ${values} values of paint; ${differences.length} differ; not compared: ${why === '' ? 'nothing' : why}`;
}
