// All lines of a drawing as flat arrays that can be handed to another thread without a copy.
import { type Box, isEmptyBox } from '../geometry/box.js';
import { FLATTEN_PX } from '../geometry/outline.js';
import type { Artwork, PaintSource, Shape } from '../model/artwork.js';
import { strokeWidthMm } from '../model/stroke-width.js';
import { shapeOutlineWithin } from '../resolve/shape-outline.js';
import type { Source } from '../source/source.js';

/** What a shape looks like from afar. */
export const FACES = { nothing: 0, line: 1, area: 2, outlinedArea: 3, picture: 4, type: 5 } as const;

/** The lines of every shape. Lengths in mm from the artboard's top left; a colour is 0xrrggbb, or -1 for none. */
export interface Outlines {
  /** x, y pairs of all runs, one after the other. */
  readonly points: Float32Array;
  /** Per run: index (in pairs) of its first point; one more at the end. */
  readonly runStarts: Uint32Array;
  readonly runClosed: Uint8Array;
  /** Per shape: index of its first run; one more at the end. */
  readonly shapeRuns: Uint32Array;
  /** Per shape: left, top, right, bottom. */
  readonly boxes: Float32Array;
  /** Per shape: one of `FACES`. */
  readonly faces: Uint8Array;
  readonly fills: Int32Array;
  readonly strokes: Int32Array;
  readonly widthsMm: Float32Array;
  /** Per shape: index of the innermost layer, or -1. */
  readonly layers: Int32Array;
  /** Per shape: index into `strokeKeys`, or -1. */
  readonly strokeKey: Int32Array;
  /** Colour keys of the strokes. */
  readonly strokeKeys: readonly string[];
  /** How far the chords of curves may leave them. */
  readonly chordMm: number;
}

/** Drawings up to this size are shown as finely as they are checked, bytes. */
const FINE_BYTES = 500_000;
/** How many times coarser the largest are shown: 0.2 mm. */
const COARSEST = 40;

const UNKNOWN_PAINT = 0x9a9a9a;

function colourOf(paint: PaintSource, opacity: number): number {
  if (paint.kind === 'none' || opacity === 0) return -1;
  const colour = paint.kind === 'colour' ? paint.colour : paint.fallback;
  if (colour === null) return paint.kind === 'server' ? UNKNOWN_PAINT : -1;
  if (colour.alpha === 0) return -1;
  const [red, green, blue] = colour.rgb;
  return (Math.round(red) << 16) | (Math.round(green) << 8) | Math.round(blue);
}

function faceOf(shape: Shape, fill: number, stroke: number): number {
  if (!shape.draws) return FACES.nothing;
  if (shape.kind === 'image' || shape.kind === 'foreignObject') return FACES.picture;
  if (shape.kind === 'text') return FACES.type;
  if (fill < 0 || shape.kind === 'line') return FACES.line;
  return stroke < 0 ? FACES.area : FACES.outlinedArea;
}

/** Growing number columns. */
interface Columns {
  /** Its first `count` pairs are in use. */
  points: Float32Array;
  count: number;
  readonly runStarts: number[];
  readonly runClosed: number[];
}

function addRun(columns: Columns, points: ArrayLike<number>, closed: boolean, mmPerPx: number): void {
  const from = 2 * columns.count;
  if (from + points.length > columns.points.length) {
    const wider = new Float32Array(2 * (from + points.length));
    wider.set(columns.points);
    columns.points = wider;
  }
  for (let i = 0; i < points.length; i += 1) columns.points[from + i] = points[i]! * mmPerPx;
  columns.count += points.length / 2;
  columns.runStarts.push(columns.count);
  columns.runClosed.push(closed ? 1 : 0);
}

function boxPoints(box: Box): readonly number[] {
  if (isEmptyBox(box)) return [];
  return [box.x0, box.y0, box.x1, box.y0, box.x1, box.y1, box.x0, box.y1];
}

/** Index of a key in a list that grows. */
function indexOfKey(keys: Map<string, number>, key: string): number {
  const known = keys.get(key);
  if (known !== undefined) return known;
  keys.set(key, keys.size);
  return keys.size - 1;
}

/**
 * The lines of every shape; type and pictures as their box. The larger the drawing, the coarser its curves, since they are only looked at.
 *
 * @param artwork - Made from `source` by the road.
 */
export function listOutlines(source: Source, artwork: Artwork): Outlines {
  const { shapes } = artwork;
  const { mmPerPx } = artwork.artboard;
  const columns: Columns = { points: new Float32Array(1024), runStarts: [0], runClosed: [], count: 0 };
  const tolerancePx = FLATTEN_PX * Math.min(Math.max(source.text.length / FINE_BYTES, 1), COARSEST);
  const shapeRuns = new Uint32Array(shapes.length + 1);
  const boxes = new Float32Array(4 * shapes.length);
  const faces = new Uint8Array(shapes.length);
  const fills = new Int32Array(shapes.length).fill(-1);
  const strokes = new Int32Array(shapes.length).fill(-1);
  const widthsMm = new Float32Array(shapes.length);
  const layers = new Int32Array(shapes.length);
  const strokeKey = new Int32Array(shapes.length).fill(-1);
  const keys = new Map<string, number>();
  for (const [i, shape] of shapes.entries()) {
    const { paint } = shape;
    fills[i] = colourOf(paint.fill, paint.fillOpacity);
    strokes[i] = colourOf(paint.stroke, paint.strokeOpacity);
    layers[i] = shape.layer;
    faces[i] = faceOf(shape, fills[i]!, strokes[i]!);
    if (shape.draws && paint.stroke.kind === 'colour') strokeKey[i] = indexOfKey(keys, paint.stroke.colour.key);
    if (shape.draws) {
      widthsMm[i] = strokes[i]! < 0 ? 0 : strokeWidthMm(shape, mmPerPx);
      const boxed = faces[i] === FACES.type || faces[i] === FACES.picture;
      if (boxed) addRun(columns, boxPoints(shape.fillBox), true, mmPerPx);
      else {
        const runs = shapeOutlineWithin(source, artwork, { shape, tolerancePx });
        for (const { points, closed } of runs) addRun(columns, points, closed, mmPerPx);
      }
      const { x0, y0, x1, y1 } = shape.drawnBound;
      boxes.set([x0 * mmPerPx, y0 * mmPerPx, x1 * mmPerPx, y1 * mmPerPx], 4 * i);
    }
    shapeRuns[i + 1] = columns.runClosed.length;
  }
  return {
    points: columns.points.slice(0, 2 * columns.count),
    runStarts: Uint32Array.from(columns.runStarts),
    runClosed: Uint8Array.from(columns.runClosed),
    shapeRuns,
    boxes,
    faces,
    fills,
    strokes,
    widthsMm,
    layers,
    strokeKey,
    strokeKeys: [...keys.keys()],
    chordMm: tolerancePx * mmPerPx,
  };
}
