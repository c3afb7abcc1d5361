// Where live type is anchored, and what it is set in.
import { type Box, EMPTY_BOX, unite } from '../geometry/box.js';
import { type Matrix, multiply } from '../geometry/matrix.js';
import { pathBox } from '../geometry/path-box.js';
import { readAttribute, readText } from '../source/read-attribute.js';
import { SLOT, type Slot } from './attribute-slots.js';
import type { Drawing, Setting } from './drawing.js';
import { isShapeCode, LINK, TEXT, TEXT_PART } from './element-codes.js';
import { readLength } from './length.js';
import { applyTransform } from './own-transform.js';
import { type Axis, notePercent, percentBase } from './read-lengths.js';
import { readGeometry } from './shape-geometry.js';
import { readReferenceId } from './uses.js';

/** Rows of a text and of the parts in it that are shown. */
export function listParts(drawing: Drawing, text: number): readonly number[] {
  const { next, name } = drawing.source.elements;
  const parts: number[] = [text];
  for (let row = text + 1; row < next[text]!; ) {
    const code = drawing.codes[name[row]!]!;
    const isShown = (code === TEXT_PART || code === LINK) && drawing.styles[row]!.display !== 'none';
    if (isShown) parts.push(row);
    row = isShown ? row + 1 : next[row]!;
  }
  return parts;
}

/** Families of a text that has any characters; null where it has none. */
export function readFamilies(drawing: Drawing, text: number, setting: Setting): readonly string[] | null {
  const families = new Set<string>();
  for (const row of listParts(drawing, text)) {
    if (readText(drawing.source, row).trim() === '') continue;
    families.add((row === text ? setting.style : drawing.styles[row]!).fontFamily);
  }
  return families.size === 0 ? null : [...families];
}

function readPositions(drawing: Drawing, row: number, slot: Slot, setting: Setting): readonly number[] {
  const attribute = drawing.slots.find(row, slot);
  if (attribute < 0) return [];
  const text = readAttribute(drawing.source, attribute);
  notePercent(drawing, text, setting.viewport);
  const axis: Axis = slot === SLOT.x ? 'x' : 'y';
  const { fontSize, rootFontSize } = setting.style;
  const context = { fontSize, rootFontSize, percentBase: percentBase(setting.viewport, axis) };
  const values: number[] = [];
  for (const part of text.split(/[\s,]+/)) {
    const value = part === '' ? null : readLength(part, context);
    if (value === null && part !== '') drawing.log.note('resolve/length-invalid', part, row);
    if (value !== null) values.push(value);
  }
  return values;
}

/** The box of the path that a textPath runs along, or the empty box. */
function textPathBox(drawing: Drawing, row: number, setting: Setting, matrix: Matrix): Box {
  const id = readReferenceId(drawing, row);
  const target = id === null ? undefined : drawing.ids.get(id);
  if (target === undefined) return EMPTY_BOX;
  const code = drawing.codes[drawing.source.elements.name[target]!]!;
  if (!isShapeCode(code) || code === TEXT) return EMPTY_BOX;
  const along: Setting = { style: drawing.styles[target]!, viewport: setting.viewport };
  const frame = applyTransform(drawing, target, along, [1, 0, 0, 1, 0, 0]);
  return pathBox(readGeometry(drawing, target, code, along), multiply(matrix, frame));
}

/**
 * The box around the points a text is anchored at: its own x and y, those of its parts, and the paths it runs along.
 * Glyphs are not measured.
 *
 * @unit target space of the matrix
 */
export function anchorBox(drawing: Drawing, text: number, setting: Setting, matrix: Matrix): Box {
  const [a, b, c, d, e, f] = matrix;
  let box: Box = EMPTY_BOX;
  let x = 0;
  let y = 0;
  for (const row of listParts(drawing, text)) {
    const isAlong = drawing.source.elements.names[drawing.source.elements.name[row]!]!.local === 'textPath';
    if (isAlong) box = unite(box, textPathBox(drawing, row, setting, matrix));
    const own: Setting = row === text ? setting : { style: drawing.styles[row]!, viewport: setting.viewport };
    const xs = readPositions(drawing, row, SLOT.x, own);
    const ys = readPositions(drawing, row, SLOT.y, own);
    const holdsType = row === text && readText(drawing.source, row).trim() !== '';
    const count = isAlong ? 0 : Math.max(xs.length, ys.length, holdsType ? 1 : 0);
    for (let i = 0; i < count; i += 1) {
      x = xs[i] ?? x;
      y = ys[i] ?? y;
      const px = a * x + c * y + e + 0;
      const py = b * x + d * y + f + 0;
      box = unite(box, { x0: px, y0: py, x1: px, y1: py });
    }
  }
  if (box !== EMPTY_BOX) return box;
  return { x0: e + 0, y0: f + 0, x1: e + 0, y1: f + 0 };
}
