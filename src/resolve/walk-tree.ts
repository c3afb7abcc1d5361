// Walks what is drawn, in paint order, uses in place, without recursion.
import { type Box, intersect, transformBox } from '../geometry/box.js';
import { type Matrix, multiply } from '../geometry/matrix.js';
import { type ClipCache, type Clipped, clipBox, UNBOUNDED } from './clip-boxes.js';
import type { Drawing, Setting, Viewport } from './drawing.js';
import { isShapeCode, NOTHING, SVG, SWITCH, SYMBOL, TEXT_PART, USE } from './element-codes.js';
import { openViewport, type UseSize } from './nested-viewport.js';
import { applyTransform } from './own-transform.js';
import { readRectangle } from './shape-geometry.js';
import type { Style } from './style.js';
import { chooseChild, conditionsHold } from './switch-choice.js';

/** The clip paths around a shape, innermost first. */
export interface ClipChain {
  readonly clipped: Clipped;
  readonly around: ClipChain | null;
}

/** What clips leave. */
export interface Clip {
  /** With viewports, in the target frame. */
  readonly clip: Box;
  readonly clips: ClipChain | null;
}

/** Some siblings waiting to be drawn, and what holds around them. */
export interface Frame extends Clip {
  /** The next row, and the row after the last. */
  at: number;
  readonly end: number;
  /** The row that a use draws, or -1. */
  readonly entry: number;
  /** Width and height that the use gives to it. */
  readonly size: UseSize | null;
  /** From the user units of the siblings to the target frame. */
  readonly matrix: Matrix;
  /** What they inherit. */
  readonly style: Style;
  readonly viewport: Viewport;
  /** Setting of the shape before, shared by those styled alike. */
  lastSetting: Setting | null;
  readonly isHidden: boolean;
  /** Whether an opacity of zero stands around. */
  readonly isFaint: boolean;
  readonly layer: number;
  /** The outermost use they are drawn through, or -1. */
  readonly carrier: number;
}

/** A shape met on the way. */
export interface Visited extends Clip {
  readonly row: number;
  readonly code: number;
  readonly setting: Setting;
  readonly matrix: Matrix;
  readonly isHidden: boolean;
  readonly isFaint: boolean;
  readonly layer: number;
  readonly carrier: number;
}

/** Who looks at the shapes. */
export interface Visitor {
  /** Whether only extents are wanted: clips count for nothing, and what display hides is passed over. */
  readonly isMeasuring: boolean;
  readonly clips: ClipCache;
  /** Index of the layer that a row is, or the one given. */
  layerAt(row: number, around: number): number;
  /** Told of every container and shape with a style of its own, for findings. */
  visit(shape: Visited): void;
  enter(row: number, style: Style, layer: number): void;
}

function styleIn(drawing: Drawing, row: number, frame: Frame): Style {
  const parent = drawing.source.elements.parent[row]!;
  if (parent >= 0 && frame.style === drawing.styles[parent]) return drawing.styles[row]!;
  return drawing.cascade.computeStyle(row, frame.style);
}

function isPassedOver(drawing: Drawing, row: number, code: number, frame: Frame): boolean {
  if (code === NOTHING || code === TEXT_PART || row === drawing.marks) return true;
  if (code === SYMBOL && frame.entry !== row) return true;
  return drawing.hasConditions && !conditionsHold(drawing, row);
}

/** Cuts a frame by the clip path of an element. */
function cutClip(drawing: Drawing, visitor: Visitor, frame: Frame, clipped: Clipped): Clip {
  if (visitor.isMeasuring || clipped.setting.style.clipPath === null) return frame;
  const box = clipBox(drawing, visitor.clips, clipped);
  if (box === UNBOUNDED) return frame;
  return { clip: intersect(frame.clip, box), clips: { clipped, around: frame.clips } };
}

/** What a container hands down, before its content is known. */
function descend(drawing: Drawing, visitor: Visitor, row: number, style: Style, frame: Frame): Frame {
  const layer = frame.carrier < 0 ? visitor.layerAt(row, frame.layer) : frame.layer;
  visitor.enter(row, style, layer);
  return {
    ...frame,
    at: row + 1,
    end: drawing.source.elements.next[row]!,
    entry: -1,
    size: null,
    style,
    lastSetting: null,
    isHidden: frame.isHidden || style.display === 'none',
    isFaint: frame.isFaint || style.opacity === 0,
    layer,
  };
}

