// Puts the planned marks on every sheet.
import type { Artwork } from '../model/artwork.js';
import type { MarkPlan } from '../model/marks.js';
import { type Assignment, isToolpath } from '../model/pass.js';
import { encodeUtf8 } from '../model/platform.js';
import type { Sheet } from '../model/sheet.js';
import type { MarksRequest } from '../model/ticket.js';
import { drawMarks } from './draw-marks.js';

const FALLBACK = '#000000';
/** Elements that the group of marks adds to a sheet: the group and its paths. */
const MARK_ELEMENT = /<(?:g|path) /g;

/** The colour most shapes of a pass are drawn in: strokes on a toolpath pass, fills before strokes elsewhere. */
export function ownColour(artwork: Artwork, assignment: Assignment, passIndex: number): string {
  const pass = assignment.passes[passIndex]!;
  if (pass.role === 'print') return FALLBACK;
  const counts = new Map<string, number>();
  for (const placement of assignment.placements) {
    if (placement.pass !== passIndex) continue;
    const { fill, stroke } = artwork.shapes[placement.shape]!.paint;
    const paint = isToolpath(pass.role) || fill.kind !== 'colour' ? stroke : fill;
    if (paint.kind === 'colour') counts.set(paint.colour.key, (counts.get(paint.colour.key) ?? 0) + 1);
  }
  let best = FALLBACK;
  let most = 0;
  for (const [key, count] of counts) {
    if (count > most) {
      best = key;
      most = count;
    }
  }
  return best;
}

/** Sheets with marks; unchanged where there is no plan. */
export function markSheets(
  sheets: readonly Sheet[],
  plan: MarkPlan | null,
  job: {
    readonly artwork: Artwork;
    readonly assignment: Assignment;
    readonly marks: MarksRequest;
    readonly stem: string;
  },
): readonly Sheet[] {
  if (plan === null) return sheets;
  return sheets.map((sheet, index) => {
    const { pass } = sheet;
    const colour = ownColour(job.artwork, job.assignment, index);
    const label = `${pass.order} ${pass.name} / ${job.stem}`;
    const group = drawMarks(plan, job.marks, { pass, colour, label });
    const added = new Int32Array(group.match(MARK_ELEMENT)?.length ?? 0).fill(-1);
    const rows = new Int32Array(sheet.rows.length + added.length);
    rows.set(sheet.rows);
    rows.set(added, sheet.rows.length);
    const pieces = [...sheet.pieces];
    pieces.splice(sheet.marksAt, 0, encodeUtf8(group));
    return { ...sheet, pieces, rows };
  });
}
