// What a written file may not hold, and what looks like it and is allowed.
import { describe, expect, it } from 'vitest';
import { findActiveContent } from '../../../src/verify/active-content.js';
import { scanSvg } from './scan-svg.js';

function find(content: string): readonly unknown[] {
  return findActiveContent(scanSvg(content), 'cut.svg').map((item) => item.data.what);
}

describe('active content', () => {
  it.each<readonly [content: string, what: string]>([
    ...'script handler listener foreignObject animate animateColor animateMotion animateTransform set discard iframe object'
      .concat(' embed audio video link')
      .split(' ')
      .map((name) => [`<${name}/>`, `${name} element`] as const),
    ['<x:script/>', 'script element'],
    ['<rect onclick="go()"/>', 'handler onclick'],
    ['<rect ONLOAD="go()"/>', 'handler ONLOAD'],
    ['<use href="art.svg#leaf"/>', 'reference to "art.svg#leaf"'],
    ['<use xlink:href="art.svg#leaf"/>', 'reference to "art.svg#leaf"'],
    ['<use href="a#b"/>', 'reference to "a#b"'],
    ['<image href="data:image/svg+xml,x"/>', 'reference to "data:image/svg+xml,x"'],
    ['<image href="data:image/pngx,x"/>', 'reference to "data:image/pngx,x"'],
    ['<a href="x data:image/png,x"/>', 'reference to "x data:image/png,x"'],
    [`<a href="${'y'.repeat(70)}"/>`, `reference to "${'y'.repeat(60)}"`],
    ['<g xml:base="x"/>', 'attribute xml:base'],
    ...['src', 'srcdoc', 'formaction', 'ping'].map((name) => [`<g ${name}="x"/>`, `attribute ${name}`] as const),
    ['<g fill="url(x.svg#a)"/>', 'fill="url(x.svg#a)"'],
    ['<g style="fill:url( \'x.svg#a\' )"/>', 'style="fill:url( \'x.svg#a\' )"'],
    ['<g style="fill:URL(x)"/>', 'style="fill:URL(x)"'],
    ['<g style="mask:image-set(1x \'x\')"/>', 'style="mask:image-set(1x \'x\')"'],
    ['<g style="mask:cross-fade(1x \'x\')"/>', 'style="mask:cross-fade(1x \'x\')"'],
    ['<g style="mask:image(1x \'x\')"/>', 'style="mask:image(1x \'x\')"'],
    ['<g style="mask:src(x)"/>', 'style="mask:src(x)"'],
    ['<g style="fill:u\\72l(x)"/>', 'style="fill:u\\72l(x)"'],
    ['<g style="fill:u\\72 l(x)"/>', 'style="fill:u\\72 l(x)"'],
    ['<g style="fill:u\\rl(x)"/>', 'style="fill:u\\rl(x)"'],
    ['<g style="fill:u/* */rl(x)"/>', 'style="fill:u/* */rl(x)"'],
    [`<g style="fill:url(x)${' '.repeat(60)}"/>`, `style="fill:url(x)${' '.repeat(49)}"`],
    ['<style>@import "x.css";</style>', 'style sheet that loads from outside'],
    ['<style>@IMPORT "x.css";</style>', 'style sheet that loads from outside'],
    ['<style>@namespace x url(y); a { fill: url(z) }</style>', 'style sheet that loads from outside'],
    ['<style>a { src: url("x.woff") }</style>', 'style sheet that loads from outside'],
    ['<style>a { fill: url(\\110000 x) }</style>', 'style sheet that loads from outside'],
    ['<style>@\\000069mport "x";</style>', 'style sheet that loads from outside'],
    ['<g data-id="url(x)"/>', 'data-id="url(x)"'],
    ['<g ide="url(x)"/>', 'ide="url(x)"'],
    ['<style>@namespace x url(y) @import "x"</style>', 'style sheet that loads from outside'],
    ['<g style="width:expression(x)"/>', 'style="width:expression(x)"'],
    ['<style>/* a */@import "x"/* b </style>', 'style sheet that loads from outside'],
  ])('is found in %s', (content, what) => {
    expect(find(content)).toEqual([what]);
  });

  it.each([
    '<rect x="1"/>',
    '<script-like/>',
    '<x:onclick/>',
    '<rect x:onclick="go()"/>',
    '<rect con="go()"/>',
    '<use href="#leaf"/>',
    '<use xlink:href=" #leaf"/>',
    '<use href=""/>',
    '<use href="  "/>',
    ...['png', 'jpg', 'jpeg', 'gif', 'webp'].flatMap((type) => [
      `<image href="data:image/${type};base64,x"/>`,
      `<image href=" DATA:image/${type},x"/>`,
    ]),
    '<g srcset-like="x"/>',
    '<g fill="url(#a)"/>',
    '<g fill="url( #a)"/>',
    '<g style="fill:url(\'#a\')"/>',
    '<g style="fill:url( &quot; #a&quot; )"/>',
    '<g style="fill:url()"/>',
    '<g style="fill:url(\'\')"/>',
    '<g style="fill:url(data:image/png;base64,x)"/>',
    '<g style="src:url(data:font/woff2;base64,x)"/>',
    '<g style="src:url(data:application/font-woff;base64,x)"/>',
    '<g style="src:url(data:application/x-font-woff;base64,x)"/>',
    '<g style="fill:rgb(1,2,3)"/>',
    '<g style="mask:image-set(\'#a\')"/>',
    '<style>@namespace url("y"); @namespace \'z\'; @namespace x "y";</style>',
    '<g style="transform:rotate(3deg)"/>',
    '<g transform="url(x)"/>',
    '<g id="url(x)"/>',
    '<g class="url(x)"/>',
    '<style>a { fill: url(#b) }</style>',
    '<style>/* @import "x" */</style>',
    '<style>@namespace x url(http://www.w3.org/2000/svg);</style>',
    '<g xmlns:y="url(x)"/>',
    '<g mysrc="x"/>',
    '<g pinged="x"/>',
    '<style>/* @import "x"</style>',
    '<style>@namespace  svg  url(  "y(z)"  )  ; @namespace svg "url(y)" ; @namespace \'url(y)\';</style>',
    '<x:style>@import "x"</x:style>',
    '<text>@import "x"</text>',
  ])('is not seen in %s', (content) => {
    expect(find(content)).toEqual([]);
  });

  it('is told with line, file and what to do', () => {
    const [item] = findActiveContent(scanSvg('<g/>\n<rect id="r" onclick="go()"/>'), 'cut.svg');
    expect(item).toMatchObject({
      code: 'verify/active-content',
      message: 'cut.svg holds a handler onclick; no sheet may run, move or load anything.',
      place: { line: 3, element: 'rect', id: 'r', file: 'cut.svg' },
      data: { what: 'handler onclick' },
    });
  });

  it('is all told, element after element', () => {
    expect(find('<script src="x" onload="y"/><style onclick="z">@import "x"</style>')).toEqual([
      'script element',
      'attribute src',
      'handler onload',
      'style sheet that loads from outside',
      'handler onclick',
    ]);
  });
});
