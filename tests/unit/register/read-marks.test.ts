// Tables of measured marks, as people and programs write them.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PinbarError } from '../../../src/model/trouble.js';
import { readMarks } from '../../../src/register/read-marks.js';

const DRAWN = new Map([
  ['top-left', [10, 12] as const],
  ['odd', [90, 112] as const],
]);
const WANTED = [
  { name: 'top-left', drawnMm: [10, 12], measuredMm: [10.1, 11.95] },
  { name: 'odd', drawnMm: [90, 112], measuredMm: [90.2, -0.5] },
];

function codesAndLines(text: string): readonly unknown[] {
  try {
    return readMarks(text, DRAWN);
  } catch (error) {
    if (!(error instanceof PinbarError)) throw error;
    return error.findings.map(({ code, place }) => [code, place.line]);
  }
}

describe('a table of marks', () => {
  it.each([
    ['commas', 'top-left,10.1,11.95\nodd,90.2,-.5'],
    ['a heading', 'mark,x,y\ntop-left,10.1,11.95\nodd,90.2,-0.5\n'],
    ['semicolons and decimal commas', 'Marke;x;y\r\ntop-left;10,1;11,95\r\nodd;90,2;-0,5\r\n'],
    [
      'tabs, units, a comment and a byte order mark',
      '\ufefftop-left\t10.1 mm\t11.95mm\n# the last one\nodd\t90.2\t-0.5\n\n',
    ],
    ['quotes', '"top-left","10.1","11.95"\n"odd","90.2","-0.5"'],
    ['decimal commas in quotes', 'mark,x,y\n"top-left","10,1","11,95"\nodd, "90,2" ,"-0,5"'],
    ['a comment with semicolons', '# sheet 3; by loupe\ntop-left,10.1,11.95\n  # and this;\nodd,90.2,-0.5'],
    ['cells that are filled up', 'mark;x;y;;\ntop-left;10,1;11,95;;\nodd;90,2;-0,5;\n;;;;\n'],
    ['places as drawn', 'top-left,10,12,10.1,11.95\nodd,90,112,90.2,-0.5'],
  ])('is read with %s', (_, text) => {
    expect(readMarks(text, DRAWN)).toEqual(WANTED);
  });

  it('is refused with every faulty line named', () => {
    const text = 'top-left,1,2\nmiddle,1,2\nodd,1\nodd,1,two\n,1,2';
    expect(codesAndLines(text)).toEqual([2, 3, 4, 5].map((line) => ['register/marks-unreadable', line]));
    expect(codesAndLines('odd,1,2')).toEqual([['register/marks-unreadable', undefined]]);
    expect(codesAndLines('odd,1,2\nodd,3,4')).toEqual([['register/marks-unreadable', 2]]);
    expect(codesAndLines('odd,1,1e999\nodd,1,0x10')).toEqual([
      ['register/marks-unreadable', 1],
      ['register/marks-unreadable', 2],
    ]);
  });

  it('takes no mistyped first line for a heading', () => {
    const bad = [['register/marks-unreadable', 1]];
    expect(codesAndLines('top-left,10.1o,1l.95\nodd,90.2,-0.5\nodd-too,1,2,3,4')).toEqual(bad);
    expect(codesAndLines('top-left,x,y\nodd,90.2,-0.5\nodd-too,1,2,3,4')).toEqual(bad);
    expect(codesAndLines('elsewhere,10.1o,11.9o\ntop-left,1,2\nodd,90.2,-0.5')).toEqual(bad);
  });

  it('takes no decimal commas between commas for places as drawn', () => {
    const found = codesAndLines('top-left,10,1,11,95\nodd,90,2,0,5');
    expect(found).toEqual([1, 2].map((line) => ['register/marks-unreadable', line]));
    expect(codesAndLines('top-left,10.5,12,10.1,11.95\nodd,90,112,90.2,-0.5')).toHaveLength(2);
  });

  it('knows two quotes for one, and quotes that stand within a cell', () => {
    const read = readMarks('"a ""b"", c",0,0,1,1\n5" mark,0,9,1,10', null);
    expect(read.map(({ name }) => name)).toEqual(['a "b", c', '5" mark']);
  });

  it('never fails but by an error of its own', () => {
    const cell = fc.oneof(fc.string(), fc.constantFrom('odd', 'top-left', '__proto__', '1', '-2.5', '3,4', ''));
    const table = fc.array(
      fc.array(cell, { maxLength: 6 }).map((cells) => cells.join(',')),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(table, (lines) => {
        codesAndLines(lines.join('\n'));
      }),
      { numRuns: 2000 },
    );
  });
});
