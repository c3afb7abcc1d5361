// Options of the command line for copies on a sheet, and how their values are read.
import { GRIPPER_SIDE } from '../model/layout.js';
import { Option, reading } from './build-options.js';
import { parsePositive, parseSheet, parseSize } from './parse-value.js';

const SIDES = ['top', 'bottom', 'left', 'right'] as const;

/** A strip along one edge: a length in mm, and the edge behind a colon where it is said. */
export function parseStrip(text: string): { readonly mm: number; readonly side: (typeof SIDES)[number] | null } {
  const [length, word, ...more] = text.split(':');
  const side = SIDES.find((known) => known === word) ?? null;
  if (more.length > 0 || (word !== undefined && side === null))
    throw new Error(`A gripper is a length, or a length and its edge: 12 or 12:left. Edges are ${SIDES.join(', ')}.`);
  return { mm: parseSize(length!), side };
}

/** One or two lengths parted by a comma: across and down, mm. */
export function parseGutter(text: string): readonly [number, number] {
  const parts = text.split(',');
  if (parts.length > 2) throw new Error('A gutter is one length, or two parted by a comma: 4 or 4,6.');
  const across = parseSize(parts[0]!);
  return [across, parts[1] === undefined ? across : parseSize(parts[1])];
}

/** How many copies: `max`, a whole number, or columns by rows. */
export function parseUps(text: string): string | number {
  const plain = text.trim().toLowerCase();
  if (/^(?:max|[1-9]\d{0,3}x[1-9]\d{0,3})$/.test(plain)) return plain;
  if (/^[1-9]\d{0,3}$/.test(plain)) return Number(plain);
  throw new Error('It is max, a number of copies, or columns by rows: max, 8 or 3x2.');
}

/** A turn by quarters, or head to tail. */
export function parseTurn(text: string): 0 | 90 | 180 | 270 | 'head-to-tail' {
  const found = ([0, 90, 180, 270, 'head-to-tail'] as const).find((turn) => String(turn) === text.trim());
  if (found === undefined) throw new Error('It is 0, 90, 180, 270 or head-to-tail.');
  return found;
}

function option<T>(flags: string, words: string, read: (text: string) => T): Option {
  return new Option(flags, words).argParser(reading(read));
}

/** The options, in the order of the help. */
export function sheetOptions(): readonly Option[] {
  return [
    option('--sheet <mmxmm>', 'lay copies out on a sheet, width x height, alike on all passes', parseSheet),
    option(
      '--gripper <mm>',
      `strip of the sheet that the machine holds; 12:left says the edge (default: ${GRIPPER_SIDE})`,
      parseStrip,
    ),
    option('--sheet-margin <mm>', 'strip along the other edges of the sheet that stays free (default: 0)', parseSize),
    option('--gutter <mm>', 'clear distance between blanks; 4,6 across and down (default: 0)', parseGutter),
    option('--ups <what>', 'how many copies: 3x2 (columns by rows), a number, or max (default: max)', parseUps),
    option(
      '--turn <degrees>',
      'turn of the copies clockwise: 0, 90, 180, 270 or head-to-tail (default: 0; with max whatever is best)',
      parseTurn,
    ),
    new Option(
      '--place <where>',
      'copies in the middle of what is free, or from its top left (default: centre)',
    ).choices(['centre', 'origin']),
    option('--scale <factor>', 'size of a copy against the drawing (default: 1)', parsePositive),
    new Option(
      '--copies <how>',
      'each copy written out, or drawn once and referred to: smaller, but not every machine reads it (default: written)',
    ).choices(['written', 'referenced']),
    new Option('--copy-mark', 'a small cross beside each copy, besides the marks of the sheet'),
  ];
}
