// The second judge's own matrix product, lengths and viewports.
import type { Matrix } from '../geometry/matrix.js';
import { readTransformList } from '../geometry/transform-list.js';
import { type AbsoluteUnit, PX_PER_UNIT } from '../geometry/units.js';
import { attributeOf, type WitnessElement } from './read-tree.js';

/** Width and height that percentages refer to, px or user units. */
export interface Viewport {
  readonly width: number;
  readonly height: number;
}

/** The artboard as the second judge reads it from the root. */
export interface WitnessBoard extends Viewport {
  /** From the root's user units to px on the artboard. */
  readonly matrix: Matrix;
  /** What percentages of the root's children refer to. */
  readonly inner: Viewport;
  /** Whether width and height are in a unit of length, so that the physical size is sure. */
  readonly sizeIsSure: boolean;
  readonly viewBox: readonly [number, number, number, number] | null;
}

const LENGTH = /^\s*([-+]?(?:\d*\.)?\d+(?:[eE][-+]?\d+)?)\s*(px|mm|cm|in|pt|pc|q|%|em|rem|ex)?\s*$/i;
const EM = 16;
/** Size of a drawing that states none (CSS 2.2, section 10.3.2). */
const FALLBACK: Viewport = { width: 300, height: 150 };

/** The matrix that applies `b` first and `a` second: rows of `a` times columns of `b`. */
export function compose(a: Matrix, b: Matrix): Matrix {
  const column = (x: number, y: number, w: number): readonly [number, number] => [
    a[0] * x + a[2] * y + a[4] * w,
    a[1] * x + a[3] * y + a[5] * w,
  ];
  const [xx, xy] = column(b[0], b[1], 0);
  const [yx, yy] = column(b[2], b[3], 0);
  const [ox, oy] = column(b[4], b[5], 1);
  return [xx, xy, yx, yy, ox, oy];
}

/** A length in user units, or null where it cannot be read. `whole` is what 100 % means. */
export function readOwnLength(text: string | null, whole: number): number | null {
  const match = text === null ? null : LENGTH.exec(text);
  if (match === null) return null;
  const value = Number(match[1]);
  const unit = (match[2] ?? 'px').toLowerCase();
  if (unit === '%') return (value * whole) / 100;
  if (unit === 'em' || unit === 'rem') return value * EM;
  if (unit === 'ex') return (value * EM) / 2;
  return value * PX_PER_UNIT[unit === 'q' ? 'Q' : (unit as AbsoluteUnit)];
}

/** The four numbers of a viewBox, or null where there are none or the size is not positive. */
export function readViewBox(text: string | null): readonly [number, number, number, number] | null {
  if (text === null) return null;
  const numbers = text
    .trim()
    .split(/\s*,\s*|\s+/)
    .map(Number);
  if (numbers.length !== 4 || !numbers.every(Number.isFinite)) return null;
  return numbers[2]! > 0 && numbers[3]! > 0 ? (numbers as unknown as [number, number, number, number]) : null;
}

function shareOf(align: string, axis: 'x' | 'Y'): number {
  if (align.includes(`${axis}Min`)) return 0;
  return align.includes(`${axis}Max`) ? 1 : 0.5;
}

/**
 * From the user units of a viewBox to its viewport, whose corner is (0, 0).
 *
 * @source SVG 2, section 8.2
 */
export function fitViewBox(
  box: readonly [number, number, number, number],
  viewport: Viewport,
  preserve: string | null,
): Matrix {
  const [x, y, width, height] = box;
  const words = (preserve ?? '').trim().split(/\s+/);
  const align = /^(?:none|x(?:Min|Mid|Max)Y(?:Min|Mid|Max))$/.test(words[0] ?? '') ? words[0]! : 'xMidYMid';
  let sx = viewport.width / width;
  let sy = viewport.height / height;
  if (align === 'none') return [sx, 0, 0, sy, 0 - x * sx, 0 - y * sy];
  sx = words[1] === 'slice' ? Math.max(sx, sy) : Math.min(sx, sy);
  sy = sx;
  const left = (viewport.width - width * sx) * shareOf(align, 'x');
  const top = (viewport.height - height * sy) * shareOf(align, 'Y');
  return [sx, 0, 0, sy, left - x * sx, top - y * sy];
}

