// Paints the lines of a drawing on a canvas: each pass in its colour and pattern, or in the drawing's own colours.
import { multiply } from '../geometry/matrix.js';
import { FACES, type Outlines } from '../road/list-outlines.js';
import { MOST_RINGS, type PaintOrder } from './paint-order.js';
import { LEFT_OUT_LOOK, lookOf, OPEN_LOOK, type PassLook } from './pass-look.js';
import type { SortedShapes } from './sorted-shapes.js';
import { type CopyOrder, isSeen, traceShape } from './trace-shape.js';

/** A canvas to paint on, on the page or off it. */
export type PaintSurface = OffscreenCanvasRenderingContext2D;

/** What is painted. */
export interface PaintContent {
  readonly outlines: Outlines;
  /** Null until the first job is done. */
  readonly sorted: SortedShapes | null;
}

/** Shapes that share a look, in one path. */
interface Batch {
  readonly key: string;
  readonly shapes: number[];
}

/** Above this many points of lines no pattern is drawn: dashes take time. */
const MOST_DASHED_POINTS = 150_000;
/** A ring is as large on the art, mm, as long as it is neither smaller nor larger on the screen, px. */
const RING = { mm: 1, least: 1.4, most: 3 };
function colourText(colour: number): string {
  return `#${(colour & 0xffffff).toString(16).padStart(6, '0')}`;
}

function paintOwn(surface: PaintSurface, { outlines }: PaintContent, shape: number, order: CopyOrder): void {
  surface.beginPath();
  traceShape(surface, outlines, shape, order);
  const boxed = outlines.faces[shape] === FACES.picture;
  if (boxed || (outlines.fills[shape]! >= 0 && outlines.faces[shape] !== FACES.line)) {
    surface.fillStyle = boxed ? '#bdbdb8' : colourText(outlines.fills[shape]!);
    surface.fill('evenodd');
  }
  if (outlines.strokes[shape]! >= 0) {
    surface.strokeStyle = colourText(outlines.strokes[shape]!);
    surface.lineWidth = Math.max(outlines.widthsMm[shape]! * order.view.scale, 0.5);
    surface.stroke();
  }
}

/** Hatching in one colour, as a pattern that stays with the art. */
function makeHatch(surface: PaintSurface, look: PassLook, colour: string, order: CopyOrder): CanvasPattern | null {
  const side = look.hatchPx * order.pixelRatio;
  const tile = new OffscreenCanvas(Math.ceil(side), Math.ceil(side));
  const brush = tile.getContext('2d')!;
  brush.strokeStyle = colour;
  brush.lineWidth = 1.1 * order.pixelRatio;
  brush.beginPath();
  brush.moveTo(0, tile.height / 2);
  brush.lineTo(tile.width, tile.height / 2);
  brush.stroke();
  const pattern = surface.createPattern(tile, 'repeat');
  const shrink = 1 / order.pixelRatio;
  pattern?.setTransform(
    new DOMMatrix().translate(order.toScreen[4], order.toScreen[5]).rotate(look.hatchDegrees).scale(shrink, shrink),
  );
  return pattern;
}

function findLook(pass: number): PassLook {
  if (pass === -1) return OPEN_LOOK;
  return pass < 0 ? LEFT_OUT_LOOK : lookOf(pass);
}

/** Areas of one pass: hatched, with a thin rim. */
function paintAreas(surface: PaintSurface, content: PaintContent, batch: Batch, order: CopyOrder): void {
  const pass = Number(batch.key.split(' ')[1]);
  const look = findLook(pass);
  const colour = look.light;
  surface.setLineDash([]);
  surface.strokeStyle = colour;
  surface.lineWidth = 0.8;
  surface.fillStyle = makeHatch(surface, look, colour, order) ?? colour;
  const strength = surface.globalAlpha;
  // One by one: areas over each other would open each other in one path.
  for (const shape of batch.shapes) {
    surface.beginPath();
    traceShape(surface, content.outlines, shape, order);
    surface.globalAlpha = strength * 0.5;
    surface.fill('evenodd');
    surface.globalAlpha = strength;
    surface.stroke();
  }
}

function paintLines(surface: PaintSurface, content: PaintContent, batch: Batch, order: CopyOrder): void {
  const pass = Number(batch.key.split(' ')[1]);
  const look = findLook(pass);
  surface.beginPath();
  let count = 0;
  for (const shape of batch.shapes) count += traceShape(surface, content.outlines, shape, order);
  surface.setLineDash([]);
  surface.lineJoin = 'round';
  if (order.manner === 'lines') {
    surface.strokeStyle = '#ffffff';
    surface.lineWidth = 4.2;
    surface.stroke();
  }
  surface.strokeStyle = look.light;
  const isTool = pass < 0 || order.tools[pass] === true;
  surface.lineWidth = pass === -1 ? 3.2 : isTool ? 1.9 : 1.3;
  surface.lineCap = pass === -1 ? 'round' : 'butt';
  if (isTool && count < MOST_DASHED_POINTS) surface.setLineDash([...look.dash]);
  surface.stroke();
  surface.setLineDash([]);
}

/** The passes of a shape that are to be seen, each as a key: what is painted, which pass, how strong. */
function listKeys({ outlines, sorted }: PaintContent, shape: number, order: CopyOrder): readonly string[] {
  if (sorted === null) return [`line -2 1`];
  const face = outlines.faces[shape]!;
  const pass = sorted.passes[shape]!;
  const fill = sorted.fillPasses[shape]!;
  const strength = (of: number): number => (of < 0 ? 1 : (order.shown[of] ?? 1));
  const keys: string[] = [];
  if (fill >= 0 && strength(fill) > 0) keys.push(`area ${fill} ${strength(fill)}`);
  if (strength(pass) > 0 && !(fill >= 0 && pass === -2)) {
    const isLine = face === FACES.line || fill >= 0 || (pass >= 0 && order.tools[pass] === true);
    keys.push(`${isLine ? 'line' : 'area'} ${pass} ${strength(pass)}`);
  }
  return order.manner === 'lines'
    ? keys.filter((key) => pass === -1 || (key.startsWith('line') && order.tools[pass] === true))
    : keys;
}

