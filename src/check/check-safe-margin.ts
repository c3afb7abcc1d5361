// Do type and small art keep clear of cuts and creases?

import { grow, isEmptyBox } from '../geometry/box.js';
import { endsOf } from '../geometry/segment.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { type Part, placementsByPass } from '../model/pass.js';
import { sayCount } from '../model/say-count.js';
import { blankTest } from './blank-region.js';
import type { CheckFacts } from './check-facts.js';
import { clearDistance } from './clear-distance.js';
import { type DieLines, findDieLines, piecesOf } from './die-lines.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { fillInk, prints, strokeInk } from './ink.js';
import { inLayer, sayNumber } from './layer-words.js';
import { listMarkLayers } from './list-marks.js';
import { isPrinted, listAreas, type PrintedAreas } from './printed-areas.js';

/** Art that is too near. */
interface Near extends Trouble {
  readonly shape: Shape;
  readonly distancePx: number;
  readonly kind: string;
}

/** Numbers of the check, px. */
interface Margins {
  readonly margin: number;
  readonly small: number;
  /** Art that reaches this far over a line is meant to run across it. */
  readonly over: number;
}

/** The greatest distance found by going to the farthest point twice: within a seventh of the true one, however the art is turned. */
function sizeOf(art: readonly number[]): number {
  let [x, y] = [art[0]!, art[1]!];
  let farthest = 0;
  for (let round = 0; round < 2; round += 1) {
    let best: readonly [number, number] = [x, y];
    farthest = 0;
    for (let at = 0; at < art.length; at += 2) {
      const away = Math.hypot(art[at]! - x, art[at + 1]! - y);
      if (away > farthest) {
        farthest = away;
        best = [art[at]!, art[at + 1]!];
      }
    }
    [x, y] = best;
  }
  return farthest;
}

/** Half the width of what is printed of a stroke, px. */
function halfStroke({ paint, matrix }: Shape, part: Part): number {
  if (part === 'fill' || strokeInk(paint) !== 'ink') return 0;
  const [a, b, c, d] = matrix;
  return (paint.strokeWidth * (paint.nonScalingStroke ? 1 : Math.sqrt(Math.abs(a * d - b * c)))) / 2;
}

/** The art as straight pieces: of type only where it is anchored. */
function artOf(facts: CheckFacts, shape: Shape): readonly number[] {
  if (shape.kind !== 'text') return piecesOf(facts.outlineOf(shape));
  const { x0, y0, x1, y1 } = shape.fillBox;
  return [x0, y0, x1, y1];
}

/** The nearest line within the margin; null where there is none, or where the art runs across a line on purpose. */
function findNear(
  facts: CheckFacts,
  lines: DieLines,
  margins: Margins,
  drawn: { shape: Shape; part: Part },
): Near | null {
  const { shape, part } = drawn;
  const box = shape.kind === 'text' ? shape.fillBox : shape.drawnBound;
  const { fillBox } = shape;
  if (isEmptyBox(box)) return null;
  const isText = shape.kind === 'text';
  if (!isText && Math.max(fillBox.x1 - fillBox.x0, fillBox.y1 - fillBox.y0) > margins.small) return null;
  const places = lines.segments.near(grow(box, margins.margin));
  if (places.length === 0) return null;
  const art = artOf(facts, shape);
  if (art.length === 0 || (!isText && sizeOf(art) > margins.small)) return null;
  const half = isText ? 0 : halfStroke(shape, part);
  let near: Near | null = null;
  for (const place of places) {
    const { distance, over } = clearDistance(art, endsOf(lines.segments, place));
    if (distance === 0 && over >= margins.over) return null;
    const distancePx = Math.max(0, distance - half);
    if (distancePx >= margins.margin || (near !== null && distancePx >= near.distancePx)) continue;
    const at = [(fillBox.x0 + fillBox.x1) / 2, (fillBox.y0 + fillBox.y1) / 2] as const;
    near = { shape, at, weight: -distancePx, distancePx, kind: lines.kindOf(place) };
  }
  return near;
}

