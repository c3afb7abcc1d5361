// The cascade, from attributes to !important.
import { describe, expect, test } from 'vitest';
import { PinbarError } from '../../../src/model/trouble.js';
import { fillOf, styleDocument } from './compute-style.js';

const RED = '#ff0000';
const BLUE = '#0000ff';
const GREEN = '#008000';
const BLACK = '#000000';

describe('order of the cascade', () => {
  test.each([
    ['nothing', '<path id="p"/>', BLACK],
    ['attribute', '<path id="p" fill="red"/>', RED],
    ['universal rule against attribute', '<style>*{fill:blue}</style><path id="p" fill="red"/>', BLUE],
    ['style attribute against id rule', '<style>#p{fill:blue}</style><path id="p" style="fill:red"/>', RED],
    [
      '!important rule against style attribute',
      '<style>path{fill:blue!important}</style><path id="p" style="fill:red"/>',
      BLUE,
    ],
    [
      '!important style attribute against !important rule',
      '<style>#p{fill:blue!important}</style><path id="p" style="fill:red ! important"/>',
      RED,
    ],
    ['!important has no place in an attribute', '<path id="p" fill="red !important"/>', BLACK],
    ['later rule of equal specificity', '<style>.a{fill:red}.b{fill:blue}</style><path id="p" class="b a"/>', BLUE],
    ['later sheet', '<style>.a{fill:red}</style><style>.a{fill:blue}</style><path id="p" class="a"/>', BLUE],
    ['sheet after the element', '<path id="p" class="a"/><style>.a{fill:blue}</style>', BLUE],
    ['id against two classes', '<style>#p{fill:blue}.a.b{fill:red}</style><path id="p" class="a b"/>', BLUE],
    ['class against two types', '<style>.a{fill:blue}svg path{fill:red}</style><path id="p" class="a"/>', BLUE],
    ['last declaration of a rule', '<style>path{fill:red;fill:blue}</style><path id="p"/>', BLUE],
    ['unreadable value gives way', '<style>path{fill:blue;fill:nonsense}</style><path id="p" fill="red"/>', BLUE],
    ['unreadable style attribute gives way', '<path id="p" fill="red" style="fill:nonsense"/>', RED],
    [
      'weight of :is is that of its weightiest',
      '<style>:is(#x, path){fill:blue}.a{fill:red}</style><path id="p" class="a"/>',
      BLUE,
    ],
    ['weight of :where is none', '<style>path{fill:blue}:where(#p){fill:red}</style><path id="p"/>', BLUE],
    [
      'weight of :not is that of its weightiest',
      '<style>:not(#x){fill:blue}.a{fill:red}</style><path id="p" class="a"/>',
      BLUE,
    ],
    ['weightier selector of one rule', '<style>path,#p{fill:blue}.a{fill:red}</style><path id="p" class="a"/>', BLUE],
    ['a value spelled by numbers', '<path id="p" style="fill:\\72 e\\000064"/>', RED],
    ['property names in any case', '<style>path{FILL:Red}</style><path id="p"/>', RED],
    ['attribute names in their own case alone', '<path id="p" Fill="red"/>', BLACK],
    ['attribute of another namespace', '<path id="p" xlink:fill="red"/>', BLACK],
    ['geometry attributes are not presentation', '<path id="p" style="fill:red" marker="url(#m)"/>', RED],
    ['inherited', '<g fill="red"><path id="p"/></g>', RED],
    [
      'inherited against universal rule',
      '<style>*{fill:blue}</style><g style="fill:red!important"><path id="p"/></g>',
      BLUE,
    ],
    ['CDATA', '<style><![CDATA[svg > path{fill:blue}]]></style><path id="p"/>', BLUE],
    ['references in the sheet', '<style>svg &gt; path{fill:blue}</style><path id="p"/>', BLUE],
    ['comments', '<style>/* a */path/* b */{/* c */fill:/* d */blue/* e */}</style><path id="p"/>', BLUE],
    ['comment in a style attribute', '<path id="p" style="/* fill:red; */fill:blue/**/"/>', BLUE],
    ['comment in an attribute', '<path id="p" fill="/**/blue"/>', BLUE],
    ['XML comment hides the sheet', '<style><!-- path{fill:blue} --></style><path id="p"/>', BLACK],
    ['type of another language', '<style type="text/x-other">path{fill:blue}</style><path id="p"/>', BLACK],
    ['type text/css in any case', '<style type="Text/CSS">path{fill:blue}</style><path id="p"/>', BLUE],
    ['nothing set by an empty attribute', '<g fill="red"><path id="p" fill=""/></g>', RED],
  ])('%s', (_, inside, key) => {
    expect(fillOf(styleDocument(inside).style('p'))).toBe(key);
  });

  test('the order of rules of different specificity does not matter', () => {
    const rules = ['#p{fill:red}', '.a{fill:blue}', 'path{fill:green}', '*{fill:white}', 'svg .a{fill:gray}'];
    const orders = [rules, rules.toReversed(), [...rules.slice(2), ...rules.slice(0, 2)], [...rules].sort()];
    for (const order of orders) {
      const { style } = styleDocument(
        `<style>${order.join('')}</style><path id="p" class="a"/><path id="q" class="a"/><path id="r"/>`,
      );
      expect([fillOf(style('p')), fillOf(style('q')), fillOf(style('r'))]).toEqual([RED, '#808080', GREEN]);
    }
  });
});

