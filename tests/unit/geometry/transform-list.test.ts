// The transform attribute.
import { describe, expect, it } from 'vitest';
import { readTransformList } from '../../../src/geometry/transform-list.js';

function expectMatrix(text: string, expected: readonly number[]): void {
  const found = readTransformList(text);
  expect(found).not.toBeNull();
  for (const [index, value] of expected.entries()) expect(found![index]).toBeCloseTo(value, 12);
}

describe('legal lists', () => {
  it.each([
    ['', [1, 0, 0, 1, 0, 0]],
    [' \t\n\r\f', [1, 0, 0, 1, 0, 0]],
    ['matrix(1 2 3 4 5 6)', [1, 2, 3, 4, 5, 6]],
    ['matrix(1,2,3,4,5,6)', [1, 2, 3, 4, 5, 6]],
    ['matrix(1-2.5.5-4e1 5 6)', [1, -2.5, 0.5, -40, 5, 6]],
    ['translate(10)', [1, 0, 0, 1, 10, 0]],
    ['translate(10 20)', [1, 0, 0, 1, 10, 20]],
    ['translate(10-20)', [1, 0, 0, 1, 10, -20]],
    ['translate ( 10 , 20 )', [1, 0, 0, 1, 10, 20]],
    ['scale(2)', [2, 0, 0, 2, 0, 0]],
    ['scale(2,-3)', [2, 0, 0, -3, 0, 0]],
    ['rotate(90)', [0, 1, -1, 0, 0, 0]],
    ['rotate(-90)', [0, -1, 1, 0, 0, 0]],
    ['rotate(30)', [Math.sqrt(3) / 2, 0.5, -0.5, Math.sqrt(3) / 2, 0, 0]],
    ['rotate(90, 10, 20)', [0, 1, -1, 0, 30, 10]],
    ['skewX(45)', [1, 0, 1, 1, 0, 0]],
    ['skewY(-45)', [1, -1, 0, 1, 0, 0]],
    ['translate(10 20) scale(2)', [2, 0, 0, 2, 10, 20]],
    ['scale(2) translate(10 20)', [2, 0, 0, 2, 20, 40]],
    ['scale(2),translate(10 20)', [2, 0, 0, 2, 20, 40]],
    ['scale(2)translate(10 20)', [2, 0, 0, 2, 20, 40]],
    ['scale(2) , , translate(10 20)', [2, 0, 0, 2, 20, 40]],
    ['translate(50 30)rotate(45)skewX(0)', [Math.SQRT1_2, Math.SQRT1_2, -Math.SQRT1_2, Math.SQRT1_2, 50, 30]],
  ])('%j', (text, expected) => {
    expectMatrix(text, expected);
  });

  it('quarter turns and 45 degree slopes are exact', () => {
    expect(readTransformList('rotate(450)')).toEqual([0, 1, -1, 0, 0, 0]);
    expect(readTransformList('rotate(-540)')).toEqual([-1, 0, 0, -1, 0, 0]);
    expect(readTransformList('rotate(720)')).toEqual([1, 0, 0, 1, 0, 0]);
    expect(readTransformList('skewX(45)')).toEqual([1, 0, 1, 1, 0, 0]);
  });
});

describe('what cannot be read', () => {
  it.each([
    'none',
    'matrix(1 2 3 4 5)',
    'matrix(1 2 3 4 5 6 7)',
    'translate()',
    'translate( )',
    'translate(1 2 3)',
    'translate(,1)',
    'translate(1,)',
    'translate(1,,2)',
    'translate(1 2',
    'translate 1 2',
    'translate(10px)',
    'translate(1.)',
    'rotate(45deg)',
    'rotate(1 2)',
    'rotate(1 2 3 4)',
    'scale()',
    'scale(1 2 3)',
    'skewX(1 2)',
    'Translate(1)',
    'skewx(1)',
    'translate3d(1 2 3)',
    'spin(1)',
    'scale(2),',
    ',scale(2)',
    'scale(2);',
    'scale(1e999)',
    'scale(1e300)scale(1e300)',
  ])('%j', (text) => {
    expect(readTransformList(text)).toBeNull();
  });
});
