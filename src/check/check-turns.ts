// Can the machine follow the turns and the steps of its lines?

import type { Outline } from '../geometry/outline.js';
import { lengthOf } from '../geometry/segment.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { sayCount } from '../model/say-count.js';
import { isAbove, isBelow } from './beyond-bound.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { inLayer } from './layer-words.js';
import { roundValue, sayMm } from './say-value.js';

/** A written segment, px. */
interface Segment {
  /** Position among the written segments. */
  readonly place: number;
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly curved: boolean;
  /** Directions in which it starts and ends, radians. */
  readonly out: number;
  readonly into: number;
}

interface Short extends Trouble {
  readonly shape: Shape;
  readonly lengthMm: number;
  readonly degrees: number;
}

const DEGREES = 180 / Math.PI;

/** A line that turns by less runs straight on: half a degree. */
const STRAIGHT = Math.PI / 360;

/** The point after the last of a written segment, in pairs; its straight pieces run from each point before it to the next, round and round. */
function endOfSegment({ points, starts, closed }: Outline, segment: number): number {
  const count = points.length / 2;
  return segment + 1 < starts.length ? starts[segment + 1]! : closed ? count : count - 1;
}

/** The length of a written segment, px. */
function segmentLength(outline: Outline, segment: number): number {
  const { points, starts } = outline;
  const end = endOfSegment(outline, segment);
  let length = 0;
  for (let at = starts[segment]!; at < end; at += 1) {
    const next = 2 * at + 2 < points.length ? 2 * at + 2 : 0;
    length += lengthOf(points[next]! - points[2 * at]!, points[next + 1]! - points[2 * at + 1]!);
  }
  return length;
}

/** The written segments of an outline. */
function listSegments(outline: Outline): readonly Segment[] {
  const { points, starts, curved } = outline;
  return Array.from(starts, (start, place) => {
    const end = endOfSegment(outline, place);
    let [out, into] = [Number.NaN, Number.NaN];
    for (let at = start; at < end; at += 1) {
      const next = 2 * at + 2 < points.length ? 2 * at + 2 : 0;
      const [dx, dy] = [points[next]! - points[2 * at]!, points[next + 1]! - points[2 * at + 1]!];
      if (dx === 0 && dy === 0) continue;
      into = Math.atan2(dy, dx);
      if (Number.isNaN(out)) out = into;
    }
    const length = segmentLength(outline, place);
    return { place, x: points[2 * start]!, y: points[2 * start + 1]!, length, curved: curved[place] === 1, out, into };
  });
}

/** By how much a line turns from one direction to another, radians from 0 to a half turn. */
function turnBetween(into: number, out: number): number {
  const turn = Math.abs(out - into) % (2 * Math.PI);
  return turn > Math.PI ? 2 * Math.PI - turn : turn;
}

/** Segments, those that run straight on into each other as one: a point more on a line changes nothing for the knife. */
function joinStraight(segments: readonly Segment[], closed: boolean): readonly Segment[] {
  const joined: Segment[] = [];
  const runsOn = (from: Segment, to: Segment): boolean =>
    !from.curved && !to.curved && turnBetween(from.into, to.out) <= STRAIGHT;
  const join = (from: Segment, to: Segment): Segment => ({ ...from, length: from.length + to.length, into: to.into });
  for (const segment of segments) {
    const last = joined.at(-1);
    if (last !== undefined && runsOn(last, segment)) joined[joined.length - 1] = join(last, segment);
    else joined.push(segment);
  }
  const [first, last] = [joined[0], joined.at(-1)];
  if (!closed || joined.length < 2 || !runsOn(last!, first!)) return joined;
  return [join(last!, first!), ...joined.slice(1, -1)];
}

/** Segments shorter than the machine's step. */
function checkSteps({ artwork, toolLines, ticket }: CheckFacts): readonly Finding[] {
  const { machineStepMm } = ticket.checks;
  const { mmPerPx } = artwork.artboard;
  const short: Short[] = [];
  for (const { shape, outline } of toolLines) {
    const { points, starts } = outline;
    for (let segment = 0; segment < starts.length; segment += 1) {
      const lengthMm = segmentLength(outline, segment) * mmPerPx;
      if (!isBelow(lengthMm, machineStepMm)) continue;
      const start = 2 * starts[segment]!;
      const at = [points[start]!, points[start + 1]!] as const;
      short.push({ shape, at, weight: -lengthMm, lengthMm, degrees: 0 });
    }
  }
  return gatherTroubles(artwork, 'check/segment-short', short, (list) => ({
    message: `${sayCount(list.length, 'segment')} of lines ${inLayer(artwork, list[0]!.shape.layer)} ${list.length === 1 ? 'is' : 'are'} shorter than a step of the machine, ${sayMm(machineStepMm)} mm.`,
    remedy: 'Join or simplify the segments: steps that the machine cannot make are lost or make it stutter.',
    data: { measuredMm: roundValue(list[0]!.lengthMm), allowedMm: machineStepMm },
  }));
}

/** Straight segments shorter than the knife's offset with a sharp turn at both ends. */
function listSharp({ artwork, chains, ticket }: CheckFacts, offsetMm: number): readonly Short[] {
  const { mmPerPx } = artwork.artboard;
  const sharp: Short[] = [];
  for (const { shape: only, shapes, outline, kind } of chains) {
    if (kind === 'crease') continue;
    const { closed } = outline;
    const written = listSegments(outline).filter(({ out }) => !Number.isNaN(out));
    const segments = joinStraight(written, closed);
    for (const [place, segment] of segments.entries()) {
      const before = segments[place - 1] ?? (closed ? segments.at(-1) : undefined);
      const after = segments[place + 1] ?? (closed ? segments[0] : undefined);
      if (before === undefined || after === undefined || segment.curved) continue;
      const lengthMm = segment.length * mmPerPx;
      const turn = Math.min(turnBetween(before.into, segment.out), turnBetween(segment.into, after.out)) * DEGREES;
      if (!isBelow(lengthMm, offsetMm) || !isAbove(turn, ticket.checks.sharpTurnDegrees)) continue;
      const shape = shapes === null ? only : shapes[segment.place]!;
      sharp.push({ shape, at: [segment.x, segment.y], weight: -lengthMm, lengthMm, degrees: turn });
    }
  }
  return sharp;
}

/** Turns that a trailing knife cannot take, by `knifeOffsetMm` and `sharpTurnDegrees`; segments below `machineStepMm`. */
export function checkTurns(facts: CheckFacts): readonly Finding[] {
  const { artwork, ticket } = facts;
  const { knifeOffsetMm } = ticket.checks;
  const sharp = knifeOffsetMm === null ? [] : listSharp(facts, knifeOffsetMm);
  return [
    ...checkSteps(facts),
    ...gatherTroubles(artwork, 'check/turn-sharp', sharp, (list) => ({
      message: `${sayCount(list.length, 'segment')} ${inLayer(artwork, list[0]!.shape.layer)} between two sharp turns ${list.length === 1 ? 'is' : 'are'} as short as ${sayMm(list[0]!.lengthMm)} mm; the knife trails by ${sayMm(knifeOffsetMm!)} mm and needs at least that much to turn.`,
      remedy: 'Round or leave out such small corners, or cut them with a knife of less offset.',
      data: {
        measuredMm: roundValue(list[0]!.lengthMm),
        allowedMm: knifeOffsetMm!,
        degrees: roundValue(list[0]!.degrees),
      },
    })),
  ];
}
