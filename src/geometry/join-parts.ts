// Parts of an area that was worked out cell by cell, joined again across the borders of the cells.
import type { Box } from './box.js';
import { type GridLine, type GridPoint, type Region, regionArea } from './region.js';
import { createGroups, findLeader, joinGroups } from './union-find.js';

/** What lies in one cell: parts that hang together, each with its holes, outer rings and holes running in opposite ways. */
export interface CellParts {
  readonly box: Box;
  readonly parts: readonly Region[];
}

/** A part that hangs together, of pieces in one cell or in many. */
export interface JoinedPart {
  /** The outer ring first. */
  readonly region: Region;
  readonly area: number;
  readonly pieces: readonly { readonly cell: number; readonly part: number }[];
}

/** A line along a border, from one end to the other. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly part: number;
}

/** Stretches along one border, of the cells on either side. */
interface Border {
  readonly axis: 'x' | 'y';
  readonly bound: number;
  readonly stretches: Stretch[];
}

/** Lines of rings between borders, by the part they belong to. */
interface Loose {
  /** Rings that touch no border. */
  readonly rings: { readonly part: number; readonly ring: GridLine }[];
  readonly chains: { readonly part: number; readonly line: GridLine }[];
  readonly borders: Map<string, Border>;
}

/** How far a corner on a border may lie off the line between its neighbours and be taken away, grid units. */
const OFF_LINE = 1.5;
/** How far a point may lie off a border and count as lying on it, grid units. */
const OFF_BORDER = 2;

function borderOf(borders: Map<string, Border>, axis: 'x' | 'y', bound: number): Border {
  const key = `${axis}${bound}`;
  const known = borders.get(key);
  if (known !== undefined) return known;
  const border: Border = { axis, bound, stretches: [] };
  borders.set(key, border);
  return border;
}

/** Puts a line that runs along a side of its cell to the border there; whether it did. */
function putToBorder(loose: Loose, { x0, y0, x1, y1 }: Box, part: number, a: GridPoint, b: GridPoint): boolean {
  if (a.x === b.x && (a.x === x0 || a.x === x1)) {
    borderOf(loose.borders, 'x', a.x).stretches.push({ from: a.y, to: b.y, part });
    return true;
  }
  if (a.y === b.y && (a.y === y0 || a.y === y1)) {
    borderOf(loose.borders, 'y', a.y).stretches.push({ from: a.x, to: b.x, part });
    return true;
  }
  return false;
}

/** A ring with points that rounding has moved off the sides of its cell put back on them. */
function snapRing(ring: GridLine, { x0, y0, x1, y1 }: Box): GridLine {
  const snap = (value: number, low: number, high: number): number => {
    if (Math.abs(value - low) <= OFF_BORDER) return low;
    return Math.abs(value - high) <= OFF_BORDER ? high : value;
  };
  const snapped = ring.map(({ x, y }) => ({ x: snap(x, x0, x1), y: snap(y, y0, y1) }));
  return snapped.filter(({ x, y }, at) => {
    const before = snapped[at === 0 ? snapped.length - 1 : at - 1]!;
    return x !== before.x || y !== before.y;
  });
}

function takeApart(loose: Loose, box: Box, part: number, ring: GridLine): void {
  if (ring.length < 3) return;
  const onBorder = ring.map((point, at) => putToBorder(loose, box, part, point, ring[(at + 1) % ring.length]!));
  const first = onBorder.indexOf(true);
  if (first < 0) {
    loose.rings.push({ part, ring });
    return;
  }
  let line: GridPoint[] = [];
  for (let step = 1; step <= ring.length; step += 1) {
    const at = (first + step) % ring.length;
    line.push(ring[at]!);
    if (!onBorder[at]) continue;
    if (line.length > 1) loose.chains.push({ part, line });
    line = [];
  }
}

