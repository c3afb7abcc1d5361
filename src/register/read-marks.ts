// Reads a table of measured marks: name, x, y, or with the places as drawn before them.
import { type Finding, finding } from '../model/finding.js';
import type { PointMm } from '../model/marks.js';
import type { MarkReading } from '../model/register.js';
import { PinbarError } from '../model/trouble.js';

/** A mark of the job by name. */
export type DrawnMarks = ReadonlyMap<string, PointMm>;

/** Most lines that are read. */
const MOST_LINES = 10_000;
/** A job's mark that is said to be drawn farther off than this is another one, or its numbers were parted where they should not be. */
const FAR_MM = 10;
const REMEDY =
  'Write one mark a line: its name, x and y in mm, such as "top-left,12.1,11.9"; or name, drawn x, drawn y, measured x, measured y.';

interface Line {
  readonly number: number;
  readonly cells: readonly string[];
}

/** A cell in quotes may hold what else parts cells; two quotes in it are one. */
const QUOTED = /"(?:[^"]|"")*"/g;

/** Semicolons and tabs part cells where there are any outside of quotes, since the comma may then be the sign of the decimals. */
function findPart(lines: readonly string[]): ';' | '\t' | ',' {
  const bare = lines.map((line) => line.replace(QUOTED, ''));
  return ([';', '\t'] as const).find((part) => bare.some((line) => line.includes(part))) ?? ',';
}

/** Cells of a line; empty ones at its end, which tables are filled up with, are none. */
function splitCells(line: string, part: string): readonly string[] {
  const cells: string[] = [];
  const pattern = new RegExp(` *(?:"((?:[^"]|"")*)" *|([^${part}]*))(?:${part}|$)`, 'gy');
  for (let at = 0; at <= line.length; at = pattern.lastIndex) {
    pattern.lastIndex = at;
    const match = pattern.exec(line)!;
    cells.push((match[1]?.replaceAll('""', '"') ?? match[2]!).trim());
    if (pattern.lastIndex === line.length && !match[0].endsWith(part)) break;
  }
  while (cells.length > 1 && cells.at(-1) === '') cells.pop();
  return cells;
}

/** Lines that say something: no empty ones, and no comments, whatever stands in these. */
function splitLines(table: string): readonly Line[] {
  const lines = table
    .replace(/^\ufeff/, '')
    .split(/\r\n|\r|\n/)
    .map((text, index) => ({ number: index + 1, text }))
    .filter(({ text }) => text.trim() !== '' && !text.trimStart().startsWith('#'));
  const part = findPart(lines.map(({ text }) => text));
  return lines
    .map(({ number, text }) => ({ number, cells: splitCells(text, part) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
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
  const place = drawn?.get(name);
  if (mx !== undefined && my !== undefined) {
    if (place !== undefined && Math.hypot(place[0] - x, place[1] - y) > FAR_MM)
      return wrong(
        line,
        `it says that the mark is drawn at ${x}, ${y}, but the job draws it at ${place[0]}, ${place[1]}; where commas are the sign of the decimals, semicolons must part the cells`,
      );
    return { name, drawnMm: [x, y], measuredMm: [mx, my] };
  }
  if (place !== undefined) return { name, drawnMm: place, measuredMm: [x, y] };
  return wrong(
    line,
    drawn === null
      ? 'it does not say where the mark is drawn, and no job was named with --job'
      : `the job has no mark "${name}"; it has ${[...drawn.keys()].join(', ')}`,
  );
}

/** A first line that names no mark of the job and holds nothing that begins like a number is a heading; what is mistyped is none. */
function isHeading({ cells }: Line, drawn: DrawnMarks | null): boolean {
  return drawn?.has(cells[0]!) !== true && !cells.slice(1).some((cell) => /^[-+]?[.,]?\d/.test(cell));
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
  const body = lines.length > 0 && isHeading(lines[0]!, drawn) ? lines.slice(1) : lines;
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
