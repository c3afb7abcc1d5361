// The first judge over a sheet of copies: its bytes are the pass, and each copy lies where its matrix puts it.
import { type Matrix, multiply } from '../geometry/matrix.js';
import { readTransformList } from '../geometry/transform-list.js';
import type { Artwork, Paint } from '../model/artwork.js';
import { type Finding, finding } from '../model/finding.js';
import { equalBytes } from '../model/platform.js';
import { findAttribute, isSvgElement, readAttribute, readAttributeValue } from '../source/read-attribute.js';
import { type Source, XLINK_NAMESPACE } from '../source/source.js';
import { listAttributes } from './compare-head.js';
import { nameShape, TOLERANCE_MM } from './judge-shapes.js';
import { findDoubledId, findUnlike, markNeeded } from './judge-written.js';
import { cornerDistance, hasEqualPaint, shapeDeviation } from './shape-deviation.js';

/** A file as it was read. */
export interface ReadFile {
  readonly source: Source;
  readonly artwork: Artwork;
}

/** How copies are written out. */
export interface WrittenClaim {
  /** What stands behind the ids of each copy. */
  readonly suffixes: readonly string[];
  /** Whether each copy is an svg of its own within its group. */
  readonly framed: boolean;
  /** How ids begin of style rules for the ids of the copies. */
  readonly rulesId: string;
}

/** What a sheet of copies was to be. */
export interface CopiesClaim {
  readonly file: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** From mm on the pass's artboard to mm on the sheet, one per copy. */
  readonly matricesMm: readonly Matrix[];
  /** The same as it is to be written on each copy, in user units. */
  readonly written: readonly Matrix[];
  /** Ids of the copies, and of what holds the art where they refer to it. */
  readonly copyIds: readonly string[];
  readonly blankId: string;
  /** Where each copy is written out; else null. */
  readonly writtenOut: WrittenClaim | null;
  /** Whether all copies are resolved, or the first alone: the others are held to by their bytes. */
  readonly copiesDrawn: 'all' | 'first';
}

/** What was seen. */
export interface CopiesVerdict {
  readonly shapes: number;
  readonly deviationMm: number;
  readonly deviationAt: string;
  readonly findings: readonly Finding[];
}

/** Differences listed for one file at most. */
const MOST_LISTED = 20;
const MARKS_ID = 'pinbar-marks';

function refuse(file: string, why: string): Finding {
  return finding('sheet/not-kept', {
    message: `${file}: ${why}.`,
    remedy:
      'Do not run this file. Style rules that look at the root or its children can do this: write them by class and split again.',
    place: { file },
  });
}

function findById(source: Source, id: string): number {
  for (let row = 1; row < source.elements.count; row += 1) if (readAttributeValue(source, row, 'id') === id) return row;
  return -1;
}

function contentOf({ text, elements }: Source, row: number): Uint8Array {
  return text.subarray(elements.headEnd[row]!, elements.tailStart[row]!);
}

const SIZE_NAMES = ['width', 'height', 'viewBox'];

/** The root says what that of the pass says, but for its size. */
function judgeRoot(pass: ReadFile, sheet: ReadFile, claim: CopiesClaim): readonly string[] {
  const faults: string[] = [];
  const before = listAttributes(pass.source, 0);
  const after = listAttributes(sheet.source, 0);
  for (const name of new Set([...before.keys(), ...after.keys()])) {
    if (!SIZE_NAMES.includes(name) && before.get(name) !== after.get(name)) faults.push(`its root has another ${name}`);
  }
  const { artboard } = sheet.artwork;
  const wide = Math.abs(artboard.width * artboard.mmPerPx - claim.widthMm);
  const high = Math.abs(artboard.height * artboard.mmPerPx - claim.heightMm);
  const size = `${claim.widthMm} x ${claim.heightMm} mm`;
  if (!(wide <= TOLERANCE_MM && high <= TOLERANCE_MM)) faults.push(`its artboard is not the sheet of ${size}`);
  return faults;
}

/** Whether an element holds another and nothing besides. */
function wraps({ elements }: Source, row: number, inner: number): boolean {
  return row + 1 === inner && elements.next[row] === elements.next[inner];
}

