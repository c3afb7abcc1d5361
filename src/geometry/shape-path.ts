// Basic shapes as paths.
import type { PathData } from './path-data.js';

const EMPTY: PathData = { ops: new Uint8Array(0), opCount: 0, coords: new Float64Array(0), coordCount: 0, errorAt: -1 };

export function rectPath(_x: number, _y: number, _width: number, _height: number, _rx: number, _ry: number): PathData {
  return EMPTY;
}

export function ellipsePath(_cx: number, _cy: number, _rx: number, _ry: number): PathData {
  return EMPTY;
}

export function linePath(_x1: number, _y1: number, _x2: number, _y2: number): PathData {
  return EMPTY;
}
