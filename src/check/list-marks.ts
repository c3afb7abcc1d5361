// The marks of a job: those that pinbar plans, and those that the designer drew.
import { type Box, isEmptyBox, transformBox } from '../geometry/box.js';
import type { Shape } from '../model/artwork.js';
import type { CheckFacts } from './check-facts.js';
import { copyMatrices } from './sheet-copies.js';

/** A mark on the artboard. */
export interface Mark {
  readonly kind: 'disc' | 'cross' | 'corner' | 'own';
  /** The shape of a mark that the designer drew; null for a planned one. */
  readonly shape: Shape | null;
  /** px on the artboard; the margin lies outside of it. With a layout, px on its sheet. */
  readonly box: Box;
}

function fold(name: string): string {
  return name.normalize('NFKD').replace(/\p{M}/gu, '').trim().toLowerCase();
}

/** Layers that hold marks of the designer's own, those within them too. */
export function listMarkLayers({ artwork, ticket }: CheckFacts): ReadonlySet<number> {
  const names = new Set(ticket.checks.markLayers.map(fold));
  const found = new Set<number>();
  for (const layer of artwork.layers) {
    if (found.has(layer.parent) || names.has(fold(layer.name))) found.add(layer.index);
  }
  return found;
}

function listPlanned({ artwork, ticket, marks: plan, layout }: CheckFacts): readonly Mark[] {
  if (plan === null) return [];
  const { marks } = ticket;
  const marginMm = layout === null ? ticket.marginMm : 0;
  const px = 1 / artwork.artboard.mmPerPx;
  const toArtboard = (kind: Mark['kind'], box: Box): Mark => ({
    kind,
    shape: null,
    box: transformBox([px, 0, 0, px, -marginMm * px, -marginMm * px], box),
  });
  const around = ([x, y]: readonly [number, number], size: number): Box => ({
    x0: x - size / 2,
    y0: y - size / 2,
    x1: x + size / 2,
    y1: y + size / 2,
  });
  const [left, top, right, bottom] = plan.frameMm;
  const long = marks.cornerLengthMm;
  const corners = [
    { x0: left, y0: top, x1: left + long, y1: top + long },
    { x0: right - long, y0: top, x1: right, y1: top + long },
    { x0: right - long, y0: bottom - long, x1: right, y1: bottom },
    { x0: left, y0: bottom - long, x1: left + long, y1: bottom },
  ];
  return [
    ...plan.discsMm.map((at) => toArtboard('disc', around(at, marks.discDiameterMm))),
    ...plan.crossesMm.map((at) => toArtboard('cross', around(at, marks.crossSizeMm))),
    ...corners.map((box) => toArtboard('corner', box)),
  ];
}

/** Drawn shapes of mark layers. */
export function listOwnMarks(facts: CheckFacts): readonly Mark[] {
  const layers = listMarkLayers(facts);
  if (layers.size === 0) return [];
  return facts.artwork.shapes
    .filter((shape) => layers.has(shape.layer) && shape.draws && !shape.hidden && !isEmptyBox(shape.drawnBound))
    .map((shape) => ({ kind: 'own', shape, box: shape.drawnBox }));
}

/** Marks of the designer's own as they lie on the sheet: on the artboard, or on every copy. */
function listPlacedMarks(facts: CheckFacts): readonly Mark[] {
  const own = listOwnMarks(facts);
  if (facts.layout === null || own.length === 0) return own;
  return copyMatrices(facts, facts.layout).flatMap((matrix) =>
    own.map((mark) => ({ ...mark, box: transformBox(matrix, mark.box) })),
  );
}

/** All marks: planned ones first, then the designer's own in paint order, copy by copy. With a layout, px on its sheet. */
export function listMarks(facts: CheckFacts): readonly Mark[] {
  return [...listPlanned(facts), ...listPlacedMarks(facts)];
}
