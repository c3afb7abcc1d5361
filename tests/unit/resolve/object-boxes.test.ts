// Boxes that transforms refer to, of elements drawn more than once.
import { describe, expect, it } from 'vitest';
import { resolveText } from './resolve-text.js';

describe('reference boxes', () => {
  it('are those of each use, where what it hands down changes a stroke', () => {
    const { shapes } = resolveText(`<svg xmlns="http://www.w3.org/2000/svg" width="90" height="90">
      <defs><rect id="r" x="10" y="10" width="20" height="20" style="transform-box: stroke-box; transform: scale(2)"/></defs>
      <use href="#r"/>
      <use href="#r" stroke="red" stroke-width="4"/>
    </svg>`);
    // Twice as large about the corner of the stroke box, 10 or 8: the origin is that of the box.
    expect(shapes.map(({ matrix }) => matrix)).toEqual([
      [2, 0, 0, 2, -10, -10],
      [2, 0, 0, 2, -8, -8],
    ]);
  });

  it('are those of each use, where what it hands down changes a size', () => {
    const { shapes } = resolveText(`<svg xmlns="http://www.w3.org/2000/svg" width="90" height="90">
      <defs><rect id="r" width="1em" height="1em" style="transform-box: fill-box; transform: translate(100%)"/></defs>
      <use href="#r" font-size="10"/>
      <use href="#r" font-size="30"/>
    </svg>`);
    expect(shapes.map(({ matrix }) => matrix[4])).toEqual([10, 30]);
  });
});
