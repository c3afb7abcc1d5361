// How live type is set.
import type { Artwork, Shape } from '../model/artwork.js';
import type { TextFacts } from '../model/drawn-facts.js';
import { invariant } from '../model/trouble.js';
import { readText } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';
import { isResolved } from './resolve.js';
import { isResolvedShape } from './resolved-shape.js';
import { listParts } from './text-anchor.js';

/**
 * Families, smallest size and number of characters of a text; white space does not count.
 *
 * @param artwork - Made from `source` by `resolve`, and the shape is one of its own.
 * @unit user units of the shape
 */
export function shapeType(source: Source, artwork: Artwork, shape: Shape): TextFacts {
  invariant(isResolved(artwork) && isResolvedShape(shape), 'type is asked for that was not resolved here');
  const drawing = artwork.geometry;
  const families = new Set<string>();
  let fontSize = Infinity;
  let characters = 0;
  for (const row of listParts(drawing, shape.element)) {
    const count = [...readText(source, row).replace(/\s/g, '')].length;
    if (count === 0) continue;
    const style = row === shape.element ? shape.setting.style : drawing.styles[row]!;
    families.add(style.fontFamily);
    fontSize = Math.min(fontSize, style.fontSize);
    characters += count;
  }
  return { families: [...families], fontSize: characters === 0 ? 0 : fontSize, characters };
}
