// The order of a pass: rules first, then a short way. Groups stay whole.
import type { WorkItem } from '../model/sequence.js';
import type { Before } from './find-nesting.js';
import { repairOrder, shortenTour } from './shorten-tour.js';
import { entryOf, exitOf, measureTravel, type Spot } from './travel.js';

/** A group of the file: its children keep to it, and it moves as a whole. Numbers are items. */
export interface WorkGroup {
  readonly children: readonly (number | WorkGroup)[];
  /** Whether nothing may pass it, and nothing in it moves. */
  readonly fixed: boolean;
}

/** A group in its new order. */
export interface ArrangedGroup {
  readonly children: readonly (number | ArrangedGroup)[];
  /** By place: which of the group's children, in the file's order, stands there now. */
  readonly from: readonly number[];
}

/** What is to be put in order. */
export interface OrderTask {
  readonly items: readonly WorkItem[];
  readonly root: WorkGroup;
  readonly before: readonly Before[];
  readonly origin: Spot;
}

/** Items in an order, groups opened up. */
export function listItems(group: WorkGroup | ArrangedGroup): readonly number[] {
  return group.children.flatMap((child) => (typeof child === 'number' ? [child] : listItems(child)));
}

/** How many rules an order breaks: pairs the wrong way round, and steps back from cuts to creases. */
export function countBroken({ items, before }: OrderTask, order: readonly number[]): number {
  const places = new Int32Array(items.length);
  order.forEach((item, place) => {
    places[item] = place;
  });
  let broken = before.filter(([first, then]) => places[first]! > places[then]!).length;
  let tier = -Infinity;
  for (const item of order) {
    if (items[item]!.runs.length === 0) continue;
    if (items[item]!.tier < tier) broken += 1;
    tier = items[item]!.tier;
  }
  return broken;
}

/** Children of one group between two that nothing passes, all of one tier. */
interface Stretch {
  readonly children: readonly number[];
  readonly entries: readonly Spot[];
  readonly exits: readonly Spot[];
  readonly before: readonly (readonly number[])[];
}

/** Rules as lists by place in the stretch. What goes round in a circle is left to the file's order. */
function listRules(count: number, pairs: readonly Before[]): readonly (readonly number[])[] {
  const build = (kept: readonly Before[]): Set<number>[] => {
    const lists = Array.from({ length: count }, () => new Set<number>());
    for (const [first, then] of kept) if (first !== then) lists[then]!.add(first);
    return lists;
  };
  const rules = build(pairs);
  const open = rules.map((list) => list.size);
  const free = open.flatMap((size, item) => (size === 0 ? [item] : []));
  const after: number[][] = rules.map(() => []);
  rules.forEach((list, then) => {
    for (const first of list) after[first]!.push(then);
  });
  const done = new Uint8Array(count);
  for (let item = free.pop(); item !== undefined; item = free.pop()) {
    done[item] = 1;
    for (const next of after[item]!) {
      open[next]! -= 1;
      if (open[next] === 0) free.push(next);
    }
  }
  const kept = pairs.filter(([first, then]) => done[then] === 1 || done[first] === 1 || first < then);
  return build(kept).map((list) => [...list]);
}

/** Arranges groups from the inside out. */
interface Arranger {
  readonly task: OrderTask;
  /** By item: the groups it is in, outermost first, each with the child that leads to it. */
  readonly paths: readonly (readonly (readonly [WorkGroup, number])[])[];
  /** Rules by the group in which the two part. */
  readonly rules: ReadonlyMap<WorkGroup, readonly Before[]>;
}

function listPaths({ items, root }: OrderTask): Arranger['paths'] {
  const paths: (readonly (readonly [WorkGroup, number])[])[] = items.map(() => []);
  const walk = (group: WorkGroup, path: readonly (readonly [WorkGroup, number])[]): void => {
    group.children.forEach((child, at) => {
      const longer = [...path, [group, at] as const];
      if (typeof child === 'number') paths[child] = longer;
      else walk(child, longer);
    });
  };
  walk(root, []);
  return paths;
}

function sortRules({ before }: OrderTask, paths: Arranger['paths']): Arranger['rules'] {
  const rules = new Map<WorkGroup, Before[]>();
  for (const [first, then] of before) {
    const [a, b] = [paths[first]!, paths[then]!];
    let depth = 0;
    while (a[depth] !== undefined && b[depth] !== undefined && a[depth]![1] === b[depth]![1]) depth += 1;
    if (a[depth] === undefined || b[depth] === undefined) continue;
    const group = a[depth]![0];
    const list = rules.get(group);
    const pair: Before = [a[depth]![1], b[depth]![1]];
    if (list === undefined) rules.set(group, [pair]);
    else list.push(pair);
  }
  return rules;
}

