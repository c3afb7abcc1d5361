// What Node does natively and what the web does instead must agree.
import { afterEach, describe, expect, it, vi } from 'vitest';
import { decodeText, encodeBase64, equalBytes } from '../../../src/model/platform.js';

const BYTES = Uint8Array.from({ length: 70_001 }, (_, i) => (i * 7 + (i >> 8)) & 0xff);

describe.each([
  ['in Node', true],
  ['in a browser', false],
])('%s', (_, isNode) => {
  afterEach(() => vi.unstubAllGlobals());

  it('bytes become base64', () => {
    const spelled = Buffer.from(BYTES.subarray(3)).toString('base64');
    // The test vectors of RFC 4648, section 10.
    const vectors = ['', 'Zg==', 'Zm8=', 'Zm9v', 'Zm9vYg==', 'Zm9vYmE=', 'Zm9vYmFy'];
    const foobar = new TextEncoder().encode('foobar');
    if (!isNode) vi.stubGlobal('Buffer', undefined);
    expect(encodeBase64(BYTES.subarray(3))).toBe(spelled);
    expect(vectors.map((__, length) => encodeBase64(foobar.subarray(0, length)))).toEqual(vectors);
  });

  it('bytes are compared', () => {
    const other = BYTES.slice();
    other[70_000]! ^= 1;
    if (!isNode) vi.stubGlobal('Buffer', undefined);
    expect(equalBytes(BYTES, BYTES.slice())).toBe(true);
    expect(equalBytes(BYTES, other)).toBe(false);
    expect(equalBytes(BYTES, BYTES.subarray(1))).toBe(false);
  });
});

describe('decodeText', () => {
  const bytesOf = (text: string, encoding: 'utf8' | 'utf16le'): Buffer => Buffer.from(`\uFEFF${text}`, encoding);

  it('reads UTF-8, and UTF-16 behind a byte order mark, of either order', () => {
    const text = 'Pass;Höhe\n1;0,25\n';
    expect(decodeText(Buffer.from(text))).toBe(text);
    expect(decodeText(bytesOf(text, 'utf8'))).toBe(text);
    expect(decodeText(bytesOf(text, 'utf16le'))).toBe(text);
    expect(decodeText(bytesOf(text, 'utf16le').swap16())).toBe(text);
    expect(decodeText(new Uint8Array(0))).toBe('');
  });
});