/** Reads size, viewBox and alignment of a root. */
export function readBoard(root: WitnessElement): WitnessBoard {
  const viewBox = readViewBox(attributeOf(root, 'viewBox'));
  const size = (name: 'width' | 'height', fallback: number): { readonly px: number; readonly sure: boolean } => {
    const text = attributeOf(root, name);
    const px = text?.includes('%') ? null : readOwnLength(text, 0);
    const usable = px !== null && px > 0;
    return { px: usable ? px : fallback, sure: usable && /(?:mm|cm|in|pt|pc|q)\s*$/i.test(text ?? '') };
  };
  const width = size('width', viewBox?.[2] ?? FALLBACK.width);
  const height = size('height', viewBox?.[3] ?? FALLBACK.height);
  const board = { width: width.px, height: height.px };
  const matrix: Matrix =
    viewBox === null ? [1, 0, 0, 1, 0, 0] : fitViewBox(viewBox, board, attributeOf(root, 'preserveAspectRatio'));
  const inner = viewBox === null ? board : { width: viewBox[2], height: viewBox[3] };
  return { ...board, matrix, inner, sizeIsSure: width.sure && height.sure, viewBox };
}

/** Matrix and viewport that hold for the children of an element. */
export interface Stand {
  readonly matrix: Matrix;
  readonly viewport: Viewport;
}

function shift(matrix: Matrix, x: number, y: number): Matrix {
  return x === 0 && y === 0 ? matrix : compose(matrix, [1, 0, 0, 1, x, y]);
}

/** A viewport element inside the drawing: nested svg, or a symbol drawn by a use. */
export function enterViewport(
  element: WitnessElement,
  around: Stand,
  place: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): Stand {
  const matrix = shift(around.matrix, place.x, place.y);
  const box = readViewBox(attributeOf(element, 'viewBox'));
  if (box === null) return { matrix, viewport: { width: place.width, height: place.height } };
  const fit = fitViewBox(box, place, attributeOf(element, 'preserveAspectRatio'));
  return { matrix: compose(matrix, fit), viewport: { width: box[2], height: box[3] } };
}

/** Applies an element's own transform, and its own place where it is a nested svg or a use. */
export function stepInto(element: WitnessElement, around: Stand): Stand {
  const transform = attributeOf(element, 'transform');
  const own = transform === null ? null : readTransformList(transform);
  const stand: Stand = own === null ? around : { matrix: compose(around.matrix, own), viewport: around.viewport };
  if (element.kind !== 'use' && element.kind !== 'svg') return stand;
  const { width, height } = stand.viewport;
  const x = readOwnLength(attributeOf(element, 'x'), width) ?? 0;
  const y = readOwnLength(attributeOf(element, 'y'), height) ?? 0;
  if (element.kind === 'use') return { matrix: shift(stand.matrix, x, y), viewport: stand.viewport };
  return enterViewport(element, stand, {
    x,
    y,
    width: readOwnLength(attributeOf(element, 'width'), width) ?? width,
    height: readOwnLength(attributeOf(element, 'height'), height) ?? height,
  });
}

/** Where every element of a file stands: from its own user units (its children's, for a viewport) to the artboard. */
export function walkStands(elements: readonly WitnessElement[], board: WitnessBoard): readonly Stand[] {
  const stands: Stand[] = new Array(elements.length);
  stands[0] = { matrix: board.matrix, viewport: board.inner };
  for (let i = 1; i < elements.length; i += 1) {
    const element = elements[i]!;
    const around = stands[element.parent]!;
    stands[i] = element.kind === '' ? around : stepInto(element, around);
  }
  return stands;
}
