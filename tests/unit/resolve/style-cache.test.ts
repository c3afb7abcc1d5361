// Styles that are shared, and those that must not be.
import { expect, test } from 'vitest';
import type { Style } from '../../../src/resolve/style.js';
import { createStyleCache, type MatchedRules, type StyleCache } from '../../../src/resolve/style-cache.js';
import { readSource } from '../../../src/source/read-source.js';

/** A cache over `<svg>` with the given content in which `stroke-width` counts; every computed style is a new object. */
function cacheOf(inside: string): { readonly cache: StyleCache<string>; readonly computed: () => number } {
  const text = `<svg xmlns="http://www.w3.org/2000/svg">${inside}</svg>`;
  const source = readSource(new TextEncoder().encode(text));
  const { names } = source.elements.attributes;
  let count = 0;
  const cache = createStyleCache<string>(source, {
    relevance: Uint8Array.from(names.map(({ local }) => (local === 'stroke-width' ? 1 : 0))),
    kindOf: (row) => (source.elements.names[source.elements.name[row]!]!.local === 'image' ? 2 : 0),
    compute({ row }) {
      count++;
      return { row } as unknown as Style;
    },
  });
  return { cache, computed: () => count };
}

test('equal values give one style whatever else is set', () => {
  const { cache, computed } = cacheOf('<path id="a" stroke-width="2"/><path stroke-width="2" d="M0 0"/>');
  expect(cache.findStyle(1, null, null)).toBe(cache.findStyle(2, null, null));
  expect(computed()).toBe(1);
});

test('values whose hashes agree are told apart', () => {
  // Found by trying; the hash is that of this document's table of names.
  const { cache } = cacheOf('<path stroke-width="10.509"/><path stroke-width="102.42"/>');
  expect(cache.findStyle(1, null, null)).toEqual({ row: 1 });
  expect(cache.findStyle(2, null, null)).toEqual({ row: 2 });
});

test('kinds, parents and rules are told apart', () => {
  const { cache, computed } = cacheOf('<path/><image/><path/>');
  const rules: MatchedRules<string> = [{ content: 'a', weight: 1, order: 0 }];
  const others: MatchedRules<string> = [{ content: 'b', weight: 1, order: 0 }];
  const first = cache.findStyle(1, null, null);
  const results = [
    first,
    cache.findStyle(2, null, null),
    cache.findStyle(1, first, null),
    cache.findStyle(1, null, rules),
    cache.findStyle(1, null, others),
    cache.findStyle(1, null, [...rules, ...others]),
  ];
  expect(new Set(results).size).toBe(6);
  expect(cache.findStyle(3, null, [...rules])).toBe(results[3]);
  expect(computed()).toBe(6);
});
