// Walks a written sheet beside the source: nothing lost, nothing twice, every kept byte the designer's.
import { type Finding, type FindingCode, finding, type Place } from '../model/finding.js';
import { equalBytes } from '../model/platform.js';
import { placeOf } from '../source/locate.js';
import { readAttributeValue, readText } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';
import { type Allowance, judgeHead, sameHead } from './compare-head.js';
import { findLeftBehind, type Needs } from './find-left-behind.js';

/** A written file and what it is said to hold. */
export interface SheetClaim {
  readonly file: string;
  readonly sheet: Source;
  /** For each element of the file its row in the source, or -1. */
  readonly rows: Int32Array;
  /** 1 for source rows that this file must draw. */
  readonly expected: Uint8Array;
  /** 1 for source rows that draw anything at all. */
  readonly carriers: Uint8Array;
  /** What its elements need besides themselves. */
  readonly needs: Needs;
  /** Style declarations that stand on a row besides its own. */
  readonly overrides: ReadonlyMap<number, string>;
  readonly rootMayChange: boolean;
  /** Rows of style elements whose text may have been cleaned of outside references. */
  readonly cleanedRows: ReadonlySet<number>;
}

interface Walk {
  readonly source: Source;
  readonly claim: SheetClaim;
  readonly seen: Uint8Array;
  /** 1 for source rows that stand in the file, drawn or not. */
  readonly present: Uint8Array;
  readonly findings: Finding[];
  /** Row of the sheet up to which everything stands in a definition wrapper. */
  wrappedUntil: number;
  lastRow: number;
}

function nameElement({ element, id }: Place): string {
  return id === undefined || id === '' ? `${element}` : `${element} "${id}"`;
}

function complain(walk: Walk, code: FindingCode, sheetRow: number, what: string): void {
  if (walk.findings.length >= 100) return;
  const { sheet, file } = walk.claim;
  const place = { ...placeOf(sheet, sheetRow), file };
  walk.findings.push(
    finding(code, {
      message: `${file}, line ${place.line}: ${nameElement(place)}: ${what}.`,
      remedy: 'Do not run this file. Split the source again; if it happens again, it is a fault of pinbar.',
      place,
    }),
  );
}

/** Notes that a row is drawn here, and whether it should be. */
function countDrawn(walk: Walk, sheetRow: number, row: number): void {
  const { expected, carriers } = walk.claim;
  if (sheetRow < walk.wrappedUntil || carriers[row] === 0) return;
  if (expected[row] === 0) complain(walk, 'verify/unexpected', sheetRow, 'is drawn, but belongs to another pass');
  else if (walk.seen[row] === 1) complain(walk, 'verify/doubled', sheetRow, 'stands twice');
  walk.seen[row] = 1;
}

/** An element that pinbar put there; returns the next row to look at. */
function judgeInserted(walk: Walk, i: number): number {
  const { sheet } = walk.claim;
  const { next } = sheet.elements;
  const role = readAttributeValue(sheet, i, 'data-pinbar');
  if (role === 'definition') {
    walk.wrappedUntil = Math.max(walk.wrappedUntil, next[i]!);
    return i + 1;
  }
  const isMarks = readAttributeValue(sheet, i, 'id') === 'pinbar-marks' && sheet.elements.parent[i] === 0;
  const isStandIn =
    role === 'stand-in' && next[i] === i + 1 && readAttributeValue(sheet, i, 'style') === 'display:none!important';
  if (!isMarks && !isStandIn) complain(walk, 'verify/unexpected', i, 'does not come from the source');
  return next[i]!;
}

/** Whether the parent in the sheet is the parent in the source, seen through definition wrappers. */
function parentMatches(walk: Walk, i: number, row: number): boolean {
  const { rows, sheet } = walk.claim;
  let parent = sheet.elements.parent[i]!;
  while (parent >= 0 && rows[parent] === -1) parent = sheet.elements.parent[parent]!;
  const claimed = parent < 0 ? -1 : rows[parent]!;
  return claimed === walk.source.elements.parent[row];
}

/** Whether the whole element is there byte for byte; then its content needs no look of its own. */
function isWholeEqual(walk: Walk, i: number, row: number): boolean {
  const a = walk.source.elements;
  const b = walk.claim.sheet.elements;
  const length = a.end[row]! - a.start[row]!;
  if (length !== b.end[i]! - b.start[i]! || a.next[row]! - row !== b.next[i]! - i) return false;
  return equalBytes(
    walk.source.text.subarray(a.start[row]!, a.end[row]!),
    walk.claim.sheet.text.subarray(b.start[i]!, b.end[i]!),
  );
}

const TEXT = /^(?:text|tspan|textPath)$/;

