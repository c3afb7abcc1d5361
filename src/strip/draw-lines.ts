// Lines and letters as path data and layers, for drawings of pinbar's own. Lengths in mm.
import { printNumber } from '../geometry/print-number.js';
import { drawLetters } from '../geometry/stroke-letters.js';

function n(value: number): string {
  return printNumber(value, 4);
}

/** A straight line, x y x y. */
export function line(x0: number, y0: number, x1: number, y1: number): string {
  return `M${n(x0)} ${n(y0)}L${n(x1)} ${n(y1)}`;
}

/** A line through points. */
export function lineThrough(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${n(x)} ${n(y)}`).join('');
}

/** An arc from point to point around a centre whose radius is known, clockwise as seen. */
export function arc(from: readonly [number, number], radius: number, to: readonly [number, number], large = 0): string {
  return `M${n(from[0])} ${n(from[1])}A${n(radius)} ${n(radius)} 0 ${large} 1 ${n(to[0])} ${n(to[1])}`;
}

/** A text in strokes, its top left at (x, y). */
export function letters(text: string, x: number, y: number, height: number): string {
  return drawLetters(text, x, y, height).map(lineThrough).join('');
}

/** Width of the lines of a layer, mm. */
const LINE_MM = 0.25;

/** A layer of one path. */
export function drawLayer(id: string, path: string): string {
  return `<g id="${id}" fill="none" stroke="#1a1a1a" stroke-width="${LINE_MM}"><path d="${path}"/></g>`;
}

/** A drawing in mm whose layers are given. */
export function drawSheet(widthMm: number, heightMm: number, layers: readonly string[]): string {
  const size = `width="${n(widthMm)}mm" height="${n(heightMm)}mm" viewBox="0 0 ${n(widthMm)} ${n(heightMm)}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}>\n${layers.join('\n')}\n</svg>\n`;
}
