// Where each line of an order is best started, and whether it is run backwards: the shortest way through all choices.
import type { Spot } from './travel.js';

/** One way to run a line. */
export interface StartChoice {
  readonly entry: Spot;
  readonly exit: Spot;
}

function step(from: Spot, to: Spot): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  return Math.sqrt(dx * dx + dy * dy);
}

/**
 * The choice for each line with which the way through them, in this order, is shortest; the first of equals.
 *
 * @param choices - By place in the order, at least one each.
 * @returns By place: index of the choice.
 */
export function chooseStarts(choices: readonly (readonly StartChoice[])[], from: Spot): readonly number[] {
  const cameFrom: number[][] = [];
  let before: readonly { readonly exit: Spot; readonly way: number }[] = [{ exit: from, way: 0 }];
  for (const list of choices) {
    const came: number[] = [];
    before = list.map(({ entry, exit }) => {
      let best = 0;
      let least = Infinity;
      before.forEach((one, i) => {
        const way = one.way + step(one.exit, entry);
        if (way < least) [best, least] = [i, way];
      });
      came.push(best);
      return { exit, way: least };
    });
    cameFrom.push(came);
  }
  let at = 0;
  before.forEach(({ way }, i) => {
    if (way < before[at]!.way) at = i;
  });
  const chosen: number[] = [];
  for (let place = choices.length - 1; place >= 0; place -= 1) {
    chosen.push(at);
    at = cameFrom[place]![at]!;
  }
  return chosen.reverse();
}
