// The an+b of positions.
import { describe, expect, test } from 'vitest';
import { isInSeries, readSeries } from '../../../src/resolve/sibling-places.js';

function listPlaces(text: string): readonly number[] | null {
  const series = readSeries(text);
  return series === null ? null : [1, 2, 3, 4, 5, 6, 7].filter((place) => isInSeries(series, place));
}

describe('readSeries', () => {
  // CSS Syntax 3, section 6, and Selectors 4, section 14.3.
  test.each([
    ['odd', [1, 3, 5, 7]],
    ['EVEN', [2, 4, 6]],
    ['3', [3]],
    ['+3', [3]],
    ['-3', []],
    ['0', []],
    ['n', [1, 2, 3, 4, 5, 6, 7]],
    ['2n+1', [1, 3, 5, 7]],
    ['2n', [2, 4, 6]],
    ['-n+3', [1, 2, 3]],
    ['-2n + 5', [1, 3, 5]],
    ['3N - 1', [2, 5]],
    ['+n', [1, 2, 3, 4, 5, 6, 7]],
    ['0n+4', [4]],
    ['10n-1', []],
    ['2n+10', []],
  ])('%s', (text, places) => {
    expect(listPlaces(text)).toEqual(places);
  });

  test.each(['', 'x', '2n+', 'n2', '2 n', '1.5n', 'n + - 3', '2n 1'])('%s is none', (text) => {
    expect(listPlaces(text)).toBeNull();
  });
});
