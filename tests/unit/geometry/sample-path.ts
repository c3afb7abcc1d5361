// Points along paths and over strokes by brute force: the opposite of what is under test, for comparing.
import type { Box } from '../../../src/geometry/box.js';
import type { Matrix } from '../../../src/geometry/matrix.js';
import type { PathData } from '../../../src/geometry/path-data.js';
import type { StrokeShape } from '../../../src/geometry/stroke-box.js';
import { listSegments } from './read-path.js';

type Point = readonly [number, number];

/** Positions and directions along one segment. */
interface Run {
  readonly points: readonly Point[];
  readonly directions: readonly Point[];
}

interface Subpath {
  readonly start: Point;
  readonly runs: readonly Run[];
  readonly closed: boolean;
}

/** Samples at even steps, and more where the direction turns by more than a step's share of a full turn. */
function sampleRun(sample: (t: number) => readonly [Point, Point], steps: number): Run {
  const samples: (readonly [Point, Point])[] = [sample(0)];
  const open = Array.from({ length: steps }, (_, index) => (steps - index) / steps);
  let from = 0;
  while (open.length > 0) {
    const to = open.at(-1)!;
    const next = sample(to);
    const [[x0, y0], [x1, y1]] = [samples.at(-1)![1], next[1]];
    const turn = Math.abs(Math.atan2(x0 * y1 - y0 * x1, x0 * x1 + y0 * y1));
    if (steps > 1 && turn > (2 * Math.PI) / steps && to - from > 1e-12) {
      open.push((from + to) / 2);
      continue;
    }
    samples.push(next);
    open.pop();
    from = to;
  }
  return { points: samples.map(([point]) => point), directions: samples.map(([, direction]) => direction) };
}

function sampleBezier(control: readonly Point[], steps: number): Run {
  return sampleRun((t) => {
    let level = [...control];
    let spread: Point = [0, 0];
    while (level.length > 1) {
      if (level.length === 2) spread = [level[1]![0] - level[0]![0], level[1]![1] - level[0]![1]];
      level = level.slice(1).map((q, i) => [(1 - t) * level[i]![0] + t * q[0], (1 - t) * level[i]![1] + t * q[1]]);
    }
    return [level[0]!, spread];
  }, steps);
}

/** Centre form by the equations as printed in SVG 2, appendix B.2.4. */
function sampleArc(from: Point, numbers: readonly number[], steps: number): Run {
  let [rx = 0, ry = 0] = numbers;
  const [, , degrees = 0, large, sweepFlag, x = 0, y = 0] = numbers;
  if (rx === 0 || ry === 0 || (x === from[0] && y === from[1])) return sampleBezier([from, [x, y]], steps);
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const [hx, hy] = [(from[0] - x) / 2, (from[1] - y) / 2];
  const [x1, y1] = [cos * hx + sin * hy, -sin * hx + cos * hy];
  const lambda = (x1 * x1) / (rx * rx) + (y1 * y1) / (ry * ry);
  if (lambda > 1) [rx, ry] = [rx * Math.sqrt(lambda), ry * Math.sqrt(lambda)];
  const under = (rx * rx * ry * ry) / (rx * rx * y1 * y1 + ry * ry * x1 * x1) - 1;
  const factor = (large === sweepFlag ? -1 : 1) * (lambda > 1 ? 0 : Math.sqrt(Math.max(0, under)));
  const [cx1, cy1] = [(factor * rx * y1) / ry, (-factor * ry * x1) / rx];
  const [cx, cy] = [cos * cx1 - sin * cy1 + (from[0] + x) / 2, sin * cx1 + cos * cy1 + (from[1] + y) / 2];
  const begin = Math.atan2((y1 - cy1) / ry, (x1 - cx1) / rx);
  let sweep = Math.atan2((-y1 - cy1) / ry, (-x1 - cx1) / rx) - begin;
  if (sweepFlag === 0 && sweep > 0) sweep -= 2 * Math.PI;
  if (sweepFlag === 1 && sweep < 0) sweep += 2 * Math.PI;
  const at = (a: number, b: number): Point => [cos * rx * a - sin * ry * b, sin * rx * a + cos * ry * b];
  const turn = Math.sign(sweep);
  return sampleRun((t) => {
    const angle = begin + sweep * t;
    const [px, py] = at(Math.cos(angle), Math.sin(angle));
    return [[px + cx, py + cy], at(-turn * Math.sin(angle), turn * Math.cos(angle))];
  }, steps);
}

function sampleSubpaths(path: PathData, steps: number): readonly Subpath[] {
  const subpaths: { start: Point; runs: Run[]; closed: boolean }[] = [];
  let from: Point = [0, 0];
  for (const [letter, ...rest] of listSegments(path)) {
    const numbers = rest as number[];
    const pairs = numbers.flatMap((n, i): Point[] => (i % 2 === 0 ? [[n, numbers[i + 1] ?? 0]] : []));
    const current = subpaths.at(-1);
    if (letter === 'M') subpaths.push({ start: pairs[0]!, runs: [], closed: false });
    else if (letter === 'Z') {
      current!.runs.push(sampleBezier([from, current!.start], 1));
      current!.closed = true;
    } else if (letter === 'A') current!.runs.push(sampleArc(from, numbers, steps));
    else current!.runs.push(sampleBezier([from, ...pairs], letter === 'L' ? 1 : steps));
    from = letter === 'Z' ? current!.start : [numbers.at(-2)!, numbers.at(-1)!];
  }
  return subpaths;
}

