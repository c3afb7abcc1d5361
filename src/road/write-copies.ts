// The bytes of a sheet: the pass once, and a use for each copy, or each copy written out.
import { type Matrix, multiply } from '../geometry/matrix.js';
import { printNumber } from '../geometry/print-number.js';
import type { Artboard } from '../model/artwork.js';
import type { SheetRequest } from '../model/layout.js';
import { encodeUtf8 } from '../model/platform.js';
import type { RootSize } from '../model/sheet.js';
import { INHERITED_INITIAL } from '../resolve/style-properties.js';
import { elementName } from '../source/read-attribute.js';
import { type Source, XLINK_NAMESPACE } from '../source/source.js';
import { orderEdits } from '../split/edit.js';
import { editRoot } from '../split/edit-root.js';
import { chooseSuffixes, listStyles, repeatIdRules, writeAgain } from './write-again.js';

/** Id of the group or svg that holds what the pass draws, once. */
export const BLANK_ID = 'pinbar-blank';

/** Id of a copy, from 1. */
export function copyId(number: number): string {
  return `pinbar-copy-${number}`;
}

/** How ids begin of the rules by id, once more for the ids of the copies. */
export const RULES_ID = 'pinbar-copy-rules';

/**
 * How copies are written. `groups`: each written out in a group. `uses`: the first in a group, the others as uses of it. `framed-groups`
 * and `framed-uses`: the pass in an svg of its own within each group, or once among the definitions with all copies as uses of it, so
 * that style rules and percentages find the root they look for.
 */
export type CopyForm = 'groups' | 'framed-groups' | 'uses' | 'framed-uses';

/** Whether each copy is written out. */
export function isWritten(form: CopyForm): boolean {
  return form === 'groups' || form === 'framed-groups';
}

/** Whether the pass stands in an svg of its own. */
export function isFramed(form: CopyForm): boolean {
  return form === 'framed-groups' || form === 'framed-uses';
}

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

function looksAtRoot(source: Source): boolean {
  return listStyles(source).some(({ text }) => LOOKS_AT_ROOT.test(text));
}

/**
 * The forms in which a pass may be written, the plainest first; the judges say whether one holds.
 *
 * Nothing is referred to where rules look at siblings or positions: a browser counts them in the tree that a use draws, from which it
 * leaves definitions and style sheets out.
 *
 * @source SVG 2, section 5.6.4: rules match within the tree of the use; that elements are left out was seen in Chromium
 */
export function listForms(
  { source, usesPercent, structural }: ReadPass,
  copies: SheetRequest['copies'],
): readonly CopyForm[] {
  if (copies === 'written') return usesPercent ? ['framed-groups'] : ['groups', 'framed-groups'];
  if (structural) return [];
  return usesPercent || looksAtRoot(source) ? ['framed-uses'] : ['uses', 'framed-uses'];
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
function pinLook(numbers: readonly string[], inherits: boolean): string {
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
    ...(inherits ? Object.keys(INHERITED_INITIAL).map((name) => `${name}:inherit`) : []),
  ];
  return ` style="${look.map((declaration) => `${declaration}!important`).join(';')}"`;
}

/** Names and attributes of what is put around copies. */
interface CopyWriter {
  /** Prefix that the root's namespace has in this file, with its colon; mostly ''. */
  readonly prefix: string;
  readonly place: (matrix: Matrix) => string;
  readonly use: (number: number, matrix: Matrix) => string;
}

function createWriter(pass: ReadPass, form: CopyForm): CopyWriter {
  const styled = listStyles(pass.source).length > 0;
  // A rule such as `g { fill: ... }` finds the group of a written copy, and what it holds would take that over.
  const inherits = isWritten(form) && looksAtRoot(pass.source);
  const { qualified } = elementName(pass.source, 0);
  const prefix = qualified.slice(0, qualified.indexOf(':') + 1);
  const place = (matrix: Matrix): string => {
    const numbers = matrix.map((value) => printNumber(value, DECIMALS));
    return `transform="matrix(${numbers.join(' ')})"${styled ? pinLook(numbers, inherits) : ''}`;
  };
  // Both spellings of the reference: readers of SVG 1.1 know only the first.
  const link = `xmlns:xlink="${XLINK_NAMESPACE}" xlink:href="#${BLANK_ID}" href="#${BLANK_ID}"`;
  const use = (number: number, matrix: Matrix): string =>
    `\n<${prefix}use id="${copyId(number)}" ${link} ${place(matrix)}/>`;
  return { prefix, place, use };
}

