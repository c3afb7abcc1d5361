// The transform of one element, from CSS or its attribute, about its origin.
import { isEmptyBox } from '../geometry/box.js';
import { IDENTITY, type Matrix, multiply } from '../geometry/matrix.js';
import { readTransformList } from '../geometry/transform-list.js';
import { readAttribute } from '../source/read-attribute.js';
import { SLOT } from './attribute-slots.js';
import { readCssTransform, readTransformOrigin } from './css-transform.js';
import type { Drawing, Setting } from './drawing.js';
import { notePercent } from './read-lengths.js';

interface Reference {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The matrix of the `transform` attribute; the identity where there is none or it cannot be read. */
function readTransformAttribute(drawing: Drawing, row: number, attribute: number): Matrix {
  if (attribute < 0) return IDENTITY;
  const text = readAttribute(drawing.source, attribute);
  let matrix = drawing.transforms.get(text);
  if (matrix === undefined) {
    matrix = readTransformList(text);
    drawing.transforms.set(text, matrix);
  }
  if (matrix === null) drawing.log.note('resolve/transform-invalid', text, row);
  return matrix ?? IDENTITY;
}

/** The box that percentages and the origin refer to. @source CSS Transforms 1, section 9 */
function referenceBox(drawing: Drawing, row: number, setting: Setting): Reference {
  const { transformBox } = setting.style;
  if (transformBox === 'view-box')
    return { x: 0, y: 0, width: setting.viewport.width, height: setting.viewport.height };
  const hasStroke = transformBox === 'stroke-box' || transformBox === 'border-box';
  const box = drawing.measureObject(row, setting, hasStroke ? 'stroke' : 'fill');
  if (isEmptyBox(box)) return { x: 0, y: 0, width: 0, height: 0 };
  return { x: box.x0, y: box.y0, width: box.x1 - box.x0, height: box.y1 - box.y0 };
}

function readCss(drawing: Drawing, row: number, text: string | null, setting: Setting, reference: Reference): Matrix {
  if (text === null) return IDENTITY;
  if (setting.style.transformBox === 'view-box') notePercent(drawing, text, setting.viewport);
  const matrix = readCssTransform(text, reference, setting.style.fontSize);
  if (matrix === null) drawing.log.note('resolve/transform-invalid', text, row);
  return matrix ?? IDENTITY;
}

function applyOrigin(drawing: Drawing, matrix: Matrix, setting: Setting, reference: Reference): Matrix {
  const { style, viewport } = setting;
  const text = style.transformOrigin ?? '0 0';
  const inBox = style.transformBox === 'view-box';
  if (inBox && viewport.isOuter && /%|center|right|bottom|top|left/.test(text)) drawing.notes.usesPercent = true;
  const [x, y] = readTransformOrigin(text, reference, style.fontSize) ?? [reference.x, reference.y];
  if (x === 0 && y === 0) return matrix;
  return multiply(multiply([1, 0, 0, 1, x, y], matrix), [1, 0, 0, 1, 0 - x, 0 - y]);
}

/**
 * The matrix from the user units of an element to the frame that `outer` leads to.
 *
 * CSS beats the attribute. `border-box` is the stroke bounding box and `content-box` the object bounding box.
 *
 * @returns `outer` itself where the element has no transform.
 * @source CSS Transforms 1, sections 5 to 9
 */
export function applyTransform(drawing: Drawing, row: number, setting: Setting, outer: Matrix): Matrix {
  const { style } = setting;
  const attribute = drawing.slots.find(row, SLOT.transform);
  const hasCss = style.transform !== null || style.transformBefore !== null;
  if (attribute < 0 && !hasCss) return outer;
  if (!hasCss && style.transformOrigin === null && style.transformBox === 'view-box') {
    return multiply(outer, readTransformAttribute(drawing, row, attribute));
  }
  const reference = referenceBox(drawing, row, setting);
  const before = readCss(drawing, row, style.transformBefore, setting, reference);
  const own =
    style.transform === null
      ? readTransformAttribute(drawing, row, attribute)
      : readCss(drawing, row, style.transform, setting, reference);
  return multiply(outer, applyOrigin(drawing, multiply(before, own), setting, reference));
}
