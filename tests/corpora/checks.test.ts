// The checks over artwork that nobody here wrote: none of it stops them, and in how many files each code is found is recorded.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { check, PinbarError, readTicket } from '../../src/index.js';
import { describeWith } from '../house/witnesses.js';
import { listLayeredOpenclipart, listOpenmoji } from './list-artwork.js';

/** Files per code of a check, and per outcome; what ends otherwise than by a typed reason is broken. */
async function checkAll(paths: readonly string[], ticket: unknown) {
  const read = readTicket(ticket);
  const counts = new Map<string, number>();
  const broken: string[] = [];
  const count = (word: string): unknown => counts.set(word, (counts.get(word) ?? 0) + 1);
  for (const path of paths) {
    try {
      const { findings, outcome } = await check(new Uint8Array(readFileSync(path)), read, { fileName: path });
      count(outcome);
      for (const code of new Set(findings.map((item) => item.code))) if (code.startsWith('check/')) count(code);
    } catch (error) {
      if (error instanceof PinbarError) count(error.code);
      else broken.push(`${path}: ${error instanceof Error ? error.stack : String(error)}`);
    }
  }
  return { files: paths.length, broken, counts: Object.fromEntries([...counts].sort()) };
}

describe('every fifth of 2,465 layered drawings of openmoji', () => {
  const paths = listOpenmoji();

  it('is checked, its lines taken for cuts', { timeout: 600_000 }, async () => {
    const rules = [
      { pass: 'ignore', layer: 'grid' },
      { pass: 'cutting', layer: 'line*' },
      { pass: 'print', rest: true },
    ];
    const fifth = paths.filter((_, i) => i % 5 === 0);
    expect(await checkAll(fifth, { pinbar: 1, rules, marks: { wanted: false } })).toMatchInlineSnapshot(`
      {
        "broken": [],
        "counts": {
          "answer-needed": 1,
          "check/bleed-short": 400,
          "check/cut-order": 144,
          "check/die-knockout": 17,
          "check/hairline": 1,
          "check/line-doubled": 107,
          "check/line-painted": 140,
          "check/line-under-art": 37,
          "check/loose-piece": 147,
          "check/near-edge": 395,
          "check/outline-crosses-itself": 5,
          "check/outline-open": 252,
          "check/segment-short": 125,
          "check/size-suspicious": 2,
          "fit": 492,
        },
        "files": 493,
      }
    `);
  });
});

describeWith('openclipart', 'every fifth of 500 files of openclipart with layers', () => {
  it('is checked, one layer taken for cuts', { timeout: 600_000 }, async () => {
    const layered = listLayeredOpenclipart();
    const rules = [
      { pass: 'cutting', layer: '*1' },
      { pass: 'print', rest: true },
    ];
    const others = { hidden: 'skip', linkedPictures: 'leave-out', marks: { wanted: false } };
    const fifth = layered.filter((_, i) => i % 5 === 0);
    expect(await checkAll(fifth, { pinbar: 1, rules, ...others })).toMatchInlineSnapshot(`
      {
        "broken": [],
        "counts": {
          "answer-needed": 7,
          "check/blank-off-sheet": 6,
          "check/bleed-short": 1,
          "check/cut-order": 67,
          "check/hairline": 2,
          "check/line-doubled": 54,
          "check/line-painted": 91,
          "check/line-under-art": 2,
          "check/live-text": 4,
          "check/loose-piece": 68,
          "check/near-edge": 2,
          "check/no-line": 9,
          "check/off-artboard": 4,
          "check/outline-crosses-itself": 17,
          "check/outline-open": 14,
          "check/paint-unresolved": 1,
          "check/segment-short": 15,
          "check/size-suspicious": 1,
          "check/tie-at-corner": 1,
          "check/ties-few": 1,
          "fit": 87,
          "unfit": 6,
        },
        "files": 100,
      }
    `);
  });
});
