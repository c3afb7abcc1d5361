// Marks as a written sheet holds them: where they lie, and whether they are drawn at all.
import { describe, expect, it } from 'vitest';
import { isEmptyBox } from '../../../src/geometry/box.js';
import { boxDistanceMm } from '../../../src/verify/judge-shapes.js';
import { type ReadMarks, readMarks } from '../../../src/verify/read-marks.js';
import { BOARD, boxOf } from './make-shape.js';
import { scanSvg } from './scan-svg.js';

function pin(declarations: string): string {
  return declarations
    .split(';')
    .map((declaration) => `${declaration}!important`)
    .join(';');
}

const SEEN = 'display:inline;visibility:visible;opacity:1;filter:none;mask:none;clip-path:none';
const GROUP = pin(`transform:matrix(2,0,0,2,10,20);transform-origin:0 0;transform-box:view-box;${SEEN}`);
const LOOK = `transform:none;fill-opacity:1;stroke-opacity:1;stroke-dasharray:none;vector-effect:none;${SEEN}`;
const LINE = pin(`${LOOK};stroke:#000000;stroke-width:0.5`);
const DISC = pin(`${LOOK};stroke:none;stroke-width:9`);
const MARKS = `<g id="pinbar-marks" transform="matrix(2 0 0 2 10 20)" style="${GROUP}"
  ><path data-mark="corner" d="M0 0H10V10M20 0H30" style="${LINE}"
  /><path data-mark="disc" d="M0 5A5 5 0 0 1 10 5A5 5 0 0 1 0 5Z" style="${DISC}"
  /><path data-mark="label" d="M-100 0H500" style="${LINE}"/></g>`;

function read(content: string, mmPerPx = 1): ReadMarks | null {
  return readMarks(scanSvg(content), { ...BOARD, mmPerPx });
}

function unlike(from: string, to: string): readonly string[] {
  expect(MARKS).toContain(from);
  return read(MARKS.replace(from, to))!.unlike;
}

describe('marks', () => {
  it('are read with the extent of each part, labels left out', () => {
    const marks = read(MARKS)!;
    expect(marks.unlike).toEqual([]);
    expect(marks.marks.map(({ name, partsMm }) => [name, partsMm.length])).toEqual([
      ['corner', 2],
      ['disc', 1],
      ['label', 0],
    ]);
    const boxes = marks.marks.flatMap((mark) => mark.partsMm);
    const wanted = [boxOf(10, 19.5, 20.5, 20.5), boxOf(50, 19.5, 20, 1), boxOf(10, 20, 20, 20)];
    wanted.forEach((box, i) => {
      expect(boxDistanceMm(box, 1, boxes[i]!, 1, 0)).toBeLessThan(1e-9);
    });
    expect(boxDistanceMm(marks.boxMm, 1, boxOf(10, 19.5, 60, 20.5), 1, 0)).toBeLessThan(1e-9);
  });

  it('are read in millimetres, through the artboard', () => {
    expect(read(MARKS, 0.5)!.boxMm.x1).toBeCloseTo(35, 9);
    const turned = readMarks(scanSvg(MARKS), { ...BOARD, matrix: [3, 0, 0, 1, 1, 0] })!;
    expect(turned.boxMm.x1).toBeCloseTo(211, 9);
  });

  it('are none where there is no such group below the root', () => {
    expect(read('<g id="other"/>')).toBeNull();
    expect(read('<path id="pinbar-marks"/>')).toBeNull();
    expect(read(`<g>${MARKS}</g>`)).toBeNull();
    expect(read('<g id="pinbar-marks"/>')?.marks).toEqual([]);
  });

  it('are found behind other groups', () => {
    expect(read(`<g><g/></g>${MARKS}`)?.marks).toHaveLength(3);
  });

  it('have nowhere to be where the place of the group cannot be read', () => {
    const marks = read(MARKS.replace('transform="matrix(2 0 0 2 10 20)"', 'transform="turn(3)"'))!;
    expect(isEmptyBox(marks.boxMm)).toBe(true);
    expect(marks.unlike).toEqual(['its marks lie elsewhere by style than by attribute']);
  });
});

describe('marks that are not drawn where they are read', () => {
  it.each([
    ['display:inline', 'display:none', 'display of its marks is "none" instead of "inline"'],
    ['visibility:visible', 'visibility:hidden', 'visibility of its marks is "hidden" instead of "visible"'],
    ['opacity:1', 'opacity:0', 'opacity of its marks is "0" instead of "1"'],
    ['filter:none', 'filter:url(#a)', 'filter of its marks is "url(#a)" instead of "none"'],
    ['mask:none', 'mask:url(#a)', 'mask of its marks is "url(#a)" instead of "none"'],
    ['clip-path:none', 'clip-path:url(#a)', 'clip-path of its marks is "url(#a)" instead of "none"'],
    ['transform-origin:0 0', 'transform-origin:5 5', 'transform-origin of its marks is "5 5" instead of "0 0"'],
    [
      'transform-box:view-box',
      'transform-box:fill-box',
      'transform-box of its marks is "fill-box" instead of "view-box"',
    ],
    ['display:inline!important', 'display:inline', 'display of its marks is "" instead of "inline"'],
    ['transform:none', 'transform:scale(2)', 'transform of its marks is "scale(2)" instead of "none"'],
    ['fill-opacity:1', 'fill-opacity:0', 'fill-opacity of its marks is "0" instead of "1"'],
    ['stroke-opacity:1', 'stroke-opacity:0', 'stroke-opacity of its marks is "0" instead of "1"'],
    ['stroke-dasharray:none', 'stroke-dasharray:1 2', 'stroke-dasharray of its marks is "1 2" instead of "none"'],
    ['vector-effect:none', 'vector-effect:x', 'vector-effect of its marks is "x" instead of "none"'],
    ['transform:matrix(2,0', 'transform:matrix(3,0', 'its marks lie elsewhere by style than by attribute'],
    ['transform:matrix(2,0,0,2,10,20)!important;', '', 'its marks lie elsewhere by style than by attribute'],
  ])('%s as %s', (from, to, said) => {
    expect(unlike(from, to)).toEqual([said]);
  });

  it('are told once, however many they are', () => {
    expect(read(MARKS.replaceAll('fill-opacity:1', 'fill-opacity:0'))!.unlike).toHaveLength(1);
  });
});