/** What the root shows, in its user units: x, y, width, height. */
function frameOf({ viewBox, width, height }: Artboard): readonly [number, number, number, number] {
  return viewBox ?? [0, 0, width, height];
}

/** The start tag of an svg that shows what the root of the pass shows; more attributes first. */
function writeFrame(pass: ReadPass, { prefix }: CopyWriter, more: string): string {
  const [x, y, w, h] = frameOf(pass.artboard).map((value) => printNumber(value, DECIMALS)) as [
    string,
    string,
    string,
    string,
  ];
  return `<${prefix}svg ${more}width="${w}" height="${h}" viewBox="${x} ${y} ${w} ${h}" overflow="visible">`;
}

function contentOf({ source: { text, elements } }: ReadPass): Uint8Array {
  return text.subarray(elements.headEnd[0]!, elements.tailStart[0]!);
}

/** The pass in a group, or framed among the definitions, and uses of it. */
function refer(pass: ReadPass, form: CopyForm, matrices: readonly Matrix[]): readonly Uint8Array[] {
  const writer = createWriter(pass, form);
  const { prefix: p, place, use } = writer;
  const framed = isFramed(form);
  const others = matrices.flatMap((matrix, i) => (i === 0 && !framed ? [] : [use(i + 1, matrix)]));
  const before = framed
    ? `<${p}defs>${writeFrame(pass, writer, `id="${BLANK_ID}" `)}`
    : `<${p}g id="${copyId(1)}" ${place(matrices[0]!)}><${p}g id="${BLANK_ID}">`;
  const after = framed ? `</${p}svg></${p}defs>` : `</${p}g></${p}g>`;
  return [encodeUtf8(`\n${before}`), contentOf(pass), encodeUtf8(`${after}${others.join('')}\n`)];
}

/** Each copy in a group of its own: the first to the byte, the others without what is not drawn and with ids of their own. */
function writeOut(pass: ReadPass, form: CopyForm, matrices: readonly Matrix[]): readonly Uint8Array[] {
  const writer = createWriter(pass, form);
  const { prefix: p, place } = writer;
  const suffixes = chooseSuffixes(pass.source, matrices.length);
  const [open, close] = isFramed(form) ? [writeFrame(pass, writer, ''), `</${p}svg>`] : ['', ''];
  const rules = repeatIdRules(pass.source, suffixes.slice(1));
  const pieces = rules.map(({ media, rules: text }, i) => {
    const when = media === '' ? '' : ` media="${media}"`;
    return encodeUtf8(`\n<${p}style id="${RULES_ID}-${i + 1}"${when}>${text}</${p}style>`);
  });
  for (const [i, matrix] of matrices.entries()) {
    pieces.push(encodeUtf8(`\n<${p}g id="${copyId(i + 1)}" ${place(matrix)}>${open}`));
    pieces.push(i === 0 ? contentOf(pass) : writeAgain(pass, suffixes[i]!));
    pieces.push(encodeUtf8(`${close}</${p}g>`));
  }
  return [...pieces, encodeUtf8('\n')];
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
  const [x, y] = isFramed(form) ? frameOf(artboard) : [0, 0];
  const matrices = sheet.matricesMm.map((matrix) => multiply(toUser(matrix, artboard), [1, 0, 0, 1, x, y]));
  const copies = isWritten(form) ? writeOut(pass, form, matrices) : refer(pass, form, matrices);
  const pieces = [...writeHead(pass, sheet.sizeMm), ...copies, source.text.subarray(source.elements.tailStart[0]!)];
  return { pieces, marksAt: pieces.length - 1, matrices };
}
