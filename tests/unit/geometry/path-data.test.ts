// The path grammar and its error rule.
import { describe, expect, it } from 'vitest';
import { printPath, readPath, readPoints } from './read-path.js';

describe('path data', () => {
  it.each([
    ['', ''],
    ['  \t\r\n\f', ''],
    ['none', ''],
    [' none ', ''],
    ['M1 2', 'M 1 2'],
    ['m1 2', 'M 1 2'],
    ['M1,2 3,4', 'M 1 2 L 3 4'],
    ['m1,2 3,4 5-6', 'M 1 2 L 4 6 L 9 0'],
    ['M1 2L3 4 5 6', 'M 1 2 L 3 4 L 5 6'],
    ['M1 2l3 4 5 6', 'M 1 2 L 4 6 L 9 12'],
    ['M1 2H5 6h1 2', 'M 1 2 L 5 2 L 6 2 L 7 2 L 9 2'],
    ['M1 2V5 6v1 2', 'M 1 2 L 1 5 L 1 6 L 1 7 L 1 9'],
    ['M1 2C3 4 5 6 7 8', 'M 1 2 C 3 4 5 6 7 8'],
    ['M1 2c3 4 5 6 7 8 1 1 2 2 3 3', 'M 1 2 C 4 6 6 8 8 10 C 9 11 10 12 11 13'],
    ['M0 0C1 1 2 3 5 5S8 8 9 9', 'M 0 0 C 1 1 2 3 5 5 C 8 7 8 8 9 9'],
    ['M0 0c1 1 2 3 5 5s3 3 4 4', 'M 0 0 C 1 1 2 3 5 5 C 8 7 8 8 9 9'],
    ['M1 2S3 4 5 6', 'M 1 2 C 1 2 3 4 5 6'],
    ['M1 2Q3 4 5 6T9 9T1 1', 'M 1 2 Q 3 4 5 6 Q 7 8 9 9 Q 11 10 1 1'],
    ['M1 2q3 4 5 6t1 1', 'M 1 2 Q 4 6 6 8 Q 8 10 7 9'],
    ['M1 2T3 4', 'M 1 2 Q 1 2 3 4'],
    ['M0 0Q1 1 2 2S5 5 6 6', 'M 0 0 Q 1 1 2 2 C 2 2 5 5 6 6'],
    ['M1 2A3 4 5 0 1 6 7', 'M 1 2 A 3 4 5 0 1 6 7'],
    ['M1 2a-3-4-5 10 6 7', 'M 1 2 A 3 4 -5 1 0 7 9'],
    ['M0 0a1 1 0 01.5.5', 'M 0 0 A 1 1 0 0 1 0.5 0.5'],
    ['M0 0a1 1 0 0,1.5.5 1 1 0 11-1-1', 'M 0 0 A 1 1 0 0 1 0.5 0.5 A 1 1 0 1 1 -0.5 -0.5'],
    ['M1 1L2 2ZL5 5', 'M 1 1 L 2 2 Z M 1 1 L 5 5'],
    ['M1 1L2 2zl5 5z', 'M 1 1 L 2 2 Z M 1 1 L 6 6 Z'],
    ['M1 1L2 2zm5 5l1 1', 'M 1 1 L 2 2 Z M 6 6 L 7 7'],
    ['M0 0C1 1 2 3 5 5ZS8 8 9 9', 'M 0 0 C 1 1 2 3 5 5 Z M 0 0 C 0 0 8 8 9 9'],
    ['M1 1zh3', 'M 1 1 Z M 1 1 L 4 1'],
    ['M1 1L2 2zz', 'M 1 1 L 2 2 Z'],
    ['M1 2M3 4L5 6', 'M 1 2 M 3 4 L 5 6'],
    ['M.5.5-.5-.5', 'M 0.5 0.5 L -0.5 -0.5'],
    ['M+1+2+3-4', 'M 1 2 L 3 -4'],
    ['M1e1-1E-1 1.5e+2,2e0', 'M 10 -0.1 L 150 2'],
    ['M1 2H3V4h1v1', 'M 1 2 L 3 2 L 3 4 L 4 4 L 4 5'],
    ['M1 2L3 4zv5', 'M 1 2 L 3 4 Z M 1 2 L 1 7'],
    ['M1 2L3 4zH7', 'M 1 2 L 3 4 Z M 1 2 L 7 2'],
    ['M1 2L3 4za1 1 0 0 0 5 5', 'M 1 2 L 3 4 Z M 1 2 A 1 1 0 0 0 6 7'],
    ['M1 2L3 4zm0 0zm1 1', 'M 1 2 L 3 4 Z M 1 2 Z M 2 3'],
    ['M1 2L3 4Zt5 5', 'M 1 2 L 3 4 Z M 1 2 Q 1 2 6 7'],
    ['M1 2C3 4 5 6 7 9T1 1', 'M 1 2 C 3 4 5 6 7 9 Q 7 9 1 1'],
    ['M1 2Q3 4 5 6L9 9t1 1', 'M 1 2 Q 3 4 5 6 L 9 9 Q 9 9 10 10'],
    ['M1 2A-3-4 5 1 0-6-7', 'M 1 2 A 3 4 5 1 0 -6 -7'],
    ['M1 2z  \n', 'M 1 2 Z'],
    ['M 1 , 2 L\t3 , \r\n 4', 'M 1 2 L 3 4'],
    ['M0001.50 00', 'M 1.5 0'],
    ['M1234567890.125 0.12345678901', 'M 1234567890.125 0.12345678901'],
  ])('reads %j', (d, segments) => {
    const path = readPath(d);
    expect(printPath(path)).toBe(segments);
    expect(path.errorAt).toBe(-1);
  });

  // SVG 2, section 9.5.4: drawn up to the last segment that is right; the second case is the one printed there.
  it.each([
    ['L1 2', '', 0],
    ['M 10,10 L 20,20,30', 'M 10 10 L 20 20', 18],
    ['M1', '', 2],
    ['M1 2L', 'M 1 2', 5],
    ['M1 2L,3 4', 'M 1 2', 5],
    ['M,1 2', '', 1],
    ['M1 2,L3 4', 'M 1 2', 5],
    ['M1 2,', 'M 1 2', 5],
    ['M1 2 L3 4 x 5 6', 'M 1 2 L 3 4', 10],
    ['M1 2 L3 4 # 5', 'M 1 2 L 3 4', 10],
    ['M1,,2', '', 3],
    ['M1. 2', '', 3],
    ['M1 2L3 .', 'M 1 2', 8],
    ['M1 2L3 -', 'M 1 2', 8],
    ['M1 2L3 4e', 'M 1 2 L 3 4', 8],
    ['M1 2L3 4C1 1 2 2 3 3 4 4 5', 'M 1 2 L 3 4 C 1 1 2 2 3 3', 26],
    ['M1 2A1 1 0 2 0 3 3', 'M 1 2', 11],
    ['M1 2A1 1 0 0 1 3', 'M 1 2', 16],
    ['M1 2L1e999 3', 'M 1 2', 5],
    ['M1e308 0l1e308 0', 'M 1e+308 0', 9],
    ['M1e308 0c1e308 0 0 0 0 0', 'M 1e+308 0', 9],
    ['M1 2z 3 4', 'M 1 2 Z', 6],
    ['nonee', '', 0],
    ['non', '', 0],
    ['nonx', '', 0],
    ['noxe', '', 0],
    ['nxne', '', 0],
    ['none x', '', 0],
    ['z', '', 0],
    ['M1 2L0 1e308l0 1e308', 'M 1 2 L 0 1e+308', 13],
    ['M1e308 0C0 0-1e308 0 1e308 0S1 1 2 2', 'M 1e+308 0 C 0 0 -1e+308 0 1e+308 0', 29],
    ['M0 1e308C0 0 0-1e308 0 1e308S1 1 2 2', 'M 0 1e+308 C 0 0 0 -1e+308 0 1e+308', 29],
    ['M1e308 0Q-1e308 0 1e308 0T2 2', 'M 1e+308 0 Q -1e+308 0 1e+308 0', 26],
    ['M1 2A1 1 0 : 0 3 3', 'M 1 2', 11],
    ['M1 2A1 1 0 /0 3 3', 'M 1 2', 11],
    ['M1 2A1 1 x', 'M 1 2', 9],
    ['M1 2A1 1 0 0 1', 'M 1 2', 14],
    ['M1 2L3 4*5 6', 'M 1 2 L 3 4', 8],
    ['M1 2L3 4:5 6', 'M 1 2 L 3 4', 8],
  ])('keeps what comes before the error in %j', (d, segments, errorAt) => {
    const path = readPath(d);
    expect(printPath(path)).toBe(segments);
    expect(path.errorAt).toBe(errorAt);
  });

  it('reads as far as its end and no further, byte by byte', () => {
    const whole = 'M1.25-2e1C3,4 5,6 7,8a1 1 0 01.5.5z';
    for (let length = 0; length <= whole.length; length++) {
      const cut = readPath(whole.slice(0, length));
      expect(cut.errorAt).toBeLessThanOrEqual(length);
    }
    expect(printPath(readPath(whole.slice(0, 4)))).toBe('');
    expect(readPath(whole.slice(0, 5)).errorAt).toBe(5);
  });

  it('grows its buffers', () => {
    const path = readPath(`M0 0${'c1 2 3 4 5 6'.repeat(5000)}`);
    expect(path.opCount).toBe(5001);
    expect(path.coordCount).toBe(30002);
    expect(path.coords[30001]).toBe(30000);
  });

  it('grows the one buffer without the other', () => {
    for (let count = 240; count < 260; count += 1) {
      const closed = readPath('M1 2Z'.repeat(count));
      expect([closed.opCount, closed.coordCount]).toEqual([2 * count, 2 * count]);
      expect(printPath(closed)).toBe(Array.from({ length: count }, () => 'M 1 2 Z').join(' '));
      const lines = readPath(`M0 0${'h1'.repeat(count * 2)}`);
      expect(lines.coords[4 * count]).toBe(2 * count);
      const arcs = readPath(`M0 0${'a1 1 0 0 0 1 1'.repeat(count - 100)}`);
      expect(printPath(arcs).endsWith(`A 1 1 0 0 0 ${count - 100} ${count - 100}`)).toBe(true);
      expect(arcs.coordCount).toBe(2 + 7 * (count - 100));
    }
  });
});

describe('points', () => {
  it.each([
    ['', true, '', -1],
    ['1,2 3,4', false, 'M 1 2 L 3 4', -1],
    ['1,2 3,4 5-6', true, 'M 1 2 L 3 4 L 5 -6 Z', -1],
    [' 1 2 ', true, 'M 1 2 Z', -1],
    ['1,2 3', true, 'M 1 2 Z', 5],
    ['1,2 L3,4', false, 'M 1 2', 4],
    ['M1,2', false, '', 0],
  ])('reads %j', (points, closed, segments, errorAt) => {
    const path = readPoints(points, closed);
    expect(printPath(path)).toBe(segments);
    expect(path.errorAt).toBe(errorAt);
  });
});
