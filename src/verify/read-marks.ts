// Reads the marks of a written sheet: what they are, where they are, and the extent they draw.
import { type Box, EMPTY_BOX, unite } from '../geometry/box.js';
import { type Matrix, multiply } from '../geometry/matrix.js';
import { pathBox } from '../geometry/path-box.js';
import { createPathReader } from '../geometry/path-data.js';
import { strokeBox } from '../geometry/stroke-box.js';
import { readTransformList } from '../geometry/transform-list.js';
import type { Artboard } from '../model/artwork.js';
import { encodeUtf8 } from '../model/platform.js';
import { readAttributeValue } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';

/** One drawn mark path. */
export interface ReadMark {
  readonly name: string;
  /** Extent with its stroke, mm from the artboard's top left. */
  readonly boxMm: Box;
}

/** The marks of one sheet; null where it has none. */
export interface ReadMarks {
  readonly marks: readonly ReadMark[];
  readonly boxMm: Box;
}

/** Row of the group of marks, or -1. */
function findMarks(sheet: Source): number {
  const { elements } = sheet;
  for (let row = 1; row < elements.count; row = elements.next[row]!) {
    if (elements.names[elements.name[row]!]!.local === 'g' && readAttributeValue(sheet, row, 'id') === 'pinbar-marks') {
      return row;
    }
  }
  return -1;
}

function declared(style: string, property: string): string {
  return new RegExp(`(?:^|;)${property}:([^;!]*)`).exec(style)?.[1] ?? '';
}

function scale(box: Box, factor: number): Box {
  return { x0: box.x0 * factor, y0: box.y0 * factor, x1: box.x1 * factor, y1: box.y1 * factor };
}

/** Reads the marks group of a sheet. */
export function readMarks(sheet: Source, artboard: Artboard): ReadMarks | null {
  const group = findMarks(sheet);
  if (group < 0) return null;
  const own = readTransformList(readAttributeValue(sheet, group, 'transform') ?? '');
  const matrix: Matrix = multiply(artboard.matrix, own ?? [Number.NaN, 0, 0, 1, 0, 0]);
  const reader = createPathReader();
  const marks: ReadMark[] = [];
  let boxMm = EMPTY_BOX;
  for (let row = group + 1; row < sheet.elements.next[group]!; row += 1) {
    const d = encodeUtf8(readAttributeValue(sheet, row, 'd') ?? '');
    const path = reader.read(d, 0, d.length);
    const style = readAttributeValue(sheet, row, 'style') ?? '';
    const width = declared(style, 'stroke') === 'none' ? 0 : Number(declared(style, 'stroke-width'));
    const box =
      width === 0
        ? pathBox(path, matrix)
        : strokeBox(path, matrix, { width, linecap: 'butt', linejoin: 'miter', miterlimit: 4 });
    const name = readAttributeValue(sheet, row, 'data-mark') ?? '';
    const mm = scale(box, artboard.mmPerPx);
    marks.push({ name, boxMm: mm });
    if (name !== 'label') boxMm = unite(boxMm, mm);
  }
  return { marks, boxMm };
}
