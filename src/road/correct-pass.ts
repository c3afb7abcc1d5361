// Moves a pass to where the marks were measured: all it holds in one group with the fitted matrix, then looked at again.
import { invert, type Matrix, multiply } from '../geometry/matrix.js';
import { printNumber } from '../geometry/print-number.js';
import type { Artwork, Shape } from '../model/artwork.js';
import type { RoadOptions } from '../model/job.js';
import { encodeUtf8, equalBytes, sha256Hex } from '../model/platform.js';
import type { CorrectedPass } from '../model/register.js';
import { joinPieces } from '../model/sheet.js';
import { invariant, PinbarError } from '../model/trouble.js';
import { readAttributeValue } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';
import { hasEqualPaint, shapeDeviation } from '../verify/shape-deviation.js';
import { resolveSource, scanBytes } from './read-artwork.js';

const GROUP_ID = 'pinbar-register';
const MARKS_ID = 'pinbar-marks';
/** A shape may come out this far from where the fit puts it, mm; far below what a machine can place. */
const ALLOWED_MM = 0.001;
/** Decimals of the matrix: on a sheet of metres its rounding stays below a millionth of a mm. */
const DECIMALS = 12;

/** The fit in px of the artboard. */
function toPx([a, b, c, d, e, f]: Matrix, { artboard }: Artwork): Matrix {
  return [a, b, c, d, e / artboard.mmPerPx, f / artboard.mmPerPx];
}

/** The fit in user units of the root. */
function toUser(matrix: Matrix, artwork: Artwork): Matrix {
  const back = invert(artwork.artboard.matrix);
  invariant(back !== null, 'the artboard matrix has no inverse');
  return multiply(back, multiply(toPx(matrix, artwork), artwork.artboard.matrix));
}

function findById(source: Source, id: string): number {
  for (let row = 1; row < source.elements.count; row += 1) if (readAttributeValue(source, row, 'id') === id) return row;
  return -1;
}

/** The file of a pass as it was written. */
export interface PassFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What a group with a matrix is put around a pass for. */
export interface Wrapping {
  readonly groupId: string;
  /** `corrected`, `turned`: what the pass then is, in messages. */
  readonly what: string;
  /** From where a point is drawn to where it is to lie, mm from the sheet's top left. */
  readonly matrixMm: Matrix;
}

function refuse(name: string, why: string, what: string): PinbarError {
  return new PinbarError('register/not-kept', {
    message: `${name}: ${why}, so the ${what} pass is not made.`,
    remedy:
      'Style rules that look at the children of the root can do this: write them by class, split again, and try again.',
    place: { file: name },
  });
}

interface ReadFile {
  readonly source: Source;
  readonly artwork: Artwork;
}

/** The shapes of a file without its marks, also where these lie in a group that was put around a pass before. */
function ownShapes({ source, artwork }: ReadFile): readonly Shape[] {
  const marks = findById(source, MARKS_ID);
  const end = marks < 0 ? -1 : source.elements.next[marks]!;
  return artwork.shapes.filter((shape) => shape.carrier < marks || shape.carrier >= end);
}

/** Holds the corrected file against the pass it came from; returns the greatest deviation, mm. */
function judge(
  { name, what }: { readonly name: string; readonly what: string },
  before: ReadFile,
  after: ReadFile,
  fit: Matrix,
): number {
  const [drawn, shapes] = [ownShapes(before), ownShapes(after)];
  if (shapes.length !== drawn.length) throw refuse(name, 'another number of shapes is drawn', what);
  let greatest = 0;
  drawn.forEach((shape, i) => {
    const moved = shapes[i]!;
    if (!hasEqualPaint(shape, moved) || shape.draws !== moved.draws)
      throw refuse(name, `a ${shape.kind} is painted otherwise`, what);
    greatest = Math.max(greatest, shapeDeviation(shape, moved, fit));
  });
  const deviationMm = greatest * before.artwork.artboard.mmPerPx;
  if (!(deviationMm <= ALLOWED_MM))
    throw refuse(name, `a shape lies ${deviationMm.toFixed(4)} mm from where it should`, what);
  return deviationMm;
}

/**
 * A pass with all it holds in one group that carries a matrix, read again and held, shape by shape, against the pass.
 *
 * @throws PinbarError `register/corrected-already` where such a group is there, `register/not-kept`, and those of reading the file.
 */
export async function wrapPass(
  file: PassFile,
  { groupId, what, matrixMm }: Wrapping,
  options: RoadOptions = {},
): Promise<CorrectedPass> {
  const source = scanBytes(file.bytes, options);
  if (findById(source, groupId) >= 0) {
    throw new PinbarError('register/corrected-already', {
      message: `${file.name} was ${what} before; a second time would lie on top of the first.`,
      remedy: 'Take the pass as the split made it.',
      place: { file: file.name },
    });
  }
  const artwork = resolveSource(source, options, null);
  const { headEnd, tailStart, end } = source.elements;
  if (tailStart[0] === end[0]) throw refuse(file.name, 'it draws nothing', what);
  const numbers = toUser(matrixMm, artwork).map((value) => printNumber(value, DECIMALS));
  const pieces = [
    source.text.subarray(0, headEnd[0]!),
    encodeUtf8(`<g id="${groupId}" transform="matrix(${numbers.join(' ')})">`),
    source.text.subarray(headEnd[0]!, tailStart[0]!),
    encodeUtf8('</g>'),
    source.text.subarray(tailStart[0]!),
  ];
  const bytes = joinPieces(pieces);
  const again = scanBytes(bytes, options);
  invariant(equalBytes(again.text, bytes), `a ${what} pass is read otherwise than it was written`);
  const deviationMm = judge(
    { name: file.name, what },
    { source, artwork },
    { source: again, artwork: resolveSource(again, options, null) },
    toPx(matrixMm, artwork),
  );
  return {
    name: file.name,
    mediaType: 'image/svg+xml',
    pieces: [bytes],
    byteLength: bytes.length,
    sha256: await sha256Hex([bytes]),
    deviationMm,
  };
}

/**
 * A pass moved by a fit.
 *
 * The bytes of the pass are kept; one group with the matrix goes around all that the root holds. The result is read again, and
 * every shape is held against the pass.
 *
 * @param fitMm - From where a point is drawn to where it is to lie, mm from the sheet's top left.
 * @throws PinbarError `register/corrected-already`, `register/not-kept`, and those of reading the file.
 */
export async function correctPass(file: PassFile, fitMm: Matrix, options: RoadOptions = {}): Promise<CorrectedPass> {
  return wrapPass(file, { groupId: GROUP_ID, what: 'corrected', matrixMm: fitMm }, options);
}