/** Ids of the children of the root. */
function listTop(source: Source): Map<string, number> {
  const top = new Map<string, number>();
  for (let row = 1; row < source.elements.count; row = source.elements.next[row]!)
    top.set(readAttributeValue(source, row, 'id') ?? `(row ${row})`, row);
  return top;
}

/** The first copy is the pass, byte for byte; the others are too, but for their ids and what draws nothing. Nothing stands besides. */
function judgeWrittenOut(
  pass: ReadFile,
  { source }: ReadFile,
  claim: CopiesClaim,
  out: WrittenClaim,
): readonly string[] {
  const faults: string[] = [];
  const top = listTop(source);
  const expected = claim.copyIds.filter((id) => top.has(id)).length;
  const besides = [...top].filter(([id, row]) => {
    const isRules = id.startsWith(out.rulesId) && isSvgElement(source, row, 'style');
    return id !== MARKS_ID && !isRules && !claim.copyIds.includes(id);
  });
  if (expected !== claim.copyIds.length || besides.length > 0)
    faults.push(`it holds ${expected} copies instead of ${claim.copyIds.length}, or something besides`);
  const needed = markNeeded(pass.source, pass.artwork);
  claim.copyIds.forEach((id, i) => {
    const row = top.get(id);
    if (row === undefined) return;
    const inner = out.framed ? row + 1 : row;
    if (out.framed && !(isSvgElement(source, inner, 'svg') && wraps(source, row, inner)))
      faults.push(`something is drawn beside the art of copy ${i + 1}`);
    else if (i === 0 && !equalBytes(contentOf(source, inner), contentOf(pass.source, 0)))
      faults.push('what the first copy shows is not the pass, byte for byte');
    const unlike = i === 0 ? null : findUnlike(pass.source, needed, { source, row: inner, suffix: out.suffixes[i]! });
    if (unlike !== null) faults.push(`copy ${i + 1} ${unlike}`);
  });
  const doubled = findDoubledId(source, out.suffixes, pass.source);
  if (doubled !== null) faults.push(`the id "${doubled}" stands twice`);
  return faults;
}

/** The art is there once, byte for byte, and nothing stands beside the copies but the marks. */
function judgeReferences(pass: ReadFile, sheet: ReadFile, claim: CopiesClaim): readonly string[] {
  const { source } = sheet;
  const { elements } = source;
  const blank = findById(source, claim.blankId);
  if (blank < 0 || !equalBytes(contentOf(source, blank), contentOf(pass.source, 0)))
    return ['what the copies show is not the pass, byte for byte'];
  const faults: string[] = [];
  const found: string[] = [];
  for (let row = 1; row < elements.count; row = elements.next[row]!) {
    const id = readAttributeValue(source, row, 'id') ?? '';
    const holds = blank > row && blank < elements.next[row]!;
    if (holds && !wraps(source, row, blank)) faults.push('something is drawn beside the art of the first copy');
    if (id !== MARKS_ID && !(holds && isSvgElement(source, row, 'defs'))) found.push(id);
  }
  if (found.join() !== claim.copyIds.join())
    faults.push(`it holds ${found.length} copies instead of ${claim.copyIds.length}, or something besides`);
  return faults;
}

function boxOfPass({ artwork }: ReadFile): {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
} {
  const [x, y, width, height] = artwork.artboard.viewBox ?? [0, 0, artwork.artboard.width, artwork.artboard.height];
  return { x0: x, y0: y, x1: x + width, y1: y + height };
}

/** Whether a use says the same in both spellings of a reference. */
function refersTo(source: Source, row: number, id: string): boolean {
  return ['', XLINK_NAMESPACE].every((namespace) => {
    const attribute = findAttribute(source, row, 'href', namespace);
    return attribute >= 0 && readAttribute(source, attribute) === `#${id}`;
  });
}

