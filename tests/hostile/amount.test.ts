// CWE-770 and CWE-400: more of everything than a drawing has.
import { attackEach } from './attack-each.js';
import { drawCarton, type HostileCase, repeat } from './hostile-case.js';

const MILLION = 1_000_000;

const CASES: readonly HostileCase[] = [
  {
    name: 'a million empty groups',
    make: () => drawCarton({ art: repeat(MILLION, '<g/>') }),
    ends: 'limit/elements',
    alone: true,
  },
  {
    name: 'a million paths',
    make: () => drawCarton({ art: repeat(MILLION, '<path d="M40 35h1"/>') }),
    ends: 'limit/elements',
    alone: true,
  },
  {
    name: 'a hundred thousand elements of as many names',
    make: () => drawCarton({ art: repeat(MILLION / 10, (i) => `<e${i}/>`) }),
    ends: 'in-register split/foreign-left-out',
    alone: true,
  },
  {
    name: 'a million attributes on one element',
    make: () => drawCarton({ art: `<rect ${repeat(MILLION, (i) => `a${i}="" `)}/>` }),
    ends: 'limit/attributes',
    alone: true,
  },
  {
    name: 'a million attributes on a thousand elements',
    make: () => drawCarton({ art: repeat(1000, `<g ${repeat(1000, (i) => `a${i}="" `)}/>`) }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'the same attribute twice among a thousand',
    make: () => drawCarton({ art: `<rect ${repeat(1000, (i) => `a${i}="" `)} a999=""/>` }),
    ends: 'source/malformed',
  },
  {
    name: 'a million namespace declarations',
    make: () => drawCarton({ art: repeat(1000, `<g ${repeat(1000, (i) => `xmlns:n${i}="u" `)}/>`) }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'the same name under two prefixes',
    make: () => drawCarton({ art: '<g xmlns:a="u" xmlns:b="u" a:x="" b:x=""/>' }),
    ends: 'source/malformed',
  },
  {
    name: 'an attribute of sixteen megabytes',
    make: () => drawCarton({ art: `<desc x="${'x'.repeat(16 * MILLION)}"/>` }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'sixteen megabytes of text',
    make: () => drawCarton({ art: `<desc>${'x'.repeat(16 * MILLION)}</desc>` }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a name of a megabyte',
    make: () => drawCarton({ art: `<${'x'.repeat(MILLION)}/>` }),
    ends: 'in-register',
  },
  {
    name: 'a million comments',
    make: () => drawCarton({ art: repeat(MILLION, '<!---->') }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'two hundred thousand character references',
    make: () => drawCarton({ art: `<text x="40" y="40">${repeat(MILLION / 5, '&#x41;')}</text>` }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a hundred thousand CDATA sections',
    make: () => drawCarton({ first: `<style>${repeat(100_000, '<![CDATA[ ]]>')}</style>` }),
    ends: 'in-register',
  },
  {
    name: 'a hundred thousand instructions',
    make: () => drawCarton({ art: repeat(100_000, '<?x y?>') }),
    ends: 'in-register split/foreign-left-out',
  },
  {
    name: 'five thousand layers of one name',
    make: () => drawCarton({ last: repeat(5_000, '<g id="Art"><rect x="40" y="35" width="1" height="1"/></g>') }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'thirty thousand handlers',
    make: () => drawCarton({ art: repeat(30_000, '<g onclick="a()"/>') }),
    ends: 'in-register split/handler-removed',
    alone: true,
  },
  {
    name: 'ten thousand shapes without any gap',
    make: () => drawCarton({ art: repeat(10_000, '<rect x="40" y="35" width="1" height="1"/>') }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a line of type with fifty thousand positions',
    make: () => drawCarton({ art: `<text x="${'1 '.repeat(50_000)}" y="40">${'a'.repeat(50_000)}</text>` }),
    ends: 'answer-needed mark/no-room',
  },
  {
    name: 'a ladder of white space, sixteen megabytes',
    make: () => drawCarton({ art: ' '.repeat(16 * MILLION) }),
    ends: 'in-register',
    alone: true,
  },
];

attackEach('amount', CASES);