describe('media', () => {
  test.each([
    ['media="print"', true],
    ['media="screen"', false],
    ['media="all"', true],
    ['media=""', true],
    ['media="screen, print"', true],
    ['media="not screen"', true],
    ['media="not print"', false],
    ['media="only print"', true],
    ['media="PRINT"', true],
    ['media="(min-width: 10px)"', false],
    ['media="print and (color)"', false],
    ['media="speech"', false],
  ])('style element with %s', (media, holds) => {
    const { style } = styleDocument(`<style ${media}>path{fill:red}</style><path id="p"/>`);
    expect(fillOf(style('p'))).toBe(holds ? RED : BLACK);
  });

  test.each([
    ['@media print{path{fill:red}}', true, []],
    ['@media screen{path{fill:red}}', false, []],
    ['@media screen and (min-width:1px){path{fill:red}}', false, []],
    ['@media print{@media all{path{fill:red}}}', true, []],
    ['@media print{@media screen{path{fill:red}}}', false, []],
    ['@media print and (min-width:1px){path{fill:red}}', false, ['resolve/style-unreadable']],
    ['@supports (fill:red){path{fill:red}}', false, ['resolve/style-unreadable']],
    ['@layer a{path{fill:red}}', false, ['resolve/style-unreadable']],
    ['@import "a.css";@font-face{font-family:x}@page{margin:0}@keyframes k{from{fill:red}}path{fill:red}', true, []],
  ])('%s', (sheet, holds, codes) => {
    const styled = styleDocument(`<style>${sheet}</style><path id="p"/>`);
    expect(fillOf(styled.style('p'))).toBe(holds ? RED : BLACK);
    expect(styled.codes).toEqual(codes);
  });
});

describe('keywords that every property knows', () => {
  test.each([
    ['inherit', BLUE],
    ['unset', BLUE],
    ['revert', BLUE],
    ['initial', BLACK],
    ['INHERIT', BLUE],
  ])('fill: %s', (word, key) => {
    const { style } = styleDocument(
      `<g fill="blue"><path id="p" fill="red" style="fill:${word}"/><path id="q" fill="${word}"/></g>`,
    );
    expect(fillOf(style('p'))).toBe(key);
    expect(fillOf(style('q'))).toBe(key);
  });

  test('a property of its own is taken over on demand', () => {
    const { style } = styleDocument(
      '<g opacity="0.5" clip-path="url(#c)"><path id="p" opacity="inherit"/><path id="q"/><path id="r" style="clip-path:inherit"/></g>',
    );
    expect([style('p').opacity, style('q').opacity]).toEqual([0.5, 1]);
    expect([style('r').clipPath, style('q').clipPath]).toEqual(['c', null]);
  });

  test('all: initial takes everything back', () => {
    const { style } = styleDocument('<g fill="blue"><path id="p" stroke="red" style="all:initial"/></g>');
    expect(fillOf(style('p'))).toBe(BLACK);
    expect(style('p').paint.stroke.kind).toBe('none');
  });
});

