// Where the artboard lies on the screen: scale, place, rulers.

/** A view of the artboard. */
export interface BoardView {
  /** Screen px per mm. */
  readonly scale: number;
  /** Where the artboard's top left corner lies on the screen, px. */
  readonly x: number;
  readonly y: number;
}

/** Width and height. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

const LEAST_SCALE = 0.02;
const MOST_SCALE = 4000;
/** Room left around the artboard when all of it is shown, px. */
const AROUND = 28;

/** The view that shows all of an artboard (mm) on a screen (px). */
export function fitView(artMm: Extent, screen: Extent): BoardView {
  const across = (screen.width - 2 * AROUND) / Math.max(artMm.width, 0.01);
  const down = (screen.height - 2 * AROUND) / Math.max(artMm.height, 0.01);
  const scale = clampScale(Math.min(across, down));
  return {
    scale,
    x: (screen.width - artMm.width * scale) / 2,
    y: (screen.height - artMm.height * scale) / 2,
  };
}

function clampScale(scale: number): number {
  return Math.min(Math.max(scale, LEAST_SCALE), MOST_SCALE);
}

/** The view at another scale; the point of the artboard under (x, y) stays there. */
export function zoomView(view: BoardView, scale: number, x: number, y: number): BoardView {
  const next = clampScale(scale);
  const factor = next / view.scale;
  return { scale: next, x: x - (x - view.x) * factor, y: y - (y - view.y) * factor };
}

/** The view moved by some px. */
export function panView(view: BoardView, dx: number, dy: number): BoardView {
  return { ...view, x: view.x + dx, y: view.y + dy };
}

/** The view with a point of the artboard (mm) in the middle of the screen. */
export function centreView(view: BoardView, screen: Extent, xMm: number, yMm: number): BoardView {
  return { ...view, x: screen.width / 2 - xMm * view.scale, y: screen.height / 2 - yMm * view.scale };
}

/** A line of a ruler. */
export interface Tick {
  /** px along the ruler. */
  readonly at: number;
  readonly mm: number;
  /** Long ones carry their number. */
  readonly long: boolean;
}

const STEPS_MM = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];

/** Ticks along a side: numbered ones at least 56 px apart, and up to ten parts between them. */
export function listTicks(scale: number, origin: number, length: number): readonly Tick[] {
  const step = STEPS_MM.find((mm) => mm * scale >= 56) ?? STEPS_MM.at(-1)!;
  const parts = [10, 5, 2, 1].find((count) => (step / count) * scale >= 5)!;
  const part = step / parts;
  const first = Math.ceil(-origin / scale / part);
  const last = Math.floor((length - origin) / scale / part);
  const ticks: Tick[] = [];
  for (let i = first; i <= last && ticks.length < 2000; i += 1) {
    const mm = Math.round(i * part * 1000) / 1000 + 0;
    ticks.push({ at: origin + i * part * scale, mm, long: i % parts === 0 });
  }
  return ticks;
}
