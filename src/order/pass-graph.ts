// Which sheets have to lie under which, and the circles in that.

/** `edges[a][b]`: sheet a has to lie under sheet b. */
export type PassGraph = readonly (readonly boolean[])[];

/** What can be reached along the edges, in one step or many. */
export function closeGraph(edges: PassGraph): boolean[][] {
  const reach = edges.map((row) => [...row]);
  for (let via = 0; via < reach.length; via += 1) {
    for (const row of reach) {
      if (!row[via]) continue;
      for (let to = 0; to < reach.length; to += 1) row[to] ||= reach[via]![to]!;
    }
  }
  return reach;
}

/** Groups of two or more sheets each of which has to lie under all others of its group, by their first. */
export function listCircles(edges: PassGraph): readonly (readonly number[])[] {
  const reach = closeGraph(edges);
  const circles: number[][] = [];
  const seen = new Set<number>();
  for (let a = 0; a < reach.length; a += 1) {
    if (seen.has(a)) continue;
    const circle = reach.flatMap((row, b) => (b === a || (reach[a]![b] && row[a]) ? [b] : []));
    for (const b of circle) seen.add(b);
    if (circle.length > 1) circles.push(circle);
  }
  return circles;
}

/** The shortest way from one sheet up to another along the edges, both included; empty where there is none. */
export function findWay(edges: PassGraph, from: number, to: number): readonly number[] {
  const ways: number[][] = [[from]];
  const seen = new Set([from]);
  for (const way of ways) {
    const last = way.at(-1)!;
    if (last === to) return way;
    for (let next = 0; next < edges.length; next += 1) {
      if (!edges[last]![next] || seen.has(next)) continue;
      seen.add(next);
      ways.push([...way, next]);
    }
  }
  return [];
}

/**
 * An order of sheets, the lowest first, that few shapes contradict.
 *
 * @param cost - How many shapes of the first sheet lie over shapes of the second.
 */
export function orderSheets(
  sheets: readonly number[],
  cost: (upper: number, lower: number) => number,
): readonly number[] {
  const left = [...sheets];
  const order: number[] = [];
  while (left.length > 0) {
    const costs = left.map((sheet) => left.reduce((sum, other) => sum + (other === sheet ? 0 : cost(sheet, other)), 0));
    const [lowest] = left.splice(costs.indexOf(Math.min(...costs)), 1);
    order.push(lowest!);
  }
  return order;
}
