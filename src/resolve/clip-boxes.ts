// The boxes that clip paths leave.
import { type Box, EMPTY_BOX, intersect, isEmptyBox, transformBox, unite } from '../geometry/box.js';
import { IDENTITY, type Matrix, multiply } from '../geometry/matrix.js';
import { pathBox } from '../geometry/path-box.js';
import { PinbarError } from '../model/trouble.js';
import { placeOf } from '../source/locate.js';
import { isSvgElement, readAttribute } from '../source/read-attribute.js';
import { SLOT } from './attribute-slots.js';
import { canMeasureMore, countMeasured } from './count-measured.js';
import type { Drawing, Setting, Viewport } from './drawing.js';
import { isShapeCode, TEXT, USE } from './element-codes.js';
import { applyTransform } from './own-transform.js';
import { readGeometry, readRectangle } from './shape-geometry.js';
import type { Style } from './style.js';

/** A box that cuts nothing. */
export const UNBOUNDED: Box = { x0: -Infinity, y0: -Infinity, x1: Infinity, y1: Infinity };

/** What is clipped. */
export interface Clipped {
  readonly row: number;
  readonly setting: Setting;
  /** From the user units that a clip path in user space is drawn in to the artboard. */
  readonly user: Matrix;
  /** From the user units of the object bounding box to the artboard; another one only for a use. */
  readonly object: Matrix;
}

/** What is known of the clip paths of a file. */
export interface ClipCache {
  /** What a clip path's content covers in its own units, by viewport and row. */
  readonly contents: Map<Viewport, Map<number, Box>>;
  /** Clip paths being measured, for circles. */
  readonly open: Set<number>;
}

/** An empty cache. */
export function createClipCache(): ClipCache {
  return { contents: new Map(), open: new Set() };
}

function isInObjectUnits(drawing: Drawing, clip: number): boolean {
  const attribute = drawing.slots.find(clip, SLOT.clipPathUnits);
  return attribute >= 0 && readAttribute(drawing.source, attribute).trim() === 'objectBoundingBox';
}

/**
 * The box of what the clip path of an element lets through, on the artboard; unbounded where it is not clipped.
 *
 * A reference to nothing, or to something that is no clip path, clips nothing.
 *
 * @source CSS Masking 1, section 6
 */
export function clipBox(drawing: Drawing, cache: ClipCache, clipped: Clipped): Box {
  const id = clipped.setting.style.clipPath;
  if (id === null) return UNBOUNDED;
  const clip = drawing.ids.get(id);
  if (clip === undefined || !isSvgElement(drawing.source, clip, 'clipPath')) return UNBOUNDED;
  if (cache.open.has(clip)) {
    drawing.log.note('resolve/reference-cycle', String(clip), clip);
    return UNBOUNDED;
  }
  if (cache.open.size >= drawing.limits.depth) throw tooDeep(drawing, clip);
  cache.open.add(clip);
  const box = measureClip(drawing, cache, clip, clipped);
  cache.open.delete(clip);
  return box;
}

/** The frame that the content of a clip path is drawn in, to the artboard; null where it clips to nothing. */
export function clipFrame(drawing: Drawing, clip: number, clipped: Clipped): Matrix | null {
  const setting: Setting = { style: drawing.styles[clip]!, viewport: clipped.setting.viewport };
  const inObjectUnits = isInObjectUnits(drawing, clip);
  const frame = applyTransform(drawing, clip, setting, inObjectUnits ? clipped.object : clipped.user);
  if (!inObjectUnits) return frame;
  const box = drawing.measureObject(clipped.row, clipped.setting, 'fill');
  return isEmptyBox(box) ? null : multiply(frame, [box.x1 - box.x0, 0, 0, box.y1 - box.y0, box.x0, box.y0]);
}

function tooDeep(drawing: Drawing, clip: number): PinbarError {
  const place = placeOf(drawing.source, clip);
  return new PinbarError('limit/depth', {
    message: `The clip path at line ${place.line} is the last of more than ${drawing.limits.depth} that cut each other.`,
    remedy: 'Cut the shapes by one clip path, or raise the limit "depth" if the file is trusted.',
    place,
    data: { allowed: drawing.limits.depth },
  });
}

function measureClip(drawing: Drawing, cache: ClipCache, clip: number, clipped: Clipped): Box {
  const style = drawing.styles[clip]!;
  const setting: Setting = { style, viewport: clipped.setting.viewport };
  const frame = clipFrame(drawing, clip, clipped);
  if (frame === null) return EMPTY_BOX;
  const content = contentBox(drawing, cache, clip, { frame, viewport: setting.viewport, style: null });
  // A clip path on the clip path cuts it in the same frame.
  const own = { ...clipped, setting: { ...clipped.setting, style } };
  return style.clipPath === null ? content : intersect(content, clipBox(drawing, cache, own));
}

/** The content's box; in an upright frame it is measured once and carried over. */
function contentBox(drawing: Drawing, cache: ClipCache, clip: number, around: ClipFrame): Box {
  const [a, b, c, d] = around.frame;
  const isUpright = (b === 0 && c === 0) || (a === 0 && d === 0);
  if (!isUpright && canMeasureMore(drawing)) return uniteChildren(drawing, cache, clip, around);
  let known = cache.contents.get(around.viewport);
  if (known === undefined) {
    known = new Map();
    cache.contents.set(around.viewport, known);
  }
  let local = known.get(clip);
  if (local === undefined) {
    local = uniteChildren(drawing, cache, clip, { ...around, frame: IDENTITY });
    known.set(clip, local);
  }
  return isEmptyBox(local) || Number.isFinite(local.x0) ? transformBox(around.frame, local) : UNBOUNDED;
}

function uniteChildren(drawing: Drawing, cache: ClipCache, clip: number, around: ClipFrame): Box {
  const { next } = drawing.source.elements;
  let union: Box = EMPTY_BOX;
  for (let child = clip + 1; child < next[clip]!; child = next[child]!) {
    union = unite(union, childBox(drawing, cache, child, around));
  }
  return union;
}

interface ClipFrame {
  readonly frame: Matrix;
  readonly viewport: Viewport;
  /** Style of the use around, or null. */
  readonly style: Style | null;
}

/** The box of one child of a clip path: a shape, a text, or a use that draws one of these. */
function childBox(drawing: Drawing, cache: ClipCache, row: number, around: ClipFrame): Box {
  const code = drawing.codes[drawing.source.elements.name[row]!]!;
  if (code !== USE && !isShapeCode(code)) return EMPTY_BOX;
  const style = around.style === null ? drawing.styles[row]! : drawing.cascade.computeStyle(row, around.style);
  if (style.display === 'none' || (code !== USE && style.visibility !== 'visible')) return EMPTY_BOX;
  const setting: Setting = { style, viewport: around.viewport };
  const object = applyTransform(drawing, row, setting, around.frame);
  let user = object;
  let box: Box;
  if (code === USE) {
    const { x, y } = readRectangle(drawing, row, setting);
    user = multiply(object, [1, 0, 0, 1, x, y]);
    const target = around.style === null ? drawing.targets.get(row) : undefined;
    box =
      target === undefined
        ? EMPTY_BOX
        : childBox(drawing, cache, target, { frame: user, viewport: around.viewport, style });
  } else {
    countMeasured(drawing, row);
    box = code === TEXT ? UNBOUNDED : pathBox(readGeometry(drawing, row, code, setting), object);
  }
  return style.clipPath === null ? box : intersect(box, clipBox(drawing, cache, { row, setting, user, object }));
}
