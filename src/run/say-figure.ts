// Figures, times and names as text for the page.
import { printNumber } from '../geometry/print-number.js';
import { escapeXml } from '../model/escape-xml.js';
import type { Figure } from '../model/run-sheet.js';

/** A number with at most some decimals. */
export function sayNumber(value: number, decimals: number = 2): string {
  return printNumber(value, decimals);
}

/** How what is not there is shown. */
export const MISSING = '<span class="missing">missing</span>';

/** Seconds as somebody at a machine says them; a box to fill in where nobody knows. */
export function sayTime(seconds: number | null): string {
  if (seconds === null) return MISSING;
  if (seconds < 120) return `${printNumber(seconds, 1)} s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 120) return `${minutes} min`;
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

const SOURCES: Readonly<Record<Figure['from'], string>> = {
  strip: 'from a strip',
  typed: 'typed',
  fitted: 'fitted to timed runs',
};

/** Where a figure came from, when and by whom. */
export function sayOrigin(figure: Figure<unknown>): string {
  const { from, on, by, batch, untested, oldNews } = figure;
  const words = [
    ...(untested ? ['<b>untested starting point</b>'] : []),
    ...(oldNews && !untested ? ['<b>old news: another batch</b>'] : []),
    `${SOURCES[from]} ${escapeXml(on)} by ${escapeXml(by)}${batch === null ? '' : `, batch ${escapeXml(batch)}`}`,
  ];
  return `<span class="origin">${words.join('; ')}</span>`;
}
