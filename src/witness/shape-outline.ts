// The outline of a shape element as a path in its own user units.
import type { PathData, PathReader } from '../geometry/path-data.js';
import { ellipsePath, linePath, rectPath } from '../geometry/shape-path.js';
import { encodeUtf8 } from '../model/platform.js';
import { readOwnLength, type Viewport } from './own-matrix.js';
import { attributeOf, type WitnessElement } from './read-tree.js';

/** Kinds that draw by themselves. */
export const SHAPE_KINDS: ReadonlySet<string> = new Set([
  'path',
  'rect',
  'circle',
  'ellipse',
  'line',
  'polyline',
  'polygon',
  'text',
  'image',
]);

/** Kinds whose content is never drawn where it stands (SVG 2, chapter 5). */
export const UNDRAWN_KINDS: ReadonlySet<string> = new Set([
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'pattern',
  'marker',
  'linearGradient',
  'radialGradient',
  'filter',
  'style',
  'script',
  'title',
  'desc',
  'metadata',
  'hatch',
  'font',
  'glyph',
  'missing-glyph',
]);

type Axis = 'x' | 'y' | 'both';

function lengthOf(element: WitnessElement, name: string, viewport: Viewport, axis: Axis): number | null {
  const { width, height } = viewport;
  if (axis === 'x') return readOwnLength(attributeOf(element, name), width);
  if (axis === 'y') return readOwnLength(attributeOf(element, name), height);
  return readOwnLength(attributeOf(element, name), Math.sqrt((width * width + height * height) / 2));
}

function outlineRect(element: WitnessElement, viewport: Viewport): PathData {
  const read = (name: string, axis: Axis): number | null => lengthOf(element, name, viewport, axis);
  const rx = read('rx', 'x');
  const ry = read('ry', 'y');
  return rectPath(
    read('x', 'x') ?? 0,
    read('y', 'y') ?? 0,
    read('width', 'x') ?? 0,
    read('height', 'y') ?? 0,
    rx ?? ry ?? 0,
    ry ?? rx ?? 0,
  );
}

function outlineRound(element: WitnessElement, viewport: Viewport): PathData {
  const read = (name: string, axis: Axis): number | null => lengthOf(element, name, viewport, axis);
  const cx = read('cx', 'x') ?? 0;
  const cy = read('cy', 'y') ?? 0;
  if (element.kind === 'circle') {
    const r = read('r', 'both') ?? 0;
    return ellipsePath(cx, cy, r, r);
  }
  const rx = read('rx', 'x');
  const ry = read('ry', 'y');
  return ellipsePath(cx, cy, rx ?? ry ?? 0, ry ?? rx ?? 0);
}

/** The first number of a list of lengths. */
function firstLength(element: WitnessElement, name: string, whole: number): number {
  return readOwnLength((attributeOf(element, name) ?? '0').trim().split(/[\s,]+/)[0] ?? '0', whole) ?? 0;
}

function outlineText(element: WitnessElement, viewport: Viewport): PathData {
  const x = firstLength(element, 'x', viewport.width);
  const y = firstLength(element, 'y', viewport.height);
  return linePath(x, y, x, y);
}

/**
 * The outline of a shape, valid until the next call; text yields its anchor, an image its rectangle.
 *
 * @unit the shape's user units
 * @source SVG 2, chapters 9 and 10
 */
export function outlineShape(element: WitnessElement, viewport: Viewport, reader: PathReader): PathData {
  const readList = (name: string): Uint8Array => encodeUtf8(attributeOf(element, name) ?? '');
  switch (element.kind) {
    case 'path': {
      const bytes = readList('d');
      return reader.read(bytes, 0, bytes.length);
    }
    case 'polyline':
    case 'polygon': {
      const bytes = readList('points');
      return reader.readPoints(bytes, 0, bytes.length, element.kind === 'polygon');
    }
    case 'circle':
    case 'ellipse':
      return outlineRound(element, viewport);
    case 'line': {
      const read = (name: string, axis: Axis): number => lengthOf(element, name, viewport, axis) ?? 0;
      return linePath(read('x1', 'x'), read('y1', 'y'), read('x2', 'x'), read('y2', 'y'));
    }
    case 'text':
      return outlineText(element, viewport);
    default:
      return outlineRect(element, viewport);
  }
}
