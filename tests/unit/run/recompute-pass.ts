// Figures of a pass worked out again from the text of its file, by a way of its own: no code of the program is used here.

/** What the lines of a file come to, mm. */
export interface Recomputed {
  readonly lines: number;
  readonly lengthMm: number;
  readonly stretchesMm: readonly number[];
  readonly travelsMm: readonly number[];
}

/** x, y. */
export type Point = readonly [number, number];

/** A written segment: its points from first to last. */
export type Segment = readonly Point[];

const STEPS = 4000;

/** From point to point. */
export function distance([x0, y0]: Point, [x1, y1]: Point): number {
  return Math.sqrt((x1 - x0) ** 2 + (y1 - y0) ** 2);
}

function quadratic(a: Point, b: Point, c: Point): Segment {
  return Array.from({ length: STEPS + 1 }, (_, i): Point => {
    const t = i / STEPS;
    const at = (k: 0 | 1): number => a[k] * (1 - t) ** 2 + 2 * b[k] * t * (1 - t) + c[k] * t ** 2;
    return [at(0), at(1)];
  });
}

/** A circular arc by the half angle that its chord spans; only equal radii and short arcs. */
function arc(a: Point, radius: number, sweep: boolean, b: Point): Segment {
  const half = Math.asin(distance(a, b) / 2 / radius);
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const across = radius * Math.cos(half) * (sweep ? 1 : -1);
  const unit: Point = [(b[0] - a[0]) / distance(a, b), (b[1] - a[1]) / distance(a, b)];
  const centre: Point = [middle[0] - unit[1] * across, middle[1] + unit[0] * across];
  const start = Math.atan2(a[1] - centre[1], a[0] - centre[0]);
  return Array.from({ length: STEPS + 1 }, (_, i): Point => {
    const angle = start + ((sweep ? 2 : -2) * half * i) / STEPS;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}

/** The subpaths of absolute path data without the smooth commands. */
export function readPath(d: string): readonly { readonly segments: readonly Segment[]; readonly closed: boolean }[] {
  const found: { segments: Segment[]; closed: boolean }[] = [];
  let at: Point = [0, 0];
  let start: Point = [0, 0];
  for (const [, letter, rest] of d.matchAll(/([MLHVQAZ])([^A-Z]*)/g)) {
    const n = (rest!.match(/-?[\d.]+/g) ?? []).map(Number);
    const own = found.at(-1);
    const add = (segment: Segment): void => {
      own!.segments.push(segment);
      at = segment.at(-1)!;
    };
    if (letter === 'M') {
      at = start = [n[0]!, n[1]!];
      found.push({ segments: [], closed: false });
    } else if (letter === 'L') for (let i = 0; i < n.length; i += 2) add([at, [n[i]!, n[i + 1]!]]);
    else if (letter === 'H') add([at, [n[0]!, at[1]]]);
    else if (letter === 'V') for (const y of n) add([at, [at[0], y]]);
    else if (letter === 'Q') add(quadratic(at, [n[0]!, n[1]!], [n[2]!, n[3]!]));
    else if (letter === 'A') add(arc(at, n[0]!, n[4] === 1, [n[5]!, n[6]!]));
    else {
      own!.closed = true;
      if (distance(at, start) > 1e-9) add([at, start]);
    }
  }
  return found;
}

/** Length of a segment, by its chords. */
export function lengthOf(segment: Segment): number {
  return segment.slice(1).reduce((sum, point, i) => sum + distance(segment[i]!, point), 0);
}

function heading([a, b]: readonly [Point, Point]): number {
  return (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
}

/** Lines of a file whose user unit is a mm and which moves nothing: paths and lines of all layers but the marks. */
export function recomputePass(svg: string, stopDegrees: number): Recomputed {
  const art = svg.replace(/<g id="pinbar-marks"[\s\S]*?<\/g>\s*(?=<\/svg>)/, '').replace(/<defs>[\s\S]*?<\/defs>/, '');
  const data = [...art.matchAll(/<path[^>]*? d="([^"]*)"|<line ([^>]*)\/>/g)].map(([, d, line]) => {
    if (d !== undefined) return d;
    const value = (key: string): string => new RegExp(`${key}="([^"]*)"`).exec(line!)![1]!;
    return `M${value('x1')} ${value('y1')}L${value('x2')} ${value('y2')}`;
  });
  const lines = data.flatMap(readPath);
  const stretches: number[] = [];
  const travels: number[] = [];
  let before: Point | null = null;
  for (const { segments, closed } of lines) {
    const first = segments[0]![0]!;
    if (before !== null) travels.push(distance(before, first));
    let open = 0;
    for (const [i, segment] of segments.entries()) {
      const last = segments[i - 1];
      if (last !== undefined) {
        const turn = Math.abs(heading([last.at(-2)!, last.at(-1)!]) - heading([segment[0]!, segment[1]!])) % 360;
        if (Math.min(turn, 360 - turn) > stopDegrees) {
          stretches.push(open);
          open = 0;
        }
      }
      open += lengthOf(segment);
    }
    stretches.push(open);
    before = closed ? first : segments.at(-1)!.at(-1)!;
  }
  return {
    lines: lines.length,
    lengthMm: stretches.reduce((sum, length) => sum + length, 0),
    stretchesMm: stretches,
    travelsMm: travels,
  };
}

/** Seconds from stop to stop, from the area under a trapezoid or a triangle of speed over time. */
export function stretchSeconds(mm: number, mmPerS: number, mmPerS2: number): number {
  const up = mmPerS / mmPerS2;
  const rampMm = up * mmPerS;
  return rampMm <= mm ? 2 * up + (mm - rampMm) / mmPerS : 2 * Math.sqrt(mm / mmPerS2);
}
