// Entities are written out where XML takes them in, and cannot reach past the place they are used.
import { describe, expect, it } from 'vitest';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { listReferences } from '../../../src/source/list-references.js';
import { readAttributeValue } from '../../../src/source/read-attribute.js';
import { describeFault, readText, slice } from './catch-fault.js';

const VALUES = new Map([
  ['a', encodeUtf8('one')],
  ['q', encodeUtf8('"\'')],
]);

function list(text: string): readonly (readonly [number, string])[] {
  return listReferences(encodeUtf8(text), 0, VALUES).map(({ at, value }) => [at, slice(value, 0, value.length)]);
}

describe('listReferences', () => {
  it.each([
    ['<g>&a;</g>', [[3, 'one']]],
    [
      '<g b="&a;" c=\'&a;\'/>',
      [
        [6, 'one'],
        [14, 'one'],
      ],
    ],
    [
      '<g b="\'&a;">&a;</g>',
      [
        [7, 'one'],
        [12, 'one'],
      ],
    ],
    ['<g b=">&a;"/>', [[7, 'one']]],
    ['<g><h/>&a;</g>', [[7, 'one']]],
    [
      '<g b="&q;" c=\'&q;\'>&q;</g>',
      [
        [6, "&quot;'"],
        [14, '"&#39;'],
        [19, '"\''],
      ],
    ],
  ])('%s', (text, expected) => {
    expect(list(text)).toEqual(expected);
  });

  it.each([
    ['&a;<g/>', 'before the root'],
    ['<g/>&a;', 'after an empty root'],
    ['<g></g>&a;', 'after the root'],
    ['<&a;/>', 'a name'],
    ['<g &a;/>', 'between attributes'],
    ['<g></&a;>', 'an end tag'],
    ['<g><!-- > &a; --><![CDATA[ > &a; ]]><? > &a; ?></g>', 'literal sections'],
    ['<g>&amp;&b;&#38;&a</g>', 'others'],
    [`<g>&a${' '.repeat(200)};</g>`, 'too long'],
    ['<g><!-- &a;', 'a comment without end'],
  ])('leaves %s: %s', (text) => {
    expect(list(text)).toEqual([]);
  });
});

describe('a file with entities', () => {
  const read = (value: string, body: string) =>
    readText(`<!DOCTYPE svg [<!ENTITY q '${value}'>]>\n<svg xmlns="http://www.w3.org/2000/svg">${body}</svg>`);

  it('keeps quotes of an entity inside the value it is used in', () => {
    const source = read('a" onload="x', '<g id="&q;"/>');
    expect(source.elements.attributes.count).toBe(2);
    expect(readAttributeValue(source, 1, 'id')).toBe('a" onload="x');
  });

  it.each(['<&q;/>', '<g &q;="1"/>', '<g></&q;>'])('refuses %s', (body) => {
    expect(describeFault(() => read('g', body))).toMatchObject({ code: 'source/malformed', line: 2 });
  });

  it('takes no root from an entity', () => {
    const text = '<!DOCTYPE svg [<!ENTITY q "<svg/>">]>\n&q;';
    expect(describeFault(() => readText(text))).toMatchObject({ code: 'source/malformed', line: 2, column: 1 });
  });

  it('takes whole elements', () => {
    const source = read('<g><path d="M0 0"/></g>', '&q;&q;');
    expect([...source.elements.parent]).toEqual([-1, 0, 1, 0, 3]);
  });
});
