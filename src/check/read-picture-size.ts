// How many pixels a picture has, from the first bytes of its file.

import type { PictureSize } from '../model/drawn-facts.js';
import { PICTURE_STARTS, type PictureType } from '../model/picture-starts.js';

type Pixels = readonly [number, number];

/** Unsigned numbers within bytes; NaN past their end. */
interface Numbers {
  readonly length: number;
  readonly byte: (at: number) => number;
  readonly big: (at: number, bytes: number) => number;
  readonly little: (at: number, bytes: number) => number;
  readonly text: (at: number, bytes: number) => string;
}

function numbersIn(bytes: Uint8Array): Numbers {
  const byte = (at: number): number => bytes[at] ?? Number.NaN;
  const sum = (at: number, count: number, step: number): number => {
    let value = 0;
    for (let i = 0; i < count; i += 1) value = value * 256 + byte(step > 0 ? at + i : at + count - 1 - i);
    return value;
  };
  return {
    length: bytes.length,
    byte,
    big: (at, count) => sum(at, count, 1),
    little: (at, count) => sum(at, count, -1),
    text: (at, count) => String.fromCharCode(...bytes.subarray(at, at + count)),
  };
}

/** @source PNG (third edition), sections 5.3 and 11.2.1: the header chunk comes first; one maker's variant puts a chunk before it. */
function readPng(numbers: Numbers): Pixels | null {
  for (let at = 8; at + 8 <= numbers.length; at += 12 + numbers.big(at, 4)) {
    if (numbers.text(at + 4, 4) === 'IHDR') return [numbers.big(at + 8, 4), numbers.big(at + 12, 4)];
  }
  return null;
}

/** @source GIF89a specification, section 18: the logical screen. */
function readGif(numbers: Numbers): Pixels {
  return [numbers.little(6, 2), numbers.little(8, 2)];
}

/** Whether a marker begins a frame; 0xc4, 0xc8 and 0xcc are tables and a reserved one. */
function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
}

/** @source ITU-T T.81, annex B: marker segments up to the frame header. */
function readJpeg(numbers: Numbers): Pixels | null {
  for (let at = 2; at + 3 < numbers.length; ) {
    if (numbers.byte(at) !== 0xff) return null;
    const marker = numbers.byte(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (isFrame(marker)) return [numbers.big(at + 7, 2), numbers.big(at + 5, 2)];
    // Image data and the end come after the frame header.
    if (marker === 0xda || marker === 0xd9) return null;
    const alone = marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7);
    at += alone ? 2 : 2 + numbers.big(at + 2, 2);
  }
  return null;
}

/** @source RFC 9649 (WebP), sections 2.5 to 2.7 and 3.4; RFC 6386 (VP8), section 9.1. */
function readWebp(numbers: Numbers): Pixels | null {
  const kind = numbers.text(12, 4);
  if (kind === 'VP8X') return [numbers.little(24, 3) + 1, numbers.little(27, 3) + 1];
  if (kind === 'VP8L' && numbers.byte(20) === 0x2f) {
    const packed = numbers.little(21, 4);
    return [(packed % 0x4000) + 1, (Math.floor(packed / 0x4000) % 0x4000) + 1];
  }
  if (kind === 'VP8 ' && numbers.big(23, 3) === 0x9d012a) {
    return [numbers.little(26, 2) % 0x4000, numbers.little(28, 2) % 0x4000];
  }
  return null;
}

const READERS: Readonly<Record<PictureType, (numbers: Numbers) => Pixels | null>> = {
  'image/png': readPng,
  'image/jpeg': readJpeg,
  'image/gif': readGif,
  'image/webp': readWebp,
};
const MEDIA_TYPES = Object.keys(READERS) as PictureType[];

/**
 * The size of a picture in pixels.
 *
 * @param bytes - The file, or its beginning: a JPEG may hold its size behind a colour profile and previews.
 * @throws Never.
 */
export function readPictureSize(bytes: Uint8Array): PictureSize {
  const numbers = numbersIn(bytes);
  const head = numbers.text(0, 16);
  const mediaType = MEDIA_TYPES.find((type) => PICTURE_STARTS[type].test(head));
  if (mediaType === undefined) {
    if (/^(?:\xef\xbb\xbf)?\s*</.test(head)) return { kind: 'drawing' };
    return { kind: 'unreadable', why: 'it is no PNG, JPEG, GIF or WebP picture' };
  }
  const pixels = READERS[mediaType](numbers);
  if (pixels === null || !(pixels[0] > 0 && pixels[1] > 0)) {
    return { kind: 'unreadable', why: 'its size is not where it should be' };
  }
  return { kind: 'pixels', widthPx: pixels[0], heightPx: pixels[1], mediaType };
}
