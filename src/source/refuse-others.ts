// Files of other kinds, told by their first bytes before anyone looks for a fault in their text.
import { PinbarError } from '../model/trouble.js';

/** Of pictures less than of those that a sheet may carry: one that was damaged on its way is no drawing either. */
const KINDS: readonly (readonly [kind: string, first: RegExp])[] = [
  ['PNG picture', /^\x89PNG/],
  ['JPEG picture', /^\xff\xd8\xff/],
  ['GIF picture', /^GIF8/],
  ['WebP picture', /^RIFF[\s\S]{4}WEBP/],
  ['TIFF picture', /^(?:II\*\0|MM\0\*)/],
  ['PDF document', /^%PDF-/],
  ['PostScript document', /^%!PS/],
  ['zip archive', /^PK\x03\x04/],
];

/**
 * Refuses what is plainly something else.
 *
 * @throws PinbarError `source/not-svg`.
 */
export function refuseOthers(bytes: Uint8Array): void {
  const head = String.fromCharCode(...bytes.subarray(0, 16));
  const kind = KINDS.find(([, first]) => first.test(head))?.[0];
  if (kind === undefined) return;
  throw new PinbarError('source/not-svg', {
    message: `The file is a ${kind}, not an SVG drawing.`,
    remedy: 'Save the drawing as SVG, with its layers, and hand in that file.',
    data: { kind },
  });
}
