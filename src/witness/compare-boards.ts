// Artboard, physical size, drawn extent and marks of files that should lie on each other.
import { type Box, isEmptyBox, unite } from '../geometry/box.js';
import type { Matrix } from '../geometry/matrix.js';
import { createPathReader } from '../geometry/path-data.js';
import { MM_PER_INCH, MM_PER_PX } from '../geometry/units.js';
import { type Finding, finding } from '../model/finding.js';
import { compareMarkPrints, type MarkPrint, readMarkPrint } from './judge-marks.js';
import { type DrawnList, listDrawn } from './list-drawn.js';
import { compose, readBoard, type WitnessBoard, walkStands } from './own-matrix.js';
import { attributeOf, type WitnessTree } from './read-tree.js';

/** What is known of one file. Lengths in mm. */
export interface FileSummary {
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** False where the size is in px, without a unit, in percent or missing. */
  readonly sizeIsSure: boolean;
  readonly viewBox: readonly [number, number, number, number] | null;
  /** Drawn shapes, marks left out; one drawn through uses counts once per use. */
  readonly shapes: number;
  /** What is drawn, strokes and marks included; null where nothing is. */
  readonly extentsMm: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  } | null;
  /** Whether the file has marks that pinbar knows. */
  readonly marks: boolean;
}

/** A file, measured. */
export interface MeasuredFile {
  readonly summary: FileSummary;
  readonly drawn: DrawnList;
  readonly marks: MarkPrint | null;
  readonly extent: Box;
  /** From the root's user units to mm. */
  readonly matrix: Matrix;
  readonly preserve: string;
}

