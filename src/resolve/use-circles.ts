// Circles among uses: strongly connected parts of the graph of what draws what.

/** A target being looked at. */
interface Visit {
  readonly target: number;
  readonly uses: readonly number[];
  at: number;
}

interface Search {
  readonly number: Map<number, number>;
  readonly low: Map<number, number>;
  readonly part: Map<number, number>;
  readonly pending: number[];
  readonly order: number[];
  parts: number;
}

function open(search: Search, target: number, uses: readonly number[]): Visit {
  const number = search.number.size;
  search.number.set(target, number);
  search.low.set(target, number);
  search.pending.push(target);
  return { target, uses, at: 0 };
}

function lower(search: Search, target: number, value: number): void {
  if (value < search.low.get(target)!) search.low.set(target, value);
}

/** Ends a visit; a target that reaches nothing before itself closes a part. */
function close(search: Search, target: number): void {
  if (search.low.get(target) !== search.number.get(target)) return;
  for (;;) {
    const member = search.pending.pop()!;
    search.part.set(member, search.parts);
    search.order.push(member);
    if (member === target) break;
  }
  search.parts += 1;
}

/**
 * Finds the uses that would draw themselves, straight or through others.
 *
 * @param nodes - Rows that uses draw, each once.
 * @param usesIn - The uses that a target draws, itself included where it is one.
 * @param targets - What each use draws.
 * @returns The circular uses, and the targets in an order in which each comes after all it draws by the other uses.
 * @source Tarjan 1972, without recursion
 */
export function findCircles(
  nodes: readonly number[],
  usesIn: (target: number) => readonly number[],
  targets: ReadonlyMap<number, number>,
): { readonly order: readonly number[]; readonly circular: readonly number[] } {
  const search: Search = {
    number: new Map(),
    low: new Map(),
    part: new Map(),
    pending: [],
    order: [],
    parts: 0,
  };
  for (const root of nodes) {
    if (search.number.has(root)) continue;
    const visits: Visit[] = [open(search, root, usesIn(root))];
    for (let visit = visits.at(-1); visit !== undefined; visit = visits.at(-1)) {
      if (visit.at >= visit.uses.length) {
        close(search, visit.target);
        visits.pop();
        const above = visits.at(-1);
        if (above !== undefined) lower(search, above.target, search.low.get(visit.target)!);
        continue;
      }
      const inside = targets.get(visit.uses[visit.at]!)!;
      visit.at += 1;
      if (!search.number.has(inside)) visits.push(open(search, inside, usesIn(inside)));
      else if (!search.part.has(inside)) lower(search, visit.target, search.number.get(inside)!);
    }
  }
  return { order: search.order, circular: listCircular(nodes, usesIn, targets, search.part) };
}

function listCircular(
  nodes: readonly number[],
  usesIn: (target: number) => readonly number[],
  targets: ReadonlyMap<number, number>,
  part: ReadonlyMap<number, number>,
): readonly number[] {
  const circular = new Set<number>();
  for (const node of nodes) {
    for (const use of usesIn(node)) if (part.get(targets.get(use)!) === part.get(node)) circular.add(use);
  }
  return [...circular].sort((a, b) => a - b);
}
