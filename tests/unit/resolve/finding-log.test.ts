// One cause is said once; many causes are not said without end.
import { describe, expect, it } from 'vitest';
import { codesOf, resolveBody } from './resolve-text.js';

describe('findings', () => {
  it('of one cause are counted', () => {
    const artwork = resolveBody('<rect width="5" height="a"/><rect width="5" height="a"/><rect width="5" height="b"/>');
    expect(artwork.findings.map(({ data }) => [data.value, data.count])).toEqual([
      ['a', 2],
      ['b', 1],
    ]);
  });

  it('of very many causes end in one that counts the rest', () => {
    let body = '';
    for (let i = 0; i < 120; i += 1) body += `<path d="M0 0 x${i}"/>`;
    const artwork = resolveBody(body);
    expect(codesOf(artwork)).toEqual(new Array(51).fill('resolve/path-broken'));
    expect(artwork.findings[50]!.data.count).toBe(70);
    expect(artwork.findings[50]!.message).toContain('and 69 more');
  });
});
