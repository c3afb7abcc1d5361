// Offsets of the scanned text as places of the delivered file.
import { describe, expect, it } from 'vitest';
import { locate, placeOf } from '../../../src/source/locate.js';
import { readText } from './catch-fault.js';

describe('locate', () => {
  it('without entities counts lines and characters', () => {
    const source = readText('<svg xmlns="http://www.w3.org/2000/svg">\n  <!-- ä --><g/></svg>');
    expect(locate(source, source.elements.start[1]!)).toEqual({ line: 2, column: 13 });
  });

  const lines = ['<!DOCTYPE svg [<!ENTITY e "äö\nüü">]>', '<svg>&e;', ' &e;<a/>&e;<b id="&e;"/>', '<c/></svg>'];
  const source = readText(lines.join('\n'));
  const places = [1, 2, 3].map((row) => locate(source, source.elements.start[row]!));

  it('counts an entity with a line end as its reference', () => {
    expect(places).toEqual([
      { line: 4, column: 5 },
      { line: 4, column: 12 },
      { line: 5, column: 1 },
    ]);
  });

  it('tells the reference for what lies inside an entity', () => {
    const [, second] = source.expansions;
    expect(locate(source, second!.start + 3)).toEqual({ line: 4, column: 2 });
  });

  it('gives the same place as an error there', () => {
    const { start } = source.expansions[0]!;
    expect(locate(source, start)).toEqual({ line: 3, column: 6 });
  });
});

describe('placeOf', () => {
  const source = readText('<s:svg xmlns:s="http://www.w3.org/2000/svg">\n<s:g id="a&amp;b"/><s:g/></s:svg>');

  it('names the element as written, and its id', () => {
    expect(placeOf(source, 1)).toEqual({ line: 2, column: 1, element: 's:g', id: 'a&b' });
  });

  it('has no id where there is none', () => {
    expect(placeOf(source, 2)).toEqual({ line: 2, column: 20, element: 's:g' });
  });
});
