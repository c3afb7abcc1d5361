// The exact box of a stroked path.
import { type Box, EMPTY_BOX } from './box.js';
import type { Matrix } from './matrix.js';
import type { PathData } from './path-data.js';

export interface StrokeShape {
  readonly width: number;
  readonly linecap: 'butt' | 'round' | 'square';
  readonly linejoin: 'miter' | 'round' | 'bevel';
  readonly miterlimit: number;
}

export function strokeBox(_path: PathData, _matrix: Matrix, _stroke: StrokeShape): Box {
  return EMPTY_BOX;
}
