// The transform attribute.
import type { Matrix } from './matrix.js';

export function readTransformList(_text: string): Matrix | null {
  return null;
}
