// Where the marks go: worked out once, the same for every sheet.
import type { Matrix } from '../geometry/matrix.js';
import type { Finding } from './finding.js';
import type { RootSize } from './sheet.js';

/** A point on the sheet in mm from the artboard's top left, y down. */
export type PointMm = readonly [number, number];

/** The places of all marks of a job. */
export interface MarkPlan {
  /** Centres of the discs, the odd one last. */
  readonly discsMm: readonly PointMm[];
  /** Centres of the crosses, in the order of the discs. */
  readonly crossesMm: readonly PointMm[];
  /** Centres of the small crosses of copies, and the length of their lines; left out without any. */
  readonly copyCrosses?: { readonly atMm: readonly PointMm[]; readonly sizeMm: number };
  /** Outer corners of the corner marks: left, top, right, bottom. */
  readonly frameMm: readonly [number, number, number, number];
  /** Where a label may stand, and how wide it may be. */
  readonly labelMm: { readonly at: PointMm; readonly width: number };
  /** From mm on the artboard to the root's user units. */
  readonly matrix: Matrix;
}

/** What the marks stage decides before the split. */
export interface MarkDecision {
  /** Null where none are asked for or none can be placed. */
  readonly plan: MarkPlan | null;
  readonly rootSize: RootSize;
  readonly findings: readonly Finding[];
}

/** A register mark by name, at its centre. */
export interface NamedMark {
  readonly name: string;
  readonly shape: 'disc' | 'cross';
  readonly atMm: PointMm;
}

/** Where each pair of marks stands, in the order of the plan; the odd one tells a turned or flipped sheet. */
const PLACES: readonly string[] = ['top-left', 'top-right', 'bottom-left', 'bottom-right', 'odd'];

/** The register marks of a plan by name: discs, then the crosses beside them. */
export function nameMarks(plan: MarkPlan): readonly NamedMark[] {
  const list = (centres: readonly PointMm[], shape: NamedMark['shape']): readonly NamedMark[] =>
    centres.map((atMm, i) => ({ name: shape === 'disc' ? PLACES[i]! : `${PLACES[i]!}-cross`, shape, atMm }));
  return [...list(plan.discsMm, 'disc'), ...list(plan.crossesMm, 'cross')];
}
