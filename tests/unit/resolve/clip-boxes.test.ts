// What clip paths leave of the drawn box; the other boxes know nothing of them.
import { describe, expect, it } from 'vitest';
import { isEmptyBox } from '../../../src/geometry/box.js';
import { codesOf, resolveBody, shapeOf, xywh } from './resolve-text.js';

const R = '<rect id="r" x="0" y="0" width="100" height="50"/>';

function drawn(clip: string, body: string): readonly number[] | null {
  const shape = shapeOf(resolveBody(`<defs>${clip}</defs>${body}`), 'r');
  expect(xywh(shape.fillBox)).not.toEqual([]);
  return isEmptyBox(shape.drawnBox) ? null : xywh(shape.drawnBox);
}

const clipped = (attributes = '') => R.replace('/>', ` clip-path="url(#c)" ${attributes}/>`);

describe('a clip path', () => {
  it.each([
    ['cuts', '<clipPath id="c"><rect x="10" y="10" width="20" height="300"/></clipPath>', clipped(), [10, 10, 20, 40]],
    [
      'counts its stroke for nothing',
      '<clipPath id="c"><circle cx="50" cy="25" r="10" stroke="red" stroke-width="9"/></clipPath>',
      clipped(),
      [40, 15, 20, 20],
    ],
    [
      'is the union of its children',
      '<clipPath id="c"><rect x="10" y="10" width="5" height="5"/><rect x="30" y="20" width="5" height="5"/></clipPath>',
      clipped(),
      [10, 10, 25, 15],
    ],
    [
      'has transforms of its own and of its children',
      '<clipPath id="c" transform="translate(10 0)"><rect width="10" height="10" transform="scale(2)"/></clipPath>',
      clipped(),
      [10, 0, 20, 20],
    ],
    [
      'moves with what it cuts',
      '<clipPath id="c"><rect width="10" height="10"/></clipPath>',
      `<g transform="translate(5 5)" clip-path="url(#c)">${R}</g>`,
      [5, 5, 10, 10],
    ],
    [
      'moves with the transform of what it cuts',
      '<clipPath id="c"><rect width="10" height="10"/></clipPath>',
      clipped('transform="translate(5 5)"'),
      [5, 5, 10, 10],
    ],
    [
      'is exact in a turned frame',
      '<clipPath id="c"><circle cx="0" cy="0" r="10"/></clipPath>',
      `<g transform="rotate(45)">${clipped().replace('x="0" y="0"', 'x="-50" y="-25"')}</g>`,
      [-10, -10, 20, 20],
    ],
    [
      'stands in shares of the box',
      '<clipPath id="c" clipPathUnits="objectBoundingBox"><rect x="0.5" y="0" width="0.25" height="0.5"/></clipPath>',
      clipped(),
      [50, 0, 25, 25],
    ],
    [
      'stands in shares of the box of a group',
      '<clipPath id="c" clipPathUnits="objectBoundingBox"><rect x="0.5" width="0.5" height="1"/></clipPath>',
      `<g clip-path="url(#c)">${R}<rect x="100" width="100" height="5"/></g>`,
      null,
    ],
    [
      'is cut by a clip path of its own',
      '<clipPath id="d"><rect width="15" height="15"/></clipPath><clipPath id="c" clip-path="url(#d)"><rect x="10" width="20" height="20"/></clipPath>',
      clipped(),
      [10, 0, 5, 15],
    ],
    [
      'has children that are clipped',
      '<clipPath id="d"><rect width="15" height="15"/></clipPath><clipPath id="c"><rect x="10" width="20" height="20" clip-path="url(#d)"/></clipPath>',
      clipped(),
      [10, 0, 5, 15],
    ],
    [
      'can use a shape',
      '<rect id="s" width="10" height="10"/><clipPath id="c"><use href="#s" x="20" y="5"/></clipPath>',
      clipped(),
      [20, 5, 10, 10],
    ],
    [
      'cannot use a group',
      '<g id="s"><rect width="10" height="10"/></g><clipPath id="c"><use href="#s"/></clipPath>',
      clipped(),
      null,
    ],
    ['leaves nothing when empty', '<clipPath id="c"/>', clipped(), null],
    [
      'passes over hidden children',
      '<clipPath id="c"><rect width="90" height="90" display="none"/><rect width="80" height="80" visibility="hidden"/><rect width="9" height="9"/></clipPath>',
      clipped(),
      [0, 0, 9, 9],
    ],
    ['of type bounds nothing', '<clipPath id="c"><text>a</text></clipPath>', clipped(), [0, 0, 100, 50]],
    [
      'applies to a use after its x and y',
      '<clipPath id="c"><rect width="10" height="10"/></clipPath>',
      `<defs>${R}</defs><use href="#r" x="7" y="3" clip-path="url(#c)"/>`,
      [7, 3, 10, 10],
    ],
    [
      'applies to the box of a use',
      '<clipPath id="c" clipPathUnits="objectBoundingBox"><rect width="0.1" height="0.1"/></clipPath>',
      `<defs>${R}</defs><use href="#r" x="7" y="3" clip-path="url(#c)"/>`,
      [7, 3, 10, 5],
    ],
  ])('%s', (_, clip, body, box) => {
    expect(drawn(clip, body)).toEqual(box);
  });

  it('that leaves nothing leaves nothing drawn', () => {
    const artwork = resolveBody(`<clipPath id="c"><rect x="500" width="5" height="5"/></clipPath>${clipped()}`);
    expect(shapeOf(artwork, 'r').draws).toBe(false);
    expect(xywh(shapeOf(artwork, 'r').fillBox)).toEqual([0, 0, 100, 50]);
  });

  it('that is missing, or none, cuts nothing', () => {
    const artwork = resolveBody(clipped());
    expect(xywh(shapeOf(artwork, 'r').drawnBox)).toEqual([0, 0, 100, 50]);
    expect(codesOf(artwork)).toEqual(['resolve/reference-missing']);
    expect(drawn('<mask id="c"/>', clipped())).toEqual([0, 0, 100, 50]);
  });

  it('cut by too many others is refused, before the stack ends', () => {
    const chain = (count: number): string =>
      Array.from(
        { length: count },
        (_, i) => `<clipPath id="c${i}" clip-path="url(#c${i + 1})"><rect width="9" height="9"/></clipPath>`,
      ).join('');
    const file = (count: number): string => `${chain(count)}<rect width="9" height="9" clip-path="url(#c0)"/>`;
    expect(codesOf(resolveBody(file(250)))).toEqual(['resolve/reference-missing']);
    expect(() => resolveBody(file(5_000))).toThrowError(expect.objectContaining({ code: 'limit/depth' }));
  });

  it('in a circle is not followed', () => {
    const artwork = resolveBody(
      `<clipPath id="c" clip-path="url(#c)"><rect width="9" height="9"/></clipPath>${clipped()}`,
    );
    expect(xywh(shapeOf(artwork, 'r').drawnBox)).toEqual([0, 0, 9, 9]);
    expect(codesOf(artwork)).toEqual(['resolve/reference-cycle']);
  });
});
