// Decides where copies and the marks of the sheet lie: what the lines enclose, what is drawn, what the ticket asks for.
import type { CheckFacts } from '../check/check-facts.js';
import { type Box, isEmptyBox } from '../geometry/box.js';
import { layOut } from '../layout/lay-out.js';
import { COPY_MARK_MM, placeCopyMarks } from '../layout/place-copy-marks.js';
import { marksReachMm, measureDrawn, planSheetMarks } from '../mark/plan-marks.js';
import { type Finding, finding } from '../model/finding.js';
import type { Layout, LayoutDecision, LayoutPiece } from '../model/layout.js';
import type { MarkPlan } from '../model/marks.js';
import { type Assignment, isToolpath } from '../model/pass.js';
import type { Ticket } from '../model/ticket.js';
import { readPrint } from './read-print.js';
import { BLANK_ID, copyId } from './write-copies.js';

function moved(box: Box, by: number): Box {
  return { x0: box.x0 + by, y0: box.y0 + by, x1: box.x1 + by, y1: box.y1 + by };
}

/** The passes that cover areas. */
function surfacesOf(assignment: Assignment): Assignment {
  const covers = assignment.passes.map((pass) => !isToolpath(pass.role));
  return { ...assignment, placements: assignment.placements.filter(({ pass }) => covers[pass]!) };
}

/** The piece that is laid out, mm on the artboard of the passes; null where nothing is drawn. */
export function measurePiece(facts: CheckFacts, marginMm: number): LayoutPiece | null {
  const { artwork, assignment, faces } = facts;
  const { mmPerPx } = artwork.artboard;
  const drawnMm = measureDrawn(artwork, assignment);
  if (isEmptyBox(drawnMm)) return null;
  const printedMm = measureDrawn(artwork, surfacesOf(assignment));
  const extent = faces?.extentMm ?? null;
  const boxMm =
    extent === null ? drawnMm : { x0: extent[0], y0: extent[1], x1: extent[0] + extent[2], y1: extent[1] + extent[3] };
  const rim = (loop: Float64Array): readonly (readonly [number, number])[] =>
    Array.from({ length: loop.length / 2 }, (_, i) => [
      loop[2 * i]! * mmPerPx + marginMm,
      loop[2 * i + 1]! * mmPerPx + marginMm,
    ]);
  const print = readPrint(facts);
  return {
    boxMm: moved(boxMm, marginMm),
    boxIs: extent === null ? 'drawn' : 'blank',
    areaMm2: extent === null ? (boxMm.x1 - boxMm.x0) * (boxMm.y1 - boxMm.y0) : faces!.areaMm2,
    rimsMm: extent === null ? [] : faces!.blanks.map(({ outer }) => rim(outer)),
    drawnMm: moved(drawnMm, marginMm),
    printedMm: isEmptyBox(printedMm) ? printedMm : moved(printedMm, marginMm),
    ...(print === null
      ? {}
      : { printedRingsMm: print.map((ring) => ring.map(([x, y]) => [x + marginMm, y + marginMm])) }),
  };
}

/** Small crosses beside the copies, and a warning for copies that have no room for one. */
function planCopyMarks(
  layout: Layout,
  piece: LayoutPiece,
): { readonly copyCrosses: NonNullable<MarkPlan['copyCrosses']>; readonly findings: readonly Finding[] } {
  const places = placeCopyMarks(layout, piece);
  const atMm = places.filter((place) => place !== null);
  const copyCrosses = { atMm, sizeMm: COPY_MARK_MM };
  const count = places.length - atMm.length;
  if (count === 0) return { copyCrosses, findings: [] };
  const missing = finding('sheet/copy-mark-missing', {
    message: `${count} of ${places.length} copies get no cross of their own: ${COPY_MARK_MM} mm and a clear rim find no room beside them.`,
    remedy: `Say a gutter of ${COPY_MARK_MM + 1} mm beyond the print, or do without crosses of the copies.`,
    data: { count },
  });
  return { copyCrosses, findings: [missing] };
}

/** The layout and its marks; null where the ticket asks for no sheet. */
export function planSheet(facts: CheckFacts, ticket: Ticket): LayoutDecision | null {
  const { sheet, marks } = ticket;
  if (sheet === undefined) return null;
  const { ids, marks: markedAt } = facts.artwork;
  if (markedAt >= 0 || ids.has(copyId(1)) || ids.has(BLANK_ID)) {
    const already = finding('sheet/laid-out-already', {
      message: 'The drawing is a sheet of pinbar already: it carries its marks or copies.',
      remedy: 'Lay out the drawing that it was made of.',
    });
    return { layout: null, marks: null, findings: [already] };
  }
  const piece = measurePiece(facts, ticket.marginMm);
  if (piece === null) return { layout: null, marks: null, findings: [] };
  const { layout, findings } = layOut(piece, sheet, marks.wanted ? marksReachMm(marks) : 0);
  if (layout === null || !marks.wanted) return { layout, marks: null, findings };
  const plan = planSheetMarks(layout.drawnMm, layout.freeMm, marks);
  if (plan !== null && !sheet.copyMark) return { layout, marks: plan, findings };
  if (plan !== null) {
    const { copyCrosses, findings: missing } = planCopyMarks(layout, piece);
    return { layout, marks: { ...plan, copyCrosses }, findings: [...findings, ...missing] };
  }
  const noRoom = finding('sheet/too-small', {
    message: 'The marks of the sheet find no room around the copies.',
    remedy: 'Ask for fewer copies, for a larger sheet, or for no marks (--no-marks).',
  });
  return { layout: null, marks: null, findings: [...findings, noRoom] };
}
