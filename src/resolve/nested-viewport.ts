// Viewports inside the drawing: nested svg elements and symbols.
import { type Matrix, multiply } from '../geometry/matrix.js';
import { readAttribute } from '../source/read-attribute.js';
import { SLOT } from './attribute-slots.js';
import type { Drawing, Setting, Viewport } from './drawing.js';
import { SYMBOL } from './element-codes.js';
import { readLength } from './length.js';
import { readRectangle } from './shape-geometry.js';
import { fitViewBox, readViewBox } from './view-box.js';

/** Width and height that a use gives to what it draws; null where it gives none. */
export interface UseSize {
  readonly width: number | null;
  readonly height: number | null;
}

/** A nested viewport, ready for its content. */
export interface NestedViewport {
  /** From the user units of the content to those around the element. */
  readonly matrix: Matrix;
  readonly viewport: Viewport;
  /** From the frame of the viewport's rectangle, whose corner is (0, 0), to the user units around the element. */
  readonly frame: Matrix;
  readonly width: number;
  readonly height: number;
}

function readText(drawing: Drawing, row: number, slot: (typeof SLOT)[keyof typeof SLOT]): string | null {
  const attribute = drawing.slots.find(row, slot);
  return attribute < 0 ? null : readAttribute(drawing.source, attribute);
}

const WORDS: Readonly<Record<string, number>> = { left: 0, top: 0, center: 0.5, right: 1, bottom: 1 };

/** The reference point of a symbol along one axis, or null where none is said. */
function readReferencePoint(text: string | null, start: number, size: number, setting: Setting): number | null {
  if (text === null) return null;
  const share = WORDS[text.trim()];
  if (share !== undefined) return start + share * size;
  return readLength(text, { fontSize: setting.style.fontSize, percentBase: size });
}

/** Moves a symbol so that its reference point lies on the corner. @source SVG 2, section 5.5 */
function alignSymbol(drawing: Drawing, row: number, setting: Setting, inner: Matrix, box: readonly number[]): Matrix {
  const x = readReferencePoint(readText(drawing, row, SLOT.refX), box[0]!, box[2]!, setting);
  const y = readReferencePoint(readText(drawing, row, SLOT.refY), box[1]!, box[3]!, setting);
  const dx = x === null ? 0 : 0 - (inner[0] * x + inner[4]);
  const dy = y === null ? 0 : 0 - (inner[3] * y + inner[5]);
  return dx === 0 && dy === 0 ? [1, 0, 0, 1, 0, 0] : [1, 0, 0, 1, dx, dy];
}

/**
 * Opens the viewport of a nested svg or of a symbol that a use draws.
 *
 * @param size - What the use gives; it beats the element's own width and height.
 * @returns Null where nothing of it is drawn: a side of zero, or a viewBox with a side of zero.
 * @source SVG 2, sections 5.5, 5.6, 8.2, 8.6 and 8.8
 */
export function openViewport(
  drawing: Drawing,
  row: number,
  setting: Setting,
  size: UseSize | null,
): NestedViewport | null {
  const around = setting.viewport;
  const stated = readRectangle(drawing, row, setting);
  const sideOf = (given: number | null, own: number | null, whole: number): number => {
    const side = given !== null && given >= 0 ? given : own;
    if (side !== null && side >= 0) return side;
    if (around.isOuter) drawing.notes.usesPercent = true;
    return whole;
  };
  const width = sideOf(size?.width ?? null, stated.width, around.width);
  const height = sideOf(size?.height ?? null, stated.height, around.height);
  if (width === 0 || height === 0) return null;
  const text = readText(drawing, row, SLOT.viewBox);
  const reading = text === null ? null : readViewBox(text);
  if (reading?.kind === 'zero') return null;
  if (reading?.kind === 'invalid') drawing.log.note('resolve/view-box-invalid', text!, row);
  const box = reading?.kind === 'box' ? reading.box : null;
  const preserve = readText(drawing, row, SLOT.preserveAspectRatio) ?? '';
  const inner: Matrix = box === null ? [1, 0, 0, 1, 0, 0] : fitViewBox(box, { width, height }, preserve);
  const isSymbol = drawing.codes[drawing.source.elements.name[row]!] === SYMBOL;
  let frame: Matrix = [1, 0, 0, 1, stated.x, stated.y];
  if (isSymbol) frame = multiply(frame, alignSymbol(drawing, row, setting, inner, box ?? [0, 0, width, height]));
  const viewport: Viewport = { width: box?.[2] ?? width, height: box?.[3] ?? height, isOuter: false };
  return { matrix: multiply(frame, inner), viewport, frame, width, height };
}
