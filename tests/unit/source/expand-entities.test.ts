// Entities are written out within bounds, and refused with the line of their own declaration.
import { describe, expect, it } from 'vitest';
import { decodeUtf8, encodeUtf8 } from '../../../src/model/platform.js';
import { PinbarError } from '../../../src/model/trouble.js';
import { locate } from '../../../src/source/locate.js';
import { readAttributeValue } from '../../../src/source/read-attribute.js';
import { readSource } from '../../../src/source/read-source.js';
import type { Limits, Source } from '../../../src/source/source.js';

function read(declarations: string, body: string, limits: Partial<Limits> = {}): Source {
  const text = `<?xml version="1.0"?>\n<!DOCTYPE svg [\n${declarations}\n]>\n<svg xmlns="http://www.w3.org/2000/svg">${body}</svg>`;
  return readSource(encodeUtf8(text), { limits });
}

function refusal(
  declarations: string,
  body = '',
  limits: Partial<Limits> = {},
): { code: string; line: number | undefined } {
  try {
    read(declarations, body, limits);
  } catch (error) {
    if (error instanceof PinbarError) return { code: error.code, line: error.findings.at(-1)?.place.line };
    throw error;
  }
  return { code: 'accepted', line: undefined };
}

describe('a literal entity', () => {
  it('is written out in attributes and text, and not in CDATA and comments', () => {
    const source = read('<!ENTITY a "one">', '<g id="&a;-&a;"/>&a;<![CDATA[&a;]]><!-- &a; -->');
    expect(readAttributeValue(source, 1, 'id')).toBe('one-one');
    expect(decodeUtf8(source.text)).toContain('/>one<![CDATA[&a;]]><!-- &a; -->');
  });

  it('can be a namespace', () => {
    const text = '<!DOCTYPE svg [<!ENTITY ns "http://www.w3.org/2000/svg">]><svg xmlns="&ns;"/>';
    expect(readSource(encodeUtf8(text)).namespaceMissing).toBe(false);
  });

  it('counts as its reference where places are told', () => {
    const source = read('<!ENTITY a "one two three">', '<g id="&a;"/><path/>');
    const line = '<svg xmlns="http://www.w3.org/2000/svg"><g id="&a;"/>';
    expect(locate(source, source.elements.start[2]!)).toEqual({ line: 5, column: line.length + 1 });
  });

  it('is the first of its name', () => {
    expect(readAttributeValue(read('<!ENTITY a "1"><!ENTITY a "2">', '<g id="&a;"/>'), 1, 'id')).toBe('1');
  });
});

describe('refused, with the line of the declaration', () => {
  it.each([
    ['<!ENTITY a "x">\n<!ENTITY b "&a;">', 4],
    ['<!ENTITY % p "x">', 3],
    ['\n<!ENTITY e SYSTEM "file:///etc/hostname">', 4],
    ['<!ENTITY e PUBLIC "a" "b">', 3],
    ['<!-- ä -->\n<!ENTITY e SYSTEM "x" NDATA y>', 4],
  ])('%j', (declarations, line) => {
    expect(refusal(declarations)).toEqual({ code: 'source/entity-refused', line });
  });

  it('default values of attributes, which the sheets would lose', () => {
    expect(refusal('<!ATTLIST path fill CDATA "red">').code).toBe('source/entity-refused');
    expect(refusal('<!ATTLIST path fill CDATA #IMPLIED>').code).toBe('accepted');
  });

  it('an entity that nobody declared', () => {
    expect(refusal('<!ENTITY a "x">', '<g id="&b;"/>')).toEqual({ code: 'source/malformed', line: 5 });
  });
});

describe('bounds, at and one past', () => {
  const two = '<!ENTITY a "12345">\n<!ENTITY b "6">';

  it('number of entities', () => {
    expect(refusal(two, '', { entities: 2 }).code).toBe('accepted');
    expect(refusal(two, '', { entities: 1 })).toEqual({ code: 'limit/entity-count', line: 4 });
  });

  it('bytes of one entity', () => {
    expect(refusal(two, '', { entityBytes: 5 }).code).toBe('accepted');
    expect(refusal(two, '', { entityBytes: 4 })).toEqual({ code: 'limit/entity-length', line: 3 });
  });

  it('bytes written out in all', () => {
    expect(refusal(two, '<g id="&a;&a;"/>', { entityTotalBytes: 10 }).code).toBe('accepted');
    expect(refusal(two, '<g id="&a;&a;"/>', { entityTotalBytes: 9 })).toEqual({ code: 'limit/entity-total', line: 6 });
  });
});
