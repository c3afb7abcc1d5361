// Whether the marks of two written sheets lie on each other.
import { type Box, EMPTY_BOX, unite } from '../geometry/box.js';
import { type Finding, finding } from '../model/finding.js';
import { boxDistanceMm, TOLERANCE_MM } from './judge-shapes.js';
import type { ReadMarks } from './read-marks.js';

/** A written sheet and its marks. */
interface MarkedFile {
  readonly file: string;
  readonly marks: ReadMarks | null;
}

/** Something about the marks of one file. */
export function sayMarks(file: string, what: string): Finding {
  return finding('verify/marks-differ', {
    message: `${file}: ${what}.`,
    remedy: 'Do not run this file.',
    place: { file },
  });
}

/** Subpaths of a mark on one sheet against those of another, where each may be drawn in several pieces. */
function distanceOfParts(a: readonly Box[], b: readonly Box[]): number {
  const [few, many] = a.length <= b.length ? [a, b] : [b, a];
  const times = many.length / few.length;
  if (!Number.isInteger(times)) return Infinity;
  const distances = few.map((box, i) => {
    const whole = many.slice(i * times, (i + 1) * times).reduce(unite, EMPTY_BOX);
    return boxDistanceMm(box, 1, whole, 1, 0);
  });
  return Math.max(0, ...distances);
}

/** Marks of one kind must lie alike on every sheet that has them. */
export function compareMarks(first: MarkedFile, other: MarkedFile): readonly Finding[] {
  const tell = (what: string): Finding =>
    finding('verify/marks-differ', {
      message: `${other.file} and ${first.file}: ${what}.`,
      remedy: 'Do not run these files together.',
      place: { file: other.file },
    });
  if ((first.marks === null) !== (other.marks === null)) return [tell('only one of them has marks')];
  const before = new Map(first.marks?.marks.map((mark) => [mark.name, mark.partsMm]));
  return (other.marks?.marks ?? []).flatMap((mark) => {
    const parts = before.get(mark.name);
    // Discs on toolpath passes are arcs with printed end points, so they agree to the tolerance, not to the last bit.
    if (parts === undefined || mark.name === 'label') return [];
    if (distanceOfParts(parts, mark.partsMm) <= TOLERANCE_MM) return [];
    return [tell(`the ${mark.name} marks lie differently`)];
  });
}
