// What CSS would load is seen through escapes, comments and strings; what it would not is left alone.
import { describe, expect, it } from 'vitest';
import { findOutsideReferences, isInsideAddress } from '../../../src/split/css-references.js';

function clean(css: string): string {
  let text = '';
  let at = 0;
  for (const reference of findOutsideReferences(css)) {
    text += css.slice(at, reference.start) + reference.replacement;
    at = reference.end;
  }
  return text + css.slice(at);
}

describe('findOutsideReferences', () => {
  it.each([
    ['fill: url(http://a.example/x#y)', 'fill: none'],
    ['fill: url( "http://a.example/x" )', 'fill: none'],
    ["fill: url('//a.example/x')", 'fill: none'],
    ['fill: URL(x.svg#y)', 'fill: none'],
    ['fill: u\\72l(http://a.example)', 'fill: none'],
    ['fill: \\75\\72\\6c(http://a.example)', 'fill: none'],
    ['@import "a.css"; path { fill: red }', ' path { fill: red }'],
    ['@import url(a.css) screen; path { fill: red }', ' path { fill: red }'],
    ['@\\69mport "a.css"; path{}', ' path{}'],
    ['background: image-set("a.png" 1x, "b.png" 2x)', 'background: none'],
    ['cursor: src("a.cur")', 'cursor: -pinbar-left-out'],
    ['fill:url("http://example.org/a.svg#b") red', 'fill: red'],
    ['fill:url(a.svg)red', 'fill:red'],
    ['mask:url(a.svg)luminance', 'mask:none luminance'],
    ['fill:url(#a) url(b.svg)', 'fill:url(#a) -pinbar-left-out'],
    ['fill:url(javascript:a(1))', 'fill:-pinbar-left-out)'],
    ['fill:url(#a( );fill:url(b.svg)', 'fill:url(#a( );fill:none'],
    ['a{x:"\n;fill:url(b.svg)}', 'a{x:"\n;fill:none}'],
    ['a{x:"\\\n;fill:url(b.svg)"}', 'a{x:"\\\n;fill:url(b.svg)"}'],
    ['@namespace url(a) x{b{fill:url(c)}}', '@namespace none x{b{fill:none}}'],
    ['@namespace url(x");}a{fill:url(c)}', '@namespace -pinbar-left-out;}a{fill:none}'],
    ['x:expression(a(1))', 'x:-pinbar-left-out'],
    ['x:-webkit-image-set(url(a) 1x)', 'x:-webkit-image-set(none 1x)'],
    ['@font-face { src: url(data:text/html,x) }', '@font-face { src: none }'],
    ['a { fill: url(#a/**/) } b { fill: url(b.svg) }', 'a { fill: url(#a/**/) } b { fill: none }'],
    ['fill: url("a\\"b.svg") ; stroke: red', 'fill: none ; stroke: red'],
    ['fill: url(a.svg', 'fill: none'],
  ])('takes out of %s', (css, expected) => {
    expect(clean(css)).toBe(expected);
  });

  it.each([
    'fill: url(#gradient)',
    'fill: url("#gradient")',
    "fill: url( '#gradient' )",
    '/* url(http://a.example) */ fill: red',
    'content: "url(http://a.example)"',
    '@namespace svg url(http://www.w3.org/2000/svg); path { fill: red }',
    'src: url(data:image/png;base64,AAAA)',
    'fill: myurl(x)',
    '',
  ])('leaves %s', (css) => {
    expect(findOutsideReferences(css)).toEqual([]);
  });

  it('leaves nothing to find the second time', () => {
    const css = '@import "x"; a{fill:u\\72l(b.svg)} /* @import "y"; */ c{mask:url(d#e)}';
    expect(findOutsideReferences(clean(css))).toEqual([]);
  });
});

describe('isInsideAddress', () => {
  it.each(['#a', ' #a', 'data:image/png;base64,AA', ''])('takes %j', (address) => {
    expect(isInsideAddress(address)).toBe(true);
  });
  it.each(['a.png', 'http://a.example', '//a', 'data:text/html,x', 'data:image/svg+xml,x', 'javascript:x'])(
    'refuses %j',
    (address) => {
      expect(isInsideAddress(address)).toBe(false);
    },
  );
});
