// A run sheet in a few lines for the terminal.

import { type RunSheet, stepNumber } from '../model/run-sheet.js';
import { sayCount } from '../model/say-count.js';

function say(seconds: number | null): string {
  if (seconds === null) return 'not known';
  return seconds < 120 ? `${Math.round(seconds * 10) / 10} s` : `${Math.round(seconds / 60)} min`;
}

function count(items: readonly string[], one: string, many: string): readonly string[] {
  return items.length === 0 ? [] : [`  ${items.length} ${items.length === 1 ? one : many}`];
}

/** What the run comes to, what is not known, and where the pages are. */
export function printRun(sheet: RunSheet, folder: string, names: readonly string[]): string {
  const { job, machine, material, passes, totals, missing, untested, oldNews, notes } = sheet;
  const lines = [
    `${job.name}: ${sayCount(totals.sheets, 'sheet')} of ${material.name} on ${machine.name}`,
    ...passes.map(
      ({ order, tiesOf, name, tool, time }) =>
        `  ${stepNumber({ order, tiesOf })}  ${name}: ${tool === null ? 'not on this machine' : `${tool.name}, ${say(time.perSheetS)} a sheet, ${say(time.perRunS)} in all`}`,
    ),
    `  pass by pass ${say(totals.passByPassS)}, tool changes per sheet ${say(totals.toolChangesPerSheetS)}`,
    ...count(missing, 'figure is missing', 'figures are missing'),
    ...count(untested, 'figure is an untested starting point', 'figures are untested starting points'),
    ...count(oldNews, 'figure was found on another batch', 'figures were found on another batch'),
    ...notes.map((note) => `  ${note}`),
    `${folder}: ${names.join(', ')}`,
  ];
  return `${lines.join('\n')}\n`;
}
