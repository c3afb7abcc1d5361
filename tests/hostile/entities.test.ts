// CWE-776 and CWE-611: entities that grow without bound, or that lie outside the file.
import { attackEach } from './attack-each.js';
import { drawCarton, type HostileCase, repeat } from './hostile-case.js';

function withDoctype(subset: string, art: string, outside = ''): Uint8Array {
  return drawCarton({ head: `<!DOCTYPE svg ${outside}[${subset}]>`, art });
}

/** Each entity names the one before it `fan` times. */
function chain(links: number, fan: number): string {
  return repeat(links, (i) => `<!ENTITY e${i + 1} "${repeat(fan, `&e${i};`)}">`);
}

const CASES: readonly HostileCase[] = [
  {
    name: 'one long entity used a hundred thousand times',
    make: () => withDoctype(`<!ENTITY a "${'x'.repeat(4000)}">`, `<desc>${repeat(100_000, '&a;')}</desc>`),
    ends: 'limit/entity-total',
  },
  {
    name: 'one entity of a megabyte',
    make: () => withDoctype(`<!ENTITY a "${'x'.repeat(1_000_000)}">`, '<desc>&a;</desc>'),
    ends: 'limit/entity-length',
  },
  {
    name: 'a hundred thousand entities',
    make: () =>
      withDoctype(
        repeat(100_000, (i) => `<!ENTITY a${i} "x">`),
        '<desc>&a7;</desc>',
      ),
    ends: 'limit/entity-count',
  },
  {
    name: 'ten thousand declarations that nobody uses',
    make: () => withDoctype(repeat(10_000, '<!ENTITY amp "&#38;#38;"><!NOTATION n SYSTEM "n">'), ''),
    ends: 'in-register',
  },
  {
    name: 'nested entities, ten deep and ten wide',
    make: () => withDoctype(`<!ENTITY e0 "ha">${chain(10, 10)}`, '<desc>&e10;</desc>'),
    ends: 'source/entity-refused',
  },
  {
    name: 'a chain of ten thousand entities',
    make: () => withDoctype(`<!ENTITY e0 "ha">${chain(10_000, 1)}`, '<desc>&e10000;</desc>'),
    ends: 'source/entity-refused',
  },
  {
    name: 'two entities that name each other',
    make: () => withDoctype('<!ENTITY a "&b;"><!ENTITY b "&a;">', '<desc>&a;</desc>'),
    ends: 'source/entity-refused',
  },
  {
    name: 'an entity that names itself by a number of the ampersand',
    make: () => withDoctype('<!ENTITY a "&#38;a;">', '<desc>&a;</desc>'),
    ends: 'source/entity-refused',
  },
  {
    name: 'an entity that writes markup by numbers',
    make: () => withDoctype('<!ENTITY a "&#60;script>alert(1)&#60;/script>">', '<g>&a;</g>'),
    ends: 'source/entity-refused',
  },
  {
    name: 'an entity that is half a tag',
    make: () => withDoctype('<!ENTITY a "<script">', '<g>&a;>alert(1)</script></g>'),
    ends: 'source/entity-refused',
  },
  {
    name: 'an entity that holds a script',
    make: () => withDoctype("<!ENTITY a '<script>alert(1)</script>'>", '<g>&a;</g>'),
    ends: 'in-register split/script-removed',
  },
  {
    name: 'an entity in a handler and in an address',
    make: () =>
      withDoctype(
        '<!ENTITY a "java"><!ENTITY b "script:alert(1)">',
        '<a xlink:href="&a;&b;"><rect onclick="&b;" x="40" y="35" width="2" height="2"/></a>',
      ),
    ends: 'in-register split/handler-removed split/outside-reference-removed',
  },
  {
    name: 'an entity in a file of the machine',
    make: () => withDoctype('<!ENTITY a SYSTEM "file:///etc/passwd">', '<text>&a;</text>'),
    ends: 'source/entity-refused',
  },
  {
    name: 'an entity on the network',
    make: () => withDoctype('<!ENTITY a PUBLIC "-//X//Y" "http://127.0.0.1:9/x">', '<text>&a;</text>'),
    ends: 'source/entity-refused',
  },
  {
    name: 'an unparsed entity',
    make: () => withDoctype('<!NOTATION n SYSTEM "n"><!ENTITY a SYSTEM "x.png" NDATA n>', ''),
    ends: 'source/entity-refused',
  },
  {
    name: 'a document type outside the file',
    make: () => withDoctype('', '', 'SYSTEM "file:///etc/passwd" '),
    ends: 'in-register source/doctype-removed',
  },
  {
    name: 'an entity that only a document type outside would declare',
    make: () => withDoctype('', '<text>&a;</text>', 'SYSTEM "http://127.0.0.1:9/x.dtd" '),
    ends: 'source/malformed',
  },
  {
    name: 'a parameter entity that fetches declarations',
    make: () => withDoctype('<!ENTITY % p SYSTEM "http://127.0.0.1:9/x.dtd"> %p;', '<text>&a;</text>'),
    ends: 'source/entity-refused',
  },
  {
    name: 'parameter entities that double',
    make: () =>
      withDoctype(`<!ENTITY % e0 "x">${repeat(40, (i) => `<!ENTITY % e${i + 1} "%e${i};%e${i};">`)}%e40;`, ''),
    ends: 'source/entity-refused',
  },
  {
    name: 'a parameter entity used in a declaration',
    make: () => withDoctype('%p;<!ATTLIST svg %a;>', ''),
    ends: 'source/entity-refused',
  },
  {
    name: 'handlers as default values of attributes',
    make: () => withDoctype('<!ATTLIST rect onclick CDATA "alert(1)">', ''),
    ends: 'source/entity-refused',
  },
  {
    name: 'entities named like parts of every object',
    make: () =>
      withDoctype(
        '<!ENTITY __proto__ "a"><!ENTITY constructor "b"><!ENTITY toString "c">',
        '<desc>&__proto__;&constructor;&toString;</desc>',
      ),
    ends: 'in-register',
  },
  {
    name: 'a name like a part of every object that nobody declared',
    make: () => withDoctype('<!ENTITY a "a">', '<desc>&constructor;</desc>'),
    ends: 'source/malformed',
  },
  {
    name: 'a million ampersands without an end',
    make: () => withDoctype('<!ENTITY a "a">', `<desc>${'&'.repeat(1_000_000)}</desc>`),
    ends: 'source/malformed',
  },
];

attackEach('entities', CASES);
