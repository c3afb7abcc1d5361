// Are lines drawn with many more points than they need?

import type { Outline } from '../geometry/outline.js';
import { markNeeded } from '../geometry/simplify-points.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { sayCount } from '../model/say-count.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { inLayer } from './layer-words.js';
import { sayMm } from './say-value.js';

/** A shape with its points, and how many of them it could do without. */
interface Crowd extends Trouble {
  readonly shape: Shape;
  readonly points: number;
  readonly needless: number;
}

/** Runs of straight written segments, as points. */
function straightRuns({ points, starts, curved, closed }: Outline): readonly Float64Array[] {
  const runs: number[][] = [];
  let run: number[] | null = null;
  const end = (segment: number): number =>
    segment + 1 < starts.length ? starts[segment + 1]! : closed ? 0 : points.length / 2 - 1;
  for (let segment = 0; segment < starts.length; segment += 1) {
    if (curved[segment] === 1) {
      run = null;
      continue;
    }
    if (run === null) {
      run = [points[2 * starts[segment]!]!, points[2 * starts[segment]! + 1]!];
      runs.push(run);
    }
    run.push(points[2 * end(segment)]!, points[2 * end(segment) + 1]!);
  }
  return runs.map((list) => Float64Array.from(list));
}

/** How many points of an outline could go. */
function countNeedless(outline: Outline, tolerance: number): number {
  let needless = 0;
  for (const run of straightRuns(outline)) for (const mark of markNeeded(run, tolerance)) if (mark === 0) needless += 1;
  return needless;
}

/** Lines of tool passes with more than `needlessPoints` points that a simplification by `simplifyMm` would take away. */
export function checkNeedlessPoints({ artwork, chains, ticket }: CheckFacts): readonly Finding[] {
  const { simplifyMm, needlessPoints } = ticket.checks;
  const tolerance = simplifyMm / artwork.artboard.mmPerPx;
  const crowds = new Map<number, Crowd>();
  for (const { shape, outline } of chains) {
    const points = outline.starts.length + (outline.closed ? 0 : 1);
    const needless = points > needlessPoints ? countNeedless(outline, tolerance) : 0;
    if (needless <= needlessPoints) continue;
    const known = crowds.get(shape.index);
    const sum = { points: points + (known?.points ?? 0), needless: needless + (known?.needless ?? 0) };
    crowds.set(shape.index, { shape, at: [outline.points[0]!, outline.points[1]!], weight: sum.needless, ...sum });
  }
  return gatherTroubles(artwork, 'check/points-needless', [...crowds.values()], (list) => {
    const points = list.reduce((sum, crowd) => sum + crowd.points, 0);
    const left = points - list.reduce((sum, crowd) => sum + crowd.needless, 0);
    return {
      message: `${sayCount(list.length, 'line')} ${inLayer(artwork, list[0]!.shape.layer)} ${list.length === 1 ? 'has' : 'have'} ${points} points; within ${sayMm(simplifyMm)} mm ${left} say the same.`,
      remedy:
        'Simplify the path, or draw the curve again with few points: the tool slows down and stutters at each one.',
      data: { points, left, allowed: needlessPoints },
    };
  });
}