/** Joins the groups of parts that share a stretch of a border, and leaves the lines that do not cancel each other out. */
function closeBorder({ axis, bound, stretches }: Border, groups: Int32Array, loose: Loose): void {
  const place = (along: number): GridPoint => (axis === 'x' ? { x: bound, y: along } : { x: along, y: bound });
  const sorted = stretches.toSorted((a, b) => Math.min(a.from, a.to) - Math.min(b.from, b.to));
  const ends = [...new Set(stretches.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  let active: Stretch[] = [];
  let next = 0;
  for (const [at, low] of ends.entries()) {
    active = active.filter(({ from, to }) => Math.max(from, to) > low);
    for (; next < sorted.length && Math.min(sorted[next]!.from, sorted[next]!.to) === low; next += 1) {
      active.push(sorted[next]!);
    }
    if (active.length === 0) continue;
    const { part } = active[0]!;
    let net = 0;
    for (const stretch of active) {
      net += stretch.from < stretch.to ? 1 : -1;
      joinGroups(groups, part, stretch.part);
    }
    const line = [place(low), place(ends[at + 1]!)];
    for (let count = Math.abs(net); count > 0; count -= 1) {
      loose.chains.push({ part, line: net > 0 ? line : line.toReversed() });
    }
  }
}

function isOnLine(before: GridPoint, at: GridPoint, after: GridPoint, most: number): boolean {
  const [dx, dy] = [after.x - before.x, after.y - before.y];
  const [px, py] = [at.x - before.x, at.y - before.y];
  const length = Math.hypot(dx, dy);
  if (length === 0) return true;
  const along = px * dx + py * dy;
  return Math.abs(px * dy - py * dx) <= most * length && along >= 0 && along <= length * length;
}

/** A ring of lines one after the other, without the corners that only the borders made. */
function ringOf(lines: readonly GridLine[]): GridLine {
  const points: GridPoint[] = [];
  const joints: boolean[] = [];
  for (const line of lines) {
    for (const [at, point] of line.slice(0, -1).entries()) {
      points.push(point);
      joints.push(at === 0);
    }
  }
  const kept: GridPoint[] = [];
  for (const [at, point] of points.entries()) {
    const before = kept.at(-1) ?? points.at(-1)!;
    const after = points[(at + 1) % points.length]!;
    if (!isOnLine(before, point, after, joints[at] ? OFF_LINE : 0)) kept.push(point);
  }
  return kept;
}

/** Links chains by their ends into rings, group by group. */
function linkChains(
  { chains }: Loose,
  groups: Int32Array,
): readonly { readonly group: number; readonly ring: GridLine }[] {
  const starts = new Map<string, number[]>();
  const keyOf = (group: number, { x, y }: GridPoint): string => `${group}:${x},${y}`;
  const groupOf = chains.map(({ part }) => findLeader(groups, part));
  for (const [at, { line }] of chains.entries()) {
    const key = keyOf(groupOf[at]!, line[0]!);
    const list = starts.get(key);
    if (list === undefined) starts.set(key, [at]);
    else list.push(at);
  }
  const used = new Uint8Array(chains.length);
  const rings: { readonly group: number; readonly ring: GridLine }[] = [];
  for (const [first, { line: begin }] of chains.entries()) {
    const group = groupOf[first]!;
    const lines: GridLine[] = [];
    for (let at: number | undefined = first; at !== undefined && used[at] === 0; ) {
      used[at] = 1;
      const { line } = chains[at]!;
      lines.push(line);
      const end = line.at(-1)!;
      if (end.x === begin[0]!.x && end.y === begin[0]!.y) break;
      const next = starts.get(keyOf(group, end));
      while (next !== undefined && next.length > 0 && used[next.at(-1)!] === 1) next.pop();
      at = next?.pop();
    }
    if (lines.length === 0) continue;
    const ring = ringOf(lines);
    if (ring.length > 2) rings.push({ group, ring });
  }
  return rings;
}

/** The largest ring first. */
function outerFirst(rings: GridLine[]): Region {
  if (rings.length < 2) return rings;
  let most = 0;
  const sizes = rings.map((ring) => regionArea([ring]));
  for (const [at, size] of sizes.entries()) if (size > sizes[most]!) most = at;
  return [rings[most]!, ...rings.filter((_, at) => at !== most)];
}

/**
 * Joins what hangs together across the borders of cells that do not overlap.
 *
 * @accuracy Points within 2 grid units of a border are put on it; corners there within 1.5 of a straight line are taken away.
 */
export function joinParts(cells: readonly CellParts[]): readonly JoinedPart[] {
  const owners = cells.flatMap(({ parts }, cell) => parts.map((_, part) => ({ cell, part })));
  const groups = createGroups(owners.length);
  const loose: Loose = { rings: [], chains: [], borders: new Map() };
  for (const [at, { cell, part }] of owners.entries()) {
    const { box, parts } = cells[cell]!;
    for (const ring of parts[part]!) takeApart(loose, box, at, snapRing(ring, box));
  }
  for (const border of loose.borders.values()) closeBorder(border, groups, loose);
  const joined = new Map<number, { rings: GridLine[]; pieces: { cell: number; part: number }[] }>();
  for (const [at, owner] of owners.entries()) {
    const leader = findLeader(groups, at);
    const known = joined.get(leader);
    if (known === undefined) joined.set(leader, { rings: [], pieces: [owner] });
    else known.pieces.push(owner);
  }
  for (const { part, ring } of loose.rings) joined.get(findLeader(groups, part))!.rings.push(ring);
  for (const { group, ring } of linkChains(loose, groups)) joined.get(group)!.rings.push(ring);
  return [...joined.values()].map(({ rings, pieces }) => ({
    region: outerFirst(rings),
    area: pieces.reduce((sum, { cell, part }) => sum + regionArea(cells[cell]!.parts[part]!), 0),
    pieces,
  }));
}
