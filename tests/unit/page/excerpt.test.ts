// Lines around a place.
import { expect, it } from 'vitest';
import { cutExcerpt } from '../../../src/page/excerpt.js';

it('gives the line with its column and two lines on either side', () => {
  const lines = cutExcerpt('a\nb\r\nc\nd<e\nf\ng\nh', 4, 2);
  expect(lines.map(({ number, text }) => [number, text])).toEqual([
    [2, 'b'],
    [3, 'c'],
    [4, 'd<e'],
    [5, 'f'],
    [6, 'g'],
  ]);
  expect(lines.map(({ column }) => column)).toEqual([-1, -1, 1, -1, -1]);
});

it('cuts a long line so that the place is in it', () => {
  const [line] = cutExcerpt(`${'x'.repeat(500)}!${'y'.repeat(500)}`, 1, 501);
  expect(line!.text.length).toBeLessThan(125);
  expect(line!.text[line!.column]).toBe('!');
});

it('gives nothing where there is no such line', () => {
  expect(cutExcerpt('a\nb', 9, 1)).toEqual([]);
});
