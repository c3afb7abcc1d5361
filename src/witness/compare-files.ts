// Files made elsewhere: whether they lie on each other and on the source.
import { type Matrix, multiply } from '../geometry/matrix.js';
import { type Finding, finding } from '../model/finding.js';
import {
  compareBoards,
  compareWithSource,
  type FileSummary,
  type MeasuredFile,
  measureFile,
} from './compare-boards.js';
import { type CopiesComparison, compareCopies, MOST_COPIED_SHAPES } from './compare-copies.js';
import { findCopies } from './find-copies.js';
import { sayUnreadable } from './judge-notes.js';
import { matchShapes } from './match-shapes.js';
import { readTree, type WitnessTree } from './read-tree.js';
import { reportMatches, type ShapeMatch } from './report-matches.js';

export type { FileSummary } from './compare-boards.js';
export type { CopiesComparison } from './compare-copies.js';
export type { ShapeMatch } from './report-matches.js';

/** A file that somebody made, decoded: UTF-8, unpacked, entities written out. */
export interface ForeignFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** How to compare. */
export interface CompareOptions {
  /** Distance that still counts as the same place, mm. */
  readonly toleranceMm: number;
  /** How far the files are known to lie from the source, mm. */
  readonly shiftMm: readonly [number, number];
  /** User units to the inch for a size that is not sure; null: 96. */
  readonly userUnitsPerInch: number | null;
  /** From mm on the source to mm on the sheet, for each copy that the files hold; null: found out where they hold copies. */
  readonly copiesMm: readonly Matrix[] | null;
}

/** What came of it. */
export interface FileComparison {
  readonly findings: readonly Finding[];
  readonly files: readonly FileSummary[];
  /** Shapes of the files recognised in the source; empty without a source. */
  readonly matches: readonly ShapeMatch[];
  readonly greatestDeviationMm: number;
  /** Which shape that is, and in which file; '' without a source. */
  readonly greatestDeviationAt: string;
  /** On sheets of copies. */
  readonly copies?: CopiesComparison;
}

interface ReadFile extends MeasuredFile {
  readonly tree: WitnessTree;
}

function measure(file: ForeignFile, options: CompareOptions, findings: Finding[]): ReadFile | null {
  const result = readTree(file.bytes);
  if ('fault' in result) {
    findings.push(sayUnreadable(file.name, result.fault));
    return null;
  }
  const measured = measureFile(file.name, result.tree, options.userUnitsPerInch);
  if (measured.drawn.isCut) {
    findings.push(sayUnreadable(file.name, 'its uses draw more copies than the second judge follows'));
    return null;
  }
  if (!measured.summary.sizeIsSure && options.userUnitsPerInch === null) findings.push(sayUnsure(measured));
  return { ...measured, tree: result.tree };
}

function sayUnsure({ summary }: MeasuredFile): Finding {
  return finding('resolve/size-unsure', {
    message: `${summary.name} states no size in a unit of length; at 96 user units to the inch it is ${summary.widthMm} x ${summary.heightMm} mm.`,
    remedy: 'Say --user-units-per-inch where the program that made it counts otherwise.',
    place: { file: summary.name },
  });
}

type Comparing = Omit<FileComparison, 'files'>;

/** The files as they lie, the source once. */
function comparePlain(files: readonly MeasuredFile[], source: MeasuredFile, options: CompareOptions): Comparing {
  const sizes = files.flatMap((file) => compareWithSource(file, source, options));
  const matching = matchShapes(
    source.drawn,
    files.map((file) => file.drawn),
    { tolerance: options.toleranceMm, shift: options.shiftMm },
  );
  const report = reportMatches(matching, source, files, { ...options, shapesOfCopy: 0 });
  return { ...report, findings: [...sizes, ...report.findings] };
}

/** Whether the files are the source once, so that nobody need look for copies. */
function isKept(findings: readonly Finding[]): boolean {
  return findings.every(({ code }) => code === 'verify/repainted');
}

/** Matrices of at least two copies; none where the files hold none, or more than can be followed. */
function findSheet(files: readonly MeasuredFile[], source: MeasuredFile, options: CompareOptions): readonly Matrix[] {
  const found = findCopies(
    source.drawn,
    files.map(({ drawn }) => drawn),
    options.toleranceMm,
  );
  const count = found.length * source.drawn.shapes.length;
  return found.length < 2 || count > MOST_COPIED_SHAPES ? [] : found;
}

/** The files as sheets of copies. */
function compareSheet(
  files: readonly MeasuredFile[],
  source: ReadFile,
  { from, copiesMm }: { readonly from: CopiesComparison['from']; readonly copiesMm: readonly Matrix[] },
  options: CompareOptions,
): Comparing {
  const [right, down] = options.shiftMm;
  const placed = copiesMm.map((matrix) => multiply([1, 0, 0, 1, right, down], matrix));
  const copied = { tree: source.tree, measured: source, userUnitsPerInch: options.userUnitsPerInch };
  const { list, ...report } = compareCopies(files, copied, placed, options.toleranceMm);
  return { ...report, copies: { from, list } };
}

/** What came of a comparison behind what was found before it. */
function addTo({ findings, files }: Pick<FileComparison, 'findings' | 'files'>, made: Comparing): FileComparison {
  return { ...made, findings: [...findings, ...made.findings], files };
}

/**
 * Compares artboard, size, drawn extent and marks of files with each other and, with a source, every drawn shape with
 * the source's; on sheets of copies with that of each copy.
 *
 * @throws Never for what a file holds: what cannot be read is a finding.
 * @unit mm from the artboard's top left, y down
 */
export function compareFiles(
  files: readonly ForeignFile[],
  source: ForeignFile | null,
  options: CompareOptions,
): FileComparison {
  const findings: Finding[] = [];
  const measured: MeasuredFile[] = [];
  for (const file of files) {
    const one = measure(file, options, findings);
    if (one !== null) measured.push(one);
  }
  findings.push(...compareBoards(measured, options.toleranceMm));
  const summaries = measured.map((file) => file.summary);
  const original = source === null ? null : measure(source, options, findings);
  if (original === null) {
    return { findings, files: summaries, matches: [], greatestDeviationMm: 0, greatestDeviationAt: '' };
  }
  const said = options.copiesMm ?? [];
  const found = { findings, files: summaries };
  if (said.length > 0) return addTo(found, compareSheet(measured, original, { from: 'said', copiesMm: said }, options));
  const plain = comparePlain(measured, original, options);
  const isPlain = options.copiesMm !== null || isKept(plain.findings);
  const copiesMm = isPlain ? [] : findSheet(measured, original, options);
  return addTo(
    found,
    copiesMm.length === 0 ? plain : compareSheet(measured, original, { from: 'found', copiesMm }, options),
  );
}
