// Is a start tag of a sheet the one of the source, to the byte, or changed only as it may be?
import { equalBytes } from '../model/platform.js';
import { readAttribute } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';

/** What may differ in one element's start tag. */
export interface Allowance {
  /** Style declarations that may have been appended, or ''. */
  readonly override: string;
  /** New values of width, height and viewBox, and the SVG namespace, on the root. */
  readonly root: boolean;
}

/** Whether an element of the sheet has the same start tag, byte for byte, as one of the source. */
export function sameHead(source: Source, row: number, sheet: Source, sheetRow: number): boolean {
  const a = source.elements;
  const b = sheet.elements;
  return equalBytes(
    source.text.subarray(a.start[row]!, a.headEnd[row]!),
    sheet.text.subarray(b.start[sheetRow]!, b.headEnd[sheetRow]!),
  );
}

/** Attributes of an element by written name, values normalised. */
export function listAttributes(source: Source, row: number): Map<string, string> {
  const { attributeStart, attributes } = source.elements;
  const list = new Map<string, string>();
  for (let a = attributeStart[row]!; a < attributeStart[row + 1]!; a += 1) {
    list.set(attributes.names[attributes.name[a]!]!.qualified, readAttribute(source, a));
  }
  return list;
}

const ROOT_NAMES = new Set(['width', 'height', 'viewBox', 'xmlns']);
/** Attributes that a sheet never carries, whatever they say. */
const NEVER = /^(?:on.*|xml:base|src|srcset|ping|action|formaction|srcdoc|poster|data|code|archive|background|ev:.*)$/i;

/** Whether every part of a shortened CSS text stands in the original, in order: nothing was added but `none` or a word that no property knows. */
function isShortened(shorter: string, original: string): boolean {
  let at = 0;
  for (const part of shorter.split(/none ?|-pinbar-left-out/)) {
    const found = original.indexOf(part, at);
    if (found < 0) return false;
    at = found + part.length;
  }
  return true;
}

/** Whether an attribute may be missing: it ran, loaded or pointed outside. */
function mayBeGone(name: string, value: string): boolean {
  if (NEVER.test(name)) return true;
  return /(?:^|:)href$/.test(name) && !value.trim().startsWith('#');
}

function valueMayDiffer(name: string, before: string, after: string, allowance: Allowance): boolean {
  if (allowance.root && ROOT_NAMES.has(name)) return true;
  if (name === 'style' && allowance.override !== '' && after === `${before};${allowance.override}`) return true;
  if (/(?:^|:)href$/.test(name)) return !before.trim().startsWith('#') && after.startsWith('data:image/');
  return /[(\\]/.test(before) && isShortened(after, before);
}

/**
 * What is wrong with a start tag whose bytes differ.
 *
 * @returns A sentence, or null where every difference is one a sheet may show.
 */
export function judgeHead(
  source: Source,
  row: number,
  sheet: { readonly source: Source; readonly row: number },
  allowance: Allowance,
): string | null {
  const before = listAttributes(source, row);
  const after = listAttributes(sheet.source, sheet.row);
  for (const [name, value] of before) {
    const now = after.get(name);
    if (now === undefined) {
      if (!mayBeGone(name, value)) return `its attribute ${name} is gone`;
    } else if (now !== value && !valueMayDiffer(name, value, now, allowance)) {
      return `its attribute ${name} is "${now.slice(0, 60)}" instead of "${value.slice(0, 60)}"`;
    }
  }
  for (const [name, value] of after) {
    if (before.has(name)) continue;
    const isOverride = name === 'style' && allowance.override !== '' && value === allowance.override;
    const added = isOverride || (allowance.root && ROOT_NAMES.has(name));
    if (!added) return `it has a new attribute ${name}`;
  }
  return null;
}
