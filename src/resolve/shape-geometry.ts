// The geometry of shape elements as paths.
import type { PathData } from '../geometry/path-data.js';
import { ellipsePath, linePath, rectPath } from '../geometry/shape-path.js';
import { encodeUtf8 } from '../model/platform.js';
import { attributeIsPlain, readAttribute } from '../source/read-attribute.js';
import { SLOT, type Slot } from './attribute-slots.js';
import type { GeometryGrounds, Setting } from './drawing.js';
import * as code from './element-codes.js';
import { type Axis, findLength } from './read-lengths.js';

const NO_PATH: PathData = {
  ops: new Uint8Array(0),
  opCount: 0,
  coords: new Float64Array(0),
  coordCount: 0,
  errorAt: -1,
};
const CSS_PATH = /^\s*path\(\s*(?:(?:nonzero|evenodd)\s*,\s*)?(?:"([^"]*)"|'([^']*)')\s*\)\s*$/i;

/** Reads path data from an attribute, as bytes where they say what the value says. */
function readPathAttribute(grounds: GeometryGrounds, attribute: number, isClosed: boolean | null): PathData {
  const { source, reader } = grounds;
  const { valueStart, valueEnd } = source.elements.attributes;
  const read = (bytes: Uint8Array, start: number, end: number): PathData =>
    isClosed === null ? reader.read(bytes, start, end) : reader.readPoints(bytes, start, end, isClosed);
  const path = read(source.text, valueStart[attribute]!, valueEnd[attribute]!);
  if (path.errorAt < 0 || attributeIsPlain(source, attribute)) return path;
  const bytes = encodeUtf8(readAttribute(source, attribute));
  return read(bytes, 0, bytes.length);
}

function readPath(grounds: GeometryGrounds, row: number, setting: Setting): PathData {
  const css = setting.style.geometry.d;
  if (css !== null) {
    const match = CSS_PATH.exec(css);
    const bytes = encodeUtf8(match?.[1] ?? match?.[2] ?? '');
    return grounds.reader.read(bytes, 0, bytes.length);
  }
  const attribute = grounds.slots.find(row, SLOT.d);
  return attribute < 0 ? NO_PATH : readPathAttribute(grounds, attribute, null);
}

function readPoints(grounds: GeometryGrounds, row: number, isClosed: boolean): PathData {
  const attribute = grounds.slots.find(row, SLOT.points);
  return attribute < 0 ? NO_PATH : readPathAttribute(grounds, attribute, isClosed);
}

/** Where an image, a foreignObject, a nested svg, a rect or a use stands; null where a side is not said. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number | null;
  readonly height: number | null;
}

/** Reads x, y, width and height. */
export function readRectangle(grounds: GeometryGrounds, row: number, setting: Setting): Rectangle {
  const css = setting.style.geometry;
  return {
    x: findLength(grounds, setting, { row, slot: SLOT.x, axis: 'x', css: css.x }) ?? 0,
    y: findLength(grounds, setting, { row, slot: SLOT.y, axis: 'y', css: css.y }) ?? 0,
    width: findLength(grounds, setting, { row, slot: SLOT.width, axis: 'x', css: css.width }),
    height: findLength(grounds, setting, { row, slot: SLOT.height, axis: 'y', css: css.height }),
  };
}

/** Radii where a missing or negative one follows the other. @source SVG 2, sections 10.2 and 10.4 */
function readRadii(grounds: GeometryGrounds, row: number, setting: Setting): readonly [number, number] {
  const css = setting.style.geometry;
  const rx = findLength(grounds, setting, { row, slot: SLOT.rx, axis: 'x', css: css.rx });
  const ry = findLength(grounds, setting, { row, slot: SLOT.ry, axis: 'y', css: css.ry });
  const isGiven = (radius: number | null): radius is number => radius !== null && radius >= 0;
  return [isGiven(rx) ? rx : isGiven(ry) ? ry : 0, isGiven(ry) ? ry : isGiven(rx) ? rx : 0];
}

function readRect(grounds: GeometryGrounds, row: number, setting: Setting): PathData {
  const { x, y, width, height } = readRectangle(grounds, row, setting);
  const [rx, ry] = readRadii(grounds, row, setting);
  return rectPath(x, y, width ?? 0, height ?? 0, rx, ry);
}

function readRound(grounds: GeometryGrounds, row: number, setting: Setting, isCircle: boolean): PathData {
  const css = setting.style.geometry;
  const cx = findLength(grounds, setting, { row, slot: SLOT.cx, axis: 'x', css: css.cx }) ?? 0;
  const cy = findLength(grounds, setting, { row, slot: SLOT.cy, axis: 'y', css: css.cy }) ?? 0;
  if (isCircle) {
    const r = findLength(grounds, setting, { row, slot: SLOT.r, axis: 'diagonal', css: css.r }) ?? 0;
    return ellipsePath(cx, cy, r, r);
  }
  const [rx, ry] = readRadii(grounds, row, setting);
  return ellipsePath(cx, cy, rx, ry);
}

function readLine(grounds: GeometryGrounds, row: number, setting: Setting): PathData {
  const read = (slot: Slot, axis: Axis): number => findLength(grounds, setting, { row, slot, axis, css: null }) ?? 0;
  return linePath(read(SLOT.x1, 'x'), read(SLOT.y1, 'y'), read(SLOT.x2, 'x'), read(SLOT.y2, 'y'));
}

/**
 * The geometry of a shape element in its own user units.
 *
 * @returns A path that lives until the next call; empty for text, for a size of zero, and where nothing is said.
 * @throws Never. Lengths that cannot be read are noted; `errorAt` of the path says where path data is broken.
 * @source SVG 2, chapters 9 and 10
 */
export function readGeometry(grounds: GeometryGrounds, row: number, kind: number, setting: Setting): PathData {
  switch (kind) {
    case code.PATH:
      return readPath(grounds, row, setting);
    case code.RECT:
      return readRect(grounds, row, setting);
    case code.CIRCLE:
      return readRound(grounds, row, setting, true);
    case code.ELLIPSE:
      return readRound(grounds, row, setting, false);
    case code.LINE:
      return readLine(grounds, row, setting);
    case code.POLYLINE:
      return readPoints(grounds, row, false);
    case code.POLYGON:
      return readPoints(grounds, row, true);
    case code.IMAGE:
    case code.FOREIGN_OBJECT: {
      const { x, y, width, height } = readRectangle(grounds, row, setting);
      return rectPath(x, y, width ?? 0, height ?? 0, 0, 0);
    }
    default:
      return NO_PATH;
  }
}

/** Whether a filled path can cover any area: a curve, or two lines one after the other, in one subpath. */
export function canEncloseArea(path: PathData): boolean {
  let lines = 0;
  for (let i = 0; i < path.opCount; i += 1) {
    const op = path.ops[i]!;
    if (op === 2 || op === 3 || op === 4) return true;
    lines = op === 1 ? lines + 1 : 0;
    if (lines > 1) return true;
  }
  return false;
}