function roundMm(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

function mmPerPxOf({ sizeIsSure }: WitnessBoard, userUnitsPerInch: number | null): number {
  return sizeIsSure || userUnitsPerInch === null ? MM_PER_PX : MM_PER_INCH / userUnitsPerInch;
}

/** What a file draws where its artboard lies elsewhere: `place` leads from mm on it to the mm that are answered. */
export function listPlaced(tree: WitnessTree, userUnitsPerInch: number | null, place: Matrix): DrawnList {
  const board = readBoard(tree.elements[0]!);
  return listDrawn(tree, board, mmPerPxOf(board, userUnitsPerInch), place);
}

/** Measures a file. */
export function measureFile(name: string, tree: WitnessTree, userUnitsPerInch: number | null): MeasuredFile {
  const root = tree.elements[0]!;
  const board = readBoard(root);
  const mmPerPx = mmPerPxOf(board, userUnitsPerInch);
  const toMm: Matrix = [mmPerPx, 0, 0, mmPerPx, 0, 0];
  const drawn = listDrawn(tree, board, mmPerPx);
  const marks = readMarkPrint(tree, walkStands(tree.elements, board), {
    reader: createPathReader(),
    toUnit: (matrix) => compose(toMm, matrix),
  });
  const extent = marks === null ? drawn.extent : unite(drawn.extent, marks.extent);
  const { x0, y0, x1, y1 } = extent;
  const summary: FileSummary = {
    name,
    widthMm: roundMm(board.width * mmPerPx),
    heightMm: roundMm(board.height * mmPerPx),
    sizeIsSure: board.sizeIsSure,
    viewBox: board.viewBox,
    shapes: drawn.shapes.length,
    extentsMm: isEmptyBox(extent)
      ? null
      : { x: roundMm(x0), y: roundMm(y0), width: roundMm(x1 - x0), height: roundMm(y1 - y0) },
    marks: marks !== null,
  };
  const preserve = (attributeOf(root, 'preserveAspectRatio') ?? 'xMidYMid meet').trim();
  return { summary, drawn, marks, extent, matrix: compose(toMm, board.matrix), preserve };
}

function sayMm(value: number): string {
  return `${Number(value.toFixed(4))}`;
}

function saySize({ widthMm, heightMm }: FileSummary): string {
  return `${sayMm(widthMm)} x ${sayMm(heightMm)} mm`;
}

function compareSizes(file: MeasuredFile, first: MeasuredFile, toleranceMm: number): Finding[] {
  const dw = Math.abs(file.summary.widthMm - first.summary.widthMm);
  const dh = Math.abs(file.summary.heightMm - first.summary.heightMm);
  if (dw <= toleranceMm && dh <= toleranceMm) return [];
  return [
    finding('verify/size-differs', {
      message: `${file.summary.name} is ${saySize(file.summary)}, but ${first.summary.name} is ${saySize(first.summary)}.`,
      remedy: 'Export all files from one artboard, with the same width and height in a unit of length.',
      place: { file: file.summary.name },
      data: { widthMm: file.summary.widthMm, heightMm: file.summary.heightMm },
    }),
  ];
}

function sayViewBox(file: MeasuredFile): string {
  return file.summary.viewBox === null ? 'no viewBox' : `viewBox "${file.summary.viewBox.join(' ')}"`;
}

function compareArtboards(file: MeasuredFile, first: MeasuredFile): Finding[] {
  const same = file.preserve === first.preserve && file.summary.viewBox?.join(' ') === first.summary.viewBox?.join(' ');
  if (same) return [];
  const alignment = file.preserve === first.preserve ? '' : ` and preserveAspectRatio "${file.preserve}"`;
  const other = file.preserve === first.preserve ? '' : ` and "${first.preserve}"`;
  return [
    finding('verify/artboard-differs', {
      message: `${file.summary.name} has ${sayViewBox(file)}${alignment}, but ${first.summary.name} has ${sayViewBox(first)}${other}.`,
      remedy: 'Give all files the same viewBox and alignment, or export them from one artboard.',
      place: { file: file.summary.name },
    }),
  ];
}

function sayExtent(box: Box): string {
  if (isEmptyBox(box)) return 'nothing';
  return `${sayMm(box.x1 - box.x0)} x ${sayMm(box.y1 - box.y0)} mm at ${sayMm(box.x0)}, ${sayMm(box.y0)}`;
}

function compareExtents(file: MeasuredFile, first: MeasuredFile, toleranceMm: number): Finding[] {
  const a = file.extent;
  const b = first.extent;
  const empty = isEmptyBox(a) || isEmptyBox(b);
  const distance = Math.max(
    ...[a.x0 - b.x0, a.y0 - b.y0, a.x1 - b.x1, a.y1 - b.y1].map((difference) => Math.abs(difference)),
  );
  if (empty ? isEmptyBox(a) === isEmptyBox(b) : distance <= toleranceMm) return [];
  return [
    finding('verify/extents-differ', {
      message: `${file.summary.name} draws ${sayExtent(a)}, but ${first.summary.name} draws ${sayExtent(b)}: a machine that places a file by what is drawn puts them apart.`,
      remedy: 'Give all files the same outermost marks, or place them by the artboard.',
      place: { file: file.summary.name },
      data: empty ? {} : { deviationMm: distance },
    }),
  ];
}

function compareMarks(files: readonly MeasuredFile[], toleranceMm: number): Finding[] {
  const marked = files.filter((file) => file.marks !== null);
  const findings: Finding[] = [];
  for (const { summary, marks } of files) {
    if (marks !== null) continue;
    findings.push(
      finding('verify/marks-missing', {
        message: `${summary.name} has no marks that pinbar knows.`,
        remedy: 'Nothing to do where the machine places files by the artboard; else put the same marks on all files.',
        place: { file: summary.name },
      }),
    );
  }
  if (marked.length === 0) return findings;
  const fullest = marked.reduce((best, one) => (one.marks!.parts.size > best.marks!.parts.size ? one : best));
  for (const file of marked) {
    for (const { text, distance } of compareMarkPrints(file.marks!, fullest.marks!, toleranceMm)) {
      const by = Number.isFinite(distance) ? `, by ${sayMm(distance)} mm` : '';
      findings.push(
        finding('verify/marks-differ', {
          message: `${file.summary.name} and ${fullest.summary.name}: ${text}${by}.`,
          remedy: 'Put the marks on all files in one go and do not move them.',
          place: { file: file.summary.name },
          data: Number.isFinite(distance) ? { deviationMm: distance } : {},
        }),
      );
    }
  }
  return findings;
}

/** Holds artboard, size, extent and marks of the files against those of the first. */
export function compareBoards(files: readonly MeasuredFile[], toleranceMm: number): readonly Finding[] {
  const [first, ...others] = files;
  if (first === undefined) return [];
  const findings = others.flatMap((file) => [
    ...compareSizes(file, first, toleranceMm),
    ...compareArtboards(file, first),
    ...compareExtents(file, first, toleranceMm),
  ]);
  return [...findings, ...compareMarks(files, toleranceMm)];
}

/** Holds the size against the source's: equal, or grown on all sides by the known shift. */
export function compareWithSource(
  file: MeasuredFile,
  source: MeasuredFile,
  options: { readonly toleranceMm: number; readonly shiftMm: readonly [number, number] },
): readonly Finding[] {
  const grown = [0, 1].map((axis) => {
    const [here, there] =
      axis === 0 ? [file.summary.widthMm, source.summary.widthMm] : [file.summary.heightMm, source.summary.heightMm];
    const margin = 2 * Math.abs(options.shiftMm[axis]!);
    const tolerance = 2 * options.toleranceMm;
    return Math.abs(here - there) <= tolerance || Math.abs(here - there - margin) <= tolerance;
  });
  if (grown.every(Boolean)) return [];
  return compareSizes(file, source, options.toleranceMm);
}
