// Figures, times and names as text for the page.
import { printNumber } from '../geometry/print-number.js';
import type { Figure } from '../model/run-sheet.js';

/** Text that is safe between tags and in quoted attributes; control characters, which no page may hold, become blanks. */
export function escapeText(text: string): string {
  return text
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, ' ')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');
}

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
    `${SOURCES[from]} ${escapeText(on)} by ${escapeText(by)}${batch === null ? '' : `, batch ${escapeText(batch)}`}`,
  ];
  return `<span class="origin">${words.join('; ')}</span>`;
}
