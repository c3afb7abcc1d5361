// Arc length of a path.
import type { Matrix } from './matrix.js';
import type { PathData } from './path-data.js';

export function pathLength(_path: PathData, _matrix: Matrix): number {
  return 0;
}
