// What a sheet of copies shows when it is read back, for comparing the sheets of a job.
import { EMPTY_BOX, isEmptyBox, transformBox, unite } from '../geometry/box.js';
import { multiply } from '../geometry/matrix.js';
import { measureExtent } from '../model/drawn-extent.js';
import type { Placement } from '../model/pass.js';
import { findActiveContent } from './active-content.js';
import { sayMarks } from './compare-marks.js';
import type { CopiesClaim, CopiesVerdict, ReadFile } from './judge-copies.js';
import { readMarks } from './read-marks.js';
import { type SheetReading, toExtent } from './verify.js';

const REASON = { rule: -1, text: '' };

/** The reading of one sheet: what `compareSheets` and `judgeReadings` want. */
export function readCopies(
  pass: ReadFile,
  sheet: ReadFile,
  claim: Pick<CopiesClaim, 'file' | 'matricesMm'> & { readonly passName: string },
  verdict: CopiesVerdict,
): SheetReading {
  const { file, matricesMm } = claim;
  const { shapes, artboard } = pass.artwork;
  const placements: readonly Placement[] = shapes
    .filter((shape) => shape.draws && !shape.hidden)
    .map((shape) => ({ shape: shape.index, pass: 0, part: 'whole', reason: REASON }));
  const art = measureExtent(shapes, placements);
  const toMm = [artboard.mmPerPx, 0, 0, artboard.mmPerPx, 0, 0] as const;
  const artMm = isEmptyBox(art)
    ? EMPTY_BOX
    : matricesMm.map((matrix) => transformBox(multiply(matrix, toMm), art)).reduce(unite, EMPTY_BOX);
  const marks = readMarks(sheet.source, sheet.artwork.artboard);
  const { elements, text } = sheet.source;
  return {
    file,
    head: text.slice(elements.start[0]!, elements.headEnd[0]!),
    artboard: sheet.artwork.artboard,
    marks,
    proof: {
      pass: claim.passName,
      shapes: placements.length * matricesMm.length,
      artExtentMm: toExtent(artMm),
      drawnExtentMm: toExtent(marks === null ? artMm : unite(artMm, marks.boxMm)),
    },
    shapes: verdict.shapes,
    deviationMm: verdict.deviationMm,
    deviationAt: verdict.deviationAt,
    findings: [
      ...verdict.findings,
      ...findActiveContent(sheet.source, file),
      ...(marks?.unlike ?? []).map((what) => sayMarks(file, what)),
    ],
  };
}
