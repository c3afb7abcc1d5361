// Shapes and marks as they lie on a sheet of copies.
import { type Box, containsBox, isEmptyBox, transformBox } from '../geometry/box.js';
import { type Matrix, multiply } from '../geometry/matrix.js';
import type { Shape } from '../model/artwork.js';
import type { Layout } from '../model/layout.js';
import type { CheckFacts } from './check-facts.js';

/** A shape of one copy. */
export interface PlacedShape {
  readonly shape: Shape;
  /** px on the sheet. */
  readonly box: Box;
}

/** From px on the artboard to px on the sheet, one per copy; the margin of the artboard lies outside of it. */
export function copyMatrices({ artwork, ticket }: CheckFacts, layout: Layout): readonly Matrix[] {
  const { mmPerPx } = artwork.artboard;
  const toPass: Matrix = [mmPerPx, 0, 0, mmPerPx, ticket.marginMm, ticket.marginMm];
  const toPx: Matrix = [1 / mmPerPx, 0, 0, 1 / mmPerPx, 0, 0];
  return layout.matricesMm.map((matrix) => multiply(toPx, multiply(matrix, toPass)));
}

/** A box of mm on the sheet in px. */
export function sheetPx({ artwork }: CheckFacts, box: Box): Box {
  const px = 1 / artwork.artboard.mmPerPx;
  return transformBox([px, 0, 0, px, 0, 0], box);
}

/**
 * Shapes of any copy that reach beyond a box.
 *
 * @param indices - Of the shapes that are looked at.
 * @param boxOf - What counts as the shape, px on the artboard.
 * @param limit - px on the sheet.
 */
export function listBeyond(
  facts: CheckFacts,
  layout: Layout,
  indices: Iterable<number>,
  look: { readonly boxOf: (shape: Shape) => Box; readonly limit: Box },
): readonly PlacedShape[] {
  const found: PlacedShape[] = [];
  const shapes = [...new Set(indices)].map((index) => facts.artwork.shapes[index]!);
  for (const matrix of copyMatrices(facts, layout)) {
    for (const shape of shapes) {
      if (isEmptyBox(shape.drawnBound) || containsBox(look.limit, transformBox(matrix, shape.drawnBound))) continue;
      const box = transformBox(matrix, look.boxOf(shape));
      if (!isEmptyBox(box) && !containsBox(look.limit, box)) found.push({ shape, box });
    }
  }
  return found;
}
