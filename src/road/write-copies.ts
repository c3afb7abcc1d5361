// The bytes of a sheet: the pass once, and a use for each copy, or each copy written out.
import { type Matrix, multiply } from '../geometry/matrix.js';
import { printNumber } from '../geometry/print-number.js';
import type { Artboard } from '../model/artwork.js';
import { encodeUtf8 } from '../model/platform.js';
import type { RootSize } from '../model/sheet.js';
import { readText } from '../source/read-attribute.js';
import { type Source, SVG_NAMESPACE, XLINK_NAMESPACE } from '../source/source.js';
import { orderEdits } from '../split/edit.js';
import { editRoot } from '../split/edit-root.js';

/** Id of the group or svg that holds what the pass draws, once. */
export const BLANK_ID = 'pinbar-blank';

/** Id of a copy, from 1. */
export function copyId(number: number): string {
  return `pinbar-copy-${number}`;
}

/**
 * How copies are written. `uses`: the first in a group, the others as uses of it. `framed-uses`: the pass in an svg of its own among
 * the definitions, all copies as uses of it, so that style rules and percentages find the root they look for.
 */
export type CopyForm = 'uses' | 'framed-uses';

/** A pass as it was read. */
export interface ReadPass {
  readonly source: Source;
  readonly artboard: Artboard;
  readonly usesPercent: boolean;
  /** Whether style rules look at siblings or positions. */
  readonly structural: boolean;
}

/** Decimals of a matrix: on a sheet of metres its rounding stays below a millionth of a mm. */
const DECIMALS = 12;
const SIZE_DECIMALS = 10;

/** Selectors that could see that the art lies one group deeper, or that could mean the group itself. */
const LOOKS_AT_ROOT =
  /[>+~*]|:(?:root|nth|first|last|only|has|not|is|where|scope|empty)|(?:^|[\s,}])(?:svg|g|use)\b(?!-)/i;

