// Selectors over the element table.
import { describe, expect, test } from 'vitest';
import { PinbarError } from '../../../src/model/trouble.js';
import { styleDocument } from './compute-style.js';

const TREE = `<g id="g1" class="layer crease">
  <path id="p1" class="a b"/><rect id="r1" class="b"/><path id="p2" d="M0 0" lang="de-AT"/>
  <g id="g2"><path id="p3"/><path id="p4" class="a-b"/></g>
</g>
<g id="g3"><circle id="c1" data-name="One two" xlink:href="#p1"/><title id="t1">text</title><g id="e1"/><g id="e2"> </g></g>
<a id="l1" xlink:href="#p1"><path id="p5"/></a><a id="l2"/>`;

/** Ids of the elements a selector matches, in document order, the root's included. */
function matchIds(selector: string, tree = TREE): string {
  const { styles, codes } = styleDocument(`<style>${selector.replaceAll('<', '&lt;')}{opacity:0.25}</style>${tree}`);
  if (codes.length > 0) return codes.join(' ');
  return [...styles].flatMap(([id, style]) => (style.opacity === 0.25 ? [id] : [])).join(' ');
}

describe('selectors', () => {
  test.each([
    ['path', 'p1 p2 p3 p4 p5'],
    ['PATH', ''],
    ['*|path', 'p1 p2 p3 p4 p5'],
    ['.a', 'p1'],
    ['.b', 'p1 r1'],
    ['.A', ''],
    ['.a.b', 'p1'],
    ['path.b', 'p1'],
    ['#p1', 'p1'],
    ['rect#p1', ''],
    ['#p1, #p2', 'p1 p2'],
    ['g path', 'p1 p2 p3 p4'],
    ['g > path', 'p1 p2 p3 p4'],
    ['.crease > path', 'p1 p2'],
    ['.crease > *', 'p1 r1 p2 g2'],
    ['svg > g', 'g1 g3'],
    [':root', 'root'],
    [':root > a', 'l1 l2'],
    ['rect + path', 'p2'],
    ['path + path', 'p4'],
    ['path ~ path', 'p2 p4'],
    ['.a ~ rect ~ path', 'p2'],
    ['rect ~ g > path ~ path', 'p4'],
    ['path ~ g path', 'p3 p4'],
    [':not(path ~ path):is(path)', 'p1 p3 p5'],
    ['[d]', 'p2'],
    ['[data-name="One two"]', 'c1'],
    ['[data-name="one two"]', ''],
    ['[data-name="one two" i]', 'c1'],
    ['[data-name~=two]', 'c1'],
    ['[data-name^=One]', 'c1'],
    ['[data-name$=two]', 'c1'],
    ['[data-name*="e t"]', 'c1'],
    ['[class|=a]', 'p4'],
    ['[Class]', ''],
    ['[href]', ''],
    [':nth-child(2)', 'g1 r1 p4 t1'],
    ['g :nth-child(odd)', 'p1 p2 p3 c1 e1'],
    ['g :nth-child(2n)', 'r1 g2 p4 t1 e2'],
    ['g :nth-child(-n+2)', 'p1 r1 p3 p4 c1 t1'],
    ['g :nth-child( n + 3 )', 'p2 g2 e1 e2'],
    [':nth-child(2 of path)', 'p2 p4'],
    [':nth-last-child(1 of path)', 'p2 p4 p5'],
    ['g :nth-last-child(1)', 'g2 p4 e2'],
    ['path:nth-of-type(2)', 'p2 p4'],
    ['path:nth-last-of-type(1)', 'p2 p4 p5'],
    ['path:first-child', 'p1 p3 p5'],
    ['path:last-child', 'p4 p5'],
    ['path:only-child', 'p5'],
    ['path:first-of-type', 'p1 p3 p5'],
    ['path:last-of-type', 'p2 p4 p5'],
    ['rect:only-of-type', 'r1'],
    ['g:empty', 'e1'],
    ['title:empty', ''],
    ['g:has(> circle)', 'g3'],
    ['g:has(.a-b)', 'g1 g2'],
    ['path:has(+ rect)', 'p1'],
    ['path:has(~ g)', 'p1 p2'],
    ['g:not(:has(path))', 'g3 e1 e2'],
    ['path:not(.a, .a-b)', 'p2 p3 p5'],
    [':is(rect, circle)', 'r1 c1'],
    [':where(rect, circle)', 'r1 c1'],
    [':lang(de)', 'p2'],
    ['a:link', 'l1'],
    ['a:any-link', 'l1'],
    ['a:hover', ''],
    ['path::before', ''],
    ['path:after', ''],
    ['path:focus, rect', 'r1'],
    ['path::before, rect', 'r1'],
  ])('%s', (selector, ids) => {
    expect(matchIds(selector)).toBe(ids);
  });

  test.each([
    ':nonsense',
    'path:contains(a)',
    ':header',
    ':parent',
    'svg|path',
    '|path',
    '[xlink|href]',
    '> path',
    '+ path',
    'path:nth-child(x)',
    ':is(:nonsense)',
    'rect, :nonsense',
  ])('%s is not known and its rule not applied', (selector) => {
    expect(matchIds(selector)).toMatch(/^resolve\/(?:selector-unknown|style-unreadable)$/);
  });

  test('names with escapes', () => {
    const tree = '<path id="1a" class="st:0"/><path id="x" class="1b"/>';
    expect(matchIds('#\\31 a', tree)).toBe('1a');
    expect(matchIds('.st\\:0', tree)).toBe('1a');
    expect(matchIds('.\\31 b', tree)).toBe('x');
    expect(matchIds('path.\\31 b', tree)).toBe('x');
  });

  test('class names are parted at the blanks of HTML alone', () => {
    const tree = '<path id="x" class="a&#9;b&#12;c"/>'
      .replace('&#12;', ' ')
      .concat('<path id="y" class="a\u00a0b"/><path id="z" class=" b&#10;"/>');
    expect(matchIds('.b', tree)).toBe('x z');
    expect(matchIds('g .b, path.b', tree)).toBe('x z');
    expect(matchIds('.a', tree)).toBe('x');
    expect(matchIds('path.a', tree)).toBe('x');
    expect(matchIds(':is(.a)', tree)).toBe('x');
  });

  test('elements with a prefix and of other namespaces have their local name', () => {
    const tree = '<s:path xmlns:s="http://www.w3.org/2000/svg" id="x"/><f:path xmlns:f="urn:f" id="y"/>';
    expect(matchIds('path', tree)).toBe('x y');
  });

  test('many siblings are matched without looking at all of each other', () => {
    const tree = '<path/>'.repeat(30_000);
    const sheet =
      'rect ~ path{opacity:0.5}path + rect{opacity:0.5}path:nth-child(3n of path){opacity:0.5}path:last-child{opacity:0.5}';
    expect(styleDocument(`<style>${sheet}</style>${tree}`).codes).toEqual([]);
  });

  test('a sheet that looks too long is refused', () => {
    const tree = '<path/>'.repeat(30_000);
    const read = (): unknown => styleDocument(`<style>path:not(rect ~ path){opacity:0.5}</style>${tree}`);
    expect(read).toThrow(PinbarError);
    expect(read).toThrow(/looks at elements/);
  });
});
