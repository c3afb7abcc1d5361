// Few ties that hold a piece, balanced around its outline.
import type { Stretch } from '../geometry/write-stretch.js';
import { joinZones } from './line-zones.js';

/** What is to be held. Lengths in px. */
export interface HoldingTask {
  readonly length: number;
  readonly closed: boolean;
  /** In order, where no part of a tie may stand. */
  readonly zones: readonly Stretch[];
  readonly tie: number;
  /** How many ties are wanted. */
  readonly count: number;
}

/** Starts that are tried, besides the middles of what is free. */
const STARTS = 48;

/** Where the middle of a tie may stand; over the start of a closed line it is one stretch, which goes on beyond the length. */
function listFree({ length, closed, zones, tie }: HoldingTask): readonly Stretch[] {
  const wide: Stretch[] = zones.map(([from, to]) => [from - tie / 2, to + tie / 2]);
  if (!closed) wide.push([0, tie / 2], [length - tie / 2, length]);
  const blocked = joinZones(wide, length, closed);
  const free: Stretch[] = [];
  let at = 0;
  for (const [from, to] of blocked) {
    if (from > at) free.push([at, from]);
    at = to;
  }
  if (at < length) free.push([at, length]);
  const [first, last] = [free[0], free.at(-1)];
  if (!closed || free.length < 2 || first![0] > 0 || last![1] < length) return free;
  return [...free.slice(1, -1), [last![0], length + first![1]]];
}

/** A place of a closed line as one between its start and its length. */
function wrap(place: number, { length, closed }: HoldingTask): number {
  return closed ? ((place % length) + length) % length : place;
}

/** The allowed place nearest to one that is wished for. */
function moveToFree(wish: number, free: readonly Stretch[], task: HoldingTask): number {
  const { length, closed } = task;
  let best = free[0]![0];
  let least = Infinity;
  for (const [from, to] of free) {
    for (const turn of closed ? [-length, 0, length] : [0]) {
      const place = Math.min(to + turn, Math.max(from + turn, wish));
      const distance = Math.abs(place - wish);
      if (distance < least) [best, least] = [place, distance];
    }
  }
  return wrap(best, task);
}

/** The longest stretch without a tie. */
export function longestFree(length: number, closed: boolean, ties: readonly Stretch[]): number {
  if (ties.length === 0) return length;
  const sorted = [...ties].sort((a, b) => a[0] - b[0]);
  const gaps = sorted.slice(1).map(([from], i) => from - sorted[i]![1]);
  const [first, last] = [sorted[0]!, sorted.at(-1)!];
  if (closed) gaps.push(first[0] + length - last[1]);
  else gaps.push(first[0], length - last[1]);
  return Math.max(...gaps);
}

/** Ties around wished places, those that would stand too near to another left out. */
function place(start: number, free: readonly Stretch[], task: HoldingTask): readonly Stretch[] {
  const { length, count, tie, closed } = task;
  const places: number[] = [];
  for (let i = 0; i < count; i += 1) {
    const middle = moveToFree(wrap(start + (i * length) / count, task), free, task);
    const far = places.every((other) => {
      const apart = Math.abs(other - middle);
      return Math.min(apart, closed ? length - apart : apart) >= 3 * tie;
    });
    if (far) places.push(middle);
  }
  return places.sort((a, b) => a - b).map((middle) => [middle - tie / 2, middle + tie / 2]);
}

/** How far the nearest tie stands from where it may no longer stand. */
function clearance(ties: readonly Stretch[], free: readonly Stretch[], { length }: HoldingTask): number {
  const rooms = ties.map(([from, to]) => {
    const middle = (from + to) / 2;
    const roomAt = (place: number): readonly number[] => free.map(([low, high]) => Math.min(place - low, high - place));
    return Math.max(0, ...roomAt(middle), ...roomAt(middle + length));
  });
  return Math.min(...rooms);
}

/**
 * Ties that hold a piece: as many as asked where there is room, as evenly as corners and bends allow, and far from these.
 *
 * @returns Ties as lengths along the outline, in order; the first of a closed one may start before its start.
 */
export function planHolding(task: HoldingTask): readonly Stretch[] {
  const { length, closed, count } = task;
  const free = listFree(task);
  if (count <= 0 || free.length === 0) return [];
  const step = length / count;
  const starts = closed ? Array.from({ length: STARTS }, (_, i) => (i * step) / STARTS) : [step / 2];
  if (closed) starts.push(...free.map(([from, to]) => (from + to) / 2));
  let best: readonly Stretch[] = [];
  let least = Infinity;
  let clear = -1;
  for (const start of starts) {
    const ties = place(start, free, task);
    const gap = longestFree(length, closed, ties);
    const room = clearance(ties, free, task);
    const isBetter = gap < least - 1e-6 || (gap < least + 1e-6 && room > clear + 1e-6);
    if (ties.length > best.length || (ties.length === best.length && isBetter))
      [best, least, clear] = [ties, gap, room];
  }
  return best;
}
