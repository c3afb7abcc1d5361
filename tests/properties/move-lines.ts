// Drawings of a die that show the same: turned, mirrored, far away, in other units, in another order, with lines parted and reversed.
import fc from 'fast-check';
import type { DieLine, Point } from './faulty-cartons.js';

/** How a die is drawn. */
export interface Drawing {
  /** Radians. */
  readonly turn: number;
  readonly mirrored: boolean;
  readonly shiftMm: Point;
  readonly unit: Unit;
  /** Digits behind the point of what is written, in mm. */
  readonly digits: number;
}

/** Units of a drawing, and how many of them make an inch. */
const UNITS = { mm: 25.4, cm: 2.54, in: 1, pt: 72, pc: 6, px: 96 } as const;
export type Unit = keyof typeof UNITS;

/** As it was thought of. */
export const UPRIGHT: Drawing = { turn: 0, mirrored: false, shiftMm: [20, 20], unit: 'mm', digits: 9 };

/** Any angle; doubles as they come would nearly all be next to nothing. */
export const turn: fc.Arbitrary<number> = fc.integer({ min: 0, max: 360e6 }).map((part) => (part * Math.PI) / 180e6);

/** Up to 10 m away. */
export const shiftMm: fc.Arbitrary<Point> = fc.tuple(
  fc.integer({ min: -10_000, max: 10_000 }),
  fc.integer({ min: -10_000, max: 10_000 }),
);

export const unit: fc.Arbitrary<Unit> = fc.constantFrom(...(Object.keys(UNITS) as Unit[]));

export const drawing: fc.Arbitrary<Drawing> = fc.record({
  turn,
  mirrored: fc.boolean(),
  shiftMm,
  unit,
  digits: fc.constant(9),
});

function writePath(
  { points, closed, dashes }: DieLine,
  { turn: angle, mirrored, shiftMm: far, unit: name, digits }: Drawing,
): string {
  const perMm = UNITS[name] / 25.4;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const fixed = digits + Math.max(0, Math.ceil(-Math.log10(perMm)));
  const places = points.map(([x, y]) => {
    const across = mirrored ? -x : x;
    const [mx, my] = [cos * across - sin * y + far[0], sin * across + cos * y + far[1]];
    return `${(mx * perMm).toFixed(fixed)} ${(my * perMm).toFixed(fixed)}`;
  });
  const dashed = dashes === undefined ? '' : ` stroke-dasharray="${dashes.map((dash) => dash * perMm).join(' ')}"`;
  return `<path d="M${places.join('L')}${closed ? 'Z' : ''}"${dashed}/>`;
}

/** Lines as a drawing of 500 x 500 mm. */
export function drawLines(lines: readonly DieLine[], how: Drawing): string {
  const { unit: name } = how;
  const side = (500 / 25.4) * UNITS[name];
  const layers = (['crease', 'perforation', 'cut'] as const).map((kind) => {
    const own = lines.filter((line) => line.kind === kind).map((line) => writePath(line, how));
    return own.length === 0
      ? ''
      : `<g id="${kind}" fill="none" stroke="#d6336c" stroke-width="${(0.3 * UNITS[name]) / 25.4}">${own.join('')}</g>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${side}${name}" height="${side}${name}" viewBox="0 0 ${side} ${side}">${layers.join('')}</svg>`;
}

/** Numbers by which lines are put into another order, reversed, and parted. */
export const dice: fc.Arbitrary<readonly number[]> = fc.array(fc.integer({ min: 0, max: 9999 }), {
  minLength: 40,
  maxLength: 40,
});

/** The lines in another order. */
export function shuffleLines(lines: readonly DieLine[], keys: readonly number[]): readonly DieLine[] {
  return lines
    .map((line, place) => ({ line, key: keys[place % keys.length]! }))
    .sort((p, q) => p.key - q.key)
    .map(({ line }) => line);
}

/** Some of the lines drawn from their other end. */
export function reverseLines(lines: readonly DieLine[], keys: readonly number[]): readonly DieLine[] {
  return lines.map((line, place) =>
    line.fixed === true || keys[place % keys.length]! % 2 === 0 ? line : { ...line, points: line.points.toReversed() },
  );
}

/** Parts of a line are at least this long: above the snap of ends onto lines, mm. */
const SHORTEST = 0.06;

/** Some of the lines as two: parted anywhere within a segment; a closed one at its start too. */
export function partLines(lines: readonly DieLine[], keys: readonly number[]): readonly DieLine[] {
  return lines.flatMap((line, place): readonly DieLine[] => {
    const key = keys[place % keys.length]!;
    if (line.fixed === true || key % 3 === 0) return [line];
    const points = line.closed ? [...line.points, line.points[0]!] : line.points;
    const long = points.flatMap(([x, y], at) => {
      const next = points[at + 1];
      return next !== undefined && Math.hypot(next[0] - x, next[1] - y) > 2.1 * SHORTEST ? [at] : [];
    });
    if (long.length === 0) return [line];
    const at = long[key % long.length]!;
    const [from, to] = [points[at]!, points[at + 1]!];
    const least = SHORTEST / Math.hypot(to[0] - from[0], to[1] - from[1]);
    const share = least + (1 - 2 * least) * (key / 9999);
    const middle: Point = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
    const part = (own: readonly Point[]): DieLine => ({ ...line, points: own, closed: false });
    return [part([...points.slice(0, at + 1), middle]), part([middle, ...points.slice(at + 1)])];
  });
}
