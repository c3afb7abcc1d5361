// A drawing in mm as checks see it, its layers sorted by their names.
import type { CheckFacts } from '../../../src/check/check-facts.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import type { RoadOptions } from '../../../src/model/job.js';
import { encodeUtf8 } from '../../../src/model/platform.js';
import type { Ticket } from '../../../src/model/ticket.js';
import { gatherFacts } from '../../../src/road/gather-facts.js';
import { prepareJob } from '../../../src/road/prepare-job.js';
import { DEFAULT_TICKET } from '../../../src/ticket/default-ticket.js';

/** The facts of a drawing whose layers are sorted by their names. */
export async function factsOf(
  svg: string,
  checks: Partial<CheckSettings> = {},
  options: RoadOptions & { readonly ticket?: Partial<Ticket> } = {},
): Promise<CheckFacts> {
  const ticket: Ticket = { ...DEFAULT_TICKET, ...options.ticket, checks: { ...DEFAULT_TICKET.checks, ...checks } };
  return gatherFacts(await prepareJob(encodeUtf8(svg), ticket, options), ticket);
}

/** An artboard in mm with a print layer and a cut layer. */
export function carton(print: string, cut: string, more: string = ''): string {
  return (
    '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200">' +
    `${more}<g id="Print">${print}</g>` +
    `<g id="Cut" fill="none" stroke="#d6336c" stroke-width="0.3">${cut}</g></svg>`
  );
}
