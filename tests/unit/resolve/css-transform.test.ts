// Transforms and origins as CSS writes them.
import { describe, expect, test } from 'vitest';
import { readCssTransform } from '../../../src/resolve/css-transform.js';
import { readTransformOrigin } from '../../../src/resolve/transform-origin.js';

const BOX = { width: 200, height: 100 };
const HALF = Math.SQRT1_2;

describe('readCssTransform', () => {
  test.each<[string, readonly number[]]>([
    ['none', [1, 0, 0, 1, 0, 0]],
    ['translate(10px)', [1, 0, 0, 1, 10, 0]],
    ['translate(10px, 1in)', [1, 0, 0, 1, 10, 96]],
    ['translate(50%, 50%)', [1, 0, 0, 1, 100, 50]],
    ['translate(0, 2em)', [1, 0, 0, 1, 0, 40]],
    ['translateX(-5px)', [1, 0, 0, 1, -5, 0]],
    ['translateY(25%)', [1, 0, 0, 1, 0, 25]],
    ['translate3d(1px, 2px, 3px)', [1, 0, 0, 1, 1, 2]],
    ['translateZ(9px)', [1, 0, 0, 1, 0, 0]],
    ['translate(calc(50% + 1px), calc((1px + 1px) * 2))', [1, 0, 0, 1, 101, 4]],
    ['scale(2)', [2, 0, 0, 2, 0, 0]],
    ['scale(2, 50%)', [2, 0, 0, 0.5, 0, 0]],
    ['scaleX(-1)', [-1, 0, 0, 1, 0, 0]],
    ['scaleY(3)', [1, 0, 0, 3, 0, 0]],
    ['scale3d(2, 3, 4)', [2, 0, 0, 3, 0, 0]],
    ['rotate(90deg)', [0, 1, -1, 0, 0, 0]],
    ['rotate(100grad)', [0, 1, -1, 0, 0, 0]],
    ['rotate(0.25turn)', [0, 1, -1, 0, 0, 0]],
    ['rotateZ(45deg)', [HALF, HALF, -HALF, HALF, 0, 0]],
    ['rotate(0)', [1, 0, 0, 1, 0, 0]],
    ['rotate3d(0, 0, 2, 90deg)', [0, 1, -1, 0, 0, 0]],
    ['rotateX(60deg)', [1, 0, 0, 0.5, 0, 0]],
    ['skewX(45deg)', [1, 0, 1, 1, 0, 0]],
    ['skewY(45deg)', [1, 1, 0, 1, 0, 0]],
    ['skew(45deg, 0)', [1, 0, 1, 1, 0, 0]],
    ['matrix(1, 2, 3, 4, 5, 6)', [1, 2, 3, 4, 5, 6]],
    ['matrix3d(1,2,0,0, 3,4,0,0, 0,0,1,0, 5,6,0,1)', [1, 2, 3, 4, 5, 6]],
    // CSS Transforms 1, section 7: the first function is the outermost.
    ['translate(80px, 80px) scale(1.5, 1.5) rotate(90deg)', [0, 1.5, -1.5, 0, 80, 80]],
    ['  TRANSLATE( 1px , 2px )rotate(0deg)', [1, 0, 0, 1, 1, 2]],
  ])('%s', (text, matrix) => {
    const read = readCssTransform(text, BOX, 20);
    expect(read).toHaveLength(6);
    for (const [index, value] of matrix.entries()) expect(read![index]).toBeCloseTo(value, 12);
  });

  test('radians are those of the circle', () => {
    const read = readCssTransform('rotate(0.5rad)', BOX, 20)!;
    expect(read[0]).toBeCloseTo(Math.cos(0.5), 14);
    expect(read[1]).toBeCloseTo(Math.sin(0.5), 14);
  });

  test.each([
    '',
    ' ',
    'translate(10)',
    'translate(10, 20)',
    'rotate(45)',
    'rotate(45deg, 10px, 10px)',
    'scale(1,2,3)',
    'scale()',
    'matrix(1,2,3)',
    'matrix(1 2 3 4 5 6)',
    'translate(1px 2px)',
    'translate(1px,)',
    'foo(1)',
    'translate(1px',
    'none none',
    'perspective(10px)',
    'matrix3d(1,0,0,1, 0,1,0,0, 0,0,1,0, 0,0,0,1)',
    'translateZ(10%)',
    'scale(1e999)',
    'translate (1px)',
  ])('%s is none', (text) => {
    expect(readCssTransform(text, BOX, 20)).toBeNull();
  });
});

describe('readTransformOrigin', () => {
  const reference = { x: 10, y: 20, width: 200, height: 100 };

  test.each<[string, readonly [number, number]]>([
    ['0 0', [10, 20]],
    ['left top', [10, 20]],
    ['top left', [10, 20]],
    ['center', [110, 70]],
    ['50% 50%', [110, 70]],
    ['right', [210, 70]],
    ['bottom', [110, 120]],
    ['bottom right', [210, 120]],
    ['center top', [110, 20]],
    ['top center', [110, 20]],
    ['center left', [10, 70]],
    ['30px', [40, 70]],
    ['30px bottom', [40, 120]],
    ['right 10px', [210, 30]],
    ['1em 2em', [30, 60]],
    ['1px 2px 3px', [11, 22]],
    ['calc(50% - 10px) 0', [100, 20]],
  ])('%s', (text, point) => {
    expect(readTransformOrigin(text, reference, 20)).toEqual(point);
  });

  test.each(['', 'left left', 'top top', '10px left', 'top 10px', 'left top 10%', '1px 2px 3px 4px', 'middle'])(
    '%s is none',
    (text) => {
      expect(readTransformOrigin(text, reference, 20)).toBeNull();
    },
  );
});
