// The shortest way found through some items that each keep their own direction: nearest neighbour, then 2-opt and moved stretches.
import type { Spot } from './travel.js';

/** What is put in order. Item `i` is entered at `entries[i]` and left at `exits[i]`. */
export interface Tour {
  readonly entries: readonly Spot[];
  readonly exits: readonly Spot[];
  readonly from: Spot;
  /** By item: the items that must come before it. */
  readonly before: readonly (readonly number[])[];
}

/** Longest stretch that is turned round or moved at once. */
const LONGEST = 50;
/** Looks at changes, at most: what bounds the time on large passes. */
const MOST_LOOKS = 3_000_000;
/** An order so many times as long as that to the nearest is not worked on. */
const FAR_OFF = 3;
/** A change must gain this much, px, so that rounding is no gain. */
const LEAST_GAIN = 1e-9;

function step(from: Spot, to: Spot): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  // Asked for millions of times: Math.hypot takes ten times as long.
  return Math.sqrt(dx * dx + dy * dy);
}

/** Way through all items in an order. @unit px */
export function tourLength(tour: Tour, order: readonly number[]): number {
  let length = 0;
  let at = tour.from;
  for (const item of order) {
    length += step(at, tour.entries[item]!);
    at = tour.exits[item]!;
  }
  return length;
}

/** The given order with as little change as the rules ask for: always the first item that may go. */
export function repairOrder(tour: Tour): readonly number[] {
  const count = tour.entries.length;
  const open = tour.before.map((items) => items.length);
  const after: number[][] = tour.entries.map(() => []);
  tour.before.forEach((items, item) => {
    for (const first of items) after[first]!.push(item);
  });
  const order: number[] = [];
  const done = new Uint8Array(count);
  const put = (item: number): void => {
    done[item] = 1;
    order.push(item);
    for (const next of after[item]!) open[next]! -= 1;
  };
  const need = (item: number): void => {
    const stack = [item];
    while (stack.length > 0) {
      const top = stack.at(-1)!;
      const missing = tour.before[top]!.find((first) => done[first] === 0);
      if (missing !== undefined) stack.push(missing);
      else {
        stack.pop();
        if (done[top] === 0) put(top);
      }
    }
  };
  for (let item = 0; item < count; item += 1) if (done[item] === 0) need(item);
  return order;
}

/** Always to the nearest item that may go. */
function followNearest(tour: Tour): readonly number[] {
  const open = tour.before.map((items) => items.length);
  const after: number[][] = tour.entries.map(() => []);
  tour.before.forEach((items, item) => {
    for (const first of items) after[first]!.push(item);
  });
  const free = open.flatMap((count, item) => (count === 0 ? [item] : []));
  const order: number[] = [];
  let at = tour.from;
  while (free.length > 0) {
    let best = 0;
    let least = Infinity;
    for (let i = 0; i < free.length; i += 1) {
      const length = step(at, tour.entries[free[i]!]!);
      if (length < least) [best, least] = [i, length];
    }
    const item = free[best]!;
    free.splice(best, 1);
    order.push(item);
    at = tour.exits[item]!;
    for (const next of after[item]!) {
      open[next]! -= 1;
      if (open[next] === 0) free.push(next);
    }
  }
  return order;
}

/** An order being changed. */
interface State {
  readonly tour: Tour;
  readonly order: number[];
  /** By item: its place. */
  readonly places: Int32Array;
  looks: number;
}

function exitBefore({ tour, order }: State, place: number): Spot {
  return place === 0 ? tour.from : tour.exits[order[place - 1]!]!;
}

/** From where one item is left to where the next is entered; nothing behind the last. */
function stepTo({ tour, order }: State, from: Spot, place: number): number {
  return place >= order.length ? 0 : step(from, tour.entries[order[place]!]!);
}

function rewrite(state: State, start: number, items: readonly number[]): void {
  items.forEach((item, i) => {
    state.order[start + i] = item;
    state.places[item] = start + i;
  });
}

