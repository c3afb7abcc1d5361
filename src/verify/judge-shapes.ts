// Resolves a written sheet again and compares every shape's box and paint with the source's.
import { type Box, isEmptyBox } from '../geometry/box.js';
import type { Artwork, PaintSource, Shape } from '../model/artwork.js';
import { type Finding, finding, type Place } from '../model/finding.js';
import type { Part, Placement } from '../model/pass.js';
import { placeOf } from '../source/locate.js';
import type { Source } from '../source/source.js';

/** How far the shapes of a sheet lie from those of the source. */
export interface ShapeJudgement {
  readonly shapes: number;
  readonly greatestDeviationMm: number;
  readonly greatestDeviationAt: string;
  readonly findings: readonly Finding[];
}

/** Allowed distance, mm: far below what any machine resolves, above rounding of double numbers. */
export const TOLERANCE_MM = 0.001;

/** What is painted: a reference to nothing paints its fallback, or nothing. */
function paintKey(paint: PaintSource): string {
  if (paint.kind === 'server') return `url(#${paint.id})`;
  const colour = paint.kind === 'colour' ? paint.colour : paint.kind === 'missing' ? paint.fallback : null;
  return colour === null ? 'none' : `${colour.key} ${colour.alpha}`;
}

function sayPaint(key: string): string {
  return key.replace(/ 1$/, '').replace(/ (0[.\d]*)$/, ' with opacity $1');
}

/** What differs in paint, or ''. The part that a pass does not draw must be none. */
function comparePaint(before: Shape, after: Shape, part: Part): string {
  const fill = part === 'stroke' ? 'none' : paintKey(before.paint.fill);
  const stroke = part === 'fill' ? 'none' : paintKey(before.paint.stroke);
  if (paintKey(after.paint.fill) !== fill)
    return `fill ${sayPaint(paintKey(after.paint.fill))} instead of ${sayPaint(fill)}`;
  if (paintKey(after.paint.stroke) !== stroke)
    return `stroke ${sayPaint(paintKey(after.paint.stroke))} instead of ${sayPaint(stroke)}`;
  const a = before.paint;
  const b = after.paint;
  for (const key of [
    'fillOpacity',
    'strokeOpacity',
    'fillRule',
    'strokeWidth',
    'strokeLinecap',
    'strokeLinejoin',
    'strokeMiterlimit',
    'strokeDashoffset',
    'nonScalingStroke',
  ] as const) {
    if (a[key] !== b[key]) return `${key} ${b[key]} instead of ${a[key]}`;
  }
  return a.strokeDasharray.join() === b.strokeDasharray.join() ? '' : 'another dash pattern';
}

/** Greatest distance between two boxes' sides, mm; the second may sit `shiftMm` further right and down. */
export function boxDistanceMm(before: Box, beforeMm: number, after: Box, afterMm: number, shiftMm: number): number {
  if (isEmptyBox(before) && isEmptyBox(after)) return 0;
  return Math.max(
    Math.abs(after.x0 * afterMm - before.x0 * beforeMm - shiftMm),
    Math.abs(after.y0 * afterMm - before.y0 * beforeMm - shiftMm),
    Math.abs(after.x1 * afterMm - before.x1 * beforeMm - shiftMm),
    Math.abs(after.y1 * afterMm - before.y1 * beforeMm - shiftMm),
  );
}

/** How a shape is called in a message. */
export function nameShape(shape: Shape): string {
  return shape.id === '' ? `${shape.kind} ${shape.index + 1} in paint order` : `${shape.kind} "${shape.id}"`;
}

/** A sheet's file, how far its artboard grew, and the sheet as scanned, for the lines. */
interface ShapeContext {
  readonly file: string;
  readonly shiftMm: number;
  readonly source?: Source;
}

/** A shape of the source and the one that stands for it on the sheet. */
interface ShapePair {
  readonly before: Shape;
  readonly now: Shape;
  readonly part: Part;
}

/** Where a pair stands. Lines are counted from the start of the file each time: only for what goes into a finding. */
function placePair({ before, now }: ShapePair, { file, source }: ShapeContext): Place {
  const seen = source === undefined ? {} : placeOf(source, now.element);
  return { ...seen, file, ...(before.id === '' ? {} : { id: before.id }), element: before.kind };
}

function sayCount(file: string, drawn: number, wanted: number): Finding {
  return finding(drawn < wanted ? 'verify/lost' : 'verify/unexpected', {
    message: `${file} draws another number of shapes than it should: ${drawn} instead of ${wanted}.`,
    remedy: 'Do not run this file. A style rule that counts elements may be the cause.',
    place: { file },
  });
}

function judgePair(pair: ShapePair, distance: number, context: ShapeContext): readonly Finding[] {
  const findings: Finding[] = [];
  const subject = `${context.file}: ${nameShape(pair.before)}`;
  if (!(distance <= TOLERANCE_MM)) {
    findings.push(
      finding('verify/box-moved', {
        message: `${subject} lies ${distance.toFixed(4)} mm from its place in the source; ${TOLERANCE_MM} mm is allowed.`,
        remedy: 'Do not run this file.',
        place: placePair(pair, context),
        data: { deviationMm: distance },
      }),
    );
  }
  const difference = comparePaint(pair.before, pair.now, pair.part);
  if (difference !== '') {
    findings.push(
      finding('verify/paint-changed', {
        message: `${subject} has ${difference}.`,
        remedy:
          'A style rule that counts elements or looks at siblings no longer matches: give the shape its paint directly.',
        place: placePair(pair, context),
        data: { difference },
      }),
    );
  }
  return findings;
}

/**
 * Compares the shapes of a resolved sheet, in paint order, with those placed in its pass.
 *
 * @param context - `shiftMm`: by how much the artboard grew on the left and at the top. `source`: the sheet as scanned,
 * for the lines.
 */
export function judgeShapes(
  original: Artwork,
  sheet: Artwork,
  placements: readonly Placement[],
  context: ShapeContext,
): ShapeJudgement {
  const { file, shiftMm } = context;
  const after = sheet.shapes.filter((shape) => shape.draws && !shape.hidden);
  const shapes = Math.min(after.length, placements.length);
  const findings: Finding[] =
    after.length === placements.length ? [] : [sayCount(file, after.length, placements.length)];
  const beforeMm = original.artboard.mmPerPx;
  let greatestDeviationMm = 0;
  let greatestDeviationAt = '';
  for (let i = 0; i < shapes && findings.length < 100; i += 1) {
    const { shape, part } = placements[i]!;
    const pair: ShapePair = { before: original.shapes[shape]!, now: after[i]!, part };
    const distance = boxDistanceMm(pair.before.fillBox, beforeMm, pair.now.fillBox, sheet.artboard.mmPerPx, shiftMm);
    if (distance > greatestDeviationMm || Number.isNaN(distance)) {
      greatestDeviationMm = distance;
      greatestDeviationAt = `${nameShape(pair.before)} in ${file}`;
    }
    findings.push(...judgePair(pair, distance, context));
  }
  return { shapes, greatestDeviationMm, greatestDeviationAt, findings };
}