function listStyles(source: Source): readonly string[] {
  const { elements } = source;
  const isStyle = elements.names.map((name) => name.namespace === SVG_NAMESPACE && name.local === 'style');
  const texts: string[] = [];
  for (let row = 1; row < elements.count; row += 1) {
    if (isStyle[elements.name[row]!]) texts.push(readText(source, row).replace(/\/\*[\s\S]*?\*\//g, ''));
  }
  return texts;
}

/**
 * The forms in which a pass may be written, the plainest first; the judges say whether one holds.
 *
 * None for rules that look at siblings or positions: a browser counts them in the tree that a use draws, from which it leaves
 * definitions and style sheets out.
 *
 * @source SVG 2, section 5.6.4: rules match within the tree of the use; that elements are left out was seen in Chromium
 */
export function listForms({ source, usesPercent, structural }: ReadPass): readonly CopyForm[] {
  if (structural) return [];
  const looks = listStyles(source).some((text) => LOOKS_AT_ROOT.test(text));
  return usesPercent || looks ? ['framed-uses'] : ['uses', 'framed-uses'];
}

/** Millimetres of the sheet to a user unit of the pass's root, across and down. */
export function unitMm({ matrix, mmPerPx }: Artboard): readonly [number, number] {
  return [matrix[0] * mmPerPx, matrix[3] * mmPerPx];
}

/** From mm on the sheet to the user units of its root. */
export function sheetToUser(board: Artboard): Matrix {
  const [x, y] = unitMm(board);
  return [1 / x, 0, 0, 1 / y, 0, 0];
}

/** A matrix of mm in the user units of both roots. */
function toUser(matrixMm: Matrix, board: Artboard): Matrix {
  const mm = board.mmPerPx;
  const toMm = multiply([mm, 0, 0, mm, 0, 0], board.matrix);
  return multiply(multiply(sheetToUser(board), matrixMm), toMm);
}

function sheetSize(board: Artboard, [widthMm, heightMm]: readonly [number, number]): RootSize {
  const [x, y] = unitMm(board);
  const n = (value: number): string => printNumber(value, SIZE_DECIMALS);
  return { width: `${n(widthMm)}mm`, height: `${n(heightMm)}mm`, viewBox: `0 0 ${n(widthMm / x)} ${n(heightMm / y)}` };
}

/** The root's start tag and all before it, with the size of the sheet. */
function writeHead(pass: ReadPass, sizeMm: readonly [number, number]): readonly Uint8Array[] {
  const { source, artboard } = pass;
  const pieces: Uint8Array[] = [];
  let at = 0;
  for (const { start, end, replacement } of orderEdits(editRoot(source, sheetSize(artboard, sizeMm)))) {
    pieces.push(source.text.subarray(at, start), encodeUtf8(replacement));
    at = end;
  }
  return [...pieces, source.text.subarray(at, source.elements.headEnd[0]!)];
}

/** What style rules could set on a copy, pinned; only where there are rules. */
function pinLook(numbers: readonly string[]): string {
  const look = [
    `transform:matrix(${numbers.join(',')})`,
    'transform-origin:0 0',
    'transform-box:view-box',
    'display:inline',
    'opacity:1',
    'filter:none',
    'mask:none',
    'clip-path:none',
    'mix-blend-mode:normal',
  ];
  return ` style="${look.map((declaration) => `${declaration}!important`).join(';')}"`;
}

interface CopyWriter {
  readonly place: (matrix: Matrix) => string;
  readonly use: (number: number, matrix: Matrix) => string;
}

function createWriter(pass: ReadPass): CopyWriter {
  const styled = listStyles(pass.source).length > 0;
  const place = (matrix: Matrix): string => {
    const numbers = matrix.map((value) => printNumber(value, DECIMALS));
    return `transform="matrix(${numbers.join(' ')})"${styled ? pinLook(numbers) : ''}`;
  };
  // Both spellings of the reference: readers of SVG 1.1 know only the first.
  const link = `xmlns:xlink="${XLINK_NAMESPACE}" xlink:href="#${BLANK_ID}" href="#${BLANK_ID}"`;
  const use = (number: number, matrix: Matrix): string => `\n<use id="${copyId(number)}" ${link} ${place(matrix)}/>`;
  return { place, use };
}

function writeUses(pass: ReadPass, content: Uint8Array, matrices: readonly Matrix[]): readonly Uint8Array[] {
  const { place, use } = createWriter(pass);
  const others = matrices.slice(1).map((matrix, i) => use(i + 2, matrix));
  return [
    encodeUtf8(`\n<g id="${copyId(1)}" ${place(matrices[0]!)}><g id="${BLANK_ID}">`),
    content,
    encodeUtf8(`</g></g>${others.join('')}\n`),
  ];
}

/** What the root shows, in its user units: x, y, width, height. */
function frameOf({ viewBox, width, height }: Artboard): readonly [number, number, number, number] {
  return viewBox ?? [0, 0, width, height];
}

function writeFramed(pass: ReadPass, content: Uint8Array, matrices: readonly Matrix[]): readonly Uint8Array[] {
  const [x, y, w, h] = frameOf(pass.artboard);
  const { use } = createWriter(pass);
  const n = (value: number): string => printNumber(value, DECIMALS);
  const frame = `width="${n(w)}" height="${n(h)}" viewBox="${n(x)} ${n(y)} ${n(w)} ${n(h)}"`;
  const uses = matrices.map((matrix, i) => use(i + 1, matrix));
  return [
    encodeUtf8(`\n<defs><svg id="${BLANK_ID}" ${frame} overflow="visible">`),
    content,
    encodeUtf8(`</svg></defs>${uses.join('')}\n`),
  ];
}

/**
 * The pieces of a sheet, the index before which marks go, and the matrices as they are written, in user units.
 *
 * @param matricesMm - From mm on the pass's artboard to mm on the sheet.
 */
export function writeCopies(
  pass: ReadPass,
  form: CopyForm,
  sheet: { readonly sizeMm: readonly [number, number]; readonly matricesMm: readonly Matrix[] },
): { readonly pieces: readonly Uint8Array[]; readonly marksAt: number; readonly matrices: readonly Matrix[] } {
  const { source, artboard } = pass;
  const { headEnd, tailStart } = source.elements;
  const content = source.text.subarray(headEnd[0]!, tailStart[0]!);
  const [x, y] = form === 'uses' ? [0, 0] : frameOf(artboard);
  const matrices = sheet.matricesMm.map((matrix) => multiply(toUser(matrix, artboard), [1, 0, 0, 1, x, y]));
  const copies = form === 'uses' ? writeUses(pass, content, matrices) : writeFramed(pass, content, matrices);
  const pieces = [...writeHead(pass, sheet.sizeMm), ...copies, source.text.subarray(tailStart[0]!)];
  return { pieces, marksAt: pieces.length - 1, matrices };
}
