// Findings in German: what each code means and what to do, with what was measured. Their own texts are English.
import type { Finding, FindingCode, Json } from '../model/finding.js';
import { describeFinding, type SpotWords } from '../report/describe-finding.js';
import { GERMAN_CHECKS } from './german-checks.js';
import { GERMAN_DRAWING } from './german-drawing.js';
import { GERMAN_FILES } from './german-files.js';
import { spellNumber } from './texts.js';

/** What it is, and what to do ('' for nothing); a code without words does not compile. */
export const GERMAN_FINDINGS: Readonly<Record<FindingCode, readonly [string, string]>> = {
  ...GERMAN_DRAWING,
  ...GERMAN_CHECKS,
  ...GERMAN_FILES,
};

const SPOT_WORDS: SpotWords = {
  measured: (value) => `gemessen ${value}`,
  allowed: (value) => `erlaubt ${value}`,
  at: (x, y) => `bei ${x} / ${y} mm`,
  layer: (path) => `Ebene ${path}`,
  id: (id) => `id ${id}`,
  line: (line) => `Zeile ${line}`,
  inAll: (count) => `${count} im Ganzen`,
  number: (value) => spellNumber(value, 'de'),
};

function spell(value: Json | undefined): string {
  return typeof value === 'number' ? spellNumber(value, 'de') : '';
}

/** A finding in other words than its own. */
export interface Wording {
  readonly what: string;
  readonly details: string;
  /** '' where there is nothing to do. */
  readonly todo: string;
}

/** What `data` names besides its measures: passes, the rule, a picture, fonts. */
const NAMED: readonly (readonly [key: string, one: string])[] = [
  ['pass', 'Durchgang'],
  ['passes', 'Durchgänge'],
  ['after', 'nach'],
  ['address', 'Bild'],
  ['families', 'Schriften'],
  ['fonts', 'Schriften'],
  ['path', 'Stelle'],
];

function nameNamed({ code, data }: Finding): readonly string[] {
  const { rule } = data;
  const numbered = code === 'classify/rule-unused' && typeof rule === 'number' ? [`Regel ${rule + 1}`] : [];
  const named = NAMED.flatMap(([key, word]) => {
    const value = data[key];
    const texts = (Array.isArray(value) ? (value as readonly Json[]) : [value]).filter(
      (one) => typeof one === 'string',
    );
    return texts.length === 0 ? [] : [`${word} ${texts.join(', ')}`];
  });
  return [...numbered, ...named];
}

/** A finding in German words; values of `data` stand in their places. */
export function sayInGerman(finding: Finding): Wording {
  const { code, data } = finding;
  const [what, todo] = GERMAN_FINDINGS[code];
  const put = (text: string): string => text.replace(/\{(\w+)\}/g, (_, key: string) => spell(data[key]));
  const details = [...nameNamed(finding), describeFinding(finding, SPOT_WORDS)]
    .filter((part) => part !== '')
    .join('; ');
  return { what: put(what), details, todo: put(todo) };
}