function mapPoint([a, b, c, d, e, f]: Matrix, [x, y]: Point): Point {
  return [a * x + c * y + e, b * x + d * y + f];
}

function boxAround(points: readonly Point[]): Box {
  const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  for (const [x, y] of points) {
    box.x0 = Math.min(box.x0, x);
    box.y0 = Math.min(box.y0, y);
    box.x1 = Math.max(box.x1, x);
    box.y1 = Math.max(box.y1, y);
  }
  return box;
}

/** The box of `steps` points along each curve: never larger than the true one. */
export function samplePathBox(path: PathData, matrix: Matrix, steps: number): Box {
  const points = sampleSubpaths(path, steps).flatMap(({ runs }) => runs.flatMap((run) => run.points));
  return boxAround(points.map((point) => mapPoint(matrix, point)));
}

function fanOf([x, y]: Point, radius: number, from: number, sweep: number): readonly Point[] {
  return Array.from({ length: 721 }, (_, step): Point => {
    const angle = from + (sweep * step) / 720;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

function sampleJoin(at: Point, last: Point, next: Point, stroke: StrokeShape): readonly Point[] {
  const radius = stroke.width / 2;
  const [from, to] = [Math.atan2(last[1], last[0]), Math.atan2(next[1], next[0])];
  let turn = to - from;
  if (turn > Math.PI) turn -= 2 * Math.PI;
  if (turn <= -Math.PI) turn += 2 * Math.PI;
  const outer = turn > 0 ? -Math.PI / 2 : Math.PI / 2;
  if (stroke.linejoin === 'round') return fanOf(at, radius, from + outer, turn);
  const ratio = 1 / Math.cos(turn / 2);
  if (stroke.linejoin === 'bevel' || ratio > stroke.miterlimit) return [];
  const middle = from + outer + turn / 2;
  return [[at[0] + radius * ratio * Math.cos(middle), at[1] + radius * ratio * Math.sin(middle)]];
}

function sampleCap([x, y]: Point, [dx, dy]: Point, stroke: StrokeShape): readonly Point[] {
  const radius = stroke.width / 2;
  const angle = Math.atan2(dy, dx);
  if (stroke.linecap === 'round') return fanOf([x, y], radius, angle - Math.PI / 2, Math.PI);
  if (stroke.linecap === 'butt') return [];
  return [Math.PI / 4, -Math.PI / 4].map((turn): Point => {
    const corner = radius * Math.SQRT2;
    return [x + corner * Math.cos(angle + turn), y + corner * Math.sin(angle + turn)];
  });
}

/** A control point on its end leaves no direction there; the next point along has nearly the right one. */
function directEnds(run: Run): Run {
  const directions = [...run.directions];
  if (Math.hypot(...directions[0]!) < 1e-9) directions[0] = directions[1]!;
  if (Math.hypot(...directions.at(-1)!) < 1e-9) directions[directions.length - 1] = directions.at(-2)!;
  return { points: run.points, directions };
}

function sampleDot([x, y]: Point, stroke: StrokeShape): readonly Point[] {
  const radius = stroke.width / 2;
  if (stroke.linecap === 'round') return fanOf([x, y], radius, 0, 2 * Math.PI);
  if (stroke.linecap === 'butt') return [];
  return [-radius, radius].flatMap((dx) => [-radius, radius].map((dy): Point => [x + dx, y + dy]));
}

/** The box of points all over a stroke. */
export function sampleStrokeBox(path: PathData, matrix: Matrix, stroke: StrokeShape, steps: number): Box {
  const radius = stroke.width / 2;
  const points: Point[] = [];
  for (const { runs: all, closed } of sampleSubpaths(path, steps)) {
    const runs = all.filter((run) => run.directions.some(([dx, dy]) => Math.hypot(dx, dy) > 1e-9)).map(directEnds);
    if (all.length > 0 && runs.length === 0) points.push(...sampleDot(all[0]!.points[0]!, stroke));
    for (const run of runs) {
      for (const [index, [x, y]] of run.points.entries()) {
        const [dx, dy] = run.directions[index]!;
        const size = Math.hypot(dx, dy);
        if (size === 0) continue;
        points.push(
          [x - (radius * dy) / size, y + (radius * dx) / size],
          [x + (radius * dy) / size, y - (radius * dx) / size],
        );
      }
    }
    for (const [index, run] of runs.entries()) {
      const next = runs[index + 1] ?? (closed ? runs[0] : undefined);
      if (next !== undefined) {
        points.push(...sampleJoin(run.points.at(-1)!, run.directions.at(-1)!, next.directions[0]!, stroke));
      }
    }
    if (closed || runs.length === 0) continue;
    const [dx, dy] = runs[0]!.directions[0]!;
    points.push(...sampleCap(runs[0]!.points[0]!, [-dx, -dy], stroke));
    points.push(...sampleCap(runs.at(-1)!.points.at(-1)!, runs.at(-1)!.directions.at(-1)!, stroke));
  }
  return boxAround(points.map((point) => mapPoint(matrix, point)));
}

/** The length of the chords between `steps` points along each curve: never longer than the true one. */
export function sampleLength(path: PathData, matrix: Matrix, steps: number): number {
  let length = 0;
  for (const { points } of sampleSubpaths(path, steps).flatMap(({ runs }) => runs)) {
    const mapped = points.map((point) => mapPoint(matrix, point));
    for (let i = 1; i < mapped.length; i++) {
      length += Math.hypot(mapped[i]![0] - mapped[i - 1]![0], mapped[i]![1] - mapped[i - 1]![1]);
    }
  }
  return length;
}
