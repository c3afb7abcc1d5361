// Whether definitions that a style sheet alone refers to came along.
import { checkReference } from './judge-content.js';
import { attributeOf, type WitnessElement } from './read-tree.js';
import { inlineValue, type SheetCase } from './sheet-case.js';
import { matchRules, readStyleBook, type StyleBook, type StyleRule } from './style-rules.js';

const PROPERTIES = ['fill', 'stroke', 'clip-path', 'mask', 'filter'] as const;
const LOCAL_URL = /url\(\s*["']?#([^"')\s]+)["']?\s*\)/;

/** Whether some rule refers to an id at all; most files have none and need no matching. */
function refersByStyle(rule: StyleRule): boolean {
  return PROPERTIES.some((property) => LOCAL_URL.test(rule.declarations.get(property)?.value ?? ''));
}

/** The id a property of an element refers to by rule, where no other declaration could win over it. */
function soleReference(
  book: StyleBook,
  element: WitnessElement,
  rules: readonly StyleRule[],
  property: (typeof PROPERTIES)[number],
): string | null {
  if (book.opaqueProperties.has(property)) return null;
  const setting = rules.filter((rule) => rule.declarations.has(property));
  if (setting.length !== 1) return null;
  if (inlineValue(attributeOf(element, 'style') ?? '', property) !== null) return null;
  return LOCAL_URL.exec(setting[0]!.declarations.get(property)!.value)?.[1] ?? null;
}

/**
 * Holds references made by style rules against the sheet.
 *
 * Only what is beyond doubt is judged: plain selectors, and properties that one rule alone sets for the element.
 *
 * @param seen - Elements of the source already found whole; see `judgeContent`.
 */
export function judgeStyleReferences(sheet: SheetCase, seen: Uint8Array): void {
  const book = readStyleBook(sheet.tree);
  if (!book.rules.some(refersByStyle)) return;
  for (const element of sheet.tree.elements) {
    if (element.kind === '' || sheet.match.counterparts[element.ordinal]! < 0) continue;
    const rules = matchRules(book, element);
    if (rules.length === 0) continue;
    for (const property of PROPERTIES) {
      const id = soleReference(book, element, rules, property);
      if (id !== null) checkReference(sheet, seen, element, id);
    }
  }
}