/** The content of a use: its target alone, in the use's own place. */
function enterUse(drawing: Drawing, visitor: Visitor, row: number, frame: Frame): Frame | null {
  const target = drawing.targets.get(row);
  const setting: Setting = { style: frame.style, viewport: frame.viewport };
  const { x, y, width, height } = readRectangle(drawing, row, setting);
  if (target === undefined) return null;
  const object = frame.matrix;
  const user = x === 0 && y === 0 ? object : multiply(object, [1, 0, 0, 1, x, y]);
  const { clip, clips } = cutClip(drawing, visitor, frame, { row, setting, user, object });
  return {
    ...frame,
    at: target,
    end: drawing.source.elements.next[target]!,
    entry: target,
    size: { width, height },
    matrix: user,
    clip,
    clips,
    carrier: frame.carrier < 0 ? row : frame.carrier,
  };
}

function enterViewport(
  drawing: Drawing,
  visitor: Visitor,
  row: number,
  frame: Frame,
  size: UseSize | null,
): Frame | null {
  const setting: Setting = { style: frame.style, viewport: frame.viewport };
  const opened = openViewport(drawing, row, setting, size);
  if (opened === null) return null;
  const matrix = multiply(frame.matrix, opened.matrix);
  let { clip } = frame;
  const { overflow } = frame.style;
  if (!visitor.isMeasuring && overflow !== 'visible' && overflow !== 'auto') {
    const rectangle = { x0: 0, y0: 0, x1: opened.width, y1: opened.height };
    clip = intersect(clip, transformBox(multiply(frame.matrix, opened.frame), rectangle));
  }
  return { ...frame, matrix, viewport: opened.viewport, lastSetting: null, clip };
}

/** The content of a container whose own transform is already in the matrix of `frame`; null where it draws nothing. */
export function enterContainer(
  drawing: Drawing,
  visitor: Visitor,
  row: number,
  frame: Frame,
  size: UseSize | null,
): Frame | null {
  const code = drawing.codes[drawing.source.elements.name[row]!]!;
  if (code === USE) return enterUse(drawing, visitor, row, frame);
  const setting: Setting = { style: frame.style, viewport: frame.viewport };
  const { clip, clips } = cutClip(drawing, visitor, frame, { row, setting, user: frame.matrix, object: frame.matrix });
  const cut = clips === frame.clips ? frame : { ...frame, clip, clips };
  if (code === SVG || code === SYMBOL) return enterViewport(drawing, visitor, row, cut, size);
  if (code !== SWITCH) return cut;
  const chosen = chooseChild(drawing, row);
  return chosen < 0 ? null : { ...cut, at: chosen, end: drawing.source.elements.next[chosen]! };
}

function visitShape(
  drawing: Drawing,
  visitor: Visitor,
  shape: { row: number; code: number; style: Style },
  frame: Frame,
): void {
  const { row, code, style } = shape;
  const last = frame.lastSetting;
  const setting = last !== null && last.style === style ? last : { style, viewport: frame.viewport };
  frame.lastSetting = setting;
  const matrix = applyTransform(drawing, row, setting, frame.matrix);
  const { clip, clips } = cutClip(drawing, visitor, frame, { row, setting, user: matrix, object: matrix });
  visitor.visit({
    row,
    code,
    setting,
    matrix,
    clip,
    clips,
    isHidden: frame.isHidden || style.display === 'none' || style.visibility !== 'visible',
    isFaint: frame.isFaint || style.opacity === 0,
    layer: frame.layer,
    carrier: frame.carrier < 0 ? row : frame.carrier,
  });
}

/** One element; returns the frame of its content, or null. */
function step(drawing: Drawing, visitor: Visitor, row: number, frame: Frame): Frame | null {
  const code = drawing.codes[drawing.source.elements.name[row]!]!;
  if (isPassedOver(drawing, row, code, frame)) return null;
  const style = styleIn(drawing, row, frame);
  if (visitor.isMeasuring && style.display === 'none') return null;
  if (isShapeCode(code)) {
    visitShape(drawing, visitor, { row, code, style }, frame);
    return null;
  }
  const inner = descend(drawing, visitor, row, style, frame);
  const matrix = applyTransform(drawing, row, { style, viewport: frame.viewport }, frame.matrix);
  const placed = matrix === inner.matrix ? inner : { ...inner, matrix };
  return enterContainer(drawing, visitor, row, placed, frame.entry === row ? frame.size : null);
}

/** Draws the siblings of a frame with all they hold. */
export function walkTree(drawing: Drawing, visitor: Visitor, first: Frame): void {
  const { next } = drawing.source.elements;
  const frames: Frame[] = [first];
  for (let frame = frames.at(-1); frame !== undefined; frame = frames.at(-1)) {
    if (frame.at >= frame.end) {
      frames.pop();
      continue;
    }
    const row = frame.at;
    frame.at = next[row]!;
    const inner = step(drawing, visitor, row, frame);
    if (inner !== null) frames.push(inner);
  }
}