/** Whether a shape is filled with white, as type on a dark ground is. */
function isWhite({ draws, paint, kind }: Shape, part: Part): boolean {
  return draws && kind !== 'image' && part !== 'stroke' && fillInk(paint) === 'white';
}

/** Whether any of some art lies on the board that stays. */
function isOnBlank(art: readonly number[], holds: (x: number, y: number) => boolean): boolean {
  for (let at = 0; at < art.length; at += 2) if (holds(art[at]!, art[at + 1]!)) return true;
  return false;
}

function listNear(facts: CheckFacts, lines: DieLines): readonly Near[] {
  const { artwork, assignment, ticket } = facts;
  const { mmPerPx } = artwork.artboard;
  const { safeMarginMm, smallArtMm, bleedMm } = ticket.checks;
  // A margin that is kept to a thousandth of a millimetre is kept.
  const margins: Margins = {
    margin: (safeMarginMm - 0.001) / mmPerPx,
    small: smallArtMm / mmPerPx,
    over: Math.min(bleedMm, safeMarginMm) / mmPerPx,
  };
  const holds = blankTest(facts);
  const markLayers = listMarkLayers(facts);
  const byPass = placementsByPass(assignment);
  const areas = new Map<number, PrintedAreas>();
  /** Whether white stands out: it does on print, not on the board. */
  const isOnPrint = (shape: Shape, pass: number): boolean => {
    const below = areas.get(pass) ?? listAreas(facts, byPass[pass]!);
    areas.set(pass, below);
    const art = artOf(facts, shape);
    for (let at = 0; at < art.length; at += 2) if (isPrinted(facts, below, shape, art[at]!, art[at + 1]!)) return true;
    return false;
  };
  const found = new Map<number, Near>();
  for (const { shape: index, pass, part } of assignment.placements) {
    const shape = artwork.shapes[index]!;
    if (assignment.passes[pass]!.role !== 'print' || !(prints(shape, part) || isWhite(shape, part))) continue;
    if (markLayers.has(shape.layer)) continue;
    const near = findNear(facts, lines, margins, { shape, part });
    if (near === null || !isOnBlank(artOf(facts, shape), holds)) continue;
    if (prints(shape, part) || isOnPrint(shape, pass)) found.set(index, near);
  }
  return [...found.values()];
}

/**
 * Clear distance of live type and of art up to `smallArtMm` from every cut, crease and perforation, against `safeMarginMm`.
 *
 * Live type is measured from where it is anchored. White fills count where they lie on print. Art that reaches over a line by the bleed
 * or the margin runs across it on purpose; art in the waste and in layers of marks is not judged.
 */
export function checkSafeMargin(facts: CheckFacts): readonly Finding[] {
  const { artwork, assignment, ticket } = facts;
  const { safeMarginMm } = ticket.checks;
  if (!(safeMarginMm > 0) || !assignment.passes.some(({ role }) => role === 'print')) return [];
  const lines = findDieLines(facts);
  if (lines === null) return [];
  return gatherTroubles(artwork, 'check/near-edge', listNear(facts, lines), (list) => {
    const nearestMm = list[0]!.distancePx * artwork.artboard.mmPerPx;
    const texts = list.filter(({ shape }) => shape.kind === 'text').length;
    const what =
      texts === list.length
        ? sayCount(texts, 'live text')
        : `${sayCount(list.length, 'small shape')}${texts > 0 ? ` (${sayCount(texts, 'live text')} among them)` : ''}`;
    return {
      message: `${what} ${inLayer(artwork, list[0]!.shape.layer)} ${list.length === 1 ? 'stands' : 'stand'} ${list.length === 1 ? '' : 'down to '}${sayNumber(nearestMm)} mm from a ${list[0]!.kind} where ${sayNumber(safeMarginMm)} mm are to be kept clear.`,
      remedy: `Move it ${sayNumber(safeMarginMm)} mm inside, or let it run well across the line.`,
      data: { measuredMm: Math.round(nearestMm * 1000) / 1000, allowedMm: safeMarginMm, nearTo: list[0]!.kind },
    };
  });
}
