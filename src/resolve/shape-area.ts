// What a resolved shape covers, read again.
import { type Area, areaOf } from '../geometry/area.js';
import { type Box, transformBox } from '../geometry/box.js';
import { flattenPath } from '../geometry/flatten-path.js';
import { IDENTITY, type Matrix } from '../geometry/matrix.js';
import { FLATTEN_PX } from '../geometry/outline.js';
import { rectPath } from '../geometry/shape-path.js';
import type { Artwork, PaintSource, Shape } from '../model/artwork.js';
import type { Part } from '../model/pass.js';
import { invariant } from '../model/trouble.js';
import { readText } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';
import { FOREIGN_OBJECT, IMAGE, TEXT } from './element-codes.js';
import { isResolved } from './resolve.js';
import { isResolvedShape, type ResolvedShape } from './resolved-shape.js';
import { canEncloseArea, readGeometry } from './shape-geometry.js';

/** The greatest factor by which a matrix stretches a length. */
function greatestScale([a, b, c, d]: Matrix): number {
  return (Math.hypot(a + d, b - c) + Math.hypot(a - d, b + c)) / 2;
}

/** How wide a character is taken to be, and how far type reaches above and below its line; in sizes of its font. */
const TYPE_WIDTH = 0.7;
const WIDE_TYPE = 1.1;
const TYPE_ABOVE = 1;
const TYPE_BELOW = 0.3;

const FIRST_WIDE = 0x2e80;
/** Scripts that run from right to left. */
const LEFTWARDS = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff]/;

/** How far type may reach from its anchor, in user units: to the left, to the right. */
function typeReach(source: Source, shape: ResolvedShape): readonly [number, number] {
  const text = readText(source, shape.element).replace(/\s+/g, ' ').trim();
  let length = 0;
  for (const character of text) length += character.codePointAt(0)! < FIRST_WIDE ? TYPE_WIDTH : WIDE_TYPE;
  const { fontSize, textAnchor } = shape.setting.style;
  const whole = length * fontSize;
  const { elements } = source;
  const hasParts = elements.next[shape.element]! > shape.element + 1;
  if (hasParts || LEFTWARDS.test(text)) return [whole, whole];
  if (textAnchor === 'middle') return [whole / 2, whole / 2];
  return textAnchor === 'end' ? [whole, 0] : [0, whole];
}

/** Where type may stand: around its anchors, as far as its characters could reach. */
function typeBox(source: Source, shape: ResolvedShape): Box {
  const { fontSize } = shape.setting.style;
  const [left, right] = typeReach(source, shape);
  const [a, b, c, d] = shape.matrix;
  const local = { x0: -left, y0: -TYPE_ABOVE * fontSize, x1: right, y1: TYPE_BELOW * fontSize };
  const reach = transformBox([a, b, c, d, 0, 0], local);
  const { x0, y0, x1, y1 } = shape.fillBox;
  return { x0: x0 + reach.x0, y0: y0 + reach.y0, x1: x1 + reach.x1, y1: y1 + reach.y1 };
}

/** Whether a paint is sure to leave nothing. */
function isUnseen(paint: PaintSource, opacity: number): boolean {
  return paint.kind === 'none' || !(opacity > 0) || (paint.kind === 'colour' && paint.colour.alpha === 0);
}

/**
 * What a part of a shape covers on the artboard. A picture covers its rectangle; type is estimated by the count of its characters.
 *
 * @param artwork - Made from `source` by `resolve`, and the shape is one of its own.
 * @unit px
 * @accuracy Curves within `FLATTEN_PX`; a line that is stretched unevenly counts as wide as at its widest.
 */
export function shapeArea(source: Source, artwork: Artwork, shape: Shape, part: Part): Area {
  invariant(
    isResolved(artwork) && isResolvedShape(shape),
    'a shape is asked what it covers that was not resolved here',
  );
  const { geometry } = artwork;
  const code = geometry.codes[source.elements.name[shape.element]!]!;
  const { paint, matrix, setting } = shape;
  if (code === TEXT) {
    const { x0, y0, x1, y1 } = typeBox(source, shape);
    const path = rectPath(x0, y0, x1 - x0, y1 - y0, 0, 0);
    return areaOf(flattenPath(path, IDENTITY, FLATTEN_PX), {
      fillRule: 'nonzero',
      reach: 0,
      miterlimit: 0,
      isSquare: false,
    });
  }
  const path = readGeometry(geometry, shape.element, code, setting);
  const isRectangle = code === IMAGE || code === FOREIGN_OBJECT;
  const isFilled = part !== 'stroke' && !isUnseen(paint.fill, paint.fillOpacity) && canEncloseArea(path);
  const isStroked = part !== 'fill' && !isUnseen(paint.stroke, paint.strokeOpacity) && !isRectangle;
  const scale = paint.nonScalingStroke ? 1 : greatestScale(matrix);
  return areaOf(flattenPath(path, matrix, FLATTEN_PX), {
    fillRule: isRectangle ? 'nonzero' : isFilled ? paint.fillRule : null,
    reach: isStroked ? (scale * paint.strokeWidth) / 2 : 0,
    miterlimit: paint.strokeLinejoin === 'miter' ? paint.strokeMiterlimit : 0,
    isSquare: paint.strokeLinecap === 'square',
  });
}