describe('currentColor', () => {
  test('is the colour of the element that is painted, also when inherited', () => {
    const { style } = styleDocument(
      '<g color="red" fill="currentColor"><path id="p"/><path id="q" color="blue"/><path id="r" style="color:currentcolor"/></g>',
    );
    expect([fillOf(style('p')), fillOf(style('q')), fillOf(style('r'))]).toEqual([RED, BLUE, RED]);
  });
});

describe('custom properties', () => {
  test.each([
    ['--a:red', 'var(--a)', RED],
    ['--a:red', 'var( --a )', RED],
    ['--a: red ', 'VAR(--a)', RED],
    ['', 'var(--a, blue)', BLUE],
    ['', 'var(--a, var(--b, blue))', BLUE],
    ['', 'var(--a)', GREEN],
    ['--a:var(--b);--b:red', 'var(--a)', RED],
    ['--a:var(--b);--b:var(--a)', 'var(--a, blue)', BLUE],
    ['--a:var(--a)', 'var(--a, blue)', BLUE],
    ['--a:var(--b, red);--b:var(--a, white)', 'var(--a, blue)', BLUE],
    ['--a:var(--b);--b:var(--c);--c:var(--b)', 'var(--a, blue)', BLUE],
    ['--a:nonsense', 'var(--a)', GREEN],
    ['--a:initial', 'var(--a, blue)', BLUE],
    ['--a:255,0,0', 'rgb(var(--a))', RED],
    ['--a:0;--b:255,var(--a)', 'rgb(var(--b),0)', RED],
    ['--A:red', 'var(--a, blue)', BLUE],
    ['--a:re', 'var(--a)d', GREEN],
    ['--a:inherit', 'var(--a)', GREEN],
  ])('%s and fill: %s', (declarations, fill, key) => {
    const { style } = styleDocument(
      `<g fill="green"><path id="p" style="${declarations};fill:${fill}"/><path id="q" style="${declarations}" fill="${fill}"/></g>`,
    );
    expect(fillOf(style('p'))).toBe(key);
    expect(fillOf(style('q'))).toBe(key);
  });

  test('are inherited, overridden and matched by rules', () => {
    const { style } = styleDocument(
      '<style>:root{--ink:red} .alt{--ink:blue} path{fill:var(--ink)}</style><path id="p"/><g class="alt"><path id="q"/></g>',
    );
    expect([fillOf(style('p')), fillOf(style('q'))]).toEqual([RED, BLUE]);
  });

  test('that double each other stay small', () => {
    let declarations = '--a0:xxxxxxxxxx';
    for (let i = 1; i < 60; i++) declarations += `;--a${i}:var(--a${i - 1}) var(--a${i - 1})`;
    const { style } = styleDocument(`<path id="p" fill="red" style="${declarations};fill:var(--a59, blue)"/>`);
    expect(fillOf(style('p'))).toBe(BLUE);
  });

  test('in a long chain end without harm', () => {
    let declarations = '--a0:red';
    for (let i = 1; i < 20_000; i++) declarations += `;--a${i}:var(--a${i - 1})`;
    const reversed = declarations.split(';').toReversed().join(';');
    expect(() => styleDocument(`<path id="p" style="${reversed};fill:var(--a19999,blue)"/>`)).not.toThrow();
  });
});

