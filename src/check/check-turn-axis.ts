// Is it said how the sheet is turned for its reverse side?
import { type Finding, finding } from '../model/finding.js';
import type { CheckFacts } from './check-facts.js';
import { listSetups } from './pass-setup.js';

/** Passes on the reverse side beside passes on the front, where `turnAxis` is not said. */
export function checkTurnAxis(facts: CheckFacts): readonly Finding[] {
  if (facts.ticket.checks.turnAxis !== 'not-said') return [];
  const setups = listSetups(facts);
  const reverse = setups
    .filter(({ side, request }) => side === 'reverse' && request?.turn === undefined)
    .map(({ pass }) => pass.name);
  if (reverse.length === 0 || setups.every(({ side }) => side === 'reverse')) return [];
  return [
    finding('check/turn-axis-unsaid', {
      message: `${reverse.join(', ')} ${reverse.length === 1 ? 'runs' : 'run'} on the reverse side, but nothing says over which axis the sheet is turned; the wrong one puts everything upside down.`,
      remedy:
        'Say "turnAxis": "vertical" under checks in the ticket where left and right change places, "horizontal" where top and bottom do.',
      data: { passes: reverse },
    }),
  ];
}
