// Findings as text a designer can work through: worst first, what, where, what to do.

import { type Finding, type Place, SEVERITIES } from '../model/finding.js';
import type { Fitness } from '../model/job.js';
import { sayCount } from '../model/say-count.js';

/** Where, in words: file, line and column, layer, element and id, as far as known. */
export function describePlace(place: Place): string {
  const parts: string[] = [];
  if (place.file !== undefined) parts.push(place.file);
  if (place.line !== undefined) {
    parts.push(place.column === undefined ? `line ${place.line}` : `line ${place.line}, column ${place.column}`);
  }
  if (place.layerPath !== undefined) parts.push(`layer ${place.layerPath}`);
  if (place.id !== undefined) parts.push(`id ${place.id}`);
  if (place.xMm !== undefined && place.yMm !== undefined) parts.push(`at ${place.xMm}, ${place.yMm} mm`);
  return parts.join(', ');
}

function printFinding(item: Finding): string {
  const place = describePlace(item.place);
  const where = place === '' ? '' : ` (${place})`;
  const remedy = item.remedy === '' ? '' : `\n    -> ${item.remedy}`;
  return `${item.severity} ${item.code}${where}\n    ${item.message.replace(/\n/g, '\n    ')}${remedy}`;
}

/** Findings worst first; notes only where asked for. */
export function printFindings(findings: readonly Finding[], withNotes: boolean): string {
  const shown = SEVERITIES.flatMap((severity) =>
    withNotes || severity !== 'note' ? findings.filter((item) => item.severity === severity) : [],
  );
  return shown.map((item) => `${printFinding(item)}\n`).join('');
}

/** Whether the artwork is fit to run, in words. */
export function sayFitness(outcome: Fitness): string {
  const words: Readonly<Record<Fitness, string>> = {
    fit: 'fit to run',
    'answer-needed': 'an answer is needed',
    unfit: 'not fit to run',
  };
  return words[outcome];
}

/** How many of each severity, in words. */
export function countFindings(findings: readonly Finding[]): string {
  const parts = SEVERITIES.map((severity) => {
    const count = findings.filter((item) => item.severity === severity).length;
    return count === 0 ? '' : sayCount(count, severity);
  });
  return parts.filter((part) => part !== '').join(', ') || 'no findings';
}
