// CWE-1321: names that are parts of every object, wherever a file or a ticket can put a name.
import { attackEach } from './attack-each.js';
import { drawCarton, type HostileCase, repeat } from './hostile-case.js';

const NAMES = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'valueOf',
  'hasOwnProperty',
  '__defineGetter__',
  'then',
  'length',
  'get',
  'has',
];
const SPECK = (attributes: string): string => `<rect x="40" y="35" width="1" height="1" ${attributes}/>`;

const CASES: readonly HostileCase[] = [
  {
    name: 'as ids that are used',
    make: () => drawCarton({ art: NAMES.map((name) => `${SPECK(`id="${name}"`)}<use href="#${name}"/>`).join('') }),
    ends: 'in-register',
  },
  {
    name: 'as references to nothing',
    make: () =>
      drawCarton({
        art: NAMES.map((name) => SPECK(`fill="url(#${name})" clip-path="url(#${name})" mask="url(#${name})"`)).join(''),
      }),
    ends: 'in-register resolve/reference-missing',
  },
  {
    name: 'as classes',
    make: () =>
      drawCarton({
        first: `<style>${NAMES.map((name) => `.${name}{fill:red}`).join('')}</style>`,
        art: SPECK(`class="${NAMES.join(' ')}"`),
      }),
    ends: 'in-register',
  },
  {
    name: 'as classes that no rule knows',
    make: () => drawCarton({ first: '<style>.a{fill:red}</style>', art: SPECK(`class="${NAMES.join(' ')}"`) }),
    ends: 'in-register',
  },
  {
    name: 'as names of elements',
    make: () => drawCarton({ art: NAMES.map((name) => `<${name}/>`).join('') }),
    ends: 'in-register split/foreign-left-out',
  },
  {
    name: 'as names of attributes',
    make: () => drawCarton({ art: SPECK(NAMES.map((name) => `${name}="1"`).join(' ')) }),
    ends: 'in-register',
  },
  {
    name: 'as prefixes of namespaces',
    make: () => drawCarton({ art: NAMES.map((name) => `<g xmlns:${name}="${name}" ${name}:x="1"/>`).join('') }),
    ends: 'in-register',
  },
  {
    name: 'as namespaces',
    make: () => drawCarton({ art: NAMES.map((name) => `<g xmlns="${name}"/>`).join('') }),
    ends: 'in-register split/foreign-left-out',
  },
  {
    name: 'as prefixes that nobody declared',
    make: () => drawCarton({ art: '<constructor:g/>' }),
    ends: 'source/malformed',
  },
  {
    name: 'as properties',
    make: () => drawCarton({ art: SPECK(`style="${NAMES.map((name) => `${name}:red;`).join('')}"`) }),
    ends: 'in-register',
  },
  {
    name: 'as colours',
    make: () => drawCarton({ art: NAMES.map((name) => SPECK(`fill="${name}"`)).join('') }),
    ends: 'in-register resolve/colour-unknown',
  },
  {
    name: 'as units and lengths',
    make: () => drawCarton({ art: NAMES.map((name) => SPECK(`stroke-width="1${name}" rx="${name}"`)).join('') }),
    ends: 'in-register resolve/length-invalid',
  },
  {
    name: 'as transforms',
    make: () =>
      drawCarton({ art: NAMES.map((name) => SPECK(`transform="${name}(1)" style="transform:${name}(1)"`)).join('') }),
    ends: 'in-register resolve/transform-invalid',
  },
  {
    name: 'as selectors and pseudo-classes',
    make: () =>
      drawCarton({
        first: `<style>${NAMES.map((name) => `${name},[${name}],:${name},:${name}(a),::${name}{fill:red}`).join('')}</style>`,
      }),
    ends: 'in-register resolve/selector-unknown',
  },
  {
    name: 'as at-rules',
    make: () => drawCarton({ first: `<style>${NAMES.map((name) => `@${name} x{a{fill:red}}`).join('')}</style>` }),
    ends: 'in-register resolve/style-unreadable',
  },
  {
    name: 'as words of a viewBox and its alignment',
    make: () =>
      drawCarton({
        art: `<svg viewBox="__proto__ constructor 1 1" preserveAspectRatio="constructor toString" width="9" height="9" x="40" y="35">${SPECK('')}</svg>`,
      }),
    ends: 'in-register',
  },
  ...NAMES.map(
    (name): HostileCase => ({
      name: `${name} as name of a layer`,
      make: () => drawCarton({ last: `<g id="${name}">${SPECK('')}</g>` }),
      ends: 'answer-needed classify/unclaimed',
    }),
  ),
  {
    name: 'as layers that a ticket takes by name',
    make: () => drawCarton({ last: NAMES.map((name) => `<g id="${name}">${SPECK('')}</g>`).join('') }),
    ticket: {
      pinbar: 1,
      rules: [...NAMES.map((layer) => ({ layer, pass: 'cutting' })), { rest: true, pass: 'print' }],
    },
    ends: 'in-register',
  },
  {
    name: 'as passes',
    make: () => drawCarton({}),
    ticket: {
      pinbar: 1,
      passes: NAMES.slice(0, 3).map((name) => ({ name, role: 'cutting' })),
      rules: NAMES.slice(0, 3).map((pass, i) => (i === 0 ? { pass, rest: true } : { pass, layer: 'x' })),
    },
    ends: 'in-register',
  },
  {
    name: 'as keys of a ticket',
    make: () => drawCarton({}),
    ticket: JSON.parse('{"pinbar":1,"__proto__":{"compact":true},"constructor":1}') as unknown,
    ends: 'ticket/wrong',
  },
  {
    name: 'as severities of a ticket',
    make: () => drawCarton({}),
    ticket: JSON.parse('{"pinbar":1,"severities":{"__proto__":"note"}}') as unknown,
    ends: 'ticket/wrong',
  },
  {
    name: 'as roles of a ticket',
    make: () => drawCarton({}),
    ticket: { pinbar: 1, passes: [{ name: 'a', role: 'constructor' }] },
    ends: 'ticket/wrong',
  },
  {
    name: 'as ids, ten thousand times each',
    make: () => drawCarton({ art: repeat(10_000, (i) => `<g id="${NAMES[i % NAMES.length]}"/>`) }),
    ends: 'in-register',
  },
];

attackEach('names of every object', CASES);
