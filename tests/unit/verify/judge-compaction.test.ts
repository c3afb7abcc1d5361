// A compacted file is kept only where it draws the same, on the same artboard, with its marks and ids.
import { describe, expect, it } from 'vitest';
import type { Artwork } from '../../../src/model/artwork.js';
import { judgeCompaction } from '../../../src/verify/judge-compaction.js';
import { BOARD, boxOf, makeArtwork, makeShape } from './make-shape.js';

const SHAPES = [makeShape(0), makeShape(1), makeShape(2, { draws: false }), makeShape(3, { hidden: true })];
const IDS = new Map(['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((id, i) => [id, i + 1]));
const BEFORE = makeArtwork(SHAPES, { ids: IDS, marks: 5 });

function judge(after: Partial<Artwork> | (() => never)): readonly unknown[] {
  const sheet = { before: new Uint8Array(1), after: new Uint8Array(2), file: 'cut.svg' };
  return judgeCompaction(sheet, (bytes) => {
    if (bytes.length === 1) return BEFORE;
    return typeof after === 'function' ? after() : { ...BEFORE, ...after };
  }).map(({ code, message, place, data }) => ({ code, message, file: place.file, mm: data.deviationMm }));
}

function thrown(what: string, mm = 0): readonly unknown[] {
  return [{ code: 'compact/moved', message: `cut.svg is written uncompacted: ${what}`, file: 'cut.svg', mm }];
}

describe('compaction', () => {
  it('is kept where nothing changed; what draws nothing may go', () => {
    expect(judge({})).toEqual([]);
    expect(judge({ shapes: [makeShape(0), makeShape(1)], marks: 7 })).toEqual([]);
  });

  it('is thrown away where a shape moved, and the first is told', () => {
    const moved = [1, 2].map((by, i) => makeShape(i, { fillBox: boxOf(10 * i + by, 5, 8, 4) }));
    expect(judge({ shapes: moved })).toEqual(
      thrown('rect 1 in paint order lies 1.0000 mm from its place in the source; 0.001 mm is allowed.', 2),
    );
  });

  it('is thrown away where the file cannot be read', () => {
    const fail = (error: unknown) => (): never => {
      throw error;
    };
    expect(judge(fail(new Error('It ends early.')))).toEqual(thrown('It ends early.'));
    expect(judge(fail('no error'))).toEqual(thrown('it cannot be read.'));
  });

  it('is thrown away where the artboard changed', () => {
    expect(judge({ artboard: { ...BOARD, width: 101 } })).toEqual(thrown('the artboard changed.'));
    expect(judge({ artboard: { ...BOARD, height: 61 } })).toEqual(thrown('the artboard changed.'));
  });

  it('is thrown away where marks or ids were lost', () => {
    expect(judge({ marks: -1 })).toEqual(thrown('the marks were lost.'));
    expect(judge({ marks: 0 })).toEqual([]);
    expect(judge({ ids: new Map([...IDS].filter(([id]) => id !== 'b')) })).toEqual(thrown('ids were lost (b).'));
    expect(judge({ ids: new Map() })).toEqual(thrown('ids were lost (a, b, c, d, e).'));
  });
});
