// Are the tool lines a tangle that no check can follow?
import { type Finding, finding } from '../model/finding.js';
import type { CheckFacts } from './check-facts.js';
import { MOST_PIECES } from './measure-tangle.js';

/** Says that the checks of lines, and of what they enclose, had to be left out. */
export function checkTangle({ tangle }: CheckFacts): readonly Finding[] {
  if (tangle === null) return [];
  const what =
    tangle === 'pieces'
      ? `have more than ${MOST_PIECES} straight pieces`
      : 'cross or touch each other far more often than those of a carton do';
  return [
    finding('check/lines-tangled', {
      message: `The lines of the tool passes ${what}; the checks of lines and of the blank are left out.`,
      remedy: 'Look whether art stands in a tool pass by mistake: hatchings, traced pictures and type belong to print.',
      data: { why: tangle },
    }),
  ];
}