describe('presentation attributes', () => {
  test.each([
    ['x', '5'],
    ['d', 'M0 0'],
    ['transform-box', 'fill-box'],
    ['transform', 'scale(2)'],
    ['font', '12px a'],
    ['r', '1'],
  ])('%s is none', (name, value) => {
    const { style } = styleDocument(`<path id="p" ${name}="${value}"/><path id="q"/>`);
    expect(style('p')).toBe(style('q'));
  });

  test('stand on no element of another namespace', () => {
    const { style } = styleDocument('<g><f:x xmlns:f="urn:f" id="p" fill="red"/></g>');
    expect(fillOf(style('p'))).toBe(BLACK);
  });

  test('stand on no animation, whose fill is something else', () => {
    expect(styleDocument('<path><animate id="p" fill="freeze"/><set fill="remove"/></path>').codes).toEqual([]);
  });

  test('the content of a use inherits from the use', () => {
    const { cascade, style } = styleDocument(
      '<style>.a{stroke:blue}</style><path id="p" class="a"/><use id="u" fill="red"/>',
    );
    expect(fillOf(cascade.computeStyle(2, style('u')))).toBe(RED);
    expect(cascade.computeStyle(2, style('u')).paint.stroke).toEqual(style('p').paint.stroke);
  });
});

describe('sharing', () => {
  test('equal attributes under one parent give one style, and a child that sets nothing too', () => {
    const { style } = styleDocument(
      '<g id="g" fill="red"><path id="a" stroke="blue" d="M0 0"/><path id="b" stroke="blue"/><path id="c"/><path id="d"/><path id="e" stroke="green"/></g>',
    );
    expect(style('a')).toBe(style('b'));
    expect(style('c')).toBe(style('d'));
    expect(style('a')).not.toBe(style('e'));
    expect(style('c').paint).toBe(style('g').paint);
  });

  test('what differs besides the paint leaves the paint shared', () => {
    const { style } = styleDocument('<path id="a" fill="red" opacity="0.5"/><path id="b" style="fill:red"/>');
    expect(style('a')).not.toBe(style('b'));
    expect(style('a').paint).toBe(style('b').paint);
  });

  test('elements of one hash but other values are told apart', () => {
    const paths = Array.from({ length: 3000 }, (_, i) => `<path id="p${i}" stroke-width="${i}"/>`);
    const { styles } = styleDocument(paths.join(''));
    for (let i = 0; i < 3000; i++) expect(styles.get(`p${i}`)!.paint.strokeWidth).toBe(i);
  });
});

