// Marks of two sheets against each other.
import { describe, expect, it } from 'vitest';
import type { Box } from '../../../src/geometry/box.js';
import { compareMarks, sayMarks } from '../../../src/verify/compare-marks.js';
import type { ReadMarks } from '../../../src/verify/read-marks.js';
import { boxOf } from './make-shape.js';

function marksOf(parts: Readonly<Record<string, readonly Box[]>>): ReadMarks {
  const marks = Object.entries(parts).map(([name, partsMm]) => ({ name, partsMm }));
  return { marks, unlike: [], boxMm: boxOf(0, 0, 1, 1) };
}

function compare(a: ReadMarks | null, b: ReadMarks | null): readonly string[] {
  return compareMarks({ file: 'print.svg', marks: a }, { file: 'cut.svg', marks: b }).map((item) => {
    expect(item.code).toBe('verify/marks-differ');
    expect(item.place).toEqual({ file: 'cut.svg' });
    return item.message;
  });
}

const [LEFT, RIGHT] = [boxOf(0, 0, 2, 2), boxOf(10, 0, 2, 2)];
const BOTH = marksOf({ disc: [LEFT, RIGHT] });

describe('marks of two sheets', () => {
  it('that are the same, or missing on both, are fine', () => {
    expect(compare(BOTH, BOTH)).toEqual([]);
    expect(compare(null, null)).toEqual([]);
  });

  it('are on both or on none', () => {
    const said = ['cut.svg and print.svg: only one of them has marks.'];
    expect(compare(BOTH, null)).toEqual(said);
    expect(compare(null, BOTH)).toEqual(said);
  });

  it('may differ by the tolerance and no more', () => {
    expect(compare(BOTH, marksOf({ disc: [LEFT, boxOf(10.0009, 0, 2, 2)] }))).toEqual([]);
    const said = ['cut.svg and print.svg: the disc marks lie differently.'];
    expect(compare(BOTH, marksOf({ disc: [LEFT, boxOf(10.0011, 0, 2, 2)] }))).toEqual(said);
    expect(compare(BOTH, marksOf({ disc: [boxOf(0, 0.5, 2, 2), RIGHT] }))).toEqual(said);
    expect(compare(BOTH, marksOf({ disc: [boxOf(Number.NaN, 0, 2, 2), RIGHT] }))).toEqual(said);
  });

  it('may be drawn in several pieces, on either sheet', () => {
    const halves = [LEFT, RIGHT].flatMap(({ x0, y0 }) => [boxOf(x0, y0, 1, 2), boxOf(x0 + 1, y0, 1, 2)]);
    expect(compare(BOTH, marksOf({ disc: halves }))).toEqual([]);
    expect(compare(marksOf({ disc: halves }), BOTH)).toEqual([]);
    const said = ['cut.svg and print.svg: the disc marks lie differently.'];
    expect(compare(BOTH, marksOf({ disc: halves.slice(1) }))).toEqual(said);
    expect(compare(BOTH, marksOf({ disc: halves.toReversed() }))).toEqual(said);
    expect(compare(BOTH, marksOf({ disc: [] }))).toEqual(said);
  });

  it('of a kind that one sheet does not have, and labels, are not compared', () => {
    expect(compare(marksOf({ cross: [LEFT] }), BOTH)).toEqual([]);
    expect(compare(marksOf({ label: [LEFT] }), marksOf({ label: [RIGHT] }))).toEqual([]);
  });

  it('are each told', () => {
    const moved = marksOf({ disc: [RIGHT, LEFT], cross: [RIGHT] });
    expect(compare(marksOf({ disc: [LEFT, RIGHT], cross: [LEFT] }), moved)).toHaveLength(2);
  });
});

describe('a word about the marks of one file', () => {
  it('names it', () => {
    expect(sayMarks('cut.svg', 'they are gone')).toMatchObject({
      code: 'verify/marks-differ',
      message: 'cut.svg: they are gone.',
      place: { file: 'cut.svg' },
    });
  });
});
