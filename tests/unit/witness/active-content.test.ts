// What a CSS text loses before it may stand on a sheet.
import { describe, expect, it } from 'vitest';
import { isInside, withoutLoading } from '../../../src/witness/active-content.js';

describe('withoutLoading', () => {
  const cases: readonly (readonly [string, string])[] = [
    ['fill:url(#a)', 'fill:url(#a)'],
    ['fill:url("http://example.org/a.svg#b") red', 'fill: red'],
    ['fill:url(a.svg)red', 'fill:red'],
    ['mask:url(a.svg)luminance', 'mask:none luminance'],
    ['fill:url(#a) url(b.svg)', 'fill:url(#a) -pinbar-left-out'],
    ['fill:url(javascript:a(1))', 'fill:-pinbar-left-out)'],
    ['fill:url(#a( );fill:url(b.svg)', 'fill:url(#a( );fill:none'],
    ['fill:\\75 \\72\\6c(a.svg)', 'fill:none'],
    ['a{x:"\n;fill:url(b.svg)}', 'a{x:"\n;fill:none}'],
    ['@namespace url(http://a);a{}', '@namespace url(http://a);a{}'],
    ['@namespace url(a) x{b{fill:url(c)}}', '@namespace none x{b{fill:none}}'],
    ['x:expression(a(1))', 'x:-pinbar-left-out'],
    ['x:src("a")', 'x:-pinbar-left-out'],
    ['x:-webkit-image-set(url(a) 1x)', 'x:-webkit-image-set(none 1x)'],
    ["fill:url( 'a.svg#b' )", 'fill:none'],
    ['fill:u\\72l(a.png)', 'fill:none'],
    ['@import "a.css"; .a{fill:red}', ' .a{fill:red}'],
    ['@\\69mport url(a.css);b', 'b'],
    ['background:image-set("a.png" 1x)', 'background:none'],
    ['src:url(data:font/woff2;base64,AA)', 'src:url(data:font/woff2;base64,AA)'],
    ['fill:url(data:image/svg+xml,a)', 'fill:none'],
    ['content:"url(a.png)"', 'content:"url(a.png)"'],
    ['/* url(a.png) */ fill:red', '/* url(a.png) */ fill:red'],
    ['transform:translate(1px, 2px)', 'transform:translate(1px, 2px)'],
  ];
  it.each(cases)('%s', (css, left) => {
    expect(withoutLoading(css)).toBe(left);
    expect(withoutLoading(left)).toBe(left);
  });
});

describe('isInside', () => {
  it('takes places in the file and embedded pictures, and nothing that is fetched', () => {
    expect(['#a', ' #a', '', 'data:image/png;base64,AA'].map(isInside)).toEqual([true, true, true, true]);
    expect(['a.svg#b', '//example.org', 'data:text/html,a', 'javascript:a()'].map(isInside)).toEqual(
      Array(4).fill(false),
    );
  });
});
