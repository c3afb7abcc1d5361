// Paint with percentages, and the targets of url().
import { describe, expect, test } from 'vitest';
import { idOfUrl, listUrls, paintWithin } from '../../../src/resolve/paint.js';
import { styleDocument } from './compute-style.js';

function styleOf(attributes: string) {
  return styleDocument(`<path id="p" ${attributes}/>`).style('p');
}

describe('paintWithin', () => {
  test('takes percentages of the diagonal of the viewport', () => {
    // SVG 2, section 8.9: sqrt((width squared + height squared) / 2); 300 by 400 gives 250 times the root of two.
    const diagonal = Math.sqrt((300 * 300 + 400 * 400) / 2);
    const style = styleOf('stroke-width="1%" stroke-dashoffset="calc(1px + 2%)" stroke-dasharray="3 4%"');
    const paint = paintWithin(style, diagonal);
    expect(paint.strokeWidth).toBeCloseTo(3.5355339059327378, 12);
    expect(paint.strokeDashoffset).toBeCloseTo(1 + 7.0710678118654755, 12);
    expect(paint.strokeDasharray[0]).toBe(3);
    expect(paint.strokeDasharray[1]).toBeCloseTo(14.142135623730951, 12);
  });

  test('leaves percentages out of the paint of the style', () => {
    const style = styleOf('stroke-width="calc(2px + 1%)" stroke="red"');
    expect(style.paint.strokeWidth).toBe(2);
    expect(style.strokePercent).toEqual({ width: { px: 2, fraction: 0.01 }, dashoffset: null, dasharray: null });
    expect(paintWithin(style, 100)).toEqual({ ...style.paint, strokeWidth: 3 });
  });

  test('gives the paint itself where there is no percentage', () => {
    const style = styleOf('stroke-width="2" stroke-dasharray="1 2"');
    expect(style.strokePercent).toBeNull();
    expect(paintWithin(style, 100)).toBe(style.paint);
  });

  test('percentages are inherited as such', () => {
    const { style } = styleDocument('<g stroke-width="10%"><path id="p" stroke="red"/></g>');
    expect(paintWithin(style('p'), 50).strokeWidth).toBe(5);
  });
});

describe('urls', () => {
  test.each([
    ['url(#a)', ['#a']],
    ['url("#a b") url( \'#c\' ) URL(d.svg#e)', ['#a b', '#c', 'd.svg#e']],
    ['none', []],
    ['url(#a', []],
  ])('%s', (text, urls) => {
    expect(listUrls(text)).toEqual(urls);
  });

  test.each([
    ['#a', 'a'],
    ['#', null],
    ['a#b', null],
    ['#a%20b', 'a b'],
    ['#100%', '100%'],
    ['', null],
  ])('%s names %s', (url, id) => {
    expect(idOfUrl(url)).toBe(id);
  });
});
