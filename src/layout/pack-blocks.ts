// Rectangles in blocks: upright ones and ones turned by a quarter, beside each other or round a middle like a windmill.
import type { Box } from '../geometry/box.js';
import { countAlong, type Gutters, type PlacedCopy, placeRows } from './place-rows.js';
import type { TurnedPiece } from './turned-piece.js';

/** Sizes of four blocks: at the top left and bottom right of the first piece, at the top right and bottom left of the second. */
interface Windmill {
  readonly columns: readonly [number, number, number, number];
  readonly rows: readonly [number, number, number, number];
}

/** Windmills that are looked at; where there would be more, two blocks alone. */
const MOST_TRIED = 400_000;

/** A length of some copies with their gutters, the last one's too. */
function span(count: number, size: number, gutter: number): number {
  return count * (size + gutter);
}

/** The blocks in the corners of an area. */
function layWindmill(
  area: Box,
  [first, second]: readonly [TurnedPiece, TurnedPiece],
  { columns, rows }: Windmill,
  gutters: Gutters,
): readonly PlacedCopy[] {
  const pieces = [first, second, first, second];
  return pieces.flatMap((piece, i) => {
    const x0 = i === 0 || i === 3 ? area.x0 : area.x1 + gutters.x - span(columns[i]!, piece.width, gutters.x);
    const y0 = i < 2 ? area.y0 : area.y1 + gutters.y - span(rows[i]!, piece.height, gutters.y);
    const grid = { columns: columns[i]!, rows: rows[i]!, copies: columns[i]! * rows[i]! };
    return placeRows({ ...area, x0, y0 }, grid, [piece], gutters);
  });
}

const EQUAL_MM = 1e-6;

/** The most copies with the first piece at the top left. */
function bestWindmill(area: Box, pieces: readonly [TurnedPiece, TurnedPiece], gutters: Gutters): Windmill | null {
  const [first, second] = pieces;
  const [wide, high] = [area.x1 - area.x0, area.y1 - area.y0];
  const most = {
    columns: countAlong(wide, first.width, gutters.x),
    rows: countAlong(high, first.height, gutters.y),
    turned: countAlong(high, second.height, gutters.y),
  };
  const whole = (most.columns + 1) * (most.columns + 1) * (most.rows + 1) * (most.turned + 1) <= MOST_TRIED;
  const [w, h, v, u] = [first.width, first.height, second.width, second.height];
  let best: Windmill | null = null;
  let bestCount = 0;
  const look = (a: number, b: number, c: number, d: number): void => {
    const [x1, y1] = [span(a, w, gutters.x), span(b, h, gutters.y)];
    const y2 = span(c, u, gutters.y);
    const x3 = span(d, w, gutters.x);
    const columns = [a, countAlong(wide - x1, v, gutters.x), d, countAlong(wide - x3, v, gutters.x)] as const;
    const rows = [b, c, countAlong(high - y2, h, gutters.y), countAlong(high - y1, u, gutters.y)] as const;
    const count = columns.reduce<number>((sum, number, i) => sum + number * rows[i]!, 0);
    if (count <= bestCount) return;
    const [y3, y4] = [span(rows[2], h, gutters.y), span(rows[3], u, gutters.y)];
    const [x2, x4] = [span(columns[1], v, gutters.x), span(columns[3], v, gutters.x)];
    const meets = (one: number, other: number, room: number, gutter: number): boolean =>
      one > 0 && other > 0 && one + other > room + gutter + EQUAL_MM;
    if (meets(x1, x3, wide, gutters.x) && meets(y1, y3, high, gutters.y)) return;
    if (meets(x2, x4, wide, gutters.x) && meets(y2, y4, high, gutters.y)) return;
    best = { columns, rows };
    bestCount = count;
  };
  for (let a = 0; a <= most.columns; a += 1) {
    for (let b = whole ? 0 : most.rows; b <= most.rows; b += 1) {
      for (let c = whole ? 0 : most.turned; c <= most.turned; c += 1) {
        for (let d = 0; d <= (whole ? most.columns : 0); d += 1) look(a, b, c, d);
      }
    }
  }
  return best;
}

/** The most copies in blocks, whichever of the two pieces stands at the top left. */
export function packBlocks(
  area: Box,
  pieces: readonly [TurnedPiece, TurnedPiece],
  gutters: Gutters,
): readonly PlacedCopy[] {
  const orders = [pieces, [pieces[1], pieces[0]] as const];
  const laid = orders.map((order) => {
    const windmill = bestWindmill(area, order, gutters);
    return windmill === null ? [] : layWindmill(area, order, windmill, gutters);
  });
  return laid[1]!.length > laid[0]!.length ? laid[1]! : laid[0]!;
}
