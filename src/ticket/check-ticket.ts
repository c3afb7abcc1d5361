// Checks a value against the shape of a ticket.
import { checkShape, type Shape, type ShapeFault } from './check-shape.js';
import { isErrorCode, TICKET_FIELDS } from './ticket-shape.js';

/** One thing wrong with a ticket. */
export type TicketFault = ShapeFault;

const TICKET_SHAPE: Shape = {
  noun: 'ticket',
  fields: TICKET_FIELDS,
  required: ['pinbar'],
  explainKey: (keys, path) =>
    keys[0] === 'severities' && isErrorCode(String(keys.at(-1)))
      ? {
          path,
          message: `${path}: "${String(keys.at(-1))}" is an error; only warnings and notes can be given another severity.`,
          remedy: 'Take the line out.',
        }
      : null,
};

/** Every fault of a value that should be a ticket; empty where it is one. */
export function checkTicket(value: unknown): readonly TicketFault[] {
  return checkShape(value, TICKET_SHAPE);
}
