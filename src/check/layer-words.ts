// How checks name layers, counts and lengths in a sentence.
import type { Artwork } from '../model/artwork.js';

/** A layer in a sentence. */
export function inLayer(artwork: Artwork, layer: number): string {
  return layer < 0 ? 'outside the layers' : `in layer "${artwork.layers[layer]!.path}"`;
}

/** A number with at most `digits` behind the point and without trailing zeros. */
export function sayNumber(value: number, digits: number = 2): string {
  const scale = [1, 10, 100, 1000][digits]!;
  return String(Math.round(value * scale) / scale + 0);
}