describe('findings', () => {
  test.each([
    ['<path id="p" fill="nonsense"/>', 'resolve/colour-unknown'],
    ['<path id="p" style="stroke:nonsense"/>', 'resolve/colour-unknown'],
    ['<path id="p" stroke-width="wide"/>', 'resolve/length-invalid'],
    ['<path id="p" stroke-width="-1"/>', 'resolve/length-invalid'],
    ['<path id="p" opacity="x"/>', 'resolve/length-invalid'],
    ['<path id="p" stroke-linecap="pointed"/>', 'resolve/style-unreadable'],
    ['<path id="p" style="fill red"/>', 'resolve/style-unreadable'],
    ['<style>path{fill red}</style>', 'resolve/style-unreadable'],
    ['<style>..a{fill:red}</style>', 'resolve/style-unreadable'],
    ['<style>path{fill:nonsense}</style>', 'resolve/colour-unknown'],
    ['<style>path:nonsense{fill:red}</style>', 'resolve/selector-unknown'],
    ['<style>svg|path{fill:red}</style>', 'resolve/selector-unknown'],
    ['<style>a{b:c} > path{fill:red}</style>', 'resolve/selector-unknown'],
  ])('%s', (inside, code) => {
    const { cascade } = styleDocument(inside);
    expect(cascade.findings).toHaveLength(1);
    expect(cascade.findings[0]).toMatchObject({ code, severity: 'warning' });
    expect(cascade.findings[0]!.place.line).toBe(1);
    expect(cascade.findings[0]!.place.element).toMatch(/path|style/);
  });

  test('say the line in the sheet, and each value once', () => {
    const { cascade } = styleDocument(
      '<style>\n\npath{fill:nonsense}\n:foo{}</style><path fill="odd"/><path fill="odd"/>',
    );
    expect(cascade.findings.map((found) => [found.code, found.place.line])).toEqual([
      ['resolve/colour-unknown', 3],
      ['resolve/selector-unknown', 4],
      ['resolve/colour-unknown', 4],
    ]);
    expect(cascade.findings[2]!.data).toEqual({ property: 'fill', value: 'odd' });
  });

  test('say a value with weight once as well', () => {
    expect(
      styleDocument('<path style="fill:odd!important"/><path style="fill:odd!important;stroke:red"/>').codes,
    ).toHaveLength(1);
  });

  test('do not grow with the file', () => {
    const paths = Array.from({ length: 1000 }, (_, i) => `<path fill="odd${i}"/>`);
    expect(styleDocument(paths.join('')).cascade.findings).toHaveLength(100);
  });

  test.each([
    '<path style=""/>',
    '<path style=" ; "/>',
    '<style/>',
    '<style>path{;;fill:red;}</style>',
    '<path style="-own-thing:1;unknown:2"/>',
    '<path fill="context-fill" stroke="context-stroke"/>',
    '<style>a{fill:red}b{}</style>',
    '<style>path::before{fill:red} a:hover{fill:red}</style>',
  ])('none for %s', (inside) => {
    expect(styleDocument(inside).codes).toEqual([]);
  });
});

describe('limits', () => {
  test('selectors at the bound and one past it', () => {
    const sheet = '<style>a,b{fill:red}</style><style media="screen">c{fill:red}</style>';
    expect(() => styleDocument(sheet, { selectors: 3 })).not.toThrow();
    expect(() => styleDocument(sheet, { selectors: 2 })).toThrow(PinbarError);
    expect(() => styleDocument(sheet, { selectors: 2 })).toThrow(/more than 2 selectors/);
  });

  test('sheets that nest without end are refused or passed over, not fatal', () => {
    const deep = [`${':not('.repeat(5000)}a${')'.repeat(5000)}`, `a${'.b'.repeat(50_000)}`, `${'a '.repeat(20_000)}a`];
    for (const selector of deep) {
      const { codes, style } = styleDocument(`<style>${selector}{fill:red} path{fill:blue}</style><path id="p"/>`);
      expect(codes.length).toBe(1);
      expect(fillOf(style('p'))).toBe(BLUE);
    }
    expect(() => styleDocument(`<style>${'@media print{'.repeat(20_000)}</style>`)).not.toThrow();
  });
});

describe('structural', () => {
  test.each([
    ['a + b{}', true],
    ['a ~ b{}', true],
    [':nth-child(2){}', true],
    [':first-child{}', true],
    [':last-of-type{}', true],
    [':only-child{}', true],
    [':empty{}', true],
    [':has(a){}', true],
    [':not(:first-child){}', true],
    [':is(a, b + c){}', true],
    [':where(:nth-last-child(1)){}', true],
    ['@media screen{a + b{}}', true],
    ['@supports (x:y){:first-child{}}', true],
    ['a::foo:first-child{}', true],
    ['a b > c.d#e[f]{}', false],
    [':root{}', false],
    [':not(.a){}', false],
    ['a{b:c+d}', false],
  ])('%s is %s', (sheet, structural) => {
    expect(styleDocument(`<style>${sheet}</style>`).cascade.structural).toBe(structural);
  });

  test('without style sheets there is none', () => {
    expect(styleDocument('<path/>').cascade).toMatchObject({ structural: false, hasSheets: false });
    expect(styleDocument('<style>a{fill:red}</style>').cascade).toMatchObject({ structural: false, hasSheets: true });
  });
});
