// Headers of pictures, written by hand from their specifications.
import { describe, expect, it } from 'vitest';
import { readPictureSize } from '../../../src/check/read-picture-size.js';

function bytes(...parts: readonly (string | readonly number[])[]): Uint8Array {
  return Uint8Array.from(
    parts.flatMap((part) => (typeof part === 'string' ? [...part].map((letter) => letter.charCodeAt(0)) : part)),
  );
}

const PNG = [0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10];
const IHDR = [0, 0, 0, 13];
const pixels = (widthPx: number, heightPx: number, mediaType: string) => ({
  kind: 'pixels',
  widthPx,
  heightPx,
  mediaType,
});

/** A JPEG segment: marker and content. */
function segment(marker: number, content: readonly number[]): readonly number[] {
  const length = content.length + 2;
  return [0xff, marker, length >> 8, length & 255, ...content];
}

const FRAME = [8, 0x01, 0x2c, 0x02, 0x58, 3, 1, 0x22, 0, 2, 0x11, 1, 3, 0x11, 1];

describe('readPictureSize', () => {
  it('reads a PNG, big-endian', () => {
    const file = bytes(PNG, IHDR, 'IHDR', [0, 1, 0, 2, 0, 0, 3, 4], [8, 2, 0, 0, 0]);
    expect(readPictureSize(file)).toEqual(pixels(65538, 772, 'image/png'));
  });

  it('reads a PNG whose header comes second', () => {
    const before = [[0, 0, 0, 4], 'CgBI', [0, 0, 0, 0], [1, 2, 3, 4]] as const;
    const file = bytes(PNG, ...before, IHDR, 'IHDR', [0, 0, 0, 7, 0, 0, 0, 9], [8, 2, 0, 0, 0]);
    expect(readPictureSize(file)).toEqual(pixels(7, 9, 'image/png'));
  });

  it('reads a GIF, little-endian', () => {
    expect(readPictureSize(bytes('GIF89a', [0x2c, 0x01, 0x58, 0x02, 0, 0, 0]))).toEqual(pixels(300, 600, 'image/gif'));
    expect(readPictureSize(bytes('GIF87a', [1, 0, 2, 0, 0, 0, 0]))).toEqual(pixels(1, 2, 'image/gif'));
  });

  it.each([0xc0, 0xc1, 0xc2, 0xc3, 0xc9, 0xcf])('reads a JPEG with frame marker %i, height first', (marker) => {
    const file = bytes([0xff, 0xd8], segment(0xe0, [1, 2, 3]), segment(marker, FRAME));
    expect(readPictureSize(file)).toEqual(pixels(600, 300, 'image/jpeg'));
  });

  it('passes over JPEG tables, fill bytes, lone markers and a size within a preview', () => {
    const preview = [0xff, 0xd8, ...segment(0xc0, [8, 0, 1, 0, 1, 1])];
    const file = bytes(
      [0xff, 0xd8],
      segment(0xe1, preview),
      segment(0xc4, FRAME),
      segment(0xc8, FRAME),
      [0xff, 0x01],
      [0xff, 0xff],
      segment(0xc2, FRAME),
    );
    expect(readPictureSize(file)).toEqual(pixels(600, 300, 'image/jpeg'));
  });

  it('does not take a JPEG for read that begins its image data without a frame', () => {
    expect(readPictureSize(bytes([0xff, 0xd8], segment(0xda, [1, 1, 0]), segment(0xc0, FRAME))).kind).toBe(
      'unreadable',
    );
  });

  it('reads the three kinds of WebP', () => {
    const riff = (...parts: readonly (string | readonly number[])[]) => bytes('RIFF', [99, 0, 0, 0], 'WEBP', ...parts);
    const lossy = riff('VP8 ', [30, 0, 0, 0], [0x10, 2, 0], [0x9d, 0x01, 0x2a], [0x58, 0x42], [0x2c, 0x81], [0, 0]);
    // The top two bits of each are a scale and no part of the size.
    expect(readPictureSize(lossy)).toEqual(pixels(600, 300, 'image/webp'));
    // 14 bits of width - 1, 14 bits of height - 1: 599 | 299 << 14 = 0x4ac257, alpha above.
    const lossless = riff('VP8L', [30, 0, 0, 0], [0x2f], [0x57, 0xc2, 0x4a, 0x10], [0, 0]);
    expect(readPictureSize(lossless)).toEqual(pixels(600, 300, 'image/webp'));
    const extended = riff('VP8X', [10, 0, 0, 0], [0x10, 0, 0, 0], [0x57, 0x02, 0x01], [0x2b, 0x01, 0x00]);
    expect(readPictureSize(extended)).toEqual(pixels(66136, 300, 'image/webp'));
  });

  it('tells a drawing from a picture that it cannot read', () => {
    expect(readPictureSize(bytes('<svg xmlns=""/>'))).toEqual({ kind: 'drawing' });
    expect(readPictureSize(bytes([0xef, 0xbb, 0xbf], '\n<?xml')).kind).toBe('drawing');
    expect(readPictureSize(bytes('BM123456')).kind).toBe('unreadable');
    expect(readPictureSize(bytes('')).kind).toBe('unreadable');
  });

  it('takes a size of nothing for none', () => {
    expect(readPictureSize(bytes('GIF89a', [0, 0, 5, 0, 0, 0, 0])).kind).toBe('unreadable');
  });

  it('ends on every cut of a file', () => {
    const whole = [
      bytes(PNG, IHDR, 'IHDR', [0, 0, 0, 7, 0, 0, 0, 9], [8, 2, 0, 0, 0]),
      bytes([0xff, 0xd8], segment(0xe0, [1, 2, 3]), segment(0xc0, FRAME)),
      bytes('RIFF', [99, 0, 0, 0], 'WEBP', 'VP8X', [10, 0, 0, 0], [0x10, 0, 0, 0], [0x57, 2, 1], [0x2b, 1, 0]),
    ];
    for (const file of whole) {
      for (let end = 0; end < file.length; end += 1) {
        const { kind } = readPictureSize(file.subarray(0, end));
        expect(['pixels', 'unreadable']).toContain(kind);
      }
      expect(readPictureSize(file).kind).toBe('pixels');
    }
  });
});
