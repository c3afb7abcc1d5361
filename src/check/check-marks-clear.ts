// Do marks stand clear of print that covers them, and outside of every blank?
import type { Box } from '../geometry/box.js';
import { indexBoxes, indexBoxList } from '../geometry/box-index.js';
import { isInsideLoop } from '../geometry/inside-loop.js';
import { IDENTITY, invert } from '../geometry/matrix.js';
import { boundPoints } from '../geometry/outline.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { isToolpath } from '../model/pass.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { listMarks, listOwnMarks, type Mark } from './list-marks.js';
import { shapesMeet } from './shapes-meet.js';
import { copyMatrices } from './sheet-copies.js';

function centreOf(box: Box): readonly [number, number] {
  return [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
}

/** Shapes that cover what lies below them: filled or pictures, in a pass that covers areas. */
function listCovers({ artwork, assignment }: CheckFacts, marks: readonly Mark[]): readonly Shape[] {
  const areas = assignment.passes.map((pass) => !isToolpath(pass.role));
  const own = new Set(marks.map(({ shape }) => shape));
  return assignment.placements
    .filter(({ pass, part }) => areas[pass]! && part !== 'stroke')
    .map(({ shape }) => artwork.shapes[shape]!)
    .filter((shape) => !own.has(shape) && shape.draws && (shape.kind === 'image' || shape.paint.fill.kind !== 'none'));
}

/** Marks that art drawn later covers: those of the designer's own, since planned ones are drawn last and stand clear. */
function findCovered(facts: CheckFacts): readonly Trouble[] {
  // Every copy covers its own marks alike, so the drawing tells it for all.
  const own = listOwnMarks(facts);
  if (own.length === 0) return [];
  const covers = listCovers(facts, own);
  const index = indexBoxList(covers.map(({ drawnBound }) => drawnBound));
  return own.flatMap((mark): readonly Trouble[] => {
    const { x0, y0, x1, y1 } = mark.box;
    const over = index
      .search(x0, y0, x1, y1)
      .some((at) => covers[at]!.index > mark.shape!.index && shapesMeet(facts, mark.shape!, covers[at]!));
    return over ? [{ shape: mark.shape, at: centreOf(mark.box) }] : [];
  });
}

/** Marks whose middle lies on the board of a blank, of any copy of it. */
function findWithin(facts: CheckFacts, marks: readonly Mark[]): readonly Trouble[] {
  const blanks = facts.faces?.blanks ?? [];
  const index = indexBoxes(Float64Array.from(blanks.flatMap(({ outer }) => boundPoints(outer))));
  const backs = facts.layout === null ? [IDENTITY] : copyMatrices(facts, facts.layout).map((matrix) => invert(matrix)!);
  const isWithin = (x: number, y: number): boolean =>
    index.search(x, y, x, y).some((at) => {
      const { outer, holes } = blanks[at]!;
      return isInsideLoop(outer, x, y) && !holes.some((hole) => isInsideLoop(hole, x, y));
    });
  return marks.flatMap(({ shape, box }): readonly Trouble[] => {
    const [x, y] = centreOf(box);
    const within = backs.some(([a, b, c, d, e, f]) => isWithin(a * x + c * y + e, b * x + d * y + f));
    return within ? [{ shape, at: [x, y] }] : [];
  });
}

/** Marks, those of the layers `markLayers` among them, that are covered or would be cut out with a blank. */
export function checkMarksClear(facts: CheckFacts): readonly Finding[] {
  const marks = listMarks(facts);
  return [
    ...gatherTroubles(facts.artwork, 'check/marks-covered', findCovered(facts), (list) => ({
      message: `${list.length === 1 ? 'A mark lies' : `${list.length} marks lie`} under a copy: art that is drawn later covers ${list.length === 1 ? 'it' : 'them'}.`,
      remedy: 'Move the mark clear of the copies, or bring its layer to the top.',
    })),
    ...gatherTroubles(facts.artwork, 'check/marks-in-blank', findWithin(facts, marks), (list) => ({
      message: `${list.length === 1 ? 'A mark stands' : `${list.length} marks stand`} within a blank and would be seen on the finished piece.`,
      remedy: 'Move it off the blank, into the waste around it.',
    })),
  ];
}
