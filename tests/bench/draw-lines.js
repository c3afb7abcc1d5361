// Drawings of a hundred thousand lines for the benchmark of the checks: each is one way in which lines can be many.
import { Buffer } from 'node:buffer';

/** Room around what is drawn, mm: the marks of the passes want it. */
const ROOM = 20;

/** The start tag of a drawing whose content is `side` mm wide and high. */
function head(side) {
  const whole = side + 2 * ROOM;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${whole}mm" height="${whole}mm" viewBox="0 0 ${whole} ${whole}">\n`;
}

/** One layer of a drawing. */
function layer(name, lines) {
  return `<g id="${name}">\n${lines.join('\n')}\n</g>\n`;
}

function fold(x1, y1, x2, y2) {
  return `<path fill="none" stroke="#06c" stroke-width="0.25" d="M${x1} ${y1}L${x2} ${y2}"/>`;
}

function die(x, y, width, height) {
  return `<path fill="none" stroke="#c06" stroke-width="0.25" d="M${x} ${y}h${width}v${height}h${-width}z"/>`;
}

/** Places of `count` cells in rows as near to a square as they go. */
function cells(count) {
  const across = Math.ceil(Math.sqrt(count));
  return Array.from({ length: count }, (_, i) => [i % across, Math.floor(i / across)]);
}

/** Short folds that meet nothing, within one blank. */
function drawScattered(count) {
  const places = cells(count);
  const blank = Math.ceil(Math.sqrt(count)) * 4 + 16;
  const folds = places.map(([x, y]) => {
    const [left, top] = [ROOM + 10 + x * 4, ROOM + 10 + y * 4];
    return fold(left, top, left + 1 + ((x * 7 + y) % 3) * 0.5, top + 1);
  });
  return head(blank) + layer('Crease', folds) + layer('Cut', [die(ROOM, ROOM, blank, blank)]);
}

/** Folds that part one blank into as many panels: each ends where the next begins. */
function drawGrid(count) {
  const across = Math.floor(Math.sqrt(count / 2));
  const pitch = 20;
  const blank = across * pitch;
  const folds = [];
  for (let row = 1; row < across; row += 1) {
    const at = ROOM + row * pitch;
    for (let from = ROOM; from < ROOM + blank; from += pitch) {
      folds.push(fold(from, at, from + pitch, at), fold(at, from, at, from + pitch));
    }
  }
  return head(blank) + layer('Crease', folds) + layer('Cut', [die(ROOM, ROOM, blank, blank)]);
}

/** Printed labels, each with an outline of its own and its bleed. */
function drawLabels(count) {
  const pitch = 30;
  const places = cells(count);
  const print = places.map(([x, y], i) => {
    const fill = ((i * 7919) % 4096).toString(16).padStart(3, '0');
    return `<rect x="${ROOM + x * pitch}" y="${ROOM + y * pitch}" width="26" height="26" fill="#${fill}"/>`;
  });
  const cuts = places.map(([x, y]) => die(ROOM + x * pitch + 3, ROOM + y * pitch + 3, 20, 20));
  return head(Math.ceil(Math.sqrt(count)) * pitch) + layer('Artwork', print) + layer('Cut', cuts);
}

export const LINE_DRAWINGS = { scattered: drawScattered, grid: drawGrid, labels: drawLabels };

/** The bytes of a drawing of about `count` lines. */
export function drawLines(kind, count) {
  return Buffer.from(`${LINE_DRAWINGS[kind](count)}</svg>\n`);
}
