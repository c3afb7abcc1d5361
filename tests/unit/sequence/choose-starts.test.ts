// The best choice of starts in a given order, held against all choices.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseStarts, type StartChoice } from '../../../src/sequence/choose-starts.js';

const spot = fc.record({ x: fc.integer({ min: 0, max: 99 }), y: fc.integer({ min: 0, max: 99 }) });
const choice: fc.Arbitrary<StartChoice> = fc.record({ entry: spot, exit: spot });
const from = { x: 0, y: 0 };

function wayOf(choices: readonly (readonly StartChoice[])[], chosen: readonly number[]): number {
  let at = from;
  let way = 0;
  chosen.forEach((index, place) => {
    const { entry, exit } = choices[place]![index]!;
    way += Math.hypot(entry.x - at.x, entry.y - at.y);
    at = exit;
  });
  return way;
}

function listAll(choices: readonly (readonly StartChoice[])[]): readonly (readonly number[])[] {
  return choices.reduce<readonly (readonly number[])[]>(
    (all, list) => all.flatMap((one) => list.map((_, i) => [...one, i])),
    [[]],
  );
}

describe('starts', () => {
  it('are the best of all choices', () => {
    const lists = fc.array(fc.array(choice, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(lists, (choices) => {
        const least = Math.min(...listAll(choices).map((chosen) => wayOf(choices, chosen)));
        expect(wayOf(choices, chooseStarts(choices, from))).toBeCloseTo(least, 9);
      }),
      { seed: 31, numRuns: 200 },
    );
  });

  it('are the first where nothing is gained', () => {
    const still = { entry: { x: 1, y: 1 }, exit: { x: 1, y: 1 } };
    expect(
      chooseStarts(
        [
          [still, still],
          [still, still],
        ],
        from,
      ),
    ).toEqual([0, 0]);
  });
});
