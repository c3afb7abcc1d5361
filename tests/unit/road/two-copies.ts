// Two copies of a small pass on a sheet, damaged where a test says so, before both judges.
import { expect } from 'vitest';
import { joinPieces } from '../../../src/index.js';
import type { Layout, SheetRequest } from '../../../src/model/layout.js';
import { resolveSource, scanBytes } from '../../../src/road/read-artwork.js';
import { chooseSuffixes } from '../../../src/road/write-again.js';
import {
  BLANK_ID,
  type CopyForm,
  copyId,
  isFramed,
  isWritten,
  listForms,
  RULES_ID,
  writeCopies,
} from '../../../src/road/write-copies.js';
import { judgeCopies, type ReadFile } from '../../../src/verify/judge-copies.js';
import { judgeSheetsOfCopies } from '../../../src/witness/judge-copies.js';

/** A pass with a definition, a group and an id. */
export const PASS = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 120 80">
<defs><linearGradient id="fade"><stop stop-color="#cc0000"/></linearGradient></defs>
<g id="Art"><path d="M10 10H50V40Z" fill="url(#fade)"/><circle id="dot" cx="70" cy="20" r="6"/></g></svg>`;

/** Changes of a text: what stands there and what takes its place. */
export type Damage = readonly (readonly [string, string])[];

const MATRICES: Layout['matricesMm'] = [
  [1, 0, 0, 1, 10, 10],
  [-1, 0, 0, -1, 110, 60],
];

/** A text as a file. */
export function toBytes(text: string): Uint8Array {
  return new Uint8Array(Buffer.from(text));
}

/** A file as the first judge reads it. */
export function readShapes(bytes: Uint8Array): ReadFile {
  const source = scanBytes(bytes, {});
  return { source, artwork: resolveSource(source, {}, null) };
}

/** What came of it: the form, the sheet, and what each judge says. */
export interface Judged {
  readonly form: CopyForm;
  readonly text: string;
  readonly first: readonly string[];
  readonly second: readonly string[];
}

function judgeForm(pass: string, form: CopyForm, damage: Damage): Judged {
  const bytes = toBytes(pass);
  const before = readShapes(bytes);
  const { artboard, usesPercent, structural } = before.artwork;
  const read = { source: before.source, artboard, usesPercent, structural };
  const { pieces, matrices } = writeCopies(read, form, { sizeMm: [200, 100], matricesMm: MATRICES });
  let text = Buffer.from(joinPieces(pieces)).toString('utf8');
  for (const [from, to] of damage) {
    expect(text).toContain(from);
    text = text.replace(from, to);
  }
  const sheet = toBytes(text);
  const claim = {
    file: 'a.svg',
    widthMm: 200,
    heightMm: 100,
    matricesMm: MATRICES,
    written: matrices,
    copyIds: [copyId(1), copyId(2)],
    blankId: BLANK_ID,
    writtenOut: isWritten(form)
      ? { suffixes: chooseSuffixes(before.source, 2), framed: isFramed(form), rulesId: RULES_ID }
      : null,
    copiesDrawn: 'all' as const,
  };
  const context = { matricesMm: MATRICES, sizeMm: [200, 100] as const, marked: false, toleranceMm: 0.001 };
  const second = judgeSheetsOfCopies([{ name: 'a.svg', pass: bytes, sheet }], context);
  return {
    form,
    text,
    first: judgeCopies(before, readShapes(sheet), claim).findings.map(({ message }) => message),
    second: second.findings.map(({ message }) => message),
  };
}

/** The sheet in the plainest form that the first judge lets pass, then damaged; where none passes, in the last. */
export function judge(pass: string, copies: SheetRequest['copies'], damage: Damage = []): Judged {
  const { source, artwork } = readShapes(toBytes(pass));
  const { artboard, usesPercent, structural } = artwork;
  const forms = listForms({ source, artboard, usesPercent, structural }, copies);
  const form = forms.find((one) => judgeForm(pass, one, []).first.length === 0) ?? forms.at(-1)!;
  return judgeForm(pass, form, damage);
}
