// Columns grow without losing what is in them, and are cut to it.
import { expect, it } from 'vitest';
import { createColumns, finishColumns, growAttributes, growElements } from '../../../src/source/element-columns.js';

const NAMES = [{ namespace: '', local: 'a', qualified: 'a' }];

it('keeps every value through several doublings', () => {
  const columns = createColumns(2);
  const rows = Array.from({ length: 37 }, (_, i) => i);
  for (const row of rows) {
    growElements(columns);
    columns.count = row + 1;
    columns.start[row] = row + 1;
    columns.headEnd[row] = row + 2;
    columns.tailStart[row] = row + 3;
    columns.end[row] = row + 4;
    columns.parent[row] = row - 1;
    columns.next[row] = row + 5;
    columns.name[row] = row + 6;
    columns.attributeStart[row] = columns.attributeCount;
    growAttributes(columns);
    const slot = columns.attributeCount;
    columns.attributeName[slot] = row + 7;
    columns.valueStart[slot] = row + 8;
    columns.valueEnd[slot] = row + 9;
    columns.attributeCount = slot + 1;
  }
  const { names, attributes, ...table } = finishColumns(columns, NAMES, []);
  const plus = (by: number): number[] => rows.map((row) => row + by);
  expect(
    Object.fromEntries(
      Object.entries(table).map(([key, column]) => [
        key,
        [column].flatMap((c) => (typeof c === 'number' ? c : [...c])),
      ]),
    ),
  ).toEqual({
    count: [37],
    start: plus(1),
    headEnd: plus(2),
    tailStart: plus(3),
    end: plus(4),
    parent: plus(-1),
    next: plus(5),
    name: plus(6),
    attributeStart: [...rows, 37],
  });
  expect([attributes.count, [...attributes.name], [...attributes.valueStart], [...attributes.valueEnd]]).toEqual([
    37,
    plus(7),
    plus(8),
    plus(9),
  ]);
  expect(names).toBe(NAMES);
});

it('an empty table is empty', () => {
  const { count, attributeStart, attributes } = finishColumns(createColumns(4), [], []);
  expect([count, [...attributeStart], attributes.count]).toEqual([0, [0], 0]);
});
