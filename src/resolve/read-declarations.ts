// Declarations checked for values that can be read.
import { type Finding, finding, type Place } from '../model/finding.js';
import { placeOf } from '../source/locate.js';
import type { Source } from '../source/source.js';
import type { RankedLonghand } from './build-style.js';
import { computeText, standsAlone, type ValueKind, valueKind } from './compute-text.js';
import { hasVariable } from './custom-properties.js';
import { type Declaration, expandDeclaration, isWideKeyword, type Longhand } from './expand-declaration.js';
import type { PropertyName } from './style-properties.js';
import { readStyleAttribute, stripComments } from './style-sheets.js';

/** Reads declarations, drops those without a readable value and says so once per property and value. */
export interface DeclarationReader {
  readonly findings: readonly Finding[];
  /** Adds a finding about a sheet, unless there are enough. */
  addFinding(make: () => Finding): void;
  /** Declarations of a rule. */
  readRule(declarations: readonly Declaration[], place: () => Place): readonly RankedLonghand[];
  /** Declarations of a style attribute. */
  readStyle(text: string, row: number): readonly RankedLonghand[];
  /** A presentation attribute, or null where it says nothing. */
  readPresentation(name: PropertyName, text: string, row: number): RankedLonghand | null;
}

/** Longest value that a message shows. */
const SHOWN = 60;
const ANY_SIZE = 16;
/** Most declarations that are kept to be used again. */
const MOST_KEPT = 20_000;
/** Most findings about values of one file; the rest would say the same. */
const MOST_FINDINGS = 100;

/** A reader that gathers findings about one source. */
export function createDeclarationReader(source: Source): DeclarationReader {
  const findings: Finding[] = [];
  const said = new Set<string>();
  const keptAttributes = new Map<string, RankedLonghand | null>();
  const keptLonghands = new Map<string, RankedLonghand | null>();

  function sayOnce(key: string, make: () => Finding): void {
    if (said.has(key) || said.size >= MOST_FINDINGS) return;
    said.add(key);
    findings.push(make());
  }

  function check(longhand: Longhand, isAttribute: boolean, place: () => Place): RankedLonghand | null {
    const kept = isAttribute ? keptAttributes : keptLonghands;
    const key = `${longhand.name}:${longhand.text}`;
    const known = longhand.important ? undefined : kept.get(key);
    if (known !== undefined) return known;
    const ranked = rankLonghand(longhand, isAttribute);
    if (ranked === null) sayOnce(key, () => makeFinding(longhand.name as PropertyName, longhand.text, place()));
    if (kept.size < MOST_KEPT && !longhand.important) kept.set(key, ranked);
    return ranked;
  }

  const readAll = (
    declarations: readonly Declaration[],
    place: () => Place,
    isBare: (name: string) => boolean,
  ): readonly RankedLonghand[] =>
    declarations
      .flatMap(expandDeclaration)
      .map((longhand) => check(longhand, isBare(longhand.name), place))
      .filter((longhand) => longhand !== null);

  return {
    findings,
    addFinding(make) {
      if (findings.length < 2 * MOST_FINDINGS) findings.push(make());
    },
    readRule: (declarations, place) => readAll(declarations, place, () => false),
    readStyle(text, row) {
      const { declarations, unreadable } = readStyleAttribute(text);
      for (const part of unreadable) {
        sayOnce(`style:${part}`, () => makeStyleFinding(part, placeOf(source, row)));
      }
      // Sizes of type without a unit are common in style attributes, and browsers take them there.
      return readAll(
        declarations,
        () => placeOf(source, row),
        (name) => name === 'font-size',
      );
    },
    readPresentation(name, text, row) {
      const value = stripComments(text);
      // An empty attribute says nothing in browsers either.
      if (value === '') return null;
      return check({ name, text: value, important: false }, true, () => placeOf(source, row));
    },
  };
}

function makeStyleFinding(part: string, place: Place): Finding {
  return finding('resolve/style-unreadable', {
    message: `Part of a style attribute cannot be read and is not applied: "${part}".`,
    remedy: 'Write the style as "property: value", with a semicolon between two of them.',
    place,
    data: { text: part },
  });
}

/** A value with the letters that are spelled by their number written as such: a name is the same either way (CSS Syntax 3, 4.3.7). */
function decodeLetters(text: string): string {
  if (!text.includes('\\')) return text;
  return text.replace(/\\0{0,4}([46][1-9a-f]|[57][0-9a])(?:[ \t\n]|(?![0-9a-f]))/gi, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
}

/** The longhand with its value settled as far as it can be; null where the value cannot be read. */
function rankLonghand(longhand: Longhand, isAttribute: boolean): RankedLonghand | null {
  const { name, important } = longhand;
  const text = decodeLetters(longhand.text);
  const isLater = name.startsWith('--') || hasVariable(text) || isWideKeyword(text);
  if (isLater || (name === 'color' && text.toLowerCase() === 'currentcolor')) {
    return { name, text, important, isAttribute, settled: null };
  }
  const context = { fontSize: ANY_SIZE, rootFontSize: ANY_SIZE, isAttribute };
  const computed = computeText(name as PropertyName, text, context);
  if (computed === null) return null;
  return { name, text, important, isAttribute, settled: standsAlone(text) ? computed : null };
}

const EXPECTED: Readonly<Record<ValueKind, readonly [Finding['code'], string, string]>> = {
  colour: [
    'resolve/colour-unknown',
    'is no colour that can be read',
    'Write a colour such as #e5007d, rgb(229, 0, 125) or none.',
  ],
  length: [
    'resolve/length-invalid',
    'is no length or number that can be read',
    'Write a number with a unit such as 0.25mm or 2px; in a style sheet only stroke lengths may go without a unit.',
  ],
  word: ['resolve/style-unreadable', 'is not known', 'Write one of the words that SVG knows for this property.'],
};

function makeFinding(property: PropertyName, text: string, place: Place): Finding {
  const [code, what, remedy] = EXPECTED[valueKind(property)];
  const shown = text.length <= SHOWN ? text : `${text.slice(0, SHOWN - 3)}...`;
  return finding(code, {
    message: `The value "${shown}" of ${property} ${what}; it is not applied.`,
    remedy,
    place,
    data: { property, value: shown },
  });
}
