// Did compaction move, repaint or lose anything?
import type { Artwork } from '../model/artwork.js';
import { type Finding, finding } from '../model/finding.js';
import type { Placement } from '../model/pass.js';
import { judgeShapes } from './judge-shapes.js';

const REASON = { rule: -1, text: 'compaction' };

function sayMoved(file: string, what: string, deviationMm: number): Finding {
  return finding('compact/moved', {
    message: `${file} is written uncompacted: ${what}`,
    remedy: 'Nothing to do.',
    place: { file },
    data: { deviationMm },
  });
}

/**
 * Compares a compacted sheet with the uncompacted one.
 *
 * @param resolve - Scans and resolves bytes; throws where they cannot be read.
 * @returns One finding where the compacted one must be thrown away, else none.
 */
export function judgeCompaction(
  sheet: { readonly before: Uint8Array; readonly after: Uint8Array; readonly file: string },
  resolve: (bytes: Uint8Array) => Artwork,
): readonly Finding[] {
  const before = resolve(sheet.before);
  let after: Artwork;
  try {
    after = resolve(sheet.after);
  } catch (error) {
    return [sayMoved(sheet.file, error instanceof Error ? error.message : 'it cannot be read.', 0)];
  }
  const placements: readonly Placement[] = before.shapes
    .filter((shape) => shape.draws && !shape.hidden)
    .map((shape) => ({ shape: shape.index, pass: 0, part: 'whole', reason: REASON }));
  const judged = judgeShapes(before, after, placements, { file: sheet.file, shiftMm: 0 });
  const [first] = judged.findings;
  const boards = ['width', 'height'] as const;
  const grew = boards.some((side) => before.artboard[side] !== after.artboard[side]);
  const lostMarks = before.marks >= 0 !== after.marks >= 0;
  const lostIds = [...before.ids.keys()].filter((id) => !after.ids.has(id));
  if (first !== undefined)
    return [sayMoved(sheet.file, first.message.replace(`${sheet.file}: `, ''), judged.greatestDeviationMm)];
  if (grew) return [sayMoved(sheet.file, 'the artboard changed.', 0)];
  if (lostMarks) return [sayMoved(sheet.file, 'the marks were lost.', 0)];
  if (lostIds.length > 0) return [sayMoved(sheet.file, `ids were lost (${lostIds.slice(0, 5).join(', ')}).`, 0)];
  return [];
}