function judgeContent(walk: Walk, i: number, row: number): void {
  const { sheet, cleanedRows } = walk.claim;
  const a = walk.source.elements;
  const b = sheet.elements;
  if (cleanedRows.has(row)) return;
  if (a.next[row] !== row + 1) {
    const isText = TEXT.test(a.names[a.name[row]!]!.local);
    if (isText && readText(walk.source, row) !== readText(sheet, i)) {
      complain(walk, 'verify/bytes-changed', i, 'its text differs from the source');
    }
    return;
  }
  const before = walk.source.text.subarray(a.headEnd[row]!, a.tailStart[row]!);
  const after = sheet.text.subarray(b.headEnd[i]!, b.tailStart[i]!);
  if (!equalBytes(before, after)) complain(walk, 'verify/bytes-changed', i, 'its text differs from the source');
}

/** A row whose paint is parted, or that is shown though hidden, must say so. */
function requireOverride(walk: Walk, i: number, row: number): void {
  const { overrides } = walk.claim;
  const override = overrides.size === 0 ? undefined : overrides.get(row);
  if (override === undefined) return;
  const style = readAttributeValue(walk.claim.sheet, i, 'style') ?? '';
  if (style !== override && !style.endsWith(`;${override}`))
    complain(walk, 'verify/bytes-changed', i, `its style does not end in "${override}"`);
}

/** One element that comes from the source; returns the next row to look at. */
function judgeKept(walk: Walk, i: number, row: number): number {
  const { claim, source } = walk;
  if (row <= walk.lastRow) complain(walk, 'verify/doubled', i, 'stands again or out of order');
  if (!parentMatches(walk, i, row))
    complain(walk, 'verify/chain-changed', i, 'stands in another group than in the source');
  const end = claim.sheet.elements.next[i]!;
  if (isWholeEqual(walk, i, row)) {
    for (let k = 0; i + k < end; k += 1) {
      requireOverride(walk, i + k, row + k);
      if (claim.rows[i + k] !== row + k)
        complain(walk, 'verify/bytes-changed', i + k, 'is not the element it is said to be');
      countDrawn(walk, i + k, row + k);
    }
    walk.present.fill(1, row, row + (end - i));
    walk.lastRow = row + (end - i) - 1;
    return end;
  }
  if (!sameHead(source, row, claim.sheet, i)) {
    const allowance: Allowance = { override: claim.overrides.get(row) ?? '', root: row === 0 && claim.rootMayChange };
    const wrong = judgeHead(source, row, { source: claim.sheet, row: i }, allowance);
    if (wrong !== null) complain(walk, 'verify/bytes-changed', i, wrong);
  }
  requireOverride(walk, i, row);
  judgeContent(walk, i, row);
  countDrawn(walk, i, row);
  walk.present[row] = 1;
  walk.lastRow = row;
  return i + 1;
}

/**
 * Compares a written sheet with the source, element by element.
 *
 * @returns Findings, at most some hundred, and how many shapes were found drawn.
 */
export function readSheet(
  source: Source,
  claim: SheetClaim,
): { readonly findings: readonly Finding[]; readonly drawn: number } {
  const walk: Walk = {
    source,
    claim,
    seen: new Uint8Array(source.elements.count),
    present: new Uint8Array(source.elements.count),
    findings: [],
    wrappedUntil: 0,
    lastRow: -1,
  };
  const { count } = claim.sheet.elements;
  if (count !== claim.rows.length) {
    complain(walk, 'verify/unexpected', 0, `the file holds ${count} elements instead of ${claim.rows.length}`);
    return { findings: walk.findings, drawn: 0 };
  }
  let i = 0;
  while (i < count) {
    const row = claim.rows[i]!;
    i = row < 0 ? judgeInserted(walk, i) : judgeKept(walk, i, row);
  }
  const behind = findLeftBehind(source, claim.needs, { file: claim.file, present: walk.present });
  return { findings: [...walk.findings, ...listLost(walk), ...behind], drawn: countSeen(walk) };
}

function countSeen(walk: Walk): number {
  let drawn = 0;
  for (let row = 0; row < walk.seen.length; row += 1)
    if (walk.seen[row] === 1 && walk.claim.expected[row] === 1) drawn += 1;
  return drawn;
}

/** Shapes that should be in the file and are not. */
function listLost(walk: Walk): readonly Finding[] {
  const { expected, file } = walk.claim;
  const lost: Finding[] = [];
  for (let row = 0; row < expected.length && lost.length < 100; row += 1) {
    if (expected[row] === 0 || walk.seen[row] === 1) continue;
    const place = placeOf(walk.source, row);
    lost.push(
      finding('verify/lost', {
        message: `${file}: the ${nameElement(place)} of line ${place.line} in the source is missing.`,
        remedy: 'Do not run this file. Split the source again; if it happens again, it is a fault of pinbar.',
        place: { ...place, file },
      }),
    );
  }
  return lost;
}
