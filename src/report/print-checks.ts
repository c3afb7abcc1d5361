// What the checks found, as a list that a designer works through.

import type { Severity } from '../model/finding.js';
import type { CheckResult } from '../model/job.js';
import { sayCount } from '../model/say-count.js';
import { describeFinding } from './describe-finding.js';
import { listPanels, summariseSolid } from './describe-solid.js';
import { groupFindings, type NumberedFinding } from './group-findings.js';
import { countFindings, sayFitness } from './print-findings.js';

const SECTIONS: Readonly<Record<Severity, string>> = {
  error: 'To be settled before the machine starts',
  warning: 'To be looked at',
  note: 'Good to know',
};

function printItem({ number, finding }: NumberedFinding, width: number): string {
  const pad = ' '.repeat(width + 2);
  const facts = [describeFinding(finding), finding.code].filter((part) => part !== '').join('; ');
  const remedy = finding.remedy === '' ? '' : `${pad}-> ${finding.remedy}\n`;
  const message = finding.message.replace(/\n/g, `\n${pad}`);
  return `${String(number).padStart(width)}  ${message}\n${pad}${facts}\n${remedy}`;
}

function printSolid({ solid }: CheckResult): string {
  if (solid === null) return '';
  const panels = listPanels(solid).map(({ depth, words }) => `${'  '.repeat(depth + 1)}${words}\n`);
  return `\nThe blank: ${summariseSolid(solid)}\n${panels.join('')}`;
}

/** The list: worst first, grouped by what it is about, numbered as in the picture. */
export function printChecks(result: CheckResult): string {
  const { artwork, assignment, findings } = result;
  const groups = groupFindings(findings);
  const width = String(findings.length).length + 2;
  const { width: wide, height: high, mmPerPx } = artwork.artboard;
  const size = `${Number((wide * mmPerPx).toFixed(3))} x ${Number((high * mmPerPx).toFixed(3))} mm`;
  const names = assignment.passes.map((pass) => pass.name).join(', ');
  const passes = `${sayCount(assignment.passes.length, 'pass', 'passes')}${names === '' ? '' : ` (${names})`}`;
  let text = `${result.stem}: ${sayFitness(result.outcome)}\n${size}, ${passes}, ${countFindings(findings)}\n`;
  let section: Severity | null = null;
  for (const group of groups) {
    if (group.severity !== section) text += `\n${SECTIONS[group.severity]}\n`;
    section = group.severity;
    text += `\n  ${group.heading}\n${group.items.map((item) => printItem(item, width)).join('')}`;
  }
  return text + printSolid(result);
}
