// A process that renders a drawing and its sheets and lays the sheets over each other; it may be killed at any time.
import { existsSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';

/** One typeface is enough: source and sheets are set in the same. */
const FONT = '/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf';
const FONTS = existsSync(FONT) ? [FONT] : [];

/** Edges are hard, so that two passes share no pixel that they do not overlap in. */
function render(text, zoom) {
  const picture = new Resvg(text, {
    fitTo: { mode: 'zoom', value: zoom },
    shapeRendering: 1,
    textRendering: 0,
    font: { loadSystemFonts: false, fontFiles: FONTS, defaultFontFamily: 'DejaVu Sans' },
    logLevel: 'off',
  }).render();
  return { width: picture.width, height: picture.height, pixels: picture.pixels };
}

/** Lays premultiplied pictures over each other, the first at the bottom. */
function lay(pictures) {
  const under = Float32Array.from(pictures[0].pixels);
  for (const { pixels } of pictures.slice(1)) {
    for (let at = 0; at < pixels.length; at += 4) {
      const alpha = pixels[at + 3];
      if (alpha === 0) continue;
      const through = (255 - alpha) / 255;
      for (let channel = at; channel < at + 4; channel += 1)
        under[channel] = pixels[channel] + under[channel] * through;
    }
  }
  return under;
}

/**
 * Pixels that differ by more than a tolerance, how many blocks of two by two differ,
 * the greatest difference, and where the first is.
 */
function compare(expected, laid, { tolerance, width }) {
  const differs = new Uint8Array(laid.length / 4);
  let differing = 0;
  let blocks = 0;
  let greatest = 0;
  let first = -1;
  for (let at = 0; at < laid.length; at += 4) {
    let difference = 0;
    for (let channel = at; channel < at + 4; channel += 1) {
      difference = Math.max(difference, Math.abs(expected[channel] - laid[channel]));
    }
    greatest = Math.max(greatest, difference);
    if (difference <= tolerance) continue;
    if (differing === 0) first = at / 4;
    differing += 1;
    const pixel = at / 4;
    differs[pixel] = 1;
    const isBlock = differs[pixel - 1] + differs[pixel - width] + differs[pixel - width - 1] === 3;
    if (isBlock && pixel % width > 0) blocks += 1;
  }
  return { differing, blocks, greatest, first };
}

function* permute(list) {
  if (list.length < 2) yield list;
  for (let at = 0; at < list.length; at += 1) {
    for (const rest of permute(list.toSpliced(at, 1))) yield [list[at], ...rest];
  }
}

/** The order of sheets in which they look most like the source. */
function findOrder(expected, sheets, { order, ...options }) {
  let best = null;
  for (const tried of order === null ? permute(sheets.map((_, at) => at)) : [order]) {
    const result = compare(expected, lay(tried.map((at) => sheets[at])), options);
    if (best === null || result.differing < best.differing) best = { ...result, order: tried };
    if (best.differing === 0) break;
  }
  return best;
}

function countInked(pixels) {
  let inked = 0;
  for (let at = 3; at < pixels.length; at += 4) if (pixels[at] > 0) inked += 1;
  return inked;
}

/** One resolution after the other; the order found at the first holds for the next. */
function judge({ source, sheets, zooms, mostPixels, tolerance }) {
  const { width, height } = new Resvg(source, { font: { loadSystemFonts: false }, logLevel: 'off' });
  let order = null;
  return zooms.map((wanted) => {
    const zoom = Math.min(wanted, Math.sqrt(mostPixels / (width * height)));
    const whole = render(source, zoom);
    const parts = sheets.map((text) => render(text, zoom));
    const odd = parts.find((part) => part.width !== whole.width || part.height !== whole.height);
    if (odd !== undefined) return { zoom, size: [whole.width, whole.height], oddSize: [odd.width, odd.height] };
    const found = findOrder(whole.pixels, parts, { tolerance, order, width: whole.width });
    order = found.order;
    const { first } = found;
    const at = first < 0 ? null : [first % whole.width, Math.floor(first / whole.width)];
    return { zoom, size: [whole.width, whole.height], inked: countInked(whole.pixels), ...found, at };
  });
}

process.on('message', (job) => {
  let answer;
  try {
    answer = { results: judge(job) };
  } catch (error) {
    answer = { refused: error instanceof Error ? error.message : String(error) };
  }
  process.send(answer);
});
