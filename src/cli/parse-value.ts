// Reads lengths, numbers and limits of the command line; what cannot be read is thrown as a plain Error that says what is allowed.
import { MM_PER_UNIT } from '../model/lengths.js';

const LENGTH = /^([-+]?(?:\d+\.?\d*|\.\d+))(mm|cm|in)?$/;

/** A length in mm; a bare number is mm. */
export function parseLength(text: string): number {
  const match = LENGTH.exec(text.trim());
  if (match === null)
    throw new Error('A length is a number of mm, or a number with mm, cm or in: 3, 3mm, 0.3cm, 0.125in.');
  // 19.7 in are 500.38 mm, not a digit in the last place less.
  return Math.round(Number(match[1]) * MM_PER_UNIT[match[2] ?? 'mm']! * 1e9) / 1e9 + 0;
}

/** A length that is not negative, mm. */
export function parseSize(text: string): number {
  const length = parseLength(text);
  if (length < 0) throw new Error('It cannot be negative.');
  return length;
}

/** One or two lengths parted by a comma: right and down, mm. */
export function parseShift(text: string): readonly [number, number] {
  const parts = text.split(',');
  if (parts.length > 2) throw new Error('A shift is one length, or two parted by a comma: -0.3 or -0.3,1.2.');
  return [parseLength(parts[0]!), parts[1] === undefined ? 0 : parseLength(parts[1])];
}

/** A number. */
export function parseNumber(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) throw new Error('It must be a number.');
  return value;
}

/** A number with or without a unit of length. */
const SIDE = '[-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:mm|cm|in)?';

/** Width and height of a sheet, mm: two lengths with an x between. */
export function parseSheet(text: string): readonly [number, number] {
  const match = new RegExp(`^(${SIDE})\\s*x\\s*(${SIDE})$`).exec(text.trim());
  if (match === null) throw new Error('A sheet is width x height: 700x500, 70cmx50cm or 27.5inx19.7in.');
  return [parseSize(match[1]!), parseSize(match[2]!)];
}

/** A positive number. */
export function parsePositive(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value) || value <= 0) throw new Error('It must be a number above 0.');
  return value;
}

/** Longest time that a timer of Node waits, s: a longer one would end at once. */
const MOST_SECONDS = 2_147_483;

/** A time in seconds. */
export function parseSeconds(text: string): number {
  const value = parsePositive(text);
  if (value > MOST_SECONDS) throw new Error(`It must be at most ${MOST_SECONDS} seconds, which is 24 days.`);
  return value;
}

/** A whole number above 0. */
export function parseCount(text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1) throw new Error('It must be a whole number above 0.');
  return value;
}

/** A pass and one or two lengths, mm: `cut=10x1`, `cut=0.5`. */
export interface PassLengths {
  readonly pass: string;
  readonly lengthsMm: readonly number[];
}

/** Reads a pass and as many lengths as wanted, parted by an x. */
export function parsePassLengths(text: string, count: 1 | 2): PassLengths {
  const at = text.lastIndexOf('=');
  const parts = text.slice(at + 1).split(/x/i);
  if (at < 1 || parts.length !== count) {
    throw new Error(
      count === 2
        ? 'It is a pass, then the lengths of a cut and of a tie: perforate=6x1.'
        : 'It is a pass, then the length of a tie: cut=0.5.',
    );
  }
  return { pass: text.slice(0, at), lengthsMm: parts.map(parseSize) };
}

/** Names of the limits that `--limit` takes. */
export const LIMITS: readonly string[] = [
  'bytes',
  'unpackedBytes',
  'depth',
  'elements',
  'attributesPerElement',
  'entities',
  'entityBytes',
  'entityTotalBytes',
  'references',
  'selectors',
];

/** `name=number`, gathered over several uses of the option. */
export function gatherLimits(text: string, before: Readonly<Record<string, number>>): Readonly<Record<string, number>> {
  const [name, value] = text.split('=');
  if (name === undefined || !LIMITS.includes(name)) {
    throw new Error(`A limit is NAME=NUMBER; the names are ${LIMITS.join(', ')}.`);
  }
  const number = Number(value);
  if (!Number.isInteger(number) || number < 1) throw new Error(`${name} must be a whole number above 0.`);
  return { ...before, [name]: number };
}

/** Gathers an option that may be given more than once. */
export function gather(text: string, before: readonly string[]): readonly string[] {
  return [...before, text];
}

/** Reads `HOST:PORT`, or a port alone, which is that of this machine only. Throws a plain Error that says what is allowed. */
export function parseListen(text: string): { readonly host: string; readonly port: number } {
  const match = /^(?:(?:\[([0-9a-f:]+)\]|([^:]+)):)?(\d{1,5})$/i.exec(text);
  const port = Number(match?.[3]);
  if (match === null || port > 65_535) throw new Error('It is HOST:PORT, such as 127.0.0.1:9464.');
  return { host: match[1] ?? match[2] ?? '127.0.0.1', port };
}
