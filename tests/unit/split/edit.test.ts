// Edits keep their order, and one inside a larger removal is dropped.
import { describe, expect, it } from 'vitest';
import { firstEditFrom, orderEdits } from '../../../src/split/edit.js';

describe('orderEdits', () => {
  it('sorts by place and drops what lies in a removal', () => {
    const outer = { start: 10, end: 50, replacement: '' };
    const inner = { start: 20, end: 25, replacement: 'x' };
    const later = { start: 50, end: 50, replacement: 'y' };
    expect(orderEdits([later, inner, outer])).toEqual([outer, later]);
  });

  it('keeps two insertions at one place', () => {
    const a = { start: 5, end: 5, replacement: 'a' };
    const b = { start: 5, end: 5, replacement: 'b' };
    expect(orderEdits([a, b])).toEqual([a, b]);
  });
});

describe('firstEditFrom', () => {
  it('finds the first edit at or after an offset', () => {
    const edits = [1, 4, 9].map((start) => ({ start, end: start, replacement: '' }));
    expect([0, 1, 2, 4, 5, 9, 10].map((offset) => firstEditFrom(edits, offset))).toEqual([0, 0, 1, 1, 2, 2, 3]);
  });
});
