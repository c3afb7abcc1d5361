// Convex polygons: areas parted into them, their sums, and the stretch of an upright line within one.
import type { GridLine, GridPoint } from './region.js';

/** Corners one after the other, clockwise as seen (y down), none of them reflex. */
export type Convex = readonly GridPoint[];

function cross(a: GridPoint, b: GridPoint, c: GridPoint): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

function isConvex(ring: Convex): boolean {
  return ring.every((at, i) => cross(at, ring[(i + 1) % ring.length]!, ring[(i + 2) % ring.length]!) >= 0);
}

function nameEdge(from: GridPoint, to: GridPoint): string {
  return `${from.x} ${from.y} ${to.x} ${to.y}`;
}

/** Two polygons that share an edge, as one; the edge starts at the given corner of each. */
function joinAt(one: Convex, at: number, other: Convex, otherAt: number): Convex {
  const around = one.map((_, i) => one[(at + 1 + i) % one.length]!);
  const beyond = other.slice(2).map((_, i) => other[(otherAt + 2 + i) % other.length]!);
  return [...around, ...beyond];
}

/** One round of joining neighbours where the result is convex; the same list where nothing can be joined. */
function joinOnce(parts: readonly Convex[]): readonly Convex[] {
  const edges = new Map<string, readonly [number, number]>();
  parts.forEach((part, i) => {
    for (const [k, from] of part.entries()) edges.set(nameEdge(from, part[(k + 1) % part.length]!), [i, k]);
  });
  const gone = new Set<number>();
  const joined: Convex[] = [];
  for (const [i, part] of parts.entries()) {
    for (let k = 0; k < part.length && !gone.has(i); k += 1) {
      const found = edges.get(nameEdge(part[(k + 1) % part.length]!, part[k]!));
      if (found === undefined || found[0] === i || gone.has(found[0])) continue;
      const whole = joinAt(part, k, parts[found[0]]!, found[1]);
      if (!isConvex(whole)) continue;
      gone.add(i).add(found[0]);
      joined.push(whole);
    }
  }
  return joined.length === 0 ? parts : [...parts.filter((_, i) => !gone.has(i)), ...joined];
}

/**
 * Triangles joined to few convex polygons.
 *
 * @source Hertel and Mehlhorn 1983: at most four times as many as there need be (from memory)
 */
export function joinTriangles(triangles: readonly GridLine[]): readonly Convex[] {
  let parts: readonly Convex[] = triangles;
  for (let next = joinOnce(parts); next !== parts; next = joinOnce(parts)) parts = next;
  return parts;
}

/** The polygon from its topmost corner on, of several the leftmost. */
function fromTop(ring: Convex): Convex {
  let top = 0;
  ring.forEach((at, i) => {
    if (at.y < ring[top]!.y || (at.y === ring[top]!.y && at.x < ring[top]!.x)) top = i;
  });
  return [...ring.slice(top), ...ring.slice(0, top)];
}

/** All sums of a point of the one and a point of the other: convex as well. */
export function sumConvex(first: Convex, second: Convex): Convex {
  const p = fromTop(first);
  const q = fromTop(second);
  const sum: GridPoint[] = [];
  let [i, k] = [0, 0];
  while (i < p.length || k < q.length) {
    const [a, b] = [p[i % p.length]!, q[k % q.length]!];
    sum.push({ x: a.x + b.x, y: a.y + b.y });
    const [nextA, nextB] = [p[(i + 1) % p.length]!, q[(k + 1) % q.length]!];
    const turn = (nextA.x - a.x) * (nextB.y - b.y) - (nextA.y - a.y) * (nextB.x - b.x);
    const [stepP, stepQ] = k >= q.length ? [1, 0] : i >= p.length ? [0, 1] : [turn >= 0 ? 1 : 0, turn <= 0 ? 1 : 0];
    i += stepP!;
    k += stepQ!;
  }
  return sum;
}
