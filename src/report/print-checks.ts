// What the checks found, as a list that a designer works through.
import type { Finding, Json, Severity } from '../model/finding.js';
import type { CheckResult } from '../model/job.js';
import { groupFindings, type NumberedFinding } from './group-findings.js';
import { countFindings, describePlace, sayCount, sayFitness } from './print-findings.js';

const SECTIONS: Readonly<Record<Severity, string>> = {
  error: 'To be settled before the machine starts',
  warning: 'To be looked at',
  note: 'Good to know',
};

/** Endings of the keys of `data`, and the units they stand for. */
const UNITS: readonly (readonly [string, string])[] = [
  ['Mm2', 'mm²'],
  ['Mm', 'mm'],
  ['Ppi', 'ppi'],
  ['Pt', 'pt'],
  ['Degrees', '°'],
  ['Percent', '%'],
];

function sayValue(key: string, value: Json): string | null {
  if (typeof value !== 'number') return null;
  const unit = UNITS.find(([ending]) => key.endsWith(ending));
  return `${Math.round(value * 1000) / 1000 + 0}${unit === undefined ? '' : ` ${unit[1]}`}`;
}

/** What was measured and what is allowed, where a finding has one number of each. */
function describeValues({ data }: Finding): readonly string[] {
  const pick = (start: string): string | null => {
    const keys = Object.keys(data).filter((key) => key.startsWith(start));
    return keys.length === 1 ? sayValue(keys[0]!, data[keys[0]!]!) : null;
  };
  const measured = pick('measured');
  const allowed = pick('allowed');
  return [...(measured === null ? [] : [`measured ${measured}`]), ...(allowed === null ? [] : [`allowed ${allowed}`])];
}

function printItem({ number, finding }: NumberedFinding, width: number): string {
  const pad = ' '.repeat(width + 2);
  const { count } = finding.data;
  const places = typeof count === 'number' && count > 1 ? `${count} places` : '';
  const facts = [describeValues(finding).join(', '), describePlace(finding.place), places].filter(
    (part) => part !== '',
  );
  const remedy = finding.remedy === '' ? '' : `${pad}-> ${finding.remedy}\n`;
  const message = finding.message.replace(/\n/g, `\n${pad}`);
  return `${String(number).padStart(width)}  ${message}\n${pad}${[...facts, finding.code].join('; ')}\n${remedy}`;
}

/** The list: worst first, grouped by what it is about, numbered as in the picture. */
export function printChecks(result: CheckResult): string {
  const groups = groupFindings(result.findings);
  const width = String(result.findings.length).length;
  const { width: wide, height: high, mmPerPx } = result.artwork.artboard;
  const size = `${Number((wide * mmPerPx).toFixed(3))} x ${Number((high * mmPerPx).toFixed(3))} mm`;
  const passes = result.assignment.passes.map((pass) => pass.name).join(', ');
  let text = `${result.stem}: ${sayFitness(result.outcome)}\n${size}; ${sayCount(result.assignment.passes.length, 'pass', 'passes')}${passes === '' ? '' : `: ${passes}`}; ${countFindings(result.findings)}\n`;
  let section: Severity | null = null;
  for (const group of groups) {
    if (group.severity !== section) text += `\n${SECTIONS[group.severity]}\n`;
    section = group.severity;
    text += `\n  ${group.heading}\n${group.items.map((item) => printItem(item, width + 2)).join('')}`;
  }
  return text;
}