function paintPasses(surface: PaintSurface, content: PaintContent, order: CopyOrder): void {
  const batches = new Map<string, number[]>();
  const count = content.outlines.faces.length;
  for (let shape = 0; shape < count; shape += 1) {
    if (!isSeen(content.outlines, shape, order)) continue;
    for (const key of listKeys(content, shape, order)) {
      const list = batches.get(key);
      if (list === undefined) batches.set(key, [shape]);
      else list.push(shape);
    }
  }
  // Areas below lines, left-out shapes lowest, what nobody claimed on top.
  const rank = (key: string): number => {
    const [what, pass] = key.split(' ');
    return (what === 'area' ? 0 : 1000) + (Number(pass) === -1 ? 900 : Number(pass));
  };
  for (const [key, shapes] of [...batches].sort(([a], [b]) => rank(a) - rank(b))) {
    surface.globalAlpha = key.endsWith(' 2') ? 0.25 : 1;
    if (key.startsWith('area')) paintAreas(surface, content, { key, shapes }, order);
    else paintLines(surface, content, { key, shapes }, order);
  }
  surface.globalAlpha = 1;
}

function isRaised({ outlines }: PaintContent, shape: number, { raised }: CopyOrder): boolean {
  if (raised.shape === shape) return true;
  if (raised.stroke >= 0 && outlines.strokeKey[shape] === raised.stroke) return true;
  if (raised.loose && outlines.layers[shape] === -1) return true;
  return raised.layers.includes(outlines.layers[shape]!);
}

function hasRaised({ raised }: CopyOrder): boolean {
  return raised.shape >= 0 || raised.stroke >= 0 || raised.layers.length > 0 || raised.loose;
}

/** A light around what stands out. */
function paintRaised(surface: PaintSurface, content: PaintContent, order: CopyOrder): void {
  surface.beginPath();
  const count = content.outlines.faces.length;
  for (let shape = 0; shape < count; shape += 1) {
    if (isRaised(content, shape, order) && isSeen(content.outlines, shape, order)) {
      traceShape(surface, content.outlines, shape, order);
    }
  }
  surface.setLineDash([]);
  surface.lineJoin = 'round';
  surface.strokeStyle = 'rgba(255, 176, 0, 0.6)';
  surface.lineWidth = 7;
  surface.stroke();
}

/** A ring around each tie, in the colour of its pass: the gaps of a pattern are none. */
function paintTies(surface: PaintSurface, order: CopyOrder): void {
  const [a, b, c, d, e, f] = order.toScreen;
  const radius = Math.min(Math.max(RING.mm * order.view.scale, RING.least), RING.most);
  surface.setLineDash([]);
  order.ties.forEach((places, pass) => {
    const shown = order.shown[pass] ?? 0;
    if (shown === 0 || places.length > 2 * MOST_RINGS) return;
    surface.globalAlpha = shown === 2 ? 0.25 : 1;
    surface.beginPath();
    for (let at = 0; at < places.length; at += 2) {
      const x = a * places[at]! + c * places[at + 1]! + e;
      const y = b * places[at]! + d * places[at + 1]! + f;
      surface.moveTo(x + radius, y);
      surface.arc(x, y, radius, 0, 2 * Math.PI);
    }
    surface.fillStyle = '#ffffff';
    surface.fill();
    surface.strokeStyle = lookOf(pass).light;
    surface.lineWidth = radius / 2;
    surface.stroke();
  });
  surface.globalAlpha = 1;
}

/** The art in its own colours, shape after shape. */
function paintDrawn(surface: PaintSurface, content: PaintContent, order: CopyOrder): void {
  const fade = order.manner === 'lines' ? 0.5 : 1;
  const count = content.outlines.faces.length;
  for (let shape = 0; shape < count; shape += 1) {
    const pass = content.sorted?.passes[shape] ?? -1;
    const shown = pass < 0 ? 1 : (order.shown[pass] ?? 1);
    if (shown === 0 || !isSeen(content.outlines, shape, order)) continue;
    surface.globalAlpha = fade * (shown === 2 ? 0.25 : 1);
    paintOwn(surface, content, shape, order);
  }
  surface.globalAlpha = 1;
}

function paintCopy(surface: PaintSurface, content: PaintContent, order: CopyOrder): void {
  if (order.manner !== 'passes' && !order.bare) paintDrawn(surface, content, order);
  if (hasRaised(order)) paintRaised(surface, content, order);
  if (order.manner !== 'drawn') paintPasses(surface, content, order);
  // Pictures of the files have the gaps themselves.
  if (order.manner !== 'drawn' || !order.bare) paintTies(surface, order);
}

/** Paints a drawing as ordered: every copy of it. */
export function paintShapes(surface: PaintSurface, content: PaintContent, order: PaintOrder): void {
  const { scale, x, y } = order.view;
  surface.setTransform(order.pixelRatio, 0, 0, order.pixelRatio, 0, 0);
  surface.clearRect(0, 0, order.width, order.height);
  for (const copy of order.copies) {
    paintCopy(surface, content, { ...order, toScreen: multiply([scale, 0, 0, scale, x, y], copy) });
  }
}
