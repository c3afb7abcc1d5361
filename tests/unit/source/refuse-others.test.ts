// Files that are no drawing are called what they are.
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { PinbarError } from '../../../src/model/trouble.js';
import { readSource } from '../../../src/source/read-source.js';

function refusal(bytes: Uint8Array): string {
  try {
    readSource(bytes);
    return 'accepted';
  } catch (error) {
    if (!(error instanceof PinbarError)) throw error;
    return `${error.code}: ${error.findings.at(-1)!.message}`;
  }
}

const bytesOf = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'latin1'));

it('tells pictures, documents and archives by their first bytes, packed too', () => {
  expect(refusal(new Uint8Array(readFileSync('samples/leaf.png')))).toBe(
    'source/not-svg: The file is a PNG picture, not an SVG drawing.',
  );
  expect(refusal(bytesOf('%PDF-1.7\n%\xe2\xe3'))).toContain('a PDF document,');
  expect(refusal(bytesOf('%!PS-Adobe-3.0 EPSF-3.0'))).toContain('a PostScript document,');
  expect(refusal(bytesOf('\xff\xd8\xff\xe0'))).toContain('a JPEG picture,');
  expect(refusal(bytesOf('RIFF\x10\0\0\0WEBPVP8 '))).toContain('a WebP picture,');
  expect(refusal(new Uint8Array(gzipSync(bytesOf('PK\x03\x04'))))).toContain('a zip archive,');
});

it('leaves drawings alone, in any encoding', () => {
  const text = '<svg xmlns="http://www.w3.org/2000/svg"/>';
  expect(refusal(bytesOf(text))).toBe('accepted');
  expect(refusal(new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le')))).toBe('accepted');
});
