// Is art kept away from a die line by a white line of the print?

import { scalesOf } from '../geometry/scales.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { type Placement, placementsByPass } from '../model/pass.js';
import { sayCount } from '../model/say-count.js';
import type { CheckFacts } from './check-facts.js';
import { type DieLines, findDieLines, piecesOf } from './die-lines.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { strokeInk } from './ink.js';
import { inLayer, sayNumber } from './layer-words.js';
import { isPrinted, listAreas, type PrintedAreas } from './printed-areas.js';
import { distanceTo } from './segment-index.js';

/** A white line along a die line. */
interface Kept extends Trouble {
  readonly shape: Shape;
  readonly lengthPx: number;
  readonly widthPx: number;
}

/** Steps along a white line, mm. */
const STEP_MM = 1;
/** Least length that counts, mm. */
const LEAST_MM = 2;
/** Greatest sine of the angle at which two lines still run along each other. */
const ALONG = 0.1;

/** Whether a die line runs along a unit vector through a point. */
function runsAlong(
  lines: DieLines,
  reach: number,
  at: readonly [number, number],
  along: readonly [number, number],
): boolean {
  const [x, y] = at;
  const { ends } = lines.segments;
  return lines.segments.near({ x0: x - reach, y0: y - reach, x1: x + reach, y1: y + reach }).some((place) => {
    if (distanceTo(lines.segments, place, x, y) > reach) return false;
    const dx = ends[4 * place + 2]! - ends[4 * place]!;
    const dy = ends[4 * place + 3]! - ends[4 * place + 1]!;
    return Math.abs(dx * along[1] - dy * along[0]) <= ALONG * Math.hypot(dx, dy);
  });
}

/** Length of a white line that runs along die lines with art below it, and the middle of that. */
function measureKept(facts: CheckFacts, lines: DieLines, below: PrintedAreas, white: Shape): Kept | null {
  const { mmPerPx } = facts.artwork.artboard;
  const step = STEP_MM / mmPerPx;
  const reach = facts.ticket.checks.knockoutMm / mmPerPx;
  const widthPx = white.paint.strokeWidth * (white.paint.nonScalingStroke ? 1 : scalesOf(white.matrix)[1]);
  const pieces = piecesOf(facts.outlineOf(white));
  const kept: (readonly [number, number])[] = [];
  let lengthPx = 0;
  for (let at = 0; at < pieces.length; at += 4) {
    const [x0, y0] = [pieces[at]!, pieces[at + 1]!];
    const [dx, dy] = [pieces[at + 2]! - x0, pieces[at + 3]! - y0];
    const length = Math.hypot(dx, dy);
    const along = [dx / length, dy / length] as const;
    const parts = Math.min(10_000, Math.max(1, Math.ceil(length / step)));
    for (let part = 0; part < parts; part += 1) {
      const share = (part + 0.5) / parts;
      const point = [x0 + dx * share, y0 + dy * share] as const;
      if (!runsAlong(lines, reach, point, along)) continue;
      const aside = [(along[1] * widthPx) / 4, (along[0] * widthPx) / 4] as const;
      const printed =
        isPrinted(facts, below, white, point[0] - aside[0], point[1] + aside[1]) ||
        isPrinted(facts, below, white, point[0] + aside[0], point[1] - aside[1]);
      if (!printed) continue;
      lengthPx += length / parts;
      kept.push(point);
    }
  }
  if (lengthPx * mmPerPx < LEAST_MM) return null;
  return { shape: white, at: kept[kept.length >> 1]!, weight: lengthPx, lengthPx, widthPx };
}

/**
 * White strokes of print passes that run within `knockoutMm` of a die line with printed art below them: they leave a white gap where
 * the line is cut or folded. White areas and gaps in clip paths and masks are not looked for.
 */
export function checkDieKnockout(facts: CheckFacts): readonly Finding[] {
  const { artwork, assignment } = facts;
  const isWhite = ({ shape, part }: Placement): boolean =>
    part !== 'fill' && artwork.shapes[shape]!.draws && strokeInk(artwork.shapes[shape]!.paint) === 'white';
  const passes = placementsByPass(assignment).filter(
    (placements, index) => assignment.passes[index]!.role === 'print' && placements.some(isWhite),
  );
  const lines = passes.length === 0 ? null : findDieLines(facts);
  if (lines === null) return [];
  const troubles = passes.flatMap((placements) => {
    const below = listAreas(facts, placements);
    return placements
      .filter(isWhite)
      .filter(({ shape }) => artwork.shapes[shape]!.kind !== 'text')
      .map(({ shape }) => measureKept(facts, lines, below, artwork.shapes[shape]!))
      .filter((trouble) => trouble !== null);
  });
  const { mmPerPx } = artwork.artboard;
  return gatherTroubles(artwork, 'check/die-knockout', troubles, (list) => {
    const lengthMm = list.reduce((sum, { lengthPx }) => sum + lengthPx, 0) * mmPerPx;
    const widthMm = Math.max(...list.map(({ widthPx }) => widthPx)) * mmPerPx;
    return {
      message: `${sayCount(list.length, 'white line')} ${inLayer(artwork, list[0]!.shape.layer)} ${list.length === 1 ? 'keeps' : 'keep'} the art off ${sayNumber(lengthMm, 1)} mm of die lines, ${sayNumber(widthMm)} mm wide: the board will show there.`,
      remedy: 'Take the white lines out of the print and let the art run on beneath the die lines.',
      data: {
        lengthMm: Math.round(lengthMm * 1000) / 1000,
        measuredMm: Math.round(widthMm * 1000) / 1000,
        allowedMm: 0,
      },
    };
  });
}
