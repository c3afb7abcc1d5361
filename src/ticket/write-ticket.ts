// A ticket back as JSON.
import type { Json } from '../model/finding.js';
import type { Ticket } from '../model/ticket.js';

/** The ticket as plain data that reads to the same ticket. */
export function writeTicket(ticket: Ticket): Json {
  return { pinbar: 1, ...(JSON.parse(JSON.stringify(ticket)) as { readonly [key: string]: Json }) };
}
