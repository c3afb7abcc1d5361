// Gzip streams are unpacked within their bound, and damaged ones refused.
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { gunzipBytes, isGzip } from '../../../src/source/gunzip-bytes.js';
import { catchFault } from './catch-fault.js';

const PLAIN = Uint8Array.from({ length: 200_000 }, (_, i) => (i * i) >> 3);
const PACKED = new Uint8Array(gzipSync(PLAIN));

/** The stream with one byte turned over. */
function damage(offset: number): Uint8Array {
  const bytes = PACKED.slice();
  const at = offset < 0 ? bytes.length + offset : offset;
  bytes[at] = bytes[at]! ^ 0xff;
  return bytes;
}

describe('gunzipBytes', () => {
  it('gives back what was packed, at the bound', () => {
    expect(gunzipBytes(PACKED, PLAIN.length)).toEqual(PLAIN);
  });

  it('stops one byte past the bound', () => {
    const { code, findings } = catchFault(() => gunzipBytes(PACKED, PLAIN.length - 1));
    expect(code).toBe('limit/unpacked-bytes');
    expect(findings.at(-1)?.data).toEqual({ allowed: PLAIN.length - 1 });
  });

  it('sums up streams of every length', () => {
    for (let length = 0; length < 40; length += 1) {
      const plain = PLAIN.subarray(1000, 1000 + length);
      expect(gunzipBytes(new Uint8Array(gzipSync(plain)), length)).toEqual(plain);
    }
  });

  it('joins thousands of members, wherever the stack stands', () => {
    const members = Buffer.concat(
      Array.from({ length: 20_000 }, (_, i) => gzipSync(PLAIN.subarray(i, i + (i < 3 ? 1 : 0)))),
    );
    // As deep as the unpacker may be called from: a fifth of the stack is gone already.
    const call = (depth: number): Uint8Array => (depth === 0 ? gunzipBytes(members, 100) : call(depth - 1));
    expect(call(1_500)).toHaveLength(3);
  });

  it('unpacks nothing', () => {
    expect(gunzipBytes(new Uint8Array(gzipSync(new Uint8Array(0))), 0)).toEqual(new Uint8Array(0));
  });

  it.each([1, 7, 65_536, 100_000, PLAIN.length - 1])('joins members parted after %i bytes', (at) => {
    const parts = [PLAIN.subarray(0, at), new Uint8Array(0), PLAIN.subarray(at)];
    const packed = new Uint8Array(Buffer.concat(parts.map((part) => gzipSync(part))));
    expect(Buffer.compare(gunzipBytes(packed, PLAIN.length), PLAIN)).toBe(0);
    expect(catchFault(() => gunzipBytes(packed, PLAIN.length - 1)).code).toBe('limit/unpacked-bytes');
  });

  it('checks the sum of every member', () => {
    const packed = new Uint8Array(Buffer.concat([damage(-8), PACKED]));
    expect(catchFault(() => gunzipBytes(packed, 1_000_000)).code).toBe('source/gzip-broken');
  });

  it.each([
    ['with waste after it', new Uint8Array([...PACKED, 1, 2, 3])],
    ['with half a head after it', new Uint8Array([...PACKED, 0x1f, 0x8b, 8])],
    ['cut off in its head', PACKED.subarray(0, 5)],
    ['cut off in its data', PACKED.subarray(0, PACKED.length >> 1)],
    ['cut off in its check sum', PACKED.subarray(0, -1)],
    ['of another method', damage(2)],
    ['with a damaged byte', damage(PACKED.length >> 1)],
    ['with a wrong check sum', damage(-8)],
    ['with a wrong length', damage(-1)],
  ])('refuses a stream %s', (_, bytes) => {
    expect(catchFault(() => gunzipBytes(bytes, 1_000_000)).code).toBe('source/gzip-broken');
  });
});

it('isGzip looks at the first two bytes', () => {
  expect(isGzip(PACKED)).toBe(true);
  expect(isGzip(Uint8Array.from([0x1f]))).toBe(false);
  expect(isGzip(Uint8Array.from([0x3c, 0x73]))).toBe(false);
});
