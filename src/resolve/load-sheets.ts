// The style sheets of a file, made ready for matching.
import { finding, type Place } from '../model/finding.js';
import { PinbarError } from '../model/trouble.js';
import { locate, placeOf } from '../source/locate.js';
import { readAttributeValue, readText } from '../source/read-attribute.js';
import { type Limits, type Source, SVG_NAMESPACE } from '../source/source.js';
import type { RankedLonghand } from './build-style.js';
import { answerMedia } from './media-query.js';
import type { DeclarationReader } from './read-declarations.js';
import { createRuleIndex, type RuleIndex } from './rule-index.js';
import { countSelectorSigns } from './selector-signs.js';
import { readStyleSheet, type SheetTrouble } from './style-sheets.js';

/** Rules that apply, and what is known of all. */
export interface LoadedSheets {
  /** Null where no rule applies. */
  readonly rules: RuleIndex<readonly RankedLonghand[]> | null;
  readonly structural: boolean;
}

const XHTML_NAMESPACE = 'http://www.w3.org/1999/xhtml';

const REMEDIES: Readonly<Record<SheetTrouble['why'], readonly [string, string]>> = {
  unreadable: ['cannot be read and is not applied', 'Correct the style sheet there, or take the part out.'],
  'media-unknown': [
    'depends on the device and is not applied; only @media print, screen and all are told apart',
    'Write rules for print under @media print, or without a condition.',
  ],
  'at-rule-unknown': ['is not applied', 'Write its rules without the condition around them.'],
  nested: ['stands inside another rule and is not applied', 'Write each rule on its own.'],
};

/**
 * Reads all style elements of a file, as for print. Findings go to `reader`.
 *
 * @throws PinbarError `limit/selectors` when they hold more selectors than allowed.
 */
export function loadSheets(source: Source, limits: Limits, reader: DeclarationReader): LoadedSheets {
  let index: RuleIndex<readonly RankedLonghand[]> | null = null;
  let structural = false;
  let count = 0;
  for (const row of findStyleRows(source)) {
    if (!isCssType(readAttributeValue(source, row, 'type'))) continue;
    const text = readText(source, row);
    if (!isReadable(text, limits)) throw tooManySelectors(source, row, limits.selectors);
    const sheet = readStyleSheet(text);
    structural ||= sheet.structural;
    count += sheet.selectorCount;
    if (count > limits.selectors) throw tooManySelectors(source, row, limits.selectors);
    if (!mediaHolds(source, row, reader)) continue;
    for (const trouble of sheet.troubles) sayTrouble(source, row, trouble, reader);
    for (const rule of sheet.rules) {
      index ??= createRuleIndex(source);
      const place = (): Place => placeInSheet(source, row, rule.line);
      const unknown = index.addRule(rule.selectors, reader.readRule(rule.declarations, place));
      if (unknown !== null) sayUnknown(unknown, place, reader);
    }
  }
  return { rules: index, structural };
}

function findStyleRows(source: Source): readonly number[] {
  const { count, name, names } = source.elements;
  const isStyle = names.map(
    ({ local, namespace }) => local === 'style' && (namespace === SVG_NAMESPACE || namespace === XHTML_NAMESPACE),
  );
  const rows: number[] = [];
  if (isStyle.includes(true)) for (let row = 0; row < count; row++) if (isStyle[name[row]!]) rows.push(row);
  return rows;
}

/** Signs between and in selectors of one sheet that are looked at for every selector that is allowed. */
const SIGNS_PER_SELECTOR = 20;
const SIGNS_FOR_ALL = 1_000;

/** Whether a sheet cannot hold far more selectors than are allowed: reading one costs a hundred times as much as counting signs. */
function isReadable(text: string, limits: Limits): boolean {
  const signs = countSelectorSigns(text);
  return (
    signs.selectors <= 2 * limits.selectors + SIGNS_FOR_ALL &&
    signs.parts <= SIGNS_PER_SELECTOR * (limits.selectors + SIGNS_FOR_ALL)
  );
}

function isCssType(type: string | null): boolean {
  return type === null || type === '' || type.toLowerCase() === 'text/css';
}

function mediaHolds(source: Source, row: number, reader: DeclarationReader): boolean {
  const media = readAttributeValue(source, row, 'media') ?? '';
  const answer = answerMedia(media);
  if (answer === 'unknown') {
    const trouble: SheetTrouble = { text: `media="${media}"`, why: 'media-unknown', line: 1 };
    sayTrouble(source, row, trouble, reader);
  }
  return answer === 'holds';
}

function sayTrouble(source: Source, row: number, trouble: SheetTrouble, reader: DeclarationReader): void {
  const [what, remedy] = REMEDIES[trouble.why];
  reader.addFinding(() =>
    finding('resolve/style-unreadable', {
      message: `Part of a style sheet ${what}: "${trouble.text}".`,
      remedy,
      place: placeInSheet(source, row, trouble.line),
      data: { text: trouble.text, why: trouble.why },
    }),
  );
}

function sayUnknown(selector: string, place: () => Place, reader: DeclarationReader): void {
  const shown = selector.length <= 80 ? selector : `${selector.slice(0, 77)}...`;
  reader.addFinding(() =>
    finding('resolve/selector-unknown', {
      message: `The selector "${shown}" is not known; its rule is not applied.`,
      remedy: 'Select the elements by class, id or element name, and see whether the drawing still looks the same.',
      place: place(),
      data: { selector: shown },
    }),
  );
}

/** Lines of the sheet count from the line on which its text begins. */
function placeInSheet(source: Source, row: number, line: number): Place {
  const place = placeOf(source, row);
  if (line === 1) return place;
  const { column: _, ...rest } = place;
  return { ...rest, line: locate(source, source.elements.headEnd[row]!).line + line - 1 };
}

function tooManySelectors(source: Source, row: number, allowed: number): PinbarError {
  return new PinbarError('limit/selectors', {
    message: `The style sheets hold more than ${allowed} selectors, which is more than is allowed.`,
    remedy: 'Take unused rules out of the style sheets, or raise the limit "selectors".',
    place: placeOf(source, row),
    data: { allowed },
  });
}
