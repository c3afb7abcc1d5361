// Bytes of data: addresses, held against Node's own decoder.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDataUrl } from '../../../src/source/data-url.js';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const text = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes);

describe('readDataUrl', () => {
  it('reads base64, the media type in small letters', () => {
    const read = readDataUrl(utf8('data:Image/PNG;base64,SGVsbG8='), 100);
    expect([read?.mediaType, text(read?.bytes)]).toEqual(['image/png', 'Hello']);
  });

  it('reads what is not base64 with its percent signs', () => {
    expect(text(readDataUrl(utf8('data:image/svg+xml;charset=utf-8,%3Csvg%20/>%zz%'), 100)?.bytes)).toBe('<svg />%zz%');
  });

  it('passes over line ends in base64 and reads digits behind percent signs', () => {
    expect(text(readDataUrl(utf8('data:image/gif;base64,SGVs\n bG8%3D'), 100)?.bytes)).toBe('Hello');
    expect([...(readDataUrl(utf8('data:;base64,%2B%2F-_'), 100)?.bytes ?? [])]).toEqual([0xfb, 0xff, 0xbf]);
  });

  it('unpacks no more than asked for', () => {
    expect(text(readDataUrl(utf8('data:image/gif;base64,SGVsbG8='), 2)?.bytes)).toBe('He');
  });

  it('knows what is none', () => {
    expect(readDataUrl(utf8('leaf.png'), 100)).toBeNull();
    expect(readDataUrl(utf8('data:image/png;base64'), 100)).toBeNull();
    expect(readDataUrl(utf8('photo,data:image/png;base64,AAAA'), 100)).toBeNull();
  });

  it('takes a percent sign for itself unless two hexadecimal digits follow', () => {
    const bytes = readDataUrl(utf8('data:,%4z%z4%05%50%0A'), 100)?.bytes;
    expect(text(bytes)).toBe('%4z%z4\u0005P\n');
  });

  it('knows base64 by its last word alone, blanks about it or not', () => {
    const said = (head: string) => text(readDataUrl(utf8(`${head},SGVsbG8=`), 100)?.bytes);
    expect(['data:a/b;base64', 'data:a/b; base64', 'data:a/b;base64 ', 'data:a/b;charset=x;BASE64'].map(said)).toEqual(
      Array.from({ length: 4 }, () => 'Hello'),
    );
    expect(['data:a/b;base64;x', 'data:a/b;base64x', 'data:a/b;xbase64'].map(said)).toEqual(
      Array.from({ length: 3 }, () => 'SGVsbG8='),
    );
  });

  it('trims blanks about the address and the media type, and nothing else stands before it', () => {
    expect(readDataUrl(utf8(' \n data: Image/PNG ;base64,SGVs'), 100)?.mediaType).toBe('image/png');
    expect(readDataUrl(utf8('xdata:image/png;base64,SGVs'), 100)).toBeNull();
    expect(readDataUrl(utf8('x data:image/png;base64,SGVs'), 100)).toBeNull();
    expect(readDataUrl(utf8(',data:,x'), 100)).toBeNull();
  });

  it('reads any bytes as Node wrote them', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        const address = utf8(`data:image/png;base64,${Buffer.from(bytes).toString('base64')}`);
        expect([...(readDataUrl(address, 1000)?.bytes ?? [])]).toEqual([...bytes]);
      }),
    );
  });
});
