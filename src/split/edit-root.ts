// Changes to the root's start tag that all sheets share.
import type { RootSize } from '../model/sheet.js';
import { findAttribute } from '../source/read-attribute.js';
import { type Source, SVG_NAMESPACE } from '../source/source.js';
import type { Edit } from './edit.js';
import { attributeGap } from './override-style.js';

/** Gives the root a missing namespace and, where the artboard grows or its size is restated, the new size. */
export function editRoot(source: Source, size: RootSize): readonly Edit[] {
  const edits: Edit[] = [];
  const gap = attributeGap(source, 0);
  const { valueStart, valueEnd } = source.elements.attributes;
  let added = source.namespaceMissing ? ` xmlns="${SVG_NAMESPACE}"` : '';
  for (const name of ['width', 'height', 'viewBox'] as const) {
    const value = size[name];
    if (value === null) continue;
    const attribute = findAttribute(source, 0, name);
    if (attribute < 0) added += ` ${name}="${value}"`;
    else edits.push({ start: valueStart[attribute]!, end: valueEnd[attribute]!, replacement: value });
  }
  if (added !== '') edits.push({ start: gap, end: gap, replacement: added });
  return edits;
}
