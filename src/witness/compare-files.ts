// Files made elsewhere: whether they lie on each other and on the source.
import { type Finding, finding } from '../model/finding.js';
import {
  compareBoards,
  compareWithSource,
  type FileSummary,
  type MeasuredFile,
  measureFile,
} from './compare-boards.js';
import { sayUnreadable } from './judge-notes.js';
import { matchShapes } from './match-shapes.js';
import { readTree } from './read-tree.js';
import { reportMatches, type ShapeMatch } from './report-matches.js';

export type { FileSummary } from './compare-boards.js';
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
}

function measure(file: ForeignFile, options: CompareOptions, findings: Finding[]): MeasuredFile | null {
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
  return measured;
}

function sayUnsure({ summary }: MeasuredFile): Finding {
  return finding('resolve/size-unsure', {
    message: `${summary.name} states no size in a unit of length; at 96 user units to the inch it is ${summary.widthMm} x ${summary.heightMm} mm.`,
    remedy: 'Say --user-units-per-inch where the program that made it counts otherwise.',
    place: { file: summary.name },
  });
}

/**
 * Compares artboard, size, drawn extent and marks of files with each other and, with a source, every drawn shape with
 * the source's.
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
  for (const file of measured) findings.push(...compareWithSource(file, original, options));
  const matching = matchShapes(
    original.drawn,
    measured.map((file) => file.drawn),
    { tolerance: options.toleranceMm, shift: options.shiftMm },
  );
  const report = reportMatches(matching, original, measured, options);
  return { ...report, findings: [...findings, ...report.findings], files: summaries };
}
