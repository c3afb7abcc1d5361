// Attributes of a start tag: what is taken, what is refused and where.
import { describe, expect, it } from 'vitest';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { scanElements } from '../../../src/source/scan-elements.js';
import { DEFAULT_LIMITS } from '../../../src/source/source.js';
import { describeFault, slice } from './catch-fault.js';

/** Attributes as written in order: name, namespace, raw value. */
function list(document: string): string[] {
  const text = encodeUtf8(document);
  const { attributes } = scanElements(text, { limits: DEFAULT_LIMITS }).elements;
  return Array.from({ length: attributes.count }, (_, a) => {
    const { qualified, namespace } = attributes.names[attributes.name[a]!]!;
    return `${qualified}{${namespace}}=${slice(text, attributes.valueStart[a]!, attributes.valueEnd[a]!)}`;
  });
}

describe('taken', () => {
  it.each([
    ['<a b="1"/>', ['b{}=1']],
    ["<a b='\"'/>", ['b{}="']],
    ['<a b="\'>"/>', ["b{}='>"]],
    ['<a\tb\n=\r"1" />', ['b{}=1']],
    ['<a ä="1" Ä="2"/>', ['ä{}=1', 'Ä{}=2']],
    ['<a xmlns="u" b=""/>', ['xmlns{http://www.w3.org/2000/xmlns/}=u', 'b{}=']],
    ['<a xml:lang="en"/>', ['xml:lang{http://www.w3.org/XML/1998/namespace}=en']],
    ['<a p:b="1" xmlns:p="u"/>', ['p:b{u}=1', 'xmlns:p{http://www.w3.org/2000/xmlns/}=u']],
    ['<a xmlns:p="u" p:b="1" b="2"/>', ['xmlns:p{http://www.w3.org/2000/xmlns/}=u', 'p:b{u}=1', 'b{}=2']],
    [`<a b="${'x'.repeat(23)}" c="${'y'.repeat(24)}"/>`, [`b{}=${'x'.repeat(23)}`, `c{}=${'y'.repeat(24)}`]],
  ])('%s', (document, expected) => {
    expect(list(document)).toEqual(expected);
  });

  it('a prefix means what is in scope at its element', () => {
    const document = '<a xmlns:p="u"><b xmlns:p="v" p:x=""/><b p:x=""/></a>';
    expect(list(document).filter((item) => item.startsWith('p:x'))).toEqual(['p:x{v}=', 'p:x{u}=']);
  });
});

describe('refused', () => {
  it.each([
    ['<a b/>', 5],
    ['<a b=>', 6],
    ['<a b="1', 6],
    ['<a b="1"', 1],
    ['<a b="1/>', 6],
    ['<a "1"/>', 4],
    ['<a =""/>', 4],
    ['<a / >', 4],
    ['<a 1="x"/>', 4],
    ['<a b="&"/>', 7],
    ['<a b="&lt"/>', 7],
    ['<a b="&#x110000;"/>', 7],
    ['<a b="&#xD800;"/>', 7],
    ['<a b="&#XE4;"/>', 7],
    ['<a b="1" c="2" b="3"/>', 18],
    ['<a p:b="1"/>', 8],
    ['<a :b="1"/>', 7],
    ['<a b:="1"/>', 7],
    ['<a xmlns:p="u" p:b:c="1"/>', 22],
    ['<a xmlns:xml="u"/>', 4],
    ['<a xmlns:p="http://www.w3.org/XML/1998/namespace"/>', 4],
    ['<a xmlns="http://www.w3.org/XML/1998/namespace"/>', 4],
    ['<a xmlns:xmlns="u"/>', 4],
    ['<a xmlns:p="http://www.w3.org/2000/xmlns/"/>', 4],
    ['<a xmlns="http://www.w3.org/2000/xmlns/"/>', 4],
    ['<a xmlns:p="u" xmlns:q="&#117;" p:b="" q:b=""/>', 44],
  ])('%s at column %i', (document, column) => {
    const place = { code: 'source/malformed', line: 1, column };
    expect(describeFault(() => list(document))).toMatchObject(place);
  });

  it('a prefix out of scope', () => {
    expect(describeFault(() => list('<a><b xmlns:p="u"/><c p:x=""/></a>'))).toMatchObject({ column: 27 });
  });
});
