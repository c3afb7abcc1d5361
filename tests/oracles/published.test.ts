// Published drawings as whole files: what their sources print of them is what resolve gives.
import { describe, expect, it } from 'vitest';
import type { Box } from '../../src/geometry/box.js';
import { encodeUtf8 } from '../../src/model/platform.js';
import { resolve } from '../../src/resolve/resolve.js';
import { readSource } from '../../src/source/read-source.js';
import geometry from './geometry/published.json' with { type: 'json' };
import published from './resolve/published.json' with { type: 'json' };

const NAMES = 'xmlns="http://www.w3.org/2000/svg"';

function resolveText(text: string): ReturnType<typeof resolve> {
  return resolve(readSource(encodeUtf8(text)), { userUnitsPerInch: 96 });
}

function xywh({ x0, y0, x1, y1 }: Box): readonly number[] {
  return x0 <= x1 ? [x0, y0, x1 - x0, y1 - y0] : [0, 0, 0, 0];
}

function expectBox(found: readonly number[], expected: readonly number[]): void {
  expect(found).toHaveLength(4);
  for (const [place, value] of expected.entries()) expect(found[place]).toBeCloseTo(value, 7);
}

// W3C SVG 2, chapter 8, images/coords/bbox-calc.svg and the table below it.
describe('the table of bounding boxes', () => {
  const parts: Readonly<Record<string, string>> = {
    'rect-1': '<rect id="rect-1" x="20" y="20" width="40" height="40" fill="blue"/>',
    'use-1': '<use id="use-1" href="#rect-1" x="10" y="10"/>',
    'rect-2': '<rect id="rect-2" x="10" y="10" width="100" height="100" fill="red"/>',
  };
  const whole = {
    'defs-1': `<defs id="defs-1">${parts['rect-1']}</defs>`,
    'group-2': `<g id="group-2" display="none">${parts['rect-2']}</g>`,
  };
  const drawing = `${whole['defs-1']}<g id="group-1">${parts['use-1']}${whole['group-2']}</g>`;

  /** What x and y of the use add to the matrix of a shape when the element with the id is twice as large. */
  const ADDED: Readonly<Record<string, number>> = {
    'rect-1': 10,
    'use-1': 20,
    'group-1': 20,
    'group-2': 0,
    'rect-2': 0,
  };

  /** A corner of the box of an element: made twice as large about it, the element is moved back by it. */
  function cornerOf(id: string, corner: string): readonly [number, number] {
    const style = `style="transform-box: fill-box; transform-origin: ${corner}; transform: scale(2)"`;
    const grown = drawing.replace(`id="${id}"`, `id="${id}" ${style}`);
    const { shapes } = resolveText(`<svg ${NAMES} width="200" height="200">${grown}</svg>`);
    const { matrix } = shapes.find((shape) => shape.id === (id.endsWith('2') ? 'rect-2' : 'rect-1'))!;
    return [ADDED[id]! - matrix[4], ADDED[id]! - matrix[5]];
  }

  function boxOf(id: string): readonly number[] {
    const [x, y] = cornerOf(id, '0 0');
    const [right, bottom] = cornerOf(id, '100% 100%');
    return [x, y, right - x, bottom - y];
  }

  for (const { id, xywh: expected } of published.bbox) {
    it(id, () => {
      if (id === 'defs-1') {
        // Nothing of it is drawn where it stands: the only shapes are that of the use and the hidden one.
        const { shapes } = resolveText(`<svg ${NAMES} width="200" height="200">${whole['defs-1']}</svg>`);
        expect(shapes).toEqual([]);
        expect(expected).toEqual([0, 0, 0, 0]);
      } else expectBox(boxOf(id), expected);
    });
  }

  it('has all six rows', () => {
    expect(published.bbox.map(({ id }) => id)).toEqual(['defs-1', 'rect-1', 'group-1', 'use-1', 'group-2', 'rect-2']);
  });
});

// W3C SVG 2, chapter 8, images/coords/PreserveAspectRatio.svg.
describe('the examples of preserveAspectRatio', () => {
  const face = '<rect x="0.5" y="0.5" width="29" height="39"/>';

  for (const { vb, vp, ms, align, t, s } of published.par) {
    const fit = `viewBox="${vb.join(' ')}" width="${vp[0]}" height="${vp[1]}" preserveAspectRatio="${align} ${ms}"`;
    const expected = [s, 0, 0, s, ...t];

    it(`${align} ${ms} in ${vp.join(' x ')}, as a nested svg`, () => {
      const nested = `<svg ${NAMES} width="450" height="300"><g transform="translate(20,40)"><svg ${fit} y="100">${face}</svg></g></svg>`;
      const { matrix } = resolveText(nested).shapes[0]!;
      const moved = [...expected.slice(0, 4), expected[4]! + 20, expected[5]! + 140];
      for (const [place, value] of moved.entries()) expect(matrix[place]).toBeCloseTo(value, 12);
    });

    it(`${align} ${ms} in ${vp.join(' x ')}, as the root`, () => {
      const { artboard, shapes } = resolveText(`<svg ${NAMES} ${fit}>${face}</svg>`);
      expect([artboard.width, artboard.height]).toEqual(vp);
      for (const [place, value] of expected.entries()) expect(shapes[0]!.matrix[place]).toBeCloseTo(value, 12);
    });
  }
});

// W3C SVG 2, chapter 9, images/paths/arcs01.svg: 12 x 5.25 cm over a viewBox of 1200 x 400 user units.
describe('the drawings of arcs', () => {
  const arcs = geometry.bbox.filter(({ src, d }) => src.startsWith('svg2-arcs') && /a/i.test(d));
  const paths = arcs.map(({ d }) => `<path d="${d}" fill="none" stroke="blue" stroke-width="5"/>`).join('');
  const { shapes, artboard } = resolveText(
    `<svg ${NAMES} width="12cm" height="5.25cm" viewBox="0 0 1200 400">${paths}</svg>`,
  );

  it('are all there', () => {
    expect(shapes).toHaveLength(10);
    expect(artboard.matrix[0]).toBeCloseTo((12 / 2.54) * (96 / 1200), 12);
  });

  for (const [index, { d, xywh: box }] of arcs.entries()) {
    it(d, () => {
      const [scale, , , , dx, dy] = artboard.matrix;
      const found = xywh(shapes[index]!.fillBox);
      const own = [(found[0]! - dx) / scale, (found[1]! - dy) / scale, found[2]! / scale, found[3]! / scale];
      expectBox(own, box!);
    });
  }
});
