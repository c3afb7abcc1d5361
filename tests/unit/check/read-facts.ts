// Facts for a check from a few lines of SVG and a ticket.
import type { CheckFacts } from '../../../src/check/check-facts.js';
import { readTicket } from '../../../src/index.js';
import { gatherFacts } from '../../../src/road/gather-facts.js';
import { prepareJob } from '../../../src/road/prepare-job.js';

/** A sheet of 200 x 150 mm with print, a crease and a cut; `change` replaces words of it. */
const SHEET = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="150mm" viewBox="0 0 200 150">
<g id="Marks"><path id="target" d="M20 71H28V79H20Z"/></g>
<g id="Art"><path id="panel" d="M67 52H133V98H67Z" fill="#c9a227"/></g>
<g id="Crease"><path id="fold" d="M100 55V95" fill="none" stroke="#7a3fc4" stroke-width=".2"/></g>
<g id="Cut"><path id="outline" d="M70 55H130V95H70Z" fill="none" stroke="#2a7f62" stroke-width=".2"/></g></svg>`;

/** What a ticket says beside its passes. */
export interface Wishes {
  readonly passes?: readonly object[];
  readonly checks?: object;
  readonly marks?: object;
  readonly marginMm?: number;
}

const RULES = [
  { pass: 'print', layer: 'Art' },
  { pass: 'print', layer: 'Marks' },
  { pass: 'creasing', layer: 'Crease' },
  { pass: 'cutting', layer: 'Cut' },
];

/** The facts that a check gets of the sheet. */
export async function readFacts(
  wishes: Wishes = {},
  change: readonly (readonly [string, string])[] = [],
): Promise<CheckFacts> {
  let text = SHEET;
  for (const [from, to] of change) {
    if (!text.includes(from)) throw new Error(`the sheet does not hold ${from}`);
    text = text.replace(from, to);
  }
  const ticket = readTicket({ pinbar: 1, rules: RULES, ...wishes });
  return gatherFacts(await prepareJob(new TextEncoder().encode(text), ticket, {}), ticket);
}

/** Names of the passes that `readFacts` fills, with what more a ticket says of each. */
export function listPasses(order: string, more: Readonly<Record<string, object>> = {}): readonly object[] {
  const roles: Readonly<Record<string, string>> = { crease: 'creasing', print: 'print', cut: 'cutting' };
  return order.split(' ').map((name) => ({ name, role: roles[name]!, ...more[name] }));
}
