// Path data from text, for tests; every path has buffers of its own.
import { createPathReader, type PathData } from '../../../src/geometry/path-data.js';

const LETTERS = ['M', 'L', 'C', 'Q', 'A', 'Z'] as const;
const COUNTS = [2, 2, 6, 4, 7, 0] as const;

/** Reads `d`, placed among digits that must not be read. */
export function readPath(d: string): PathData {
  const bytes = new TextEncoder().encode(`99${d}77`);
  return createPathReader().read(bytes, 2, bytes.length - 2);
}

export function readPoints(points: string, closed: boolean): PathData {
  const bytes = new TextEncoder().encode(`99${points}77`);
  return createPathReader().readPoints(bytes, 2, bytes.length - 2, closed);
}

/** The segments as a letter and numbers each. */
export function listSegments(path: PathData): readonly (readonly (string | number)[])[] {
  let at = 0;
  return Array.from(path.ops.subarray(0, path.opCount), (op) => {
    const from = at;
    at += COUNTS[op]!;
    return [LETTERS[op]!, ...path.coords.subarray(from, at)];
  });
}

/** In one line: `M 1 2 L 3 4`. */
export function printPath(path: PathData): string {
  return listSegments(path).flat().join(' ');
}
