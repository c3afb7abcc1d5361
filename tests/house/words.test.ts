// The tree speaks of the project alone: no path of one machine, no host of a registry, no word of how it was made.
import { describe, expect, it } from 'vitest';
import { readFiles, type TreeFile } from './tree.js';

// Written in halves, so that this file does not hold them.
const FORBIDDEN = [
  ['/wo', 'rk/'],
  ['/ro', 'ot/'],
  ['/tmp/br', 'ief'],
  ['/ho', 'me/'],
  ['helper ag', 'ent'],
  ['sub-?ag', 'ent'],
  ['the br', 'ief\\b'],
  ['this sess', 'ion'],
  ['design', '\\.md'],
  ['style', '\\.md'],
  ['trade', '\\.md'],
  ['material', '\\.md'],
  ['registry\\.np', 'mjs'],
  ['"reso', 'lved"'],
  ['TO', 'DO|FIX', 'ME|XX', 'X'],
].map((halves) => new RegExp(halves.join(''), /^[A-Z]/.test(halves[0]!) ? '' : 'i'));

/** Hashes of the lock file can spell anything. */
function dropHashes(text: string): string {
  return text.replace(/"integrity": "[^"]*"/g, '');
}

function findWords({ path, text }: TreeFile): readonly string[] {
  const spoken = dropHashes(text);
  return FORBIDDEN.filter((word) => word.test(spoken)).map((word) => `${path}: ${word.source}`);
}

describe('words', () => {
  it('of the workshop stand nowhere in the tree', () => {
    const files = readFiles(/\.(?:[cm]?[jt]s|json|md|svg|txt)$|^\.|^LICENSE$|\.ci\/run$/);
    expect(files.length).toBeGreaterThan(200);
    expect(files.flatMap(findWords)).toEqual([]);
  });

  it.each([`cd /wo${'rk/'}main`, `/ro${'ot/'}x`, `HELPER ${'agent'}`, `// ${'TO'}DO`, `see design${'.md'}`])(
    'of the workshop are found in %s',
    (text) => {
      expect(findWords({ path: 'x', text })).toHaveLength(1);
    },
  );
});
