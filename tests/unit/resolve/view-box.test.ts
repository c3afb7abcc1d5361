// viewBox and preserveAspectRatio against published results.
import { describe, expect, it } from 'vitest';
import { fitViewBox, readViewBox, type ViewBox } from '../../../src/resolve/view-box.js';
import published from '../../oracles/resolve/published.json' with { type: 'json' };

describe('fitting a viewBox', () => {
  // W3C SVG 2, chapter 8, PreserveAspectRatio.svg; results by the steps of 8.2.
  for (const entry of published.par) {
    it(`${entry.align} ${entry.ms} in ${entry.vp.join(' x ')}`, () => {
      const viewport = { width: entry.vp[0]!, height: entry.vp[1]! };
      const matrix = fitViewBox(entry.vb as unknown as ViewBox, viewport, `${entry.align} ${entry.ms}`);
      expect(matrix[0]).toBeCloseTo(entry.s, 12);
      expect(matrix[3]).toBeCloseTo(entry.s, 12);
      expect(matrix[4]).toBeCloseTo(entry.t[0]!, 12);
      expect(matrix[5]).toBeCloseTo(entry.t[1]!, 12);
    });
  }

  it('stretches for none and moves the corner to the origin', () => {
    expect(fitViewBox([10, 20, 50, 25], { width: 100, height: 100 }, 'none')).toEqual([2, 0, 0, 4, -20, -80]);
  });

  it('takes xMidYMid meet where nothing readable is said', () => {
    for (const text of ['', 'middle', 'xMidYMid', 'xmidymid slice']) {
      expect(fitViewBox([0, 0, 10, 10], { width: 40, height: 20 }, text)).toEqual([2, 0, 0, 2, 10, 0]);
    }
  });
});

describe('reading a viewBox', () => {
  it.each([
    ['0 0 10 20', [0, 0, 10, 20]],
    [' -1,-2.5 , 1e1,20 ', [-1, -2.5, 10, 20]],
    ['0-5 10+20', [0, -5, 10, 20]],
  ])('%s', (text, box) => {
    expect(readViewBox(text)).toEqual({ kind: 'box', box });
  });

  it.each([
    '',
    '0 0 10',
    '0 0 10 20 30',
    '0 0 -1 20',
    '0 0 10mm 20',
    'a b c d',
    '0,,0 10 10',
    '0 0 10. 20',
    '0 0 1e999 1',
  ])('refuses %s', (text) => {
    expect(readViewBox(text).kind).toBe('invalid');
  });

  it('tells a side of zero', () => {
    expect(readViewBox('0 0 0 5').kind).toBe('zero');
  });
});
