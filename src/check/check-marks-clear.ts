// Do marks stand clear of print that covers them, and outside of every blank?
import { type Box, intersect, isEmptyBox } from '../geometry/box.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { isToolpath } from '../model/pass.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { listMarks, type Mark } from './list-marks.js';

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

/** Marks of the designer's own (layers `markLayers`) that later art covers; planned marks are drawn last and stand clear. */
export function checkMarksClear(facts: CheckFacts): readonly Finding[] {
  const marks = listMarks(facts).filter(({ kind }) => kind === 'own');
  if (marks.length === 0) return [];
  const covers = listCovers(facts, marks);
  const covered = marks.flatMap((mark): readonly Trouble[] => {
    const over = covers.some(
      (cover) => cover.index > mark.shape!.index && !isEmptyBox(intersect(cover.drawnBound, mark.box)),
    );
    return over ? [{ shape: mark.shape, at: centreOf(mark.box) }] : [];
  });
  return gatherTroubles(facts.artwork, 'check/marks-covered', covered, (list) => ({
    message: `${list.length === 1 ? 'A mark lies' : `${list.length} marks lie`} under a copy: art that is drawn later covers ${list.length === 1 ? 'it' : 'them'}.`,
    remedy: 'Move the mark clear of the copies, or bring its layer to the top.',
  }));
}
