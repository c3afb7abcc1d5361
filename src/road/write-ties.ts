// Bytes of a pass with ties: each tied line as a path of separate stretches, everything else as it was.
import type { Shape } from '../model/artwork.js';
import { encodeUtf8 } from '../model/platform.js';
import { joinPieces } from '../model/sheet.js';
import { findAttribute } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';
import { attributeSpan } from '../split/attribute-span.js';
import { type Edit, orderEdits } from '../split/edit.js';
import { attributeGap, overrideStyle } from '../split/override-style.js';

/** A shape and the path data that is written for it. */
export interface WrittenLine {
  readonly shape: Shape;
  readonly d: string;
  /** Whether dashes and ends of lines stay as they are. */
  readonly keepsPaint?: boolean;
}

/** What says where a basic shape is; a path has `d` instead. `pathLength` only told dashes where to go. */
const GEOMETRY = ['x', 'y', 'width', 'height', 'rx', 'ry', 'cx', 'cy', 'r', 'x1', 'y1', 'x2', 'y2', 'points'];
/** Real stretches need no dashes, and ends that reach into the ties would hide them. */
const SOLID = 'stroke-dasharray:none!important;stroke-linecap:butt!important';

function isSolid({ paint }: Shape): boolean {
  return paint.strokeDasharray.length === 0 && paint.strokeLinecap === 'butt';
}

/** Edits that turn a basic shape's tags into those of a path. */
function renameElement(source: Source, row: number): readonly Edit[] {
  const { start, end, tailStart, name, names } = source.elements;
  const { qualified, local } = names[name[row]!]!;
  const prefix = qualified.slice(0, qualified.length - local.length);
  const edits: Edit[] = [
    { start: start[row]! + 1, end: start[row]! + 1 + encodeUtf8(qualified).length, replacement: `${prefix}path` },
  ];
  if (tailStart[row]! < end[row]!) {
    const at = tailStart[row]! + 2;
    edits.push({ start: at, end: at + encodeUtf8(qualified).length, replacement: `${prefix}path` });
  }
  return edits;
}

function editLine(source: Source, { shape, d, keepsPaint }: WrittenLine): readonly Edit[] {
  const row = shape.element;
  const edits: Edit[] = [];
  const cut = (local: string): void => {
    const attribute = findAttribute(source, row, local);
    if (attribute < 0) return;
    const [start, end] = attributeSpan(source, attribute);
    edits.push({ start, end, replacement: '' });
  };
  cut('pathLength');
  if (shape.kind !== 'path') {
    edits.push(...renameElement(source, row));
    GEOMETRY.forEach(cut);
  }
  const attribute = findAttribute(source, row, 'd');
  if (attribute >= 0) {
    const { valueStart, valueEnd } = source.elements.attributes;
    edits.push({ start: valueStart[attribute]!, end: valueEnd[attribute]!, replacement: d });
  } else {
    const gap = attributeGap(source, row);
    edits.push({ start: gap, end: gap, replacement: ` d="${d}"` });
  }
  if (keepsPaint !== true && !isSolid(shape)) edits.push(overrideStyle(source, row, SOLID));
  return edits;
}

/** The pass with some lines written anew, and some elements taken out. */
export function writeLines(source: Source, lines: readonly WrittenLine[], removed: readonly number[] = []): Uint8Array {
  const { start, end } = source.elements;
  const cuts = removed.map((row): Edit => ({ start: start[row]!, end: end[row]!, replacement: '' }));
  const edits = orderEdits([...lines.flatMap((line) => editLine(source, line)), ...cuts]);
  const pieces: Uint8Array[] = [];
  let at = 0;
  for (const edit of edits) {
    pieces.push(source.text.subarray(at, edit.start), encodeUtf8(edit.replacement));
    at = edit.end;
  }
  pieces.push(source.text.subarray(at));
  return joinPieces(pieces);
}