/** Turns round stretches where that is shorter; true where one was. */
function turnStretches(state: State): boolean {
  const { tour, order, places } = state;
  let gained = false;
  for (let i = 0; i < order.length - 1; i += 1) {
    let inner = 0;
    let turned = 0;
    const last = Math.min(order.length - 1, i + LONGEST);
    for (let j = i + 1; j <= last && state.looks < MOST_LOOKS; j += 1) {
      state.looks += 1;
      const [a, b] = [order[j - 1]!, order[j]!];
      // A stretch that holds an item and one that must come before it stays as it is, and so does any longer one.
      if (tour.before[b]!.some((first) => places[first]! >= i && places[first]! < j)) break;
      inner += step(tour.exits[a]!, tour.entries[b]!);
      turned += step(tour.exits[b]!, tour.entries[a]!);
      const start = exitBefore(state, i);
      const before = step(start, tour.entries[order[i]!]!) + inner + stepTo(state, tour.exits[b]!, j + 1);
      const after = step(start, tour.entries[b]!) + turned + stepTo(state, tour.exits[order[i]!]!, j + 1);
      if (after < before - LEAST_GAIN) {
        rewrite(state, i, order.slice(i, j + 1).reverse());
        gained = true;
        break;
      }
    }
  }
  return gained;
}

/** Whether the stretch `i..j` may stand behind place `k` instead (`k` > `j`), or what is passed may stand before it. */
function mayPass({ tour, order, places }: State, i: number, j: number, k: number): boolean {
  for (let place = j + 1; place <= k; place += 1) {
    if (tour.before[order[place]!]!.some((first) => places[first]! >= i && places[first]! <= j)) return false;
  }
  return true;
}

/** Moves a stretch `i..j` behind place `k` where that is shorter. A stretch that goes forward is the passed one that goes back. */
function moveStretches(state: State): boolean {
  const { tour, order } = state;
  let gained = false;
  for (let i = 0; i < order.length - 1; i += 1) {
    const start = exitBefore(state, i);
    search: for (let j = i; j < Math.min(order.length - 1, i + LONGEST); j += 1) {
      const entry = tour.entries[order[i]!]!;
      const exit = tour.exits[order[j]!]!;
      const short = j - i < 3;
      const last = Math.min(order.length - 1, j + (short ? LONGEST * 4 : 3));
      for (let k = j + 1; k <= last && state.looks < MOST_LOOKS; k += 1) {
        state.looks += 1;
        const passed = tour.exits[order[k]!]!;
        const before = step(start, entry) + stepTo(state, exit, j + 1) + stepTo(state, passed, k + 1);
        const after = stepTo(state, start, j + 1) + step(passed, entry) + stepTo(state, exit, k + 1);
        if (!(after < before - LEAST_GAIN) || !mayPass(state, i, j, k)) continue;
        rewrite(state, i, [...order.slice(j + 1, k + 1), ...order.slice(i, j + 1)]);
        gained = true;
        break search;
      }
    }
  }
  return gained;
}

function improve(tour: Tour, start: readonly number[]): readonly number[] {
  const state: State = { tour, order: [...start], places: new Int32Array(start.length), looks: 0 };
  rewrite(state, 0, start);
  let goesOn = true;
  while (goesOn && state.looks < MOST_LOOKS) {
    const turned = turnStretches(state);
    goesOn = moveStretches(state) || turned;
  }
  return state.order;
}

/**
 * A short way through all items that keeps the rules.
 *
 * @returns Items in their order; never longer than the given order with as little change as the rules ask for.
 */
export function shortenTour(tour: Tour): readonly number[] {
  const given = repairOrder(tour);
  const nearest = followNearest(tour);
  const orders = [nearest, improve(tour, nearest)];
  // Where the order as given is far off, work on it is lost.
  if (tourLength(tour, given) < FAR_OFF * tourLength(tour, nearest)) orders.push(improve(tour, given));
  let best = given;
  for (const order of orders) {
    if (tourLength(tour, order) < tourLength(tour, best) - LEAST_GAIN) best = order;
  }
  return best;
}
