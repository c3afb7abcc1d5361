// Values and text as XML has them: references decoded, white space normalised.
import { describe, expect, it } from 'vitest';
import {
  attributeIsPlain,
  decodeReferences,
  elementName,
  findAttribute,
  isSvgElement,
  readAttributeValue,
  readText,
} from '../../../src/source/read-attribute.js';
import { SVG_NAMESPACE, XLINK_NAMESPACE, XML_NAMESPACE } from '../../../src/source/source.js';
import { readInside } from './catch-fault.js';

// XML 1.0 (5th ed.), sections 2.11 and 3.3.3.
describe('a value', () => {
  it.each([
    ['plain', 'plain', true],
    ['', '', true],
    ['a\tb\nc\rd\r\ne', 'a b c d e', false],
    ['  two  blanks  ', '  two  blanks  ', true],
    ['&#9;&#10;&#13;&#x20;', '\t\n\r ', false],
    ['&lt;&gt;&amp;&quot;&apos;', '<>&"\'', false],
    ['&amp;lt;', '&lt;', false],
    ['&#x1F600;&#228;&#xE4;', '😀ää', false],
    ['ä€😀', 'ä€😀', true],
    ["it's", "it's", true],
    [`${'long '.repeat(20)}&amp;`, `${'long '.repeat(20)}&`, false],
  ])('%j', (written, value, plain) => {
    const source = readInside(`<g x="${written}"/>`);
    expect(readAttributeValue(source, 1, 'x')).toBe(value);
    expect(attributeIsPlain(source, findAttribute(source, 1, 'x'))).toBe(plain);
  });

  it('is found by namespace and local name', () => {
    const source = readInside(
      `<g xmlns:l="${XLINK_NAMESPACE}" xml:id="1" l:href="2" href="3"/><g id="4" xmlns:m="u" m:id="5"/>`,
    );
    expect([
      readAttributeValue(source, 1, 'id', XML_NAMESPACE),
      readAttributeValue(source, 1, 'href', XLINK_NAMESPACE),
      readAttributeValue(source, 1, 'href'),
      readAttributeValue(source, 1, 'id'),
      readAttributeValue(source, 1, 'l:href'),
      readAttributeValue(source, 2, 'id'),
      readAttributeValue(source, 2, 'id', 'u'),
    ]).toEqual(['1', '2', '3', null, null, '4', '5']);
    expect(findAttribute(source, 2, 'href')).toBe(-1);
  });
});

describe('text', () => {
  it.each([
    ['a&amp;b', 'a&b'],
    ['a<b>not this</b>c<b/>d', 'acd'],
    ['<![CDATA[<&amp;>]]>&#65;', '<&amp;>A'],
    ['a<!-- <b> -->b<?pi <b> ?>c', 'abc'],
    ['a\r\nb\rc\nd', 'a\nb\nc\nd'],
    ['&#13;', '\r'],
    ['<b/>', ''],
    ['', ''],
    ['<![CDATA[]]><![CDATA[ ]]>x]]&gt;', ' x]]>'],
  ])('%j', (inside, expected) => {
    expect(readText(readInside(`<text>${inside}</text>`), 1)).toBe(expected);
  });

  it('of an empty-element tag is nothing', () => {
    expect(readText(readInside('<text/>after'), 1)).toBe('');
  });
});

it('decodeReferences leaves names it does not know', () => {
  expect(decodeReferences('&a;&amp;&constructor;')).toBe('&a;&&constructor;');
});

it('elements are told by namespace and local name', () => {
  const source = readInside(`<s:path xmlns:s="${SVG_NAMESPACE}"/><path xmlns="u"/><path/>`);
  expect([1, 2, 3].map((row) => isSvgElement(source, row, 'path'))).toEqual([true, false, true]);
  expect(isSvgElement(source, 1, 's:path')).toBe(false);
  expect(elementName(source, 1)).toEqual({ namespace: SVG_NAMESPACE, local: 'path', qualified: 's:path' });
});