/** Each copy is written with its matrix. */
function judgeMatrices(pass: ReadFile, sheet: ReadFile, claim: CopiesClaim): readonly string[] {
  const { source } = sheet;
  const box = boxOfPass(pass);
  const [a, , , d] = sheet.artwork.artboard.matrix;
  const mm = sheet.artwork.artboard.mmPerPx * Math.max(Math.abs(a), Math.abs(d));
  const faults: string[] = [];
  const rows = listTop(source);
  claim.copyIds.forEach((id, i) => {
    const row = rows.get(id);
    const text = row === undefined ? null : readAttributeValue(source, row, 'transform');
    const matrix = text === null ? null : readTransformList(text);
    if (row !== undefined && isSvgElement(source, row, 'use') && !refersTo(source, row, claim.blankId))
      faults.push(`copy ${i + 1} shows something else`);
    if (matrix === null || !(cornerDistance(matrix, claim.written[i]!, box) * mm <= TOLERANCE_MM))
      faults.push(`copy ${i + 1} is not written where it should lie`);
  });
  return faults;
}

interface Seen {
  greatest: number;
  at: string;
  readonly faults: string[];
}

/** Every drawn shape of every copy against the pass, under the matrix of the copy. */
function judgeDrawn(pass: ReadFile, sheet: ReadFile, claim: CopiesClaim): Seen & { readonly shapes: number } {
  const wanted = pass.artwork.shapes.filter((shape) => shape.draws && !shape.hidden);
  const drawn = sheet.artwork.shapes.filter((shape) => shape.draws && !shape.hidden);
  const matrices = claim.copiesDrawn === 'all' ? claim.matricesMm : claim.matricesMm.slice(0, 1);
  const seen: Seen = { greatest: 0, at: '', faults: [] };
  const count = wanted.length * matrices.length;
  if (drawn.length !== count) seen.faults.push(`it draws ${drawn.length} shapes instead of ${count}`);
  const alike = new Map<Paint, Paint>();
  const passMm = pass.artwork.artboard.mmPerPx;
  const sheetMm = sheet.artwork.artboard.mmPerPx;
  for (let at = 0; at < Math.min(count, drawn.length) && seen.faults.length < MOST_LISTED; at += 1) {
    const shape = wanted[at % wanted.length]!;
    const moved = drawn[at]!;
    const copy = Math.floor(at / wanted.length);
    const name = `${nameShape(shape)} of copy ${copy + 1}`;
    if (moved.kind !== shape.kind || !(alike.get(moved.paint) === shape.paint || hasEqualPaint(shape, moved)))
      seen.faults.push(`${name} is painted otherwise`);
    else alike.set(moved.paint, shape.paint);
    const [a, b, c, d, e, f] = matrices[copy]!;
    const px = passMm / sheetMm;
    const onSheet: Matrix = multiply([a, b, c, d, e / sheetMm, f / sheetMm], [px, 0, 0, px, 0, 0]);
    const deviationMm = shapeDeviation(shape, moved, onSheet) * sheetMm;
    if (!(deviationMm <= TOLERANCE_MM)) seen.faults.push(`${name} lies ${deviationMm.toFixed(4)} mm from its place`);
    if (!(deviationMm <= seen.greatest)) {
      seen.greatest = deviationMm;
      seen.at = `${name} in ${claim.file}`;
    }
  }
  return { ...seen, shapes: Math.min(count, drawn.length) };
}

/**
 * Holds a sheet of copies against the pass it was made of.
 *
 * @param pass - The pass as the split made it, proved already.
 */
export function judgeCopies(pass: ReadFile, sheet: ReadFile, claim: CopiesClaim): CopiesVerdict {
  const drawn = judgeDrawn(pass, sheet, claim);
  const faults = [
    ...judgeRoot(pass, sheet, claim),
    ...(claim.writtenOut === null
      ? judgeReferences(pass, sheet, claim)
      : judgeWrittenOut(pass, sheet, claim, claim.writtenOut)),
    ...judgeMatrices(pass, sheet, claim),
    ...drawn.faults,
  ];
  return {
    shapes: drawn.shapes,
    deviationMm: drawn.greatest,
    deviationAt: drawn.at,
    findings: faults.slice(0, MOST_LISTED).map((why) => refuse(claim.file, why)),
  };
}
