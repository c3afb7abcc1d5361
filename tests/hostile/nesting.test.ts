// CWE-674: nesting that exhausts the stack.
import { attackEach } from './attack-each.js';
import { drawCarton, type HostileCase } from './hostile-case.js';

function nest(depth: number, open: string, inside: string, close: string): string {
  return open.repeat(depth) + inside + close.repeat(depth);
}

const SPECK = '<rect x="40" y="35" width="2" height="2"/>';

const CASES: readonly HostileCase[] = [
  {
    name: 'a million groups in each other',
    make: () => drawCarton({ art: nest(1_000_000, '<g>', SPECK, '</g>') }),
    ends: 'limit/depth',
  },
  {
    name: 'a million groups that never end',
    make: () => drawCarton({ art: '<g>'.repeat(1_000_000) }),
    ends: 'limit/depth',
  },
  {
    name: 'groups as deep as is allowed',
    make: () => drawCarton({ art: nest(250, '<g transform="scale(1)" opacity=".9">', SPECK, '</g>') }),
    ends: 'in-register',
  },
  {
    name: 'drawings in drawings as deep as is allowed',
    make: () => drawCarton({ art: nest(250, '<svg width="100%" viewBox="0 0 100 80">', SPECK, '</svg>') }),
    ends: 'in-register',
  },
  {
    name: 'foreign elements in each other',
    make: () => drawCarton({ art: nest(100_000, '<x:y xmlns:x="x">', '', '</x:y>') }),
    ends: 'limit/depth',
  },
  {
    name: 'namespaces declared anew on every level',
    make: () => drawCarton({ art: nest(240, '<g xmlns:a="a" xmlns:b="b" xmlns:c="c" a:x="" b:x="">', SPECK, '</g>') }),
    ends: 'in-register',
  },
  {
    name: 'uses in uses deeper than is allowed',
    make: () => {
      const links = Array.from({ length: 600 }, (_, i) => `<g id="u${i + 1}"><use href="#u${i}"/></g>`).join('');
      return drawCarton({ first: `<defs><g id="u0">${SPECK}</g>${links}</defs>`, art: '<use href="#u600"/>' });
    },
    ends: 'limit/depth',
  },
  {
    name: 'brackets in a style sheet, three hundred thousand deep',
    make: () => drawCarton({ first: `<style>#ground{--x:${'('.repeat(300_000)}}</style>` }),
    ends: 'in-register',
  },
  {
    name: 'rules in rules, a hundred thousand deep',
    make: () => drawCarton({ first: `<style>${'@media print{'.repeat(100_000)}#ground{fill:red}</style>` }),
    ends: 'limit/selectors',
  },
  {
    name: ':not in :not, a hundred thousand deep',
    make: () => drawCarton({ first: `<style>${':not('.repeat(100_000)}a${')'.repeat(100_000)}{fill:red}</style>` }),
    ends: 'in-register',
  },
  {
    name: 'rules nested in a rule, ten thousand deep',
    make: () => drawCarton({ first: `<style>#ground{${'&amp;{'.repeat(10_000)}fill:red</style>` }),
    ends: 'in-register',
  },
  {
    name: 'calc in calc, a hundred thousand deep',
    make: () =>
      drawCarton({
        art: `<rect style="stroke-width:${nest(100_000, 'calc(', '1px', ')')}" x="40" y="35" width="2" height="2"/>`,
      }),
    ends: 'in-register',
  },
  {
    name: 'brackets in a transform, a million deep',
    make: () =>
      drawCarton({ art: `<rect transform="${'translate('.repeat(1_000_000)}" x="40" y="35" width="2" height="2"/>` }),
    ends: 'in-register resolve/transform-invalid',
  },
  {
    name: 'colours in colours',
    make: () =>
      drawCarton({
        art: `<rect fill="${nest(50_000, 'color-mix(in srgb,', 'red', ',red)')}" x="40" y="35" width="2" height="2"/>`,
      }),
    ends: 'in-register',
  },
];

attackEach('nesting', CASES);
