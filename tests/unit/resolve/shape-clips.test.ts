// What clip paths let through, as outlines on the artboard.
import { describe, expect, it } from 'vitest';
import { signedArea } from '../../../src/geometry/outline.js';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { resolve } from '../../../src/resolve/resolve.js';
import { createClipReader } from '../../../src/resolve/shape-clips.js';
import { readSource } from '../../../src/source/read-source.js';

/** Areas of the parts of each clip around the first shape, px2, innermost clip first. */
function areas(defs: string, drawn: string): readonly (readonly number[])[] {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="100px" height="100px" viewBox="0 0 100 100"><defs>${defs}</defs>${drawn}</svg>`;
  const artwork = resolve(readSource(encodeUtf8(svg)));
  const read = createClipReader(artwork);
  const clips = read(artwork.shapes[0]!);
  expect(read(artwork.shapes[0]!)).toEqual(clips);
  return clips.map((clip) =>
    clip.map(({ outlines }) => Math.round(outlines.reduce((sum, { points }) => sum + Math.abs(signedArea(points)), 0))),
  );
}

const RECT = '<rect width="50" height="40"/>';
const square = (side: number): string => `<path d="M0 0H${side}V${side}H0Z"/>`;

describe('createClipReader', () => {
  it('gives the shapes of a clip path as parts of one clip', () => {
    const defs = `<clipPath id="c">${square(10)}${square(20)}</clipPath>`;
    expect(areas(defs, `<g clip-path="url(#c)">${RECT}</g>`)).toEqual([[100, 400]]);
  });

  it('lists nested clips from the inside out, and the clip on a clip path', () => {
    const defs = `<clipPath id="a">${square(10)}</clipPath><clipPath id="b" clip-path="url(#a)">${square(20)}</clipPath>`;
    expect(areas(defs, `<g clip-path="url(#a)"><g clip-path="url(#b)">${RECT}</g></g>`)).toEqual([[400], [100], [100]]);
  });

  it('maps the clip with what is clipped', () => {
    const defs = `<clipPath id="c" transform="scale(2)">${square(10)}</clipPath>`;
    expect(areas(defs, `<g transform="scale(3) rotate(30)" clip-path="url(#c)">${RECT}</g>`)).toEqual([[3600]]);
  });

  it('takes shares of the box of what is clipped', () => {
    const defs = '<clipPath id="c" clipPathUnits="objectBoundingBox"><path d="M0 0H.5V.5H0Z"/></clipPath>';
    expect(areas(defs, `<rect width="50" height="40" clip-path="url(#c)"/>`)).toEqual([[500]]);
  });

  it('draws uses and leaves out what is not shown', () => {
    const hidden = '<path d="M0 0H9V9H0Z" display="none"/><path d="M0 0H9V9H0Z" visibility="hidden"/><g>never</g>';
    const defs = `<path id="s" d="M0 0H10V10H0Z"/><clipPath id="c"><use href="#s" transform="scale(2)"/>${hidden}</clipPath>`;
    expect(areas(defs, `<g clip-path="url(#c)">${RECT}</g>`)).toEqual([[400]]);
  });

  it('lets everything through where type stands in it, nothing where it is empty', () => {
    expect(areas('<clipPath id="c"><text>Tea</text></clipPath>', `<g clip-path="url(#c)">${RECT}</g>`)).toEqual([]);
    expect(areas('<clipPath id="c"/>', `<g clip-path="url(#c)">${RECT}</g>`)).toEqual([[]]);
  });

  it('ends where clip paths name each other, and passes over names of nothing', () => {
    const defs = `<clipPath id="a" clip-path="url(#b)">${square(10)}</clipPath><clipPath id="b" clip-path="url(#a)">${square(20)}</clipPath>`;
    expect(areas(defs, `<g clip-path="url(#a)">${RECT}</g>`)).toEqual([[100], [400]]);
    expect(areas('', `<g clip-path="url(#none)">${RECT}</g>`)).toEqual([]);
  });
});
