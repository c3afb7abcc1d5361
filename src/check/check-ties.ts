// Is a tied outline held by enough ties, and not at its corners?

import { type Outline, outlineLength } from '../geometry/outline.js';
import { scalesOf } from '../geometry/scales.js';
import type { CheckSettings } from '../model/check-settings.js';
import type { Gap } from '../model/faces.js';
import type { Finding } from '../model/finding.js';
import { sayCount } from '../model/say-count.js';
import type { ToolLine } from '../model/tool-line.js';
import { isAbove } from './beyond-bound.js';
import type { CheckFacts } from './check-facts.js';
import { closeUp } from './close-up.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { joinStretches, type Stretch } from './join-stretches.js';
import { pointAt } from './point-at.js';
import { sayMm } from './say-value.js';

interface Tied extends Trouble {
  readonly ties: number;
}

/** A line turns a corner by more than this: 30 degrees. */
const CORNER = Math.PI / 6;

/** An opening is a tie where its width is that of a tie within this share. */
const TIE_SHARE = 0.25;

/** A tie this near to a corner reaches it. @unit mm */
const KEPT_MM = 0.001;

/** Most dashes that are counted along a line. */
const MOST_DASHES = 100_000;

/** Whether an opening in a cut outline is a tie: as wide as `tieMm` says, a quarter more or less. */
export function isTie(gap: Gap, { tieMm }: CheckSettings): boolean {
  return tieMm !== null && !isAbove(Math.abs(gap.gapMm - tieMm), TIE_SHARE * tieMm);
}

/** Where a dashed line leaves the board uncut, px along it; beyond its length where a tie lies around its start. */
export function listTies({ shape }: ToolLine, outline: Outline): readonly Stretch[] {
  const { strokeDasharray, strokeDashoffset, nonScalingStroke } = shape.paint;
  const scale = nonScalingStroke ? 1 : scalesOf(shape.matrix)[1];
  const dashes = (strokeDasharray.length % 2 === 0 ? strokeDasharray : [...strokeDasharray, ...strokeDasharray]).map(
    (dash) => dash * scale,
  );
  const period = dashes.reduce((sum, dash) => sum + dash, 0);
  const length = outlineLength(outline);
  if (!(period > 0) || length / period > MOST_DASHES) return [];
  const ties: Stretch[] = [];
  const offset = (((strokeDashoffset * scale) % period) + period) % period;
  for (let start = -offset; start < length; start += period) {
    let at = start;
    for (const [place, dash] of dashes.entries()) {
      const [from, to] = [Math.max(0, at), Math.min(length, at + dash)];
      if (place % 2 === 1 && to > from) ties.push([from, to]);
      at += dash;
    }
  }
  const joined = joinStretches(ties, 0);
  const [first, last] = [joined[0], joined.at(-1)];
  if (first === undefined || first === last || first[0] > 0 || last![1] < length) return joined;
  // One tie around the start of the outline.
  return [...joined.slice(1, -1), [last![0], length + first[1]]];
}

/** Lengths along a closed outline at which it turns a corner, px. */
function listCorners({ points, starts }: Outline): readonly number[] {
  const corners: number[] = [];
  const written = new Set(starts);
  const count = points.length / 2;
  let length = 0;
  for (let at = 0; at < count; at += 1) {
    const [before, next] = [(at + count - 1) % count, (at + 1) % count];
    const [ax, ay] = [points[2 * at]! - points[2 * before]!, points[2 * at + 1]! - points[2 * before + 1]!];
    const [bx, by] = [points[2 * next]! - points[2 * at]!, points[2 * next + 1]! - points[2 * at + 1]!];
    if (written.has(at) && Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) > CORNER) corners.push(length);
    length += Math.hypot(bx, by);
  }
  return corners;
}

