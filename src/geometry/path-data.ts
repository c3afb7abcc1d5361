// Path data as numbers.

import { PADDING, scanNumber, skipSeparator, skipSpace } from './number-scan.js';
import { countArguments, LETTER } from './path-letters.js';

/** A segment with absolute coordinates. */
export type PathOp = 0 | 1 | 2 | 3 | 4 | 5;

/** Coordinates: x, y. */
export const MOVE = 0;
/** Coordinates: x, y. */
export const LINE = 1;
/** Coordinates: x1, y1, x2, y2, x, y. */
export const CUBIC = 2;
/** Coordinates: x1, y1, x, y. */
export const QUADRATIC = 3;
/** Coordinates: rx, ry (neither negative), rotation in degrees, large-arc 0 or 1, sweep 0 or 1, x, y. */
export const ARC = 4;
/** No coordinates. The next segment is a MOVE, if there is one. */
export const CLOSE = 5;

/** A path as absolute segments. */
export interface PathData {
  /** A `PathOp` each; only the first `opCount` count. */
  readonly ops: Uint8Array;
  readonly opCount: number;
  /** Coordinates of all segments, one after the other; only the first `coordCount` count. */
  readonly coords: Float64Array;
  readonly coordCount: number;
  /** Byte offset within the value where the error is, or -1. */
  readonly errorAt: number;
}

/** Reads path data; its buffers are reused, so a path lives until the next call. */
export interface PathReader {
  /**
   * Reads the value of a `d` attribute.
   *
   * @throws Never. A broken path is kept up to the broken segment, and `errorAt` says where the trouble is.
   * @accuracy Each number equals `Number(text)` to the bit; relative ones are added once to the current point.
   * @source SVG 2, sections 9.3.9 (grammar) and 9.5.4 (errors)
   */
  read(bytes: Uint8Array, start: number, end: number): PathData;
  /**
   * Reads the value of a `points` attribute; `closed` for a polygon.
   *
   * @throws Never. A last odd coordinate is dropped, and `errorAt` says so.
   * @source SVG 2, sections 10.6 and 10.7
   */
  readPoints(bytes: Uint8Array, start: number, end: number, closed: boolean): PathData;
}

interface PathStore {
  ops: Uint8Array;
  opCount: number;
  coords: Float64Array;
  coordCount: number;
  errorAt: number;
  /** Start of the current subpath: x, y. */
  readonly start: Float64Array;
  /** What is read: the caller's bytes, or a copy of the value. */
  bytes: Uint8Array;
  view: DataView;
}

const COMMA = 0x2c;

/**
 * A reader with buffers of its own.
 *
 * @throws Never.
 */
export function createPathReader(): PathReader {
  const bytes = new Uint8Array(PADDING);
  const store: PathStore = {
    ops: new Uint8Array(256),
    opCount: 0,
    coords: new Float64Array(1024),
    coordCount: 0,
    errorAt: -1,
    start: new Float64Array(2),
    bytes,
    view: new DataView(bytes.buffer),
  };
  return {
    read(source, start, end) {
      const from = open(store, source, start, end);
      const at = readCommands(store, from, from + end - start);
      if (at < 0) store.errorAt = ~at - from;
      return store;
    },
    readPoints(source, start, end, closed) {
      const from = open(store, source, start, end);
      const past = from + end - start;
      let at = skipSpace(store.bytes, from);
      if (at < past) at = readSegments(store, at, past, LETTER.m);
      if (at < 0) store.errorAt = ~at - from;
      else if (at < past) store.errorAt = at - from;
      if (closed && store.opCount > 0) store.ops[store.opCount++] = CLOSE;
      return store;
    },
  };
}

/** Empties the store and makes it read a text; returns where that starts. */
function open(store: PathStore, source: Uint8Array, start: number, end: number): number {
  store.opCount = 0;
  store.coordCount = 0;
  store.errorAt = -1;
  // An attribute in a file is followed by its quote and more: read in place.
  if (end + PADDING <= source.length && (source[end] === 0x22 || source[end] === 0x27)) {
    if (store.bytes !== source) use(store, source);
    return start;
  }
  const copy = new Uint8Array(end - start + PADDING);
  copy.set(source.subarray(start, end));
  use(store, copy);
  return 0;
}

