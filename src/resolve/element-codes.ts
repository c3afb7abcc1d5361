// What an element is for the drawing, by its name.
import type { ShapeKind } from '../model/artwork.js';
import { type Source, SVG_NAMESPACE } from '../source/source.js';

/** Never drawn where it stands: definitions, captions, foreign elements, unknown ones. */
export const NOTHING = 0;
/** Codes from 1 to 10 are shapes; see `shapeKind`. */
export const PATH = 1;
export const RECT = 2;
export const CIRCLE = 3;
export const ELLIPSE = 4;
export const LINE = 5;
export const POLYLINE = 6;
export const POLYGON = 7;
export const TEXT = 8;
export const IMAGE = 9;
export const FOREIGN_OBJECT = 10;
export const GROUP = 11;
export const LINK = 12;
export const SVG = 13;
export const SWITCH = 14;
export const USE = 15;
/** Drawn only through a use. */
export const SYMBOL = 16;
/** Parts of a text. */
export const TEXT_PART = 17;

const KINDS: readonly ShapeKind[] = [
  ...(['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon'] as const),
  ...(['text', 'image', 'foreignObject'] as const),
];
const CODES: ReadonlyMap<string, number> = new Map<string, number>([
  ...KINDS.map((kind, index) => [kind, index + 1] as const),
  ...([
    ['g', GROUP],
    ['a', LINK],
    ['svg', SVG],
    ['switch', SWITCH],
    ['use', USE],
    ['symbol', SYMBOL],
  ] as const),
  ...(['tspan', 'textPath', 'tref', 'altGlyph'] as const).map((name) => [name, TEXT_PART] as const),
]);

/** One code per element name of the file. */
export function codeNames(source: Source): Uint8Array {
  return Uint8Array.from(source.elements.names, (name) =>
    name.namespace === SVG_NAMESPACE ? (CODES.get(name.local) ?? NOTHING) : NOTHING,
  );
}

/** Whether a code is a shape's. */
export function isShapeCode(code: number): boolean {
  return code >= PATH && code <= FOREIGN_OBJECT;
}

/** The kind of a shape's code. */
export function shapeKind(code: number): ShapeKind {
  return KINDS[code - 1]!;
}

/** Whether an element holds what is drawn where it stands. */
export function isContainerCode(code: number): boolean {
  return code >= GROUP && code <= SWITCH;
}

/** Whether markers may stand on an element. @source SVG 2, section 13.7.1 */
export function canHaveMarkers(code: number): boolean {
  return code === PATH || code === LINE || code === POLYLINE || code === POLYGON;
}
