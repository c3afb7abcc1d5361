// Reads a table of measured marks: name, x, y, or with the places as drawn before them.
import { type Finding, finding } from '../model/finding.js';
import type { PointMm } from '../model/marks.js';
import type { MarkReading } from '../model/register.js';
import { PinbarError } from '../model/trouble.js';

/** A mark of the job by name. */
export type DrawnMarks = ReadonlyMap<string, PointMm>;

/** Most lines that are read. */
const MOST_LINES = 10_000;
const REMEDY =
  'Write one mark a line: its name, x and y in mm, such as "top-left,12.1,11.9"; or name, drawn x, drawn y, measured x, measured y.';

interface Line {
  readonly number: number;
  readonly cells: readonly string[];
}

/** Semicolons and tabs part cells where there are any, since the comma may then be the sign of the decimals. */
function splitLines(text: string): readonly Line[] {
  const mark = text.includes(';') ? ';' : text.includes('\t') ? '\t' : ',';
  return text
    .replace(/^\ufeff/, '')
    .split(/\r\n|\r|\n/)
    .map((line, index) => ({ number: index + 1, cells: line.split(mark).map((cell) => unquote(cell.trim())) }))
    .filter(({ cells }) => cells.some((cell) => cell !== '') && !cells[0]!.startsWith('#'));
}

function unquote(cell: string): string {
  return /^".*"$/.test(cell) ? cell.slice(1, -1).replaceAll('""', '"') : cell;
}

function readNumber(cell: string): number | null {
  const plain = cell.replace(',', '.').replace(/\s*mm$/i, '');
  if (!/^[-+]?(?:\d+\.?\d*|\.\d+)$/.test(plain)) return null;
  const value = Number(plain);
  return Number.isFinite(value) ? value : null;
}

function wrong(line: Line, what: string): Finding {
  return finding('register/marks-unreadable', {
    message: `Line ${line.number} of the marks ("${line.cells.join(', ').slice(0, 80)}"): ${what}.`,
    remedy: REMEDY,
    place: { line: line.number },
  });
}

function readLine(line: Line, drawn: DrawnMarks | null): MarkReading | Finding {
  const [name = '', ...rest] = line.cells;
  const numbers = rest.map(readNumber);
  if (name === '') return wrong(line, 'the mark has no name');
  if (numbers.length !== 2 && numbers.length !== 4)
    return wrong(line, `after the name 2 or 4 numbers are expected, not ${rest.length}`);
  const bad = numbers.indexOf(null);
  if (bad >= 0) return wrong(line, `"${rest[bad]}" is no number in mm`);
  const [x, y, mx, my] = numbers as [number, number, number?, number?];
  if (mx !== undefined && my !== undefined) return { name, drawnMm: [x, y], measuredMm: [mx, my] };
  const place = drawn?.get(name);
  if (place !== undefined) return { name, drawnMm: place, measuredMm: [x, y] };
  return wrong(
    line,
    drawn === null
      ? 'it does not say where the mark is drawn, and no job was named with --job'
      : `the job has no mark "${name}"; it has ${[...drawn.keys()].join(', ')}`,
  );
}

/** A first line without any number is a heading. */
function isHeading({ cells }: Line): boolean {
  return cells.slice(1).every((cell) => readNumber(cell) === null);
}

/** Index of the first mark whose name stood before, or -1. */
function findTwin(readings: readonly MarkReading[]): number {
  const names = readings.map(({ name }) => name);
  return names.findIndex((name, i) => names.indexOf(name) < i);
}

/**
 * Reads measured marks from a table in text: cells parted by commas, semicolons or tabs, one mark a line.
 *
 * @param drawn - Where the job's marks are drawn, for lines that do not say it.
 * @throws PinbarError `register/marks-unreadable` with a finding per faulty line.
 * @unit mm from the sheet's top left, y down
 */
export function readMarks(text: string, drawn: DrawnMarks | null): readonly MarkReading[] {
  const lines = splitLines(text);
  const body = lines.length > 0 && isHeading(lines[0]!) ? lines.slice(1) : lines;
  if (body.length > MOST_LINES) {
    throw new PinbarError('register/marks-unreadable', {
      message: `The table has ${body.length} lines; ${MOST_LINES} marks are allowed.`,
      remedy: REMEDY,
    });
  }
  const read = body.map((line) => readLine(line, drawn));
  const faults = read.filter((item): item is Finding => 'code' in item);
  const readings = read.filter((item): item is MarkReading => !('code' in item));
  const last = faults.at(-1);
  if (last !== undefined) throw new PinbarError(last.code, last, faults.slice(0, -1));
  const twin = findTwin(readings);
  if (twin >= 0) throw new PinbarError('register/marks-unreadable', wrong(body[twin]!, 'its name stands there twice'));
  if (readings.length < 2) {
    throw new PinbarError('register/marks-unreadable', {
      message: `${readings.length === 0 ? 'No mark was' : 'One mark was'} read; at least 2 are needed.`,
      remedy: REMEDY,
    });
  }
  return readings;
}
