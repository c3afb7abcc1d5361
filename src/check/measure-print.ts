// Whether areas of print can be worked out in reasonable time.
import { countPieces, type Outline } from '../geometry/outline.js';
import type { CheckFacts } from './check-facts.js';
import { strokeInk } from './ink.js';
import type { DrawnShape } from './leave-out-covered.js';
import { areTooMany, isTangled } from './measure-tangle.js';
import { listToolPieces } from './tool-pieces.js';

/** Why areas are not looked at: too many pieces of line, too many meetings of them, or too many beside each other in one shape. */
export type Unlooked = 'pieces' | 'meetings' | 'crowd';

/** The outlines of one shape, and whether its area is that of a stroke along them. */
export interface PrintOutlines {
  readonly outlines: readonly Outline[];
  readonly isStroked: boolean;
}

/** Bounds of what is looked at. */
export interface PrintBounds {
  /** Straight pieces. */
  readonly pieces: number;
  /** Meetings of pieces, besides what each piece may have. */
  readonly meetings: number;
  /** Rows times the lines across each, of the shapes with many points: some ten seconds. */
  readonly crowd: number;
}

const BOUNDS: PrintBounds = { pieces: 500_000, meetings: 2_000_000, crowd: 50_000_000 };
/** Art lies in layers. */
const MEETINGS_A_PIECE = 30;
/** Shapes with fewer points are no crowd, whatever they look like. */
const FEW_POINTS = 1000;
/** A stroke has two sides, and so twice the lines in twice the rows; where it is broad they cross too: as much again four times over. */
const TIMES_STROKED = 16;

/** Low and high ends of the pieces along y, each in order. */
function listEnds(outlines: readonly Outline[]): { readonly low: Float64Array; readonly high: Float64Array } {
  const count = outlines.reduce((sum, outline) => sum + countPieces(outline), 0);
  const low = new Float64Array(count);
  const high = new Float64Array(count);
  let at = 0;
  for (const outline of outlines) {
    const { points } = outline;
    const pieces = countPieces(outline);
    for (let piece = 0; piece < pieces; piece += 1) {
      const [y0, y1] = [points[2 * piece + 1]!, points[2 * piece + 3] ?? points[1]!];
      low[at] = Math.min(y0, y1);
      high[at] = Math.max(y0, y1);
      at += 1;
    }
  }
  return { low: low.sort(), high: high.sort() };
}

/**
 * What it costs to go through a shape row by row: for each height at which a piece ends, the number of pieces that cross it.
 *
 * @source the sweep by which areas are united goes over all lines across a row at each height where a line ends (B. R. Vatti, "A
 * generic solution to polygon clipping", Communications of the ACM 35, 1992)
 */
export function measureCrowd(outlines: readonly Outline[]): number {
  const { low, high } = listEnds(outlines);
  let crowd = 0;
  let begun = 0;
  let ended = 0;
  while (ended < high.length) {
    const row = Math.min(low[begun] ?? Infinity, high[ended]!);
    while (begun < low.length && low[begun]! <= row) begun += 1;
    crowd += begun - ended;
    while (ended < high.length && high[ended]! <= row) ended += 1;
  }
  return crowd;
}

function isCrowded(shapes: readonly PrintOutlines[], allowed: number): boolean {
  let left = allowed;
  for (const { outlines, isStroked } of shapes) {
    if (outlines.reduce((sum, { points }) => sum + points.length / 2, 0) < FEW_POINTS) continue;
    left -= measureCrowd(outlines) * (isStroked ? TIMES_STROKED : 1);
    if (left < 0) return true;
  }
  return false;
}

/** Why areas of print are too much to be worked out; null where they are not. */
export function measurePrint(shapes: readonly PrintOutlines[], bounds: PrintBounds = BOUNDS): Unlooked | null {
  const lines = shapes.flatMap(({ outlines }) => outlines.map((outline) => ({ outline })));
  if (areTooMany(lines, bounds.pieces)) return 'pieces';
  if (isCrowded(shapes, bounds.crowd)) return 'crowd';
  const pieces = listToolPieces(lines);
  return isTangled(pieces, bounds.meetings + MEETINGS_A_PIECE * pieces.count) ? 'meetings' : null;
}

/** The same of drawn shapes and all that clips them. */
export function measureDrawn(facts: CheckFacts, drawn: readonly DrawnShape[]): Unlooked | null {
  const shapes: PrintOutlines[] = drawn.map(({ shape, part }) => ({
    outlines: facts.outlineOf(shape),
    isStroked: part !== 'fill' && strokeInk(shape.paint) !== 'none',
  }));
  const clips = new Set(drawn.flatMap(({ shape }) => facts.clipsOf(shape)));
  const through = [...clips].flat().map(({ outlines }) => ({ outlines, isStroked: false }));
  return measurePrint([...shapes, ...through]);
}

/** What is wrong with print that is not looked at, after its name. */
export function sayUnlooked(why: Unlooked, places: string): string {
  if (why === 'pieces') return `has more pieces of line ${places} than can be held against each other`;
  if (why === 'meetings') return `crosses or touches itself ${places} far more often than art does`;
  return `has a shape ${places} with more lines beside each other than can be gone through`;
}
