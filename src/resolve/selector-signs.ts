// A rough count of what a style sheet asks for, before it is read.

/** What stands before the opening braces of a sheet. */
export interface SelectorSigns {
  /** Commas and braces: no sheet has more selectors. */
  readonly selectors: number;
  /** Signs with which classes, ids, attributes, pseudo-classes and combinators begin. */
  readonly parts: number;
}

const COMMA = 0x2c;
const OPEN = 0x7b;
/** `}` and `;` */
const ENDS: ReadonlySet<number> = new Set([0x7d, 0x3b]);
/** `#`, `&`, `*`, `+`, `.`, `:`, `>`, `[`, `~` and blanks. */
const PART_SIGNS: ReadonlySet<number> = new Set([0x23, 0x26, 0x2a, 0x2b, 0x2e, 0x3a, 0x3e, 0x5b, 0x7e, 0x20, 0x0a]);

/** Counts the signs of selectors; strings and comments are not told apart, so that the count may be too high. */
export function countSelectorSigns(text: string): SelectorSigns {
  let selectors = 0;
  let parts = 0;
  let commas = 0;
  let signs = 0;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === OPEN) {
      selectors += commas + 1;
      parts += signs;
    }
    if (code === OPEN || ENDS.has(code)) {
      commas = 0;
      signs = 0;
    } else if (code === COMMA) commas += 1;
    else if (PART_SIGNS.has(code)) signs += 1;
  }
  return { selectors, parts };
}
