// Clip paths, masks and filters measured by the box of a group, on sheets that hold only a part of the group.
import { type Box, EMPTY_BOX, isEmptyBox, unite } from '../geometry/box.js';
import type { Artwork, BoxedEffect, Shape } from '../model/artwork.js';
import { type Finding, finding, type Place } from '../model/finding.js';
import type { Assignment } from '../model/pass.js';
import { describeShapes, joinWords } from './describe-shapes.js';
import { firstShapeFrom } from './find-divided-effects.js';

/** What is asked of the drawing. */
export interface BoxQuestion {
  readonly artwork: Artwork;
  readonly assignment: Assignment;
  readonly effects: readonly BoxedEffect[];
  readonly placeOf: (row: number) => Place;
}

function boxOf(shapes: readonly Shape[]): Box {
  return shapes.reduce((box, shape) => unite(box, shape.fillBox), EMPTY_BOX);
}

/** Whether boxes on the artboard say what boxes in the group say. */
function isUpright({ matrix }: Shape): boolean {
  return matrix[1] === 0 && matrix[2] === 0;
}

function isLess(part: readonly Shape[], all: readonly Shape[]): boolean {
  if (part.length === all.length) return false;
  if (!all.every(isUpright)) return true;
  const [own, whole] = [boxOf(part), boxOf(all)];
  return own.x0 > whole.x0 || own.y0 > whole.y0 || own.x1 < whole.x1 || own.y1 < whole.y1;
}

function tellDivided(
  question: BoxQuestion,
  effect: BoxedEffect,
  passes: readonly string[],
  indices: number[],
): Finding {
  const place = question.placeOf(effect.element);
  const data = { ...describeShapes(question.artwork, indices).data, passes, what: effect.kind };
  const where = `The ${place.element} on line ${place.line}`;
  if (effect.kind === 'filter region') {
    return finding('order/filter-region', {
      message: `${where} has a filter that is cut off around the box of all it holds; on the sheet of ${joinWords(passes)} that box is smaller, since shapes without paint are left out.`,
      remedy: 'Take the shapes without paint out of the group, or give the filter a region in units of the drawing.',
      place,
      data,
    });
  }
  return finding('order/box-divided', {
    message: `${where} has a ${effect.kind} measured by the box of all it holds; on the sheet of ${joinWords(passes)} only a part of it is left, and the ${effect.kind} would sit elsewhere.`,
    remedy: `Give the ${effect.kind} units of the drawing (userSpaceOnUse), or put it on a group that holds what one pass takes.`,
    place,
    data,
  });
}

/**
 * Finds effects that would be drawn otherwise because the box of their group is another one on a sheet.
 *
 * The region around a filter is spoken of only where shapes without paint are left out: a divided filter is told as such.
 */
export function findDividedBoxes(question: BoxQuestion): readonly Finding[] {
  const { artwork, assignment, effects } = question;
  return effects.flatMap((effect) => {
    const first = firstShapeFrom(artwork, effect.element);
    const end = firstShapeFrom(artwork, effect.end);
    const indices = Array.from({ length: end - first }, (_, at) => first + at).filter((index) => {
      const shape = artwork.shapes[index]!;
      return !shape.hidden && !isEmptyBox(shape.fillBox);
    });
    const all = indices.map((index) => artwork.shapes[index]!);
    const painted = effect.kind === 'filter region' ? all.filter(({ draws }) => draws) : null;
    const names = assignment.passes.flatMap(({ name }, pass) => {
      const own = new Set(assignment.placements.filter((item) => item.pass === pass).map(({ shape }) => shape));
      const kept = indices.filter((index) => own.has(index)).map((index) => artwork.shapes[index]!);
      if (kept.length === 0 || (painted !== null && kept.length < painted.length)) return [];
      return isLess(kept, all) ? [name] : [];
    });
    return names.length === 0 ? [] : [tellDivided(question, effect, names, indices)];
  });
}
