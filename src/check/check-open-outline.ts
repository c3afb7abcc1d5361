// Do the outlines of the blanks close?
import type { Shape } from '../model/artwork.js';
import type { LooseEnd, Piece } from '../model/faces.js';
import type { Finding } from '../model/finding.js';
import type { CheckFacts } from './check-facts.js';
import { isTie } from './check-ties.js';
import { gatherTroubles, pointMm, type Trouble } from './gather-troubles.js';
import { roundValue, sayMm } from './say-value.js';

/** An opening in a cut line, px. */
interface Opening extends Trouble {
  readonly shape: Shape;
  readonly to: readonly [number, number];
  readonly gapMm: number;
}

/** Openings that a finding lists at most. */
const MOST_LISTED = 20;

/** A chain of cuts that bridges more of its length than this by its opening is a cut across, not an outline. */
const ACROSS_SHARE = 0.8;

/** The nearest two ends of a chain of cuts that lies outside of all blanks. */
function closestEnds(ends: readonly LooseEnd[]): readonly [LooseEnd, LooseEnd] | null {
  let best: readonly [LooseEnd, LooseEnd] | null = null;
  let least = Infinity;
  for (const [place, from] of ends.entries()) {
    for (const to of ends.slice(place + 1)) {
      const distance = Math.hypot(to.x - from.x, to.y - from.y);
      if (distance < least) [best, least] = [[from, to], distance];
    }
  }
  return best;
}

/** Chains with more ends than this are no outlines. */
const MOST_ENDS = 100;

/** Cuts around no blank whose ends stand open. */
function listWide({ faces, artwork }: CheckFacts): readonly Opening[] {
  const chains = new Map<number, LooseEnd[]>();
  for (const end of faces?.looseEnds ?? []) {
    if (end.kind !== 'cut' || end.panel >= 0) continue;
    const list = chains.get(end.chain);
    if (list === undefined) chains.set(end.chain, [end]);
    else list.push(end);
  }
  const openings: Opening[] = [];
  for (const ends of chains.values()) {
    const pair = ends.length > MOST_ENDS ? null : closestEnds(ends);
    if (pair === null) continue;
    const [from, to] = pair;
    const gapMm = Math.hypot(to.x - from.x, to.y - from.y) * artwork.artboard.mmPerPx;
    if (gapMm > ACROSS_SHARE * from.chainMm) continue;
    openings.push({ shape: artwork.shapes[from.shape]!, at: [from.x, from.y], to: [to.x, to.y], gapMm, weight: gapMm });
  }
  return openings;
}

function listNarrow({ faces, artwork, ticket }: CheckFacts): readonly Opening[] {
  const gaps = (faces?.gaps ?? []).filter((gap) => !isTie(gap, ticket.checks));
  return gaps.map(({ x0, y0, x1, y1, gapMm, shapes }) => ({
    shape: artwork.shapes[shapes[0]]!,
    at: [x0, y0] as const,
    to: [x1, y1] as const,
    gapMm,
    weight: gapMm,
  }));
}

function sayOpenings({ artwork, ticket }: CheckFacts, openings: readonly Opening[]): readonly Finding[] {
  const { snapMm } = ticket.checks;
  return gatherTroubles(artwork, 'check/outline-open', openings, (list) => {
    const worst = list[0]!;
    const [from, to] = [pointMm(artwork, worst.at), pointMm(artwork, worst.to)];
    const more = list.length === 1 ? '' : `, and ${list.length - 1} more`;
    return {
      message: `A cut outline is open by ${sayMm(worst.gapMm)} mm, between ${sayMm(from.xMm)}, ${sayMm(from.yMm)} and ${sayMm(to.xMm)}, ${sayMm(to.yMm)} mm${more}; up to ${sayMm(snapMm)} mm counts as closed.`,
      remedy: 'Join the two ends in the drawing: where the line is open the blank hangs on the sheet.',
      data: {
        measuredMm: roundValue(worst.gapMm),
        allowedMm: snapMm,
        gaps: list.slice(0, MOST_LISTED).map((item) => {
          const end = pointMm(artwork, item.to);
          return { ...pointMm(artwork, item.at), toXMm: end.xMm, toYMm: end.yMm, gapMm: roundValue(item.gapMm) };
        }),
      },
    };
  });
}

/** Folds where a cut should be. */
function checkUncut({ faces, artwork, ticket }: CheckFacts): readonly Finding[] {
  const { mmPerPx } = artwork.artboard;
  const lengthMm = ({ x0, y0, x1, y1 }: Piece): number => Math.hypot(x1 - x0, y1 - y0) * mmPerPx;
  const troubles = (faces?.uncut ?? [])
    .map((piece) => ({
      shape: artwork.shapes[piece.shape]!,
      at: [(piece.x0 + piece.x1) / 2, (piece.y0 + piece.y1) / 2] as const,
      weight: lengthMm(piece),
    }))
    .filter((trouble) => trouble.weight > ticket.checks.snapMm);
  return gatherTroubles(artwork, 'check/outline-not-cut', troubles, (list) => {
    const total = list.reduce((sum, { weight }) => sum + weight, 0);
    return {
      message: `Creases or perforations bound the board over ${sayMm(total)} mm where nothing lies on their other side; the outline of a blank must be cut all around.`,
      remedy: 'Draw the missing panel or the missing cut, or move the line to the cutting pass.',
      data: { measuredMm: roundValue(total), allowedMm: 0 },
    };
  });
}

/**
 * Outlines of blanks that do not close, told by `snapMm` and `gapMm`. Creases, and slits that end within a blank, are open by right.
 */
export function checkOpenOutline(facts: CheckFacts): readonly Finding[] {
  const wide = listWide(facts);
  const open = sayOpenings(facts, [...listNarrow(facts), ...wide]);
  // Beside a wide opening the creases that run into it bound the board too: the opening says it.
  return wide.length > 0 ? open : [...open, ...checkUncut(facts)];
}
