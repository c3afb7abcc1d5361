// What elements need besides themselves must stand on the same sheet.
import { describe, expect, it } from 'vitest';
import type { Artwork } from '../../../src/model/artwork.js';
import { findLeftBehind, listNeeds, type Needs } from '../../../src/verify/find-left-behind.js';
import { scanSvg } from './scan-svg.js';

const SOURCE = scanSvg(
  '<style>a</style>\n<defs><path id="leaf"/><path id="bud"/></defs>\n<x:style/>\n<use/>\n<g><style/></g>',
);
const [ROOT, STYLE, DEFS, LEAF, BUD, OTHER, USE, GROUP, SECOND] = [0, 1, 2, 3, 4, 5, 6, 7, 8];

function needsOf(
  references: readonly (readonly [number, readonly string[]])[],
  removed: readonly number[] = [],
): Needs {
  const artwork = {
    references: new Map(references),
    ids: new Map([
      ['leaf', LEAF],
      ['bud', BUD],
    ]),
  } as unknown as Artwork;
  const flags = new Uint8Array(SOURCE.elements.count);
  for (const row of removed) flags[row] = 1;
  return listNeeds(SOURCE, artwork, flags);
}

function find(needs: Needs, rows: readonly number[]): readonly string[] {
  const present = new Uint8Array(SOURCE.elements.count);
  for (const row of rows) present[row] = 1;
  return findLeftBehind(SOURCE, needs, { file: 'cut.svg', present }).map((item) => item.message);
}

const STYLE_GONE =
  'cut.svg: the style of line 2 in the source is missing, though its rules may be what paints the rest.';
const LEAF_GONE =
  'cut.svg: the path "leaf" of line 3 in the source is missing, though something in the file refers to it.';

describe('the needs of a source', () => {
  it('are its style elements, unless they were taken out', () => {
    expect(needsOf([]).styleRows).toEqual([STYLE, SECOND]);
    expect(needsOf([], [SECOND]).styleRows).toEqual([STYLE]);
  });
});

describe('left behind', () => {
  it('is nothing where all came along', () => {
    expect(find(needsOf([[USE, ['leaf']]]), [ROOT, STYLE, DEFS, LEAF, USE, GROUP, SECOND])).toEqual([]);
  });

  it('is a style sheet', () => {
    expect(find(needsOf([]), [ROOT, OTHER, SECOND])).toEqual([STYLE_GONE]);
  });

  it('is what something on the sheet refers to, told once', () => {
    const needs = needsOf([
      [USE, ['leaf', 'bud']],
      [GROUP, ['leaf']],
    ]);
    expect(find(needs, [ROOT, STYLE, SECOND, USE, GROUP, BUD])).toEqual([LEAF_GONE]);
    expect(find(needs, [ROOT, STYLE, SECOND, GROUP, BUD])).toEqual([LEAF_GONE]);
  });

  it('is not what something elsewhere refers to, what is nowhere, or what no sheet may hold', () => {
    expect(find(needsOf([[USE, ['leaf']]]), [STYLE, SECOND])).toEqual([]);
    expect(find(needsOf([[USE, ['nothing']]]), [STYLE, SECOND, USE])).toEqual([]);
    expect(find(needsOf([[USE, ['leaf']]], [LEAF]), [STYLE, SECOND, USE])).toEqual([]);
  });

  it('is told as lost, with its place', () => {
    const present = new Uint8Array(SOURCE.elements.count).fill(1);
    present[LEAF] = 0;
    const [item] = findLeftBehind(SOURCE, needsOf([[USE, ['leaf']]]), { file: 'cut.svg', present });
    expect(item).toMatchObject({
      code: 'verify/lost',
      place: { line: 3, element: 'path', id: 'leaf', file: 'cut.svg' },
    });
  });

  it('is told a hundred times at most', () => {
    const count = 120;
    const many = scanSvg('<path/>'.repeat(2 * count));
    const ids = new Map(Array.from({ length: count }, (_, i) => [`i${i}`, i + 1] as const));
    const references = new Map(Array.from({ length: count }, (_, i) => [count + 1 + i, [`i${i}`]] as const));
    const present = new Uint8Array(many.elements.count).fill(1, count + 1);
    const needs = listNeeds(many, { references, ids } as unknown as Artwork, new Uint8Array(many.elements.count));
    expect(findLeftBehind(many, needs, { file: 'x', present })).toHaveLength(100);
  });
});
