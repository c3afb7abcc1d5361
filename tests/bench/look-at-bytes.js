// The least that a program in this engine must do to split exactly: look at every byte, read every number of every path, tell the
// extent of them, hash what comes in and what goes out, and write it. No styles, no boxes of curves, no layers, no manifest.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const [TAB, LINE_FEED, QUOTE, APOSTROPHE, MINUS, DOT, ZERO, NINE, LESS, GREATER, D] = Buffer.from('\t\n"\'-.09<>d');
const SPACE = 32;

/** Powers of ten: what a number with that many decimals is multiplied by. */
const SCALES = Float64Array.from({ length: 23 }, (_, places) => 10 ** -places);

/** Reads the numbers of a path up to its closing quote; returns where that stands. */
function readNumbers(bytes, from, quote, extent) {
  let at = from;
  for (let byte = bytes[at]; byte !== quote; byte = bytes[at]) {
    if (byte !== MINUS && byte !== DOT && (byte < ZERO || byte > NINE)) {
      at += 1;
      continue;
    }
    const isNegative = byte === MINUS;
    if (isNegative) byte = bytes[++at];
    let value = 0;
    for (; byte >= ZERO && byte <= NINE; byte = bytes[++at]) value = 10 * value + byte - ZERO;
    let places = 0;
    if (byte === DOT) {
      for (byte = bytes[++at]; byte >= ZERO && byte <= NINE; byte = bytes[++at]) {
        value = 10 * value + byte - ZERO;
        places += 1;
      }
    }
    value *= isNegative ? -SCALES[places] : SCALES[places];
    extent.least = Math.min(extent.least, value);
    extent.most = Math.max(extent.most, value);
    extent.count += 1;
  }
  return at;
}

/** Looks at every byte: text, tags, values of attributes. */
function look(bytes) {
  const extent = { least: Infinity, most: -Infinity, count: 0 };
  let odd = 0;
  for (let at = 0; at < bytes.length; at += 1) {
    for (; at < bytes.length && bytes[at] !== LESS; at += 1) {
      if (bytes[at] < SPACE && bytes[at] !== LINE_FEED && bytes[at] !== TAB) odd += 1;
    }
    for (; at < bytes.length && bytes[at] !== GREATER; at += 1) {
      const quote = bytes[at];
      if (quote !== QUOTE && quote !== APOSTROPHE) continue;
      const isPath = bytes[at - 2] === D && bytes[at - 3] === SPACE;
      at += 1;
      if (isPath) at = readNumbers(bytes, at, quote, extent);
      else while (bytes[at] !== quote) at += 1;
    }
  }
  return { ...extent, odd };
}

/** Reads a file, looks at it, and writes it in three parts with their hashes. */
export function lookAtBytes(file, folder) {
  const bytes = readFileSync(file);
  const { count, odd } = look(bytes);
  if (count === 0 || odd > 0) throw new Error(`${count} numbers, ${odd} bytes that XML does not allow`);
  const third = Math.ceil(bytes.length / 3);
  const parts = [0, 1, 2].map((part) => bytes.subarray(part * third, (part + 1) * third));
  const hashes = [bytes, ...parts].map((part) => createHash('sha256').update(part).digest('hex'));
  for (const [part, own] of parts.entries()) writeFileSync(join(folder, `part-${part}`), own);
  writeFileSync(join(folder, 'hashes'), hashes.join('\n'));
}
