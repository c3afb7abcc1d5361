// Declarations of the internal subset: what counts, what is refused, and that odd ones end in an error of their own.
import { describe, expect, it } from 'vitest';
import { decodeUtf8, encodeUtf8 } from '../../../src/model/platform.js';
import { readDeclarations } from '../../../src/source/read-declarations.js';
import { DEFAULT_LIMITS } from '../../../src/source/source.js';
import { describeFault } from './catch-fault.js';

function declare(subset: string, limits = DEFAULT_LIMITS): Readonly<Record<string, string>> {
  const text = encodeUtf8(`<!DOCTYPE svg PUBLIC "a [" 'b' [${subset}]>`);
  const values = readDeclarations(text, [0, text.length], limits);
  return Object.fromEntries([...values].map(([name, value]) => [name, decodeUtf8(value)]));
}

describe('values', () => {
  it.each([
    ['<!ENTITY a "1">', { a: '1' }],
    ["<!ENTITY a '\"'>", { a: '"' }],
    ['<!ENTITY  a\n"1" >', { a: '1' }],
    ['<!ENTITY ä.b-1 "ö">', { 'ä.b-1': 'ö' }],
    ['<!ENTITY a "100% sure">', { a: '100% sure' }],
    ['<!ENTITY a "&#233;&amp;">', { a: '&#233;&amp;' }],
    ['<!ENTITY a ">]>">', { a: '>]>' }],
    ['<!ENTITY a "<!-- kept -->">', { a: '<!-- kept -->' }],
    ['<!ENTITY a "<g id=\'>\'><!-- <g> --><path/></g>">', { a: "<g id='>'><!-- <g> --><path/></g>" }],
    ['<!-- <!ENTITY a "1"> --><?x <!ENTITY b "1">?>', {}],
    ['<!ENTITY lt "&#38;#60;"><!ENTITY amp "&#38;#38;">', {}],
    ['<!ELEMENT g (a|b)*><!ATTLIST g x CDATA #IMPLIED y (a|b) #REQUIRED><!NOTATION n SYSTEM "x">', {}],
    ['', {}],
  ])('%s', (subset, expected) => {
    expect(declare(subset)).toEqual(expected);
  });
});

describe('refusals', () => {
  it.each([
    ['%p;', 2],
    ['<!ENTITY % p "x">', 2],
    ['<!ENTITY a "%p;">', 2],
    ['<!ELEMENT g %p;>', 2],
    ['<!ENTITY a "&b;">', 2],
    ['<!ENTITY a "&#38;b;">', 2],
    ['<!ENTITY a "&#x3C;g/>">', 2],
    ['<!ENTITY a "&#3">', 2],
    ['<!ENTITY a "&">', 2],
    ['<!ENTITY a "<">', 2],
    ['<!ENTITY a "<g">', 2],
    ['<!ENTITY a "<g>">', 2],
    ['<!ENTITY a "</g><g>">', 2],
    ['<!ENTITY a "<!--">', 2],
    ['<!ENTITY a "<![CDATA[">', 2],
    ['<!ENTITY a SYSTEM "x">', 2],
    ['<!ENTITY a PUBLIC "x" "y">', 2],
    ['<!ENTITY a SYSTEM "x" NDATA n>', 2],
    ['<!ENTITY a "1" b>', 2],
    ['<!ENTITY a>', 2],
    ['<!ATTLIST g x CDATA "1">', 2],
    ["<!ATTLIST g x CDATA #FIXED '1'>", 2],
    ['<!ENTITY a "1">\n<!ATTLIST g x (a|b) "a">', 3],
  ])('%s', (subset, line) => {
    expect(describeFault(() => declare(`\n${subset}`))).toMatchObject({
      code: 'source/entity-refused',
      line,
      column: 1,
    });
  });

  it.each(["'", '<', 'text', '<!ENTITY a "1"', '<!ENTITY a "', '<!-- ', '<?x ', '<!ELEMENT a <!ELEMENT b>>'])(
    'malformed: %s',
    (subset) => {
      expect(describeFault(() => declare(subset)).code).toBe('source/malformed');
    },
  );
});

describe('long document types', () => {
  it('a long way to the bracket', () => {
    expect(declare(`<!ENTITY a "1">${' '.repeat(10_000_000)}`)).toEqual({ a: '1' });
    const text = encodeUtf8(`<!DOCTYPE svg${' '.repeat(10_000_000)}[<!ENTITY a "1">]>`);
    expect(readDeclarations(text, [0, text.length], DEFAULT_LIMITS).size).toBe(1);
  });

  it('many declarations of one name count once', () => {
    const limits = { ...DEFAULT_LIMITS, entities: 1 };
    expect(declare('<!ENTITY a "1">'.repeat(5_000), limits)).toEqual({ a: '1' });
  });

  it('many attribute lists that never end', () => {
    expect(describeFault(() => declare('<!ATTLIST '.repeat(100_000))).code).toBe('source/malformed');
  });
});
