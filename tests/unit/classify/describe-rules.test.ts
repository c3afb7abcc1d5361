// Rules that take nothing and passes that nothing goes to.
import { describe, expect, it } from 'vitest';
import type { Json } from '../../../src/model/finding.js';
import { classifyBy, makeArtwork } from './make-artwork.js';

const ARTWORK = makeArtwork(
  [{ name: 'Die' }, { name: 'Fold', parent: 0 }, { name: 'Off', hidden: true }],
  [
    { layer: 0, stroke: '#f00' },
    { layer: 1, stroke: '#00f' },
    { layer: 2, stroke: '#0f0' },
  ],
);

function find(code: string, ticket: { readonly [key: string]: Json }) {
  return classifyBy(ARTWORK, { hidden: 'skip', ...ticket }).findings.filter((item) => item.code === code);
}

describe('classify/rule-unused', () => {
  const rest = { pass: 'print', rest: true };

  it('tells a rule that nothing fits', () => {
    const rules = [{ pass: 'cutting', layer: 'Die' }, { pass: 'creasing', layer: 'Folds' }, rest];
    const found = find('classify/rule-unused', { rules });
    expect(found.map((item) => item.data)).toEqual([{ rule: 1, count: 0 }]);
    expect(found[0]!.message).toContain('Nothing in the file fits rule 2: layer "Folds"');
  });

  it('tells a rule whose every shape nearer rules take', () => {
    const rules = [{ pass: 'creasing', layer: 'Fold' }, { pass: 'cutting', layer: 'Die', stroke: '#00f' }, rest];
    const found = find('classify/rule-unused', { rules });
    expect(found.map((item) => item.data)).toEqual([{ rule: 1, count: 1 }]);
    expect(found[0]!.message).toContain('nearer rules take it');
  });

  it('does not speak of rules that take a shape, agree on one, or are asked about', () => {
    const used = (...rules: readonly { readonly [key: string]: Json }[]) => find('classify/rule-unused', { rules });
    expect(used({ pass: 'cutting', layer: 'Die' })).toEqual([]);
    expect(used({ pass: 'cutting', layer: 'Die' }, { pass: 'cutting', stroke: '#f00' }, rest)).toEqual([]);
    expect(used({ pass: 'cutting', stroke: '#f00' }, { pass: 'creasing', dashed: false }, rest)).toEqual([]);
    expect(used({ pass: 'cutting', layer: 'Off' }, rest)).toEqual([]);
  });

  it('does not speak of a rest that nothing is left for', () => {
    expect(find('classify/rule-unused', { rules: [{ pass: 'cutting', id: '*', rest: false }, rest] }).length).toBe(1);
    expect(find('classify/rule-unused', { rules: [{ pass: 'cutting', dashed: false }, rest] })).toEqual([]);
  });
});

describe('classify/pass-empty', () => {
  const passes = [
    { name: 'crease', role: 'creasing' },
    { name: 'cut', role: 'cutting' },
    { name: 'away', role: 'ignore' },
  ];

  it('tells a declared pass that no shape goes to, but not one that ignores', () => {
    const found = find('classify/pass-empty', { passes, rules: [{ pass: 'cut', rest: true }] });
    expect(found.map((item) => item.data)).toEqual([{ pass: 'crease' }]);
    expect(found[0]!.message).toContain('"crease"');
  });

  it('is silent where every pass has shapes', () => {
    const rules = [
      { pass: 'crease', layer: 'Fold' },
      { pass: 'cut', rest: true },
    ];
    expect(find('classify/pass-empty', { passes, rules })).toEqual([]);
  });
});
