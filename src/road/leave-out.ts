// What no sheet may hold draws nothing from here on, so that neither pass nor judge waits for it.
import { EMPTY_BOX } from '../geometry/box.js';
import type { Artwork, Shape } from '../model/artwork.js';
import type { Ticket } from '../model/ticket.js';
import type { Sanitised } from '../split/sanitise.js';

/** What a shape that draws nothing draws. */
const NOTHING = { strokeBox: EMPTY_BOX, drawnBox: EMPTY_BOX, drawnBound: EMPTY_BOX, draws: false };

/** A copy that draws nothing; field by field, since those of a resolved shape are read through accessors. */
function empty(shape: Shape): Shape {
  const { index, element, carrier, layer, kind, id, classes, paint, matrix, fillBox, hidden } = shape;
  return { index, element, carrier, layer, kind, id, classes, paint, matrix, fillBox, hidden, ...NOTHING };
}

/** The artwork in which removed elements, and linked pictures that the ticket leaves out, draw nothing. */
export function leaveOut(artwork: Artwork, sanitised: Sanitised, ticket: Ticket): Artwork {
  const pictures = ticket.linkedPictures === 'leave-out' ? sanitised.linkedPictures : [];
  const rows = new Set(pictures.map((link) => link.row));
  const isGone = (row: number): boolean =>
    sanitised.removed[row] === 1 || rows.has(row) || sanitised.emptiedPictures.has(row);
  if (!artwork.shapes.some((shape) => isGone(shape.element))) return artwork;
  return {
    ...artwork,
    shapes: artwork.shapes.map((shape) => (isGone(shape.element) ? empty(shape) : shape)),
  };
}
