// The element table holds what stands in the file, and broken files are refused with line, column and caret.
import { describe, expect, it } from 'vitest';
import { decodeUtf8, encodeUtf8 } from '../../../src/model/platform.js';
import { PinbarError } from '../../../src/model/trouble.js';
import { scanElements } from '../../../src/source/scan-elements.js';
import { DEFAULT_LIMITS } from '../../../src/source/source.js';

function scan(text: string) {
  return scanElements(encodeUtf8(text), { limits: DEFAULT_LIMITS });
}

describe('the table', () => {
  const text = '<a x="1"><b y="2" z=\'3\'/>\n<c>t</c ></a>';
  const { elements } = scan(text);
  const slice = (start: number, end: number): string => decodeUtf8(encodeUtf8(text).subarray(start, end));

  it('knows heads, tails and ends to the byte', () => {
    const rows = [0, 1, 2].map((row) => ({
      head: slice(elements.start[row]!, elements.headEnd[row]!),
      tail: slice(elements.tailStart[row]!, elements.end[row]!),
    }));
    expect(rows).toEqual([
      { head: '<a x="1">', tail: '</a>' },
      { head: '<b y="2" z=\'3\'/>', tail: '' },
      { head: '<c>', tail: '</c >' },
    ]);
  });

  it('knows parents and the row after the last descendant', () => {
    expect([...elements.parent]).toEqual([-1, 0, 0]);
    expect([...elements.next]).toEqual([3, 2, 3]);
  });

  it('knows values without their quotes', () => {
    const { attributes } = elements;
    expect([...attributes.valueStart].map((start, a) => slice(start, attributes.valueEnd[a]!))).toEqual([
      '1',
      '2',
      '3',
    ]);
    expect([...elements.attributeStart]).toEqual([0, 1, 3, 3]);
  });

  it('tells names of one spelling in two namespaces apart', () => {
    const { elements: two } = scan('<a xmlns="u"><a xmlns="v"/><a/></a>');
    expect([...two.name].map((name) => two.names[name]!.namespace)).toEqual(['u', 'v', 'u']);
  });
});

describe('refusals', () => {
  it.each([
    ['<a b="1" b="2"/>', 1, 12],
    ['<a xmlns:p="u" xmlns:q="u" p:x="" q:x=""/>', 1, 39],
    ['<p:a/>', 1, 1],
    ['<a b="<"/>', 1, 7],
    ['<a>&</a>', 1, 4],
    ['<a>&nbsp;</a>', 1, 4],
    ['<a>&#0;</a>', 1, 4],
    ['<a>]]></a>', 1, 4],
    ['<a><!-- -- --></a>', 1, 9],
    ['<a b=1/>', 1, 6],
    ['<a b="1"c="2"/>', 1, 9],
    ['<a>\n <b>\n</a>', 3, 1],
    ['<a/><b/>', 1, 5],
    ['<a/>text', 1, 5],
    ['<a', 1, 1],
    [' <?xml version="1.0"?><a/>', 1, 2],
    ['<a xmlns:p=""/>', 1, 4],
  ])('%j at line %i, column %i', (text, line, column) => {
    let caught: unknown;
    try {
      scan(text);
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(PinbarError);
    const { code, message, findings } = caught as PinbarError;
    expect(code).toBe('source/malformed');
    expect(findings.at(-1)?.place).toEqual({ line, column });
    const [, shown, caret] = message.split('\n');
    expect(shown).toBe(text.split('\n')[line - 1]!);
    expect(caret).toBe(`${' '.repeat(column - 1)}^`);
  });

  it('counts columns in characters, not bytes', () => {
    expect(() => scan('<a>ä€😀&</a>')).toThrow('Line 1, column 7');
  });
});