/** Ties of dashed closed cuts: which lines have too few, and which ties lie on a corner. */
function judgeDashed(
  { toolLines, artwork }: CheckFacts,
  least: number,
): { readonly few: readonly Tied[]; readonly bent: readonly Tied[] } {
  const few: Tied[] = [];
  const bent: Tied[] = [];
  for (const line of toolLines) {
    const { shape, kind } = line;
    const outline = closeUp(line.outline, artwork.artboard.mmPerPx);
    if (kind !== 'cut' || !outline.closed || shape.paint.strokeDasharray.length === 0) continue;
    const ties = listTies(line, outline);
    if (ties.length < least) {
      few.push({ shape, at: [outline.points[0]!, outline.points[1]!], weight: -ties.length, ties: ties.length });
    }
    const corners = listCorners(outline);
    const length = outlineLength(outline);
    const slack = KEPT_MM / artwork.artboard.mmPerPx;
    for (const [from, to] of ties) {
      const isOn = (at: number): boolean => at >= from - slack && at <= to + slack;
      const corner = corners.find((at) => isOn(at) || isOn(at + length));
      if (corner !== undefined) bent.push({ shape, at: pointAt(outline, corner), ties: ties.length });
    }
  }
  return { few, bent };
}

/** How many of some ties lie in an outline of faces. */
export function countOwn(ties: readonly Gap[], outer: Float64Array): number {
  if (ties.length === 0) return 0;
  const corners = new Set<string>();
  for (let at = 0; at < outer.length; at += 2) corners.add(`${outer[at]},${outer[at + 1]}`);
  return ties.filter(({ x0, y0, x1, y1 }) => corners.has(`${x0},${y0}`) && corners.has(`${x1},${y1}`)).length;
}

/** Ties drawn as openings, of all blanks and of the pieces that they hold. */
function judgeDrawn(
  { artwork, faces, ticket }: CheckFacts,
  least: number,
): { readonly few: readonly Tied[]; readonly bent: readonly Tied[] } {
  if (faces === null || ticket.checks.tieMm === null) return { few: [], bent: [] };
  const ties = faces.gaps.filter((gap) => isTie(gap, ticket.checks));
  const few: Tied[] = [];
  for (const { outer } of faces.blanks) {
    const own = countOwn(ties, outer);
    if (own < least) few.push({ shape: null, at: [outer[0]!, outer[1]!], weight: -own, ties: own });
  }
  for (const { outer, shape } of faces.islands) {
    const own = countOwn(ties, outer);
    // One without any falls out, which another check tells.
    if (own > 0 && own < least)
      few.push({ shape: artwork.shapes[shape]!, at: [outer[0]!, outer[1]!], weight: -own, ties: own });
  }
  const bent = ties
    .filter(({ turn }) => turn > CORNER)
    .map(({ x0, y0, x1, y1, shapes }) => ({
      shape: artwork.shapes[shapes[0]]!,
      at: [(x0 + x1) / 2, (y0 + y1) / 2] as const,
      ties: ties.length,
    }));
  return { few, bent };
}

/**
 * Tied outlines with fewer ties than `leastTies`, and ties at corners. Ties are the gaps of a dashed cut outline, and openings as wide as
 * `tieMm` says.
 */
export function checkTies(facts: CheckFacts): readonly Finding[] {
  const { artwork, ticket } = facts;
  const least = ticket.checks.leastTies;
  const dashed = judgeDashed(facts, least);
  const drawn = judgeDrawn(facts, least);
  return [
    ...gatherTroubles(artwork, 'check/ties-few', [...dashed.few, ...drawn.few], (list) => ({
      message: `${sayCount(list.length, 'tied outline')} ${list.length === 1 ? 'has' : 'have'} ${list[0]!.ties === 0 ? 'no tie' : `only ${sayCount(list[0]!.ties, 'tie')}`}; at least ${least} should hold the piece.`,
      remedy: 'Add ties along straight stretches, so that the piece stays in the sheet until it is stripped.',
      data: { measured: list[0]!.ties, allowed: least },
    })),
    ...gatherTroubles(artwork, 'check/tie-at-corner', [...dashed.bent, ...drawn.bent], (list) => ({
      message: `${sayCount(list.length, 'tie')} ${list.length === 1 ? 'lies' : 'lie'} on a corner of the outline, turning by more than ${sayMm(30)} degrees.`,
      remedy: 'Move the tie to a straight stretch: at a corner it tears the board when the piece is stripped.',
      data: {},
    })),
  ];
}
