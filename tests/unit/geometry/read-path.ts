// Path data from text, for tests; every path has buffers of its own.
import { createPathReader, type PathData, type PathReader } from '../../../src/geometry/path-data.js';

const LETTERS = ['M', 'L', 'C', 'Q', 'A', 'Z'] as const;
const COUNTS = [2, 2, 6, 4, 7, 0] as const;

/** Reads `d` with a new reader. */
export function readPath(d: string): PathData {
  return readBothWays(d, (reader, bytes, end) => reader.read(bytes, 2, end));
}

export function readPoints(points: string, closed: boolean): PathData {
  return readBothWays(points, (reader, bytes, end) => reader.readPoints(bytes, 2, end, closed));
}

type Read = (reader: PathReader, bytes: Uint8Array, end: number) => PathData;

/** A value is read in place where a quote follows, else from a copy: both must find the same, whatever was read before. */
function readBothWays(value: string, read: Read): PathData {
  const encoder = new TextEncoder();
  const end = encoder.encode(value).length + 2;
  const reader = createPathReader();
  const digits = '7'.repeat(20);
  const texts = [`99${value}"${digits}`, `99${value}7${digits}`, `99${value}'${digits}`, `99${value}"`, `99${value}`];
  read(reader, encoder.encode(`99${'M5 6'.padEnd(value.length, ' ')}"${digits}`), end);
  const [first, ...others] = texts.map((text) => {
    const path = read(reader, encoder.encode(text), end);
    return { ...path, ops: path.ops.slice(), coords: path.coords.slice() };
  });
  for (const other of others) {
    if (printPath(other) !== printPath(first!) || other.errorAt !== first!.errorAt) {
      throw new Error(`read in two ways: ${value}`);
    }
  }
  return first!;
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
