// Makes the sheet of a pass: bytes to bytes, read back by the first judge.
import type { Matrix } from '../geometry/matrix.js';
import { type Finding, finding } from '../model/finding.js';
import type { RoadOptions } from '../model/job.js';
import type { Layout, SheetRequest } from '../model/layout.js';
import { encodeUtf8, equalBytes } from '../model/platform.js';
import { joinPieces } from '../model/sheet.js';
import { invariant, PinbarError } from '../model/trouble.js';
import { DEFAULT_LIMITS } from '../source/source.js';
import { type CopiesVerdict, judgeCopies, type ReadFile } from '../verify/judge-copies.js';
import { resolveSource, scanBytes } from './read-artwork.js';
import { chooseSuffixes, measureAgain, repeatIdRules } from './write-again.js';
import {
  BLANK_ID,
  type CopyForm,
  copyId,
  isFramed,
  isWritten,
  listForms,
  type ReadPass,
  RULES_ID,
  writeCopies,
} from './write-copies.js';

/** The sheet of one pass. */
export interface LaidOutPass {
  readonly name: string;
  /** The pass it was made of. */
  readonly pass: Uint8Array;
  readonly before: ReadFile;
  readonly pieces: readonly Uint8Array[];
  readonly form: CopyForm;
  /** As it is read back. */
  readonly sheet: ReadFile;
  readonly verdict: CopiesVerdict;
}

/** Shapes of all copies up to which each is resolved; beyond, the first alone, and the others are held to by their bytes. */
const MOST_SHAPES = 200_000;

function readFile(bytes: Uint8Array, options: RoadOptions): ReadFile {
  const source = scanBytes(bytes, options);
  invariant(equalBytes(source.text, bytes), 'a sheet is read otherwise than it was written');
  return { source, artwork: resolveSource(source, options, null) };
}

interface Attempt {
  readonly form: CopyForm;
  readonly pieces: readonly Uint8Array[];
  readonly sheet: ReadFile;
  readonly verdict: CopiesVerdict;
}

interface PassToPlace {
  readonly name: string;
  readonly pass: ReadFile;
  readonly layout: Layout;
  readonly copies: SheetRequest['copies'];
  /** The group of marks, from the matrix that leads from mm on the sheet to user units; '' where there are none. */
  readonly marks: string;
}

function toRead({ source, artwork }: ReadFile): ReadPass {
  const { artboard, usesPercent, structural } = artwork;
  return { source, artboard, usesPercent, structural };
}

/**
 * Copies that are written out grow with their number: what the reader would not take back is not written.
 *
 * @throws PinbarError `limit/elements` or `limit/bytes`.
 */
function holdLimits({ name, pass, layout }: PassToPlace, options: RoadOptions): void {
  const limits = { ...DEFAULT_LIMITS, ...options.limits };
  const more = layout.matricesMm.length - 1;
  const again = measureAgain(toRead(pass));
  const { text, elements } = pass.source;
  const needs = { elements: elements.count + more * again.elements, bytes: text.length + more * again.bytes };
  for (const kind of ['elements', 'bytes'] as const) {
    if (needs[kind] <= limits[kind]) continue;
    throw new PinbarError(`limit/${kind}`, {
      message: `${name}: ${more + 1} copies written out hold ${needs[kind]} ${kind}; ${limits[kind]} are allowed.`,
      remedy: `Have the copies refer to the art (--copies referenced, or "copies": "referenced" in the ticket's sheet), or raise the bound with --limit ${kind}=NUMBER.`,
      place: { file: name },
      data: { [kind]: needs[kind], allowed: limits[kind] },
    });
  }
}

function attempt(job: PassToPlace, form: CopyForm, options: RoadOptions): Attempt {
  const { name, pass, layout } = job;
  const { widthMm, heightMm, matricesMm } = layout;
  const read = toRead(pass);
  const write = (matrices: readonly Matrix[]) => {
    const written = writeCopies(read, form, { sizeMm: [widthMm, heightMm], matricesMm: matrices });
    const pieces = [...written.pieces];
    pieces.splice(written.marksAt, 0, encodeUtf8(job.marks));
    return { pieces, matrices: written.matrices };
  };
  const { pieces, matrices } = write(matricesMm);
  const suffixes = isWritten(form) ? chooseSuffixes(pass.source, matricesMm.length) : [];
  // Rules that are written again for the ids of a copy are seen to hold only where that copy is resolved.
  const mustDraw = repeatIdRules(pass.source, suffixes.slice(1)).length > 0;
  const all = mustDraw || pass.artwork.shapes.length * matricesMm.length <= MOST_SHAPES;
  const bytes = joinPieces(pieces);
  const drawn = readFile(all ? bytes : joinPieces(write(matricesMm.slice(0, 1)).pieces), options);
  const sheet = all ? drawn : { source: scanBytes(bytes, options), artwork: drawn.artwork };
  const verdict = judgeCopies(pass, sheet, {
    file: name,
    widthMm,
    heightMm,
    matricesMm,
    written: matrices,
    copyIds: matricesMm.map((_, i) => copyId(i + 1)),
    blankId: BLANK_ID,
    writtenOut: isWritten(form) ? { suffixes, framed: isFramed(form), rulesId: RULES_ID } : null,
    copiesDrawn: all ? 'all' : 'first',
  });
  return { form, pieces, sheet, verdict };
}

function hasErrors(findings: readonly Finding[]): boolean {
  return findings.some((item) => item.severity === 'error');
}

function saySiblings(file: string): Finding {
  return finding('sheet/not-kept', {
    message: `${file}: its style rules look at siblings or positions, which copies that refer to the art do not keep in every reader.`,
    remedy:
      'Have the copies written out (--copies written), or write these rules by class, or give the shapes their paint directly.',
    place: { file },
  });
}

/**
 * The sheet of a pass: its copies, written out or referred to.
 *
 * The plainest form that the first judge lets pass is taken; where none is, the last comes back with what is wrong.
 *
 * @param drawMarks - The group of marks, in user units of the pass's root; '' for none.
 */
export function layOutPass(
  file: { readonly name: string; readonly bytes: Uint8Array },
  request: { readonly layout: Layout; readonly copies: SheetRequest['copies'] },
  drawMarks: (pass: ReadFile) => string,
  options: RoadOptions,
): LaidOutPass {
  const source = scanBytes(file.bytes, options);
  const pass: ReadFile = { source, artwork: resolveSource(source, options, null) };
  const job: PassToPlace = { name: file.name, pass, ...request, marks: drawMarks(pass) };
  if (request.copies === 'written') holdLimits(job, options);
  const forms = listForms(toRead(pass), request.copies);
  let last = attempt(job, forms[0] ?? 'framed-uses', options);
  for (const form of forms.slice(1)) if (hasErrors(last.verdict.findings)) last = attempt(job, form, options);
  const findings = forms.length === 0 ? [saySiblings(file.name), ...last.verdict.findings] : last.verdict.findings;
  return { name: file.name, pass: file.bytes, before: pass, ...last, verdict: { ...last.verdict, findings } };
}
