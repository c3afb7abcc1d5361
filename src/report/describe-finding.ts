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

function sayValue(key: string, value: Json): string | null {
  if (typeof value !== 'number') return null;
  const unit = UNITS.find(([ending]) => key.endsWith(ending))?.[1] ?? '';
  return `${Math.round(value * 1000) / 1000 + 0}${unit}`;
}

/** The one number whose key begins with a word; null where there is none, or several. */
function pickValue({ data }: Finding, start: string): string | null {
  const keys = Object.keys(data).filter((key) => key.startsWith(start));
  return keys.length === 1 ? sayValue(keys[0]!, data[keys[0]!]!) : null;
}

/** Where, in the order in which a designer looks: on the artboard, in the layers, in the file. */
function describeSpot(place: Place): readonly string[] {
  const { xMm, yMm, layerPath, id, line } = place;
  return [
    ...(xMm === undefined || yMm === undefined ? [] : [`at ${xMm}, ${yMm} mm`]),
    ...(layerPath === undefined ? [] : [`layer ${layerPath}`]),
    ...(id === undefined ? [] : [`id ${id}`]),
    ...(line === undefined ? [] : [`line ${line}`]),
  ];
}

/** Measured and allowed value, place, and in how many places, as far as known. */
export function describeFinding(finding: Finding): string {
  const measured = pickValue(finding, 'measured');
  const allowed = pickValue(finding, 'allowed');
  const { count } = finding.data;
  const values = [
    ...(measured === null ? [] : [`measured ${measured}`]),
    ...(allowed === null ? [] : [`allowed ${allowed}`]),
  ].join(', ');
  const spot = describeSpot(finding.place).join(', ');
  const more = typeof count === 'number' && count > 1 ? `${count} in all` : '';
  return [values, spot, more].filter((part) => part !== '').join('; ');
}
