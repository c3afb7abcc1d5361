// Computed styles of small documents, by id.

import type { Cascade } from '../../../src/resolve/cascade.js';
import { createCascade } from '../../../src/resolve/cascade.js';
import type { Style } from '../../../src/resolve/style.js';
import { readAttributeValue } from '../../../src/source/read-attribute.js';
import { readSource } from '../../../src/source/read-source.js';
import { DEFAULT_LIMITS, type Limits } from '../../../src/source/source.js';

/** Styles by id, with what else the cascade knows. */
export interface StyledDocument {
  readonly cascade: Cascade;
  readonly styles: ReadonlyMap<string, Style>;
  /** The style of an id. */
  style(id: string): Style;
  /** Codes of the findings, in order. */
  readonly codes: readonly string[];
}

/** Computes the style of every element, each inheriting from its parent. */
export function styleDocument(inside: string, limits: Partial<Limits> = {}): StyledDocument {
  const head = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" id="root">';
  const text = inside.startsWith('<svg') ? inside : `${head}${inside}</svg>`;
  const source = readSource(new TextEncoder().encode(text));
  const cascade = createCascade(source, { ...DEFAULT_LIMITS, ...limits });
  const byRow: Style[] = [];
  const styles = new Map<string, Style>();
  for (let row = 0; row < source.elements.count; row++) {
    const parent = source.elements.parent[row]!;
    byRow[row] = cascade.computeStyle(row, parent < 0 ? null : byRow[parent]!);
    const id = readAttributeValue(source, row, 'id');
    if (id !== null) styles.set(id, byRow[row]);
  }
  return {
    cascade,
    styles,
    style(id) {
      const style = styles.get(id);
      if (style === undefined) throw new Error(`no element with the id ${id}`);
      return style;
    },
    codes: cascade.findings.map((found) => found.code),
  };
}

/** The key of a style's fill or stroke colour, or what else it is. */
export function fillOf(style: Style): string {
  return style.paint.fill.kind === 'colour' ? style.paint.fill.colour.key : style.paint.fill.kind;
}