/** Of a child: its runs in order, its least tier, and whether anything in it is run at all. */
function summarise(
  { items }: OrderTask,
  child: number | ArrangedGroup,
): { entry: Spot; exit: Spot; tier: number } | null {
  const run = (typeof child === 'number' ? [child] : listItems(child)).filter((item) => items[item]!.runs.length > 0);
  if (run.length === 0) return null;
  const tier = Math.min(...run.map((item) => items[item]!.tier));
  return { entry: entryOf(items[run[0]!]!)!, exit: exitOf(items[run.at(-1)!]!)!, tier };
}

function isFixed({ items }: OrderTask, child: number | WorkGroup): boolean {
  return typeof child === 'number' ? items[child]!.fixed : child.fixed;
}

function arrangeStretch(stretch: Stretch, from: Spot): readonly number[] {
  const tour = { entries: stretch.entries, exits: stretch.exits, from, before: stretch.before };
  const order = stretch.children.length > 1 ? shortenTour(tour) : repairOrder(tour);
  return order.map((place) => stretch.children[place]!);
}

function keepGroup(group: WorkGroup): ArrangedGroup {
  return {
    children: group.children.map((child) => (typeof child === 'number' ? child : keepGroup(child))),
    from: group.children.map((_, at) => at),
  };
}

/** Where the children of a group go, seen from a place; `inner` are they themselves, each in its own order. */
function orderChildren(
  arranger: Arranger,
  group: WorkGroup,
  inner: readonly (number | ArrangedGroup)[],
  start: Spot,
): ArrangedGroup {
  const { task } = arranger;
  const sums = inner.map((child) => summarise(task, child));
  const rules = arranger.rules.get(group) ?? [];
  const from = group.children.map((_, at) => at);
  let at = start;
  let open: number[] = [];
  const close = (): void => {
    const sorted: number[] = [];
    for (const tier of [...new Set(open.map((child) => sums[child]!.tier))].sort((a, b) => a - b)) {
      const children = open.filter((child) => sums[child]!.tier === tier);
      const places = new Map(children.map((child, place) => [child, place]));
      const pairs = rules.flatMap(([a, b]): Before[] =>
        places.has(a) && places.has(b) ? [[places.get(a)!, places.get(b)!]] : [],
      );
      const stretch: Stretch = {
        children,
        entries: children.map((child) => sums[child]!.entry),
        exits: children.map((child) => sums[child]!.exit),
        before: listRules(children.length, pairs),
      };
      sorted.push(...arrangeStretch(stretch, at));
      at = sums[sorted.at(-1)!]!.exit;
    }
    open.forEach((slot, i) => {
      from[slot] = sorted[i]!;
    });
    open = [];
  };
  group.children.forEach((child, index) => {
    const sum = sums[index]!;
    if (isFixed(task, child)) {
      close();
      if (sum !== null) at = sum.exit;
    } else if (sum !== null) open.push(index);
  });
  close();
  return { children: from.map((child) => inner[child]!), from };
}

/** From the inside out, each group as if the tool came to it from the origin. */
function arrangeGroup(arranger: Arranger, group: WorkGroup): ArrangedGroup {
  if (group.fixed) return keepGroup(group);
  const inner = group.children.map((child) => (typeof child === 'number' ? child : arrangeGroup(arranger, child)));
  return orderChildren(arranger, group, inner, arranger.task.origin);
}

/** From the outside in, each group from where the tool really comes. */
function refineGroup(arranger: Arranger, group: WorkGroup, arranged: ArrangedGroup, start: Spot): ArrangedGroup {
  if (group.fixed) return arranged;
  const { origin } = arranger.task;
  // Seen from the origin it was put in order already.
  const isFlat = group.children.every((child) => typeof child === 'number');
  if (isFlat && start.x === origin.x && start.y === origin.y) return arranged;
  const inner: (number | ArrangedGroup)[] = [];
  arranged.from.forEach((child, place) => {
    inner[child] = arranged.children[place]!;
  });
  const { from } = orderChildren(arranger, group, inner, start);
  let at = start;
  const children = from.map((index) => {
    const child = group.children[index]!;
    const placed = inner[index]!;
    const refined = typeof child === 'number' ? child : refineGroup(arranger, child, placed as ArrangedGroup, at);
    at = summarise(arranger.task, refined)?.exit ?? at;
    return refined;
  });
  return { children, from };
}

/**
 * Puts the items of a pass in order: rules first (tiers, then pairs), then as short a way as is found.
 *
 * A child moves only within its group and between two things that nothing may pass; it takes the place of another that moved.
 *
 * @throws Never.
 */
export function planOrder(task: OrderTask): ArrangedGroup {
  const paths = listPaths(task);
  const arranger: Arranger = { task, paths, rules: sortRules(task, paths) };
  const first = arrangeGroup(arranger, task.root);
  const second = refineGroup(arranger, task.root, first, task.origin);
  const travelOf = (arranged: ArrangedGroup): number =>
    measureTravel(
      listItems(arranged).flatMap((item) => task.items[item]!.runs),
      task.origin,
    ).travel;
  return travelOf(second) < travelOf(first) ? second : first;
}
