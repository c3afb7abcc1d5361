// Shapes in a sentence, and as data of a finding.
import type { Artwork } from '../model/artwork.js';
import type { Json } from '../model/finding.js';

/** How shapes are called. */
export interface ShapeWords {
  /** `3 shapes (logo, text, frame)`. */
  readonly words: string;
  readonly data: { readonly [key: string]: Json };
}

const MOST_SHAPES = 1000;
const MOST_IDS = 20;
const MOST_SPOKEN = 5;

/** Counts and names shapes, given by their indices. */
export function describeShapes(artwork: Artwork, shapes: readonly number[]): ShapeWords {
  const named = shapes.map((index) => artwork.shapes[index]!.id).filter((id) => id !== '');
  const ids = named.slice(0, MOST_IDS);
  const spoken = ids.slice(0, MOST_SPOKEN).join(', ');
  const dots = spoken !== '' && shapes.length > MOST_SPOKEN ? ', ...' : '';
  const count = shapes.length;
  return {
    words: `${count} shape${count === 1 ? '' : 's'}${spoken === '' ? '' : ` (${spoken}${dots})`}`,
    data: { count, shapes: shapes.slice(0, MOST_SHAPES), ids },
  };
}

/** `a`, `a and b`, `a, b and c`. */
export function joinWords(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
