// What was measured, what is allowed, and where: one line under a finding, in list and picture alike.
import type { Finding, Json, Place } from '../model/finding.js';

/** Endings of the keys of `data`, and the units they stand for. */
const UNITS: readonly (readonly [string, string])[] = [
  ['Mm2', ' mm²'],
  ['Mm', ' mm'],
  ['Ppi', ' ppi'],
  ['Pt', ' pt'],
  ['Degrees', '°'],
  ['Percent', ' %'],
];

/** The words of the line, for another language. */
export interface SpotWords {
  readonly measured: (value: string) => string;
  readonly allowed: (value: string) => string;
  /** mm from the artboard's top left. */
  readonly at: (x: string, y: string) => string;
  readonly layer: (path: string) => string;
  readonly id: (id: string) => string;
  readonly line: (line: number) => string;
  readonly inAll: (count: number) => string;
  readonly number: (value: number) => string;
}

const ENGLISH: SpotWords = {
  measured: (value) => `measured ${value}`,
  allowed: (value) => `allowed ${value}`,
  at: (x, y) => `at ${x}, ${y} mm`,
  layer: (path) => `layer ${path}`,
  id: (id) => `id ${id}`,
  line: (line) => `line ${line}`,
  inAll: (count) => `${count} in all`,
  number: String,
};

function sayValue(key: string, value: Json, words: SpotWords): string | null {
  if (typeof value !== 'number') return null;
  const unit = UNITS.find(([ending]) => key.endsWith(ending))?.[1] ?? '';
  return `${words.number(Math.round(value * 1000) / 1000 + 0)}${unit}`;
}

/** The one number whose key begins with a word; null where there is none, or several. */
function pickValue({ data }: Finding, start: string, words: SpotWords): string | null {
  const keys = Object.keys(data).filter((key) => key.startsWith(start));
  return keys.length === 1 ? sayValue(keys[0]!, data[keys[0]!]!, words) : null;
}

/** Where, in the order in which a designer looks: on the artboard, in the layers, in the file. */
function describeSpot(place: Place, words: SpotWords): readonly string[] {
  const { xMm, yMm, layerPath, id, line } = place;
  return [
    ...(xMm === undefined || yMm === undefined ? [] : [words.at(words.number(xMm), words.number(yMm))]),
    ...(layerPath === undefined ? [] : [words.layer(layerPath)]),
    ...(id === undefined ? [] : [words.id(id)]),
    ...(line === undefined ? [] : [words.line(line)]),
  ];
}

/** Measured and allowed value, place, and in how many places, as far as known. */
export function describeFinding(finding: Finding, words: SpotWords = ENGLISH): string {
  const measured = pickValue(finding, 'measured', words);
  const allowed = pickValue(finding, 'allowed', words);
  const { count } = finding.data;
  const values = [
    ...(measured === null ? [] : [words.measured(measured)]),
    ...(allowed === null ? [] : [words.allowed(allowed)]),
  ].join(', ');
  const spot = describeSpot(finding.place, words).join(', ');
  const more = typeof count === 'number' && count > 1 ? words.inAll(count) : '';
  return [values, spot, more].filter((part) => part !== '').join('; ');
}
