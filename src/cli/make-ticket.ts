// The ticket of a run: the file, with what the command line says laid over it.

import { readTicketText } from '../disk/read-input.js';
import { parseTake, readTicket, type Ticket, writeTicket } from '../index.js';

/** Options of the command line that change the ticket. */
export interface TicketFlags {
  readonly ticket?: string;
  readonly take: readonly string[];
  readonly hidden?: Ticket['hidden'];
  readonly partPaint?: boolean;
  readonly embed?: boolean;
  readonly linkedPictures?: Ticket['linkedPictures'];
  readonly marks?: boolean;
  readonly margin?: number;
  readonly userUnitsPerInch?: number;
  readonly compact?: boolean;
  readonly sequence?: boolean;
  readonly witness?: Ticket['witness'];
}

/** What the command line asks of the order; nothing where it asks nothing. */
function sequenceOf(flags: TicketFlags, base: Ticket): Pick<Ticket, 'sequence'> {
  return flags.sequence ? { sequence: base.sequence ?? { passes: [], origin: 'top-left' } } : {};
}

/** The ticket of the file, with what the command line says laid over it. */
export async function makeTicket(flags: TicketFlags): Promise<Ticket> {
  const base = readTicket(flags.ticket === undefined ? { pinbar: 1 } : await readTicketText(flags.ticket));
  const rules = flags.take.map(parseTake);
  const linkedPictures = flags.embed ? 'embed' : flags.linkedPictures;
  const merged: Ticket = {
    ...base,
    ...(rules.length === 0 ? {} : { rules }),
    ...(flags.hidden === undefined ? {} : { hidden: flags.hidden }),
    ...(flags.partPaint ? { partPaint: true } : {}),
    ...(linkedPictures === undefined ? {} : { linkedPictures }),
    ...(flags.marks === false ? { marks: { ...base.marks, wanted: false } } : {}),
    ...(flags.margin === undefined ? {} : { marginMm: flags.margin }),
    ...(flags.userUnitsPerInch === undefined ? {} : { userUnitsPerInch: flags.userUnitsPerInch }),
    ...(flags.compact ? { compact: true } : {}),
    ...(flags.witness === undefined ? {} : { witness: flags.witness }),
  };
  // Read once more, so that rules of the command line are held to what the ticket allows.
  return readTicket(writeTicket({ ...merged, ...sequenceOf(flags, base) }));
}
