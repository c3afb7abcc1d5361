// The exact box of a path.
import { type Box, EMPTY_BOX } from './box.js';
import type { Matrix } from './matrix.js';
import type { PathData } from './path-data.js';

export function pathBox(_path: PathData, _matrix: Matrix): Box {
  return EMPTY_BOX;
}
