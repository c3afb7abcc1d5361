// Draws layered files of any size for the benchmark: seeded, so that every run measures the same bytes.

const ENCODER = new TextEncoder();
const INKS = ['#20413a', '#2f6f5e', '#8fb497', '#f4cf4b', '#e0a526', '#c2185b', '#f6ecd2', '#1d5a4c'];

/** Shares of the file, in paint order. */
const LAYERS = [
  {
    name: 'Artwork',
    share: 0.8,
    paint: (next) =>
      `fill="${pick(next, INKS)}"${next() < 0.25 ? ` stroke="${pick(next, INKS)}" stroke-width="0.${1 + whole(next, 8)}"` : ''}`,
  },
  { name: 'Crease', share: 0.05, paint: () => 'fill="none" stroke="#1d4ed8" stroke-width="0.3"' },
  { name: 'Cut', share: 0.15, paint: () => 'fill="none" stroke="#e5007d" stroke-width="0.3"' },
];

/** Numbers from 0 to 1 out of a seed. */
export function seedChance(seed) {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

function whole(next, below) {
  return Math.floor(next() * below);
}

function pick(next, list) {
  return list[whole(next, list.length)];
}

/** A number with two or three decimals, as drawing programs write them. */
function coordinate(next, from, to) {
  return String(Number((from + next() * (to - from)).toFixed(next() < 0.5 ? 2 : 3)));
}

function point(next) {
  return `${coordinate(next, -40, 40)} ${coordinate(next, -40, 40)}`;
}

/** A path of some 400 bytes. */
function drawPath(next) {
  const parts = [`M${point(next)}`];
  const count = 5 + whole(next, 12);
  for (let i = 0; i < count; i += 1) {
    parts.push(next() < 0.7 ? `C${point(next)} ${point(next)} ${point(next)}` : `L${point(next)} ${point(next)}`);
  }
  if (next() < 0.6) parts.push('Z');
  return `<path d="${parts.join('')}"`;
}

function drawShape(next, id) {
  const chance = next();
  const name = `${next() < 0.3 ? ` id="s${id}"` : ''}${next() < 0.2 ? ` class="ink-${whole(next, 8)}"` : ''}`;
  if (chance < 0.86) return drawPath(next) + name;
  if (chance < 0.94) {
    const size = `width="${coordinate(next, 1, 15)}" height="${coordinate(next, 1, 15)}"`;
    return `<rect x="${coordinate(next, -30, 15)}" y="${coordinate(next, -30, 15)}" ${size}${name}`;
  }
  return `<circle cx="${coordinate(next, -20, 20)}" cy="${coordinate(next, -20, 20)}" r="${coordinate(next, 0.5, 10)}"${name}`;
}

/** A group somewhere on the artboard, with a turned group in it. */
function drawGroup(next, paint, id) {
  const place = `translate(${coordinate(next, 120, 480)} ${coordinate(next, 120, 280)})`;
  const turn = next() < 0.5 ? `rotate(${coordinate(next, -180, 180)})` : 'matrix(0.8 0.1 -0.1 0.9 0 0)';
  const lines = [`    <g transform="${place}">`, `      <g transform="${turn}">`];
  const count = 10 + whole(next, 50);
  for (let i = 0; i < count; i += 1) lines.push(`        ${drawShape(next, id + i)} ${paint(next)}/>`);
  lines.push('      </g>', '    </g>', '');
  return { text: lines.join('\n'), count };
}

/** A layered drawing of about so many bytes: layers Artwork, Crease and Cut, 600 x 400 mm, room for marks all around. */
export function drawLayered(bytes, seed = 20) {
  const next = seedChance(seed);
  const chunks = ['<svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="400mm" viewBox="0 0 600 400">\n'];
  let id = 0;
  for (const { name, share, paint } of LAYERS) {
    chunks.push(`  <g id="${name}">\n`);
    for (let left = bytes * share; left > 0; ) {
      const { text, count } = drawGroup(next, paint, id);
      id += count;
      left -= text.length;
      chunks.push(text);
    }
    chunks.push('  </g>\n');
  }
  chunks.push('</svg>\n');
  return { bytes: ENCODER.encode(chunks.join('')), shapes: id };
}
