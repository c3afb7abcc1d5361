// Reads the marks of a written sheet: what they are, where they are, and the extent they draw.
import { type Box, EMPTY_BOX, unite } from '../geometry/box.js';
import { type Matrix, multiply } from '../geometry/matrix.js';
import { pathBox } from '../geometry/path-box.js';
import { createPathReader, MOVE, type PathData } from '../geometry/path-data.js';
import { strokeBox } from '../geometry/stroke-box.js';
import { readTransformList } from '../geometry/transform-list.js';
import type { Artboard } from '../model/artwork.js';
import { encodeUtf8 } from '../model/platform.js';
import { readAttributeValue } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';

/** One drawn mark path. */
export interface ReadMark {
  readonly name: string;
  /** Extent of each subpath with its stroke, mm from the artboard's top left. */
  readonly partsMm: readonly Box[];
}

/** The marks of one sheet; null where it has none. */
export interface ReadMarks {
  readonly marks: readonly ReadMark[];
  /** What keeps the marks from being drawn where they are read, in words. */
  readonly unlike: readonly string[];
  readonly boxMm: Box;
}

/** Row of the group of marks, or -1. */
function findMarks(sheet: Source): number {
  const { elements } = sheet;
  for (let row = 1; row < elements.count; row = elements.next[row]!) {
    if (elements.names[elements.name[row]!]!.local === 'g' && readAttributeValue(sheet, row, 'id') === 'pinbar-marks') {
      return row;
    }
  }
  return -1;
}

const DECLARATION = /(?:^|;)([a-z-]+):([^;!]*)(!important)?/g;

/** Declarations that win over every rule of the author, as pinbar writes them. */
function readPinned(style: string): ReadonlyMap<string, string> {
  const pinned = new Map<string, string>();
  for (const [, property, value, important] of style.matchAll(DECLARATION)) {
    if (important !== undefined) pinned.set(property!, value!);
  }
  return pinned;
}

const SEEN = 'display:inline visibility:visible opacity:1 filter:none mask:none clip-path:none';
const GROUP_PINS = `transform-origin:0_0 transform-box:view-box ${SEEN}`.split(' ');
const MARK_PINS =
  `transform:none fill-opacity:1 stroke-opacity:1 stroke-dasharray:none vector-effect:none ${SEEN}`.split(' ');

/** What of a look is not pinned as it should be. */
function listUnlike(style: ReadonlyMap<string, string>, pins: readonly string[]): readonly string[] {
  return pins
    .map((pin) => pin.replace('_', ' ').split(':') as [string, string])
    .filter(([property, value]) => style.get(property) !== value)
    .map(([property, value]) => `${property} of its marks is "${style.get(property) ?? ''}" instead of "${value}"`);
}

/** A group whose place by style differs from that by attribute lies at two places, one for each kind of reader. */
function hasTwoPlaces(style: ReadonlyMap<string, string>, attribute: string): boolean {
  return style.get('transform')?.replace(/,/g, ' ') !== attribute;
}

/** Coordinates of each kind of piece. */
const COORDINATES = [2, 2, 6, 4, 7, 0] as const;

/** The subpaths, each as a path of its own. */
function listSubpaths(path: PathData): readonly PathData[] {
  const subpaths: PathData[] = [];
  let op = 0;
  let coord = 0;
  while (op < path.opCount) {
    const [firstOp, firstCoord] = [op, coord];
    do {
      coord += COORDINATES[path.ops[op]!]!;
      op += 1;
    } while (op < path.opCount && path.ops[op] !== MOVE);
    const [opCount, coordCount] = [op - firstOp, coord - firstCoord];
    const ops = path.ops.slice(firstOp, op);
    subpaths.push({ ops, opCount, coords: path.coords.slice(firstCoord, coord), coordCount, errorAt: -1 });
  }
  return subpaths;
}

function scale(box: Box, factor: number): Box {
  return { x0: box.x0 * factor, y0: box.y0 * factor, x1: box.x1 * factor, y1: box.y1 * factor };
}

/** Reads the marks group of a sheet. */
export function readMarks(sheet: Source, artboard: Artboard): ReadMarks | null {
  const group = findMarks(sheet);
  if (group < 0) return null;
  const transform = readAttributeValue(sheet, group, 'transform') ?? '';
  const matrix: Matrix = multiply(artboard.matrix, readTransformList(transform) ?? [Number.NaN, 0, 0, 1, 0, 0]);
  const pinned = readPinned(readAttributeValue(sheet, group, 'style') ?? '');
  const unlike = [...listUnlike(pinned, GROUP_PINS)];
  if (hasTwoPlaces(pinned, transform)) unlike.push('its marks lie elsewhere by style than by attribute');
  const reader = createPathReader();
  const marks: ReadMark[] = [];
  let boxMm = EMPTY_BOX;
  for (let row = group + 1; row < sheet.elements.next[group]!; row += 1) {
    const d = encodeUtf8(readAttributeValue(sheet, row, 'd') ?? '');
    const style = readPinned(readAttributeValue(sheet, row, 'style') ?? '');
    unlike.push(...listUnlike(style, MARK_PINS));
    const width = style.get('stroke') === 'none' ? 0 : Number(style.get('stroke-width'));
    const stroke = { width, linecap: 'butt', linejoin: 'miter', miterlimit: 4 } as const;
    const measure = (path: PathData): Box => (width === 0 ? pathBox(path, matrix) : strokeBox(path, matrix, stroke));
    const name = readAttributeValue(sheet, row, 'data-mark') ?? '';
    const subpaths = listSubpaths(reader.read(d, 0, d.length));
    const partsMm = name === 'label' ? [] : subpaths.map((path) => scale(measure(path), artboard.mmPerPx));
    marks.push({ name, partsMm });
    boxMm = partsMm.reduce(unite, boxMm);
  }
  return { marks, unlike: [...new Set(unlike)], boxMm };
}
