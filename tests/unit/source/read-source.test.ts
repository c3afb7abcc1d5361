// Files in every encoding pinbar reads, the bounds of the reader, and views instead of copies.
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { decodeUtf8, encodeUtf8 } from '../../../src/model/platform.js';
import { PinbarError } from '../../../src/model/trouble.js';
import { readAttributeValue } from '../../../src/source/read-attribute.js';
import { readSource } from '../../../src/source/read-source.js';
import type { Limits } from '../../../src/source/source.js';
import { listen, type Said } from './listen.js';
import words from './read-source.words.json' with { type: 'json' };

const BODY = '<svg xmlns="http://www.w3.org/2000/svg"><g id="Größe €"/></svg>';

function refusal(bytes: Uint8Array, limits: Partial<Limits> = {}): string {
  try {
    readSource(bytes, { limits });
    return 'accepted';
  } catch (error) {
    if (error instanceof PinbarError) return error.code;
    throw error;
  }
}

function utf16(text: string, bigEndian: boolean): Uint8Array {
  const bytes = new Uint8Array(text.length * 2);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < text.length; i += 1) view.setUint16(2 * i, text.charCodeAt(i), !bigEndian);
  return bytes;
}

function singleByte(text: string, signs: Readonly<Record<string, number>>): Uint8Array {
  return Uint8Array.from([...text].map((sign) => signs[sign] ?? sign.charCodeAt(0)));
}

describe('encodings', () => {
  const declare = (label: string): string => `<?xml version="1.0" encoding="${label}"?>${BODY}`;

  it.each([
    ['UTF-8', encodeUtf8(BODY)],
    ['UTF-8 with a byte order mark', encodeUtf8(`\ufeff${BODY}`)],
    ['UTF-16, little end first, with a mark', utf16(`\ufeff${BODY}`, false)],
    ['UTF-16, big end first, with a mark', utf16(`\ufeff${BODY}`, true)],
    ['UTF-16 without a mark', utf16(declare('UTF-16'), false)],
    ['windows-1252', singleByte(declare('windows-1252'), { '€': 0x80 })],
    ['iso-8859-15', singleByte(declare('ISO-8859-15'), { '€': 0xa4 })],
    ['gzip', new Uint8Array(gzipSync(encodeUtf8(BODY)))],
  ])('%s', (_, bytes) => {
    const source = readSource(bytes);
    expect(readAttributeValue(source, 1, 'id')).toBe('Größe €');
    expect(decodeUtf8(source.text)).toContain('Größe €');
  });

  it('plain UTF-8 is a view of the input', () => {
    const bytes = encodeUtf8(BODY);
    expect(readSource(bytes).text.buffer).toBe(bytes.buffer);
  });

  it.each([
    ['an encoding nobody knows', encodeUtf8(declare('x-own')), 'source/encoding-unknown'],
    ['bytes that are not UTF-8', Uint8Array.from([...encodeUtf8('<svg id="'), 0xe4, 0x22]), 'source/encoding-broken'],
    ['an overlong sequence', Uint8Array.from([...encodeUtf8('<svg id="'), 0xc0, 0xaf, 0x22]), 'source/encoding-broken'],
    ['a surrogate in UTF-8', Uint8Array.from([0x3c, 0xed, 0xa0, 0x80]), 'source/encoding-broken'],
    ['half a surrogate pair in UTF-16', utf16('\ufeff<svg id="\ud800"/>', false), 'source/encoding-broken'],
    ['a control character', encodeUtf8('<svg id="\u0001"/>'), 'source/malformed'],
    ['a gzip stream cut off', new Uint8Array(gzipSync(encodeUtf8(BODY))).subarray(0, 40), 'source/gzip-broken'],
    ['nothing at all', new Uint8Array(0), 'source/malformed'],
  ])('refuses %s', (_, bytes, code) => {
    expect(refusal(bytes)).toBe(code);
  });
});

describe('bounds, at and one past', () => {
  const nested = encodeUtf8(`<svg xmlns="http://www.w3.org/2000/svg">${'<g>'.repeat(4)}${'</g>'.repeat(4)}</svg>`);
  const wide = encodeUtf8('<svg xmlns="http://www.w3.org/2000/svg"><g a="" b="" c=""/></svg>');
  const packed = new Uint8Array(gzipSync(nested));

  it.each([
    ['depth', nested, 5, 'limit/depth'],
    ['elements', nested, 5, 'limit/elements'],
    ['attributesPerElement', wide, 3, 'limit/attributes'],
    ['bytes', nested, nested.length, 'limit/bytes'],
    ['unpackedBytes', packed, nested.length, 'limit/unpacked-bytes'],
  ] as const)('%s', (name, bytes, most, code) => {
    expect(refusal(bytes, { [name]: most })).toBe('accepted');
    expect(refusal(bytes, { [name]: most - 1 })).toBe(code);
  });
});

describe('the root', () => {
  it('may lack the namespace, and is read as SVG', () => {
    const source = readSource(encodeUtf8('<svg><g/></svg>'));
    expect(source.namespaceMissing).toBe(true);
    expect(source.findings.map((item) => item.code)).toEqual(['source/namespace-missing']);
  });

  it('may have a prefix', () => {
    const source = readSource(encodeUtf8('<s:svg xmlns:s="http://www.w3.org/2000/svg"><s:g/></s:svg>'));
    expect(source.elements.names.map((name) => name.local)).toEqual(['svg', 'g']);
  });

  it('is svg', () => {
    expect(refusal(encodeUtf8('<html/>'))).toBe('source/not-svg');
    expect(refusal(encodeUtf8('<svg xmlns="http://example.org/"/>'))).toBe('source/not-svg');
  });
});

describe('the words of the source room', () => {
  it.each(words as readonly Said[])('about $input', (entry) => {
    expect(listen(entry.input)).toEqual(entry);
  });

  it('are about many codes', () => {
    const codes = new Set(words.map(({ said }) => said?.code));
    expect(codes.size).toBeGreaterThan(12);
  });
});
