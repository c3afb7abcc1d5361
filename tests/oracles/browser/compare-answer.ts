// Holds what the browser says of a file against what resolve makes of it.
import type { Matrix } from '../../../src/geometry/matrix.js';
import type { Artboard, Artwork } from '../../../src/model/artwork.js';
import { PinbarError } from '../../../src/model/trouble.js';
import type { GeometryGrounds } from '../../../src/resolve/drawing.js';
import { resolve } from '../../../src/resolve/resolve.js';
import { isResolvedShape, type ResolvedShape } from '../../../src/resolve/resolved-shape.js';
import { readSource } from '../../../src/source/read-source.js';
import type { Answer } from './ask-browser.js';
import { type Comparing, compareBox, compareMatrix, differ } from './compare-place.js';
import { compareStyle } from './compare-style.js';
import type { AskedFile } from './list-files.js';
import { leaveOut, type NotCompared, type Tally } from './tally.js';

function invert([a, b, c, d, e, f]: Matrix): Matrix {
  const det = a * d - b * c;
  return [d / det, -b / det, -c / det, a / det, (c * f - d * e) / det, (b * e - a * f) / det];
}

function compareShape(comparing: Comparing, answer: Answer, shape: ResolvedShape, said: readonly number[]): void {
  const [, flags, matrix, style, ...box] = said as readonly [number, number, number, number, ...number[]];
  const { tally } = comparing;
  tally.shapes += 1;
  if ((flags & 1) !== 0) tally.copied += 1;
  compareStyle(comparing, shape, answer.styles[style]!, (flags & 2) !== 0);
  if (box.length === 0 || matrix < 0) {
    leaveOut(tally, 'not laid out');
    return;
  }
  compareBox(comparing, shape, box);
  if ((flags & 4) !== 0) {
    leaveOut(tally, 'transform about a loose box');
    return;
  }
  compareMatrix(comparing, shape, answer.matrices[matrix]! as unknown as Matrix, box);
}

/** The rows of both sides must be the same, one after the other. */
function compareShapes(comparing: Comparing, answer: Answer, artwork: Artwork): void {
  const left = new Map(answer.left.map(([why, row]) => [row, why]));
  const ours = artwork.shapes.filter(isResolvedShape).filter((shape) => {
    const why = left.get(shape.carrier);
    if (why !== undefined) leaveOut(comparing.tally, why as NotCompared);
    return why === undefined;
  });
  const rows = answer.shapes.map(([row]) => row!);
  const at = ours.findIndex((shape, place) => shape.element !== rows[place]);
  if (at >= 0 || rows.length !== ours.length) {
    const place = at < 0 ? ours.length : at;
    differ(comparing, rows[place] ?? -1, 'rows', rows[place] ?? 'end', ours[place]?.element ?? 'end');
    return;
  }
  answer.shapes.forEach((said, place) => {
    compareShape(comparing, answer, ours[place]!, said);
  });
}

const isLength = (text: string): boolean => /\d/.test(text) && !text.includes('%');

/** Size of the artboard against the file as a picture, and the root's matrix; both where a size is said. */
function compareBoard(comparing: Comparing, answer: Answer, artboard: Artboard): void {
  const { tally, boardSize } = comparing;
  const stated = [artboard.statedWidth, artboard.statedHeight];
  if (!stated.some(isLength) || !stated.every((text) => text === '' || isLength(text))) {
    leaveOut(tally, 'size not said');
    return;
  }
  if (stated.includes('') && artboard.viewBox === null) {
    leaveOut(tally, 'size not said');
    return;
  }
  const sides = [artboard.width, artboard.height];
  tally.sizes += 1;
  // Pictures have whole px.
  if (answer.natural.some((side, at) => Math.abs(side - sides[at]!) > 0.5 + 1e-6)) {
    differ(comparing, 0, 'size', answer.natural, sides);
  }
  if (stated.includes('')) return;
  tally.matrices += 1;
  // The browser lays the root out on a grid of 1/64 px; the viewBox takes that along.
  const off = answer.root.map((value, at) => Math.abs(value - artboard.matrix[at]!) * (at < 4 ? boardSize : 1));
  const largest = Math.max(...artboard.matrix.slice(0, 4).map(Math.abs), 1) * boardSize;
  if (off.some((distance) => distance > 1 / 32 + 1e-6 * largest))
    differ(comparing, 0, 'root', answer.root, artboard.matrix);
}

/** Compares one file. */
export function compareAnswer(tally: Tally, file: AskedFile, answer: Answer): void {
  if (answer.refused !== undefined) {
    leaveOut(tally, answer.refused as NotCompared);
    return;
  }
  let artwork: Artwork;
  try {
    artwork = resolve(readSource(file.bytes));
  } catch (error) {
    if (!(error instanceof PinbarError)) throw error;
    leaveOut(tally, 'file refused');
    return;
  }
  const { artboard } = artwork;
  const comparing: Comparing = {
    tally,
    file: file.name,
    grounds: (artwork as Artwork & { readonly geometry: GeometryGrounds }).geometry,
    toRoot: invert(artboard.matrix),
    boardSize: Math.max(artboard.viewBox?.[2] ?? artboard.width, artboard.viewBox?.[3] ?? artboard.height),
  };
  tally.files += 1;
  compareBoard(comparing, answer, artboard);
  compareShapes(comparing, answer, artwork);
}