function use(store: PathStore, bytes: Uint8Array): void {
  store.bytes = bytes;
  store.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/** Returns the end, or `~offset` of an error. */
function readCommands(store: PathStore, start: number, end: number): number {
  const { bytes } = store;
  let at = skipSpace(bytes, start);
  if (isNone(bytes, at, end)) return end;
  while (at < end) {
    const command = bytes[at]!;
    if (store.opCount === 0 && (command | 0x20) !== 0x6d) return ~at;
    if ((command | 0x20) === 0x7a) {
      makeRoom(store);
      // Closing what is closed draws nothing.
      if (store.ops[store.opCount - 1] !== CLOSE) store.ops[store.opCount++] = CLOSE;
      at = skipSpace(bytes, at + 1);
      continue;
    }
    if (countArguments(command) === 0) return ~at;
    at = readSegments(store, skipSpace(bytes, at + 1), end, command);
    if (at < 0) return at;
  }
  return at;
}

function isNone(bytes: Uint8Array, at: number, end: number): boolean {
  if (end - at < 4 || bytes[at] !== 0x6e) return false;
  if (bytes[at + 1] !== 0x6f || bytes[at + 2] !== 0x6e || bytes[at + 3] !== 0x65) return false;
  return skipSpace(bytes, at + 4) === end;
}

/** Reads the segments of one command, from its first number; returns the offset past them or `~offset` of an error. */
function readSegments(store: PathStore, start: number, end: number, letter: number): number {
  const { bytes } = store;
  const count = countArguments(letter);
  let command = letter;
  let at = start;
  for (;;) {
    const segmentStart = at;
    makeRoom(store);
    if ((command & ~0x20) !== LETTER.m) beginSubpath(store);
    at = count === 7 ? scanArc(store, at) : scanNumbers(store, at, count);
    if (at < 0) return at;
    if (!addSegment(store, command, count)) return ~segmentStart;
    if ((command & ~0x20) === LETTER.m) command = LETTER.l | (command & 0x20);
    at = skipSpace(bytes, at);
    if (at >= end) return at;
    const byte = bytes[at]!;
    if (byte === COMMA) at = skipSpace(bytes, at + 1);
    else if (byte > 0x39 || byte < 0x2b) return at;
  }
}

function scanNumbers(store: PathStore, start: number, count: number): number {
  const { bytes, coords, coordCount: base } = store;
  const last = base + count - 1;
  let next = start;
  for (let index = base; ; index++) {
    const at = scanNumber(store, next, coords, index);
    if (at < 0 || index === last) return at;
    next = skipSeparator(bytes, at);
  }
}

function scanArc(store: PathStore, start: number): number {
  const { bytes, coords, coordCount: base } = store;
  let at = scanNumbers(store, start, 3);
  for (let index = base + 3; index < base + 5 && at >= 0; index++) {
    at = skipSeparator(bytes, at);
    const flag = bytes[at]! - 0x30;
    if (flag !== 0 && flag !== 1) return ~at;
    coords[index] = flag;
    at++;
  }
  for (let index = base + 5; index < base + 7 && at >= 0; index++) {
    at = scanNumber(store, skipSeparator(bytes, at), coords, index);
  }
  return at;
}

/** Makes an absolute segment of the numbers past `coordCount`; false where a coordinate is not finite. */
function addSegment(store: PathStore, command: number, count: number): boolean {
  const upper = command & ~0x20;
  if (upper === command && (upper === LETTER.l || upper === LETTER.c || upper === LETTER.q)) {
    store.ops[store.opCount++] = count === 2 ? LINE : count === 6 ? CUBIC : QUADRATIC;
    store.coordCount += count;
    return true;
  }
  const { coords, coordCount: base } = store;
  const afterClose = store.opCount > 0 && store.ops[store.opCount - 1] === CLOSE;
  const x = afterClose ? store.start[0]! : base > 0 ? coords[base - 2]! : 0;
  const y = afterClose ? store.start[1]! : base > 0 ? coords[base - 1]! : 0;
  if (upper === LETTER.v) {
    coords[base + 1] = coords[base]!;
    coords[base] = upper === command ? x : 0;
  } else if (upper === LETTER.h) {
    coords[base + 1] = upper === command ? y : 0;
  }
  const pairs = upper === LETTER.h || upper === LETTER.v ? 2 : count;
  if (upper !== command && !makeAbsolute(coords, upper === LETTER.a ? base + 5 : base, base + pairs, x, y))
    return false;
  return keepSegment(store, upper, x, y);
}

/** Adds the current point to relative coordinates; false where the sum is not finite. */
function makeAbsolute(coords: Float64Array, from: number, to: number, x: number, y: number): boolean {
  let check = 0;
  for (let at = from; at < to; at += 2) {
    coords[at] = coords[at]! + x;
    coords[at + 1] = coords[at + 1]! + y;
    check += coords[at]! - coords[at]! + (coords[at + 1]! - coords[at + 1]!);
  }
  return check === 0;
}

/** Takes absolute numbers past `coordCount` in, with the control points that S and T leave out; false where these overflow. */
function keepSegment(store: PathStore, upper: number, x: number, y: number): boolean {
  const { coords, ops, opCount, coordCount: base } = store;
  const before = opCount > 0 ? ops[opCount - 1]! : MOVE;
  switch (upper) {
    case LETTER.m:
      store.start[0] = coords[base]!;
      store.start[1] = coords[base + 1]!;
      return push(store, MOVE, 2);
    case LETTER.c:
      return push(store, CUBIC, 6);
    case LETTER.q:
      return push(store, QUADRATIC, 4);
    case LETTER.s:
      coords.copyWithin(base + 2, base, base + 4);
      return reflect(coords, base, before === CUBIC, x, y) && push(store, CUBIC, 6);
    case LETTER.t:
      coords.copyWithin(base + 2, base, base + 2);
      return reflect(coords, base, before === QUADRATIC, x, y) && push(store, QUADRATIC, 4);
    case LETTER.a:
      coords[base] = Math.abs(coords[base]!);
      coords[base + 1] = Math.abs(coords[base + 1]!);
      return push(store, ARC, 7);
    default:
      return push(store, LINE, 2);
  }
}

function push(store: PathStore, op: PathOp, count: number): true {
  store.ops[store.opCount++] = op;
  store.coordCount += count;
  return true;
}

/** Writes the mirror image of the last control point to `base`, or the current point; false where it is not finite. */
function reflect(coords: Float64Array, base: number, mirrored: boolean, x: number, y: number): boolean {
  coords[base] = mirrored ? 2 * x - coords[base - 4]! : x;
  coords[base + 1] = mirrored ? 2 * y - coords[base - 3]! : y;
  return Number.isFinite(coords[base]!) && Number.isFinite(coords[base + 1]!);
}

/** After a CLOSE the next subpath starts where the last one did. */
function beginSubpath(store: PathStore): void {
  if (store.opCount === 0 || store.ops[store.opCount - 1] !== CLOSE) return;
  store.coords[store.coordCount] = store.start[0]!;
  store.coords[store.coordCount + 1] = store.start[1]!;
  push(store, MOVE, 2);
}

/** A MOVE, a segment and a CLOSE fit in after this. */
function makeRoom(store: PathStore): void {
  if (store.coordCount + 10 > store.coords.length) {
    const coords = new Float64Array(store.coords.length * 2);
    coords.set(store.coords);
    store.coords = coords;
  }
  if (store.opCount + 4 > store.ops.length) {
    const ops = new Uint8Array(store.ops.length * 2);
    ops.set(store.ops);
    store.ops = ops;
  }
}
