// Comments, CDATA, instructions, the XML declaration and the document type: what is taken, what is refused and where.
import { describe, expect, it } from 'vitest';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { scanElements } from '../../../src/source/scan-elements.js';
import { findDoctype } from '../../../src/source/scan-markup.js';
import { DEFAULT_LIMITS } from '../../../src/source/source.js';
import { describeFault, slice } from './catch-fault.js';

function scan(document: string) {
  const text = encodeUtf8(document);
  const { declaration, doctype, instructions } = scanElements(text, { limits: DEFAULT_LIMITS });
  const cut = (range: readonly [number, number] | null): string | null => range && slice(text, range[0], range[1]);
  return { declaration: cut(declaration), doctype: cut(doctype), instructions: instructions.map(cut) };
}

const NOTHING = { declaration: null, doctype: null, instructions: [] };

describe('taken', () => {
  it.each([
    '<a><!----></a>',
    '<a><!-- - -> <b> & --></a>',
    '<!-- x --><a/><!-- y -->\n',
    '<a><![CDATA[]]></a>',
    '<a><![CDATA[<b> & ]] > ]]]></a>',
    '<a>]] > ></a>',
  ])('%s', (document) => {
    expect(scan(document)).toEqual(NOTHING);
  });

  it.each([
    '<?xml version="1.0"?>',
    "<?xml version='1.0' encoding='UTF-8' standalone='yes' ?>",
    '<?xml\n version = "1.0"\tstandalone="no"?>',
  ])('%s', (declaration) => {
    expect(scan(`${declaration}<a/>`)).toEqual({ ...NOTHING, declaration });
  });

  it('instructions, wherever they stand', () => {
    expect(scan('<?one?><a><?two x="?" > ?></a><?xml-three ?>').instructions).toEqual([
      '<?one?>',
      '<?two x="?" > ?>',
      '<?xml-three ?>',
    ]);
  });

  it.each([
    '<!DOCTYPE a>',
    '<!DOCTYPE a SYSTEM "x>">',
    '<!DOCTYPE a PUBLIC "x" \'y"\'>',
    '<!DOCTYPE a [ ]>',
    '<!DOCTYPE a [<!ELEMENT a ANY><!-- ]> --><?x ]> ?><!ENTITY b "]>">%c;\n]\n>',
  ])('%s', (doctype) => {
    expect(scan(`<!-- x -->\n${doctype}<a/>`)).toEqual({ ...NOTHING, doctype });
  });
});

describe('refused', () => {
  it.each([
    ['<a><!-- x', 4],
    ['<a><!-- x -></a>', 4],
    ['<a><!-- x ---></a>', 11],
    ['<a><!- x --></a>', 4],
    ['<a><![CDATA[ x</a>', 4],
    ['<a><![cdata[ ]]></a>', 4],
    ['<a/><![CDATA[ ]]>', 5],
    ['<a>x]]>y</a>', 5],
    ['<a><? x?></a>', 4],
    ['<a><?x</a>', 4],
    ['<a><?x+?></a>', 7],
    ['<a><?x:y ?></a>', 4],
    ['<a><?XML ?></a>', 4],
    ['<a><?xml version="1.0"?></a>', 4],
    ['<?xml?><a/>', 1],
    ['<?xml version="1.0"', 1],
    ['<?xml version="2.0"?><a/>', 1],
    ['<?xml version="1.1"?><a/>', 1],
    ['<?xml encoding="UTF-8"?><a/>', 1],
    ['<?xml version="1.0" standalone="yes" encoding="UTF-8"?><a/>', 1],
    ['<?xml version="1.0"encoding="UTF-8"?><a/>', 1],
    ['<?xml version="1.0" standalone="maybe"?><a/>', 1],
    ['<!DOCTYPEa><a/>', 1],
    ['<!DOCTYPE ><a/>', 11],
    ['<!DOCTYPE a', 12],
    ['<!DOCTYPE a "x><a/>', 13],
    ['<!DOCTYPE a (><a/>', 13],
    ['<!DOCTYPE a [', 14],
    ['<!DOCTYPE a [x]><a/>', 14],
    ['<!DOCTYPE a [<!ENTITY b "x]><a/>', 25],
    ['<!doctype a><a/>', 1],
    ['<!DOCTYPE a><!DOCTYPE a><a/>', 13],
    ['<a/><!DOCTYPE a>', 5],
  ])('%s at column %i', (document, column) => {
    expect(describeFault(() => scan(document))).toMatchObject({ code: 'source/malformed', line: 1, column });
  });
});

describe('findDoctype', () => {
  it.each([
    ['<a/>', null],
    ['', null],
    ['<a><!DOCTYPE a></a>', null],
    ['<!-- <!DOCTYPE a> --><a/>', null],
    ['<?x never closed', null],
    ['<!DOCTYPE a>', [0, 12]],
    ['<?xml version="1.0"?>\n<?x <!DOCTYPE b> ?><!DOCTYPE a []>', [41, 56]],
  ])('%s', (document, expected) => {
    expect(findDoctype(encodeUtf8(document))).toEqual(expected);
  });
});
