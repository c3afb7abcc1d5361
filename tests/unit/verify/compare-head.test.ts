// Start tags that differ as they may, and as they may not.
import { describe, expect, it } from 'vitest';
import { type Allowance, judgeHead, listAttributes, sameHead } from '../../../src/verify/compare-head.js';
import { scanSvg } from './scan-svg.js';

const NOTHING: Allowance = { override: '', root: false };
const OVERRIDE = 'fill:none!important';

function judge(before: string, after: string, allowance: Allowance = NOTHING): string | null {
  return judgeHead(scanSvg(`<g ${before}/>`), 1, { source: scanSvg(`<g ${after}/>`), row: 1 }, allowance);
}

describe('start tags', () => {
  it('are the same to the byte or not at all', () => {
    const source = scanSvg('<g/><g a="1"/><g  a="1"/><g a="1"></g>');
    const sheet = scanSvg('<g a="1"/>');
    expect([1, 2, 3, 4].map((row) => sameHead(source, row, sheet, 1))).toEqual([false, true, false, false]);
    expect(sameHead(source, 0, sheet, 0)).toBe(true);
  });

  it('list their attributes as written, values read', () => {
    const list = listAttributes(scanSvg('<g/><use xlink:href="#a" x="&lt;1"/>'), 2);
    expect([...list]).toEqual([
      ['xlink:href', '#a'],
      ['x', '<1'],
    ]);
  });
});

describe('a start tag that differs as it may', () => {
  it.each<readonly [before: string, after: string]>([
    ['x="1" y="2"', 'y="2" x="1"'],
    ['x="&#49;"', 'x="1"'],
    ...['onclick', 'ONLOAD', 'xml:base', 'src', 'srcset', 'ping', 'action', 'formaction', 'srcdoc', 'poster'].map(
      (name) => [`${name}="#go"`, ''] as const,
    ),
    ...['data', 'code', 'archive', 'background'].map((name) => [`${name}="#go"`, ''] as const),
    ['href="x.svg"', ''],
    ['xlink:href=" x.svg"', ''],
    ['href="x.png"', 'href="data:image/png;base64,x"'],
    ['xlink:href=" x.png"', 'xlink:href="data:image/png;base64,x"'],
    ['fill="url(x.svg#a) red"', 'fill="none red"'],
    ['style="a:url(x);b:c"', 'style="a:none;b:c"'],
    ['style="a:url(x);b:url(y);c:d"', 'style="a:none;b:none;c:d"'],
    ['style="a:u\\72 l"', 'style="a:none"'],
  ])('%s as %s', (before, after) => {
    expect(judge(before, after)).toBeNull();
  });

  it('with an override added or appended', () => {
    const allowance = { override: OVERRIDE, root: false };
    expect(judge('x="1"', `x="1" style="${OVERRIDE}"`, allowance)).toBeNull();
    expect(judge('style="a:b"', `style="a:b;${OVERRIDE}"`, allowance)).toBeNull();
  });

  it.each(['width', 'height', 'viewBox'])('on the root with another %s', (name) => {
    expect(judge(`${name}="1"`, `${name}="2"`, { override: '', root: true })).toBeNull();
    expect(judge('', `${name}="2"`, { override: '', root: true })).toBeNull();
    expect(judge(`${name}="1"`, `${name}="2"`)).toBe(`its attribute ${name} is "2" instead of "1"`);
    expect(judge('', `${name}="2"`)).toBe(`it has a new attribute ${name}`);
  });
});

describe('a start tag that differs as it may not', () => {
  it.each([
    ['x="1"', '', 'its attribute x is gone'],
    ['x="1"', 'x="2"', 'its attribute x is "2" instead of "1"'],
    ['', 'x="2"', 'it has a new attribute x'],
    ['', 'style=""', 'it has a new attribute style'],
    ['href="#a"', '', 'its attribute href is gone'],
    ['href=" #a"', '', 'its attribute href is gone'],
    ['data-href="x"', '', 'its attribute data-href is gone'],
    ['hrefs="x"', '', 'its attribute hrefs is gone'],
    ['content="x"', '', 'its attribute content is gone'],
    ['href="#a"', 'href="#b"', 'its attribute href is "#b" instead of "#a"'],
    ['href=" #a"', 'href="data:image/png,"', 'its attribute href is "data:image/png," instead of " #a"'],
    ['href="x.png"', 'href="y.png"', 'its attribute href is "y.png" instead of "x.png"'],
    ['href="x.png"', 'href=" data:image/png,"', 'its attribute href is " data:image/png," instead of "x.png"'],
    ['srcs="x"', '', 'its attribute srcs is gone'],
    ['xsrc="x"', '', 'its attribute xsrc is gone'],
    ['fill="red"', 'fill="none"', 'its attribute fill is "none" instead of "red"'],
    ['fill="url(#a) red"', 'fill="none blue"', 'its attribute fill is "none blue" instead of "url(#a) red"'],
    ['style="a(b)c"', 'style="cnonea"', 'its attribute style is "cnonea" instead of "a(b)c"'],
    ['style="a(b)aa"', 'style="anoneaaa"', 'its attribute style is "anoneaaa" instead of "a(b)aa"'],
    ['x="1" y="2"', 'x="1" y="3" z="4"', 'its attribute y is "3" instead of "2"'],
  ])('%s as %s', (before, after, said) => {
    expect(judge(before, after)).toBe(said);
  });

  it('says values in short', () => {
    const [a, b] = ['a'.repeat(70), 'b'.repeat(70)];
    expect(judge(`x="${a}"`, `x="${b}"`)).toBe(`its attribute x is "${b.slice(0, 60)}" instead of "${a.slice(0, 60)}"`);
  });

  it('with an override that says something else, or nothing', () => {
    const allowance = { override: OVERRIDE, root: false };
    expect(judge('', 'style="stroke:none!important"', allowance)).toBe('it has a new attribute style');
    expect(judge('style="a:b"', `style="a:c;${OVERRIDE}"`, allowance)).not.toBeNull();
    expect(judge('style="a:b"', `style="a:b${OVERRIDE}"`, allowance)).not.toBeNull();
    expect(judge('style="a:b"', 'style="a:b;"')).not.toBeNull();
    expect(judge('x="a:b"', `x="a:b;${OVERRIDE}"`, allowance)).not.toBeNull();
    expect(judge('', `class="${OVERRIDE}"`, allowance)).toBe('it has a new attribute class');
  });

  it('on the root in something else than its size', () => {
    expect(judge('x="1"', 'x="2"', { override: '', root: true })).not.toBeNull();
    expect(judge('', 'x="2"', { override: '', root: true })).not.toBeNull();
  });
});
