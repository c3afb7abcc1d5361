// Steps back and forth.
import { expect, it } from 'vitest';
import { beginHistory, stepBack, stepForth, stepOn } from '../../../src/page/history.js';

it('goes back and forth, and forgets what was taken back once something new is done', () => {
  const first = stepOn(stepOn(beginHistory('a'), 'b'), 'c');
  expect(stepBack(first).present).toBe('b');
  expect(stepBack(stepBack(stepBack(first))).present).toBe('a');
  expect(stepForth(stepBack(first))).toEqual(first);
  expect(stepForth(first)).toBe(first);
  expect(stepOn(stepBack(first), 'd').future).toEqual([]);
});

it('keeps the last two hundred steps', () => {
  let history = beginHistory(0);
  for (let i = 1; i <= 300; i += 1) history = stepOn(history, i);
  expect(history.past).toHaveLength(200);
  expect(history.past[0]).toBe(100);
});
