// CWE-776 and CWE-674: custom properties that double, or that name themselves.
import { attackEach } from './attack-each.js';
import { drawCarton, type HostileCase, repeat } from './hostile-case.js';

function styled(declarations: string, use = 'fill:var(--a);'): Uint8Array {
  return drawCarton({
    first: `<style>#root,#w{${declarations}}</style>`,
    art: `<g id="w"><rect style="${use}" x="40" y="35" width="1" height="1"/></g>`,
  });
}

const CASES: readonly HostileCase[] = [
  {
    name: 'a chain that doubles forty times',
    make: () => styled(`--a0:red;${repeat(40, (i) => `--a${i + 1}:var(--a${i}) var(--a${i});`)}`, 'fill:var(--a40)'),
    ends: 'in-register',
  },
  {
    name: 'a chain that doubles by its fallbacks',
    make: () =>
      styled(`--z:red;${repeat(40, (i) => `--a${i + 1}:var(--x,var(--a${i})var(--a${i}));`)}`, 'fill:var(--a40)'),
    ends: 'in-register',
  },
  {
    name: 'a chain of ten thousand',
    make: () => styled(`--a0:red;${repeat(10_000, (i) => `--a${i + 1}:var(--a${i});`)}`, 'fill:var(--a10000)'),
    ends: 'in-register',
  },
  {
    name: 'fallbacks in fallbacks, ten thousand deep',
    make: () => styled('', `fill:${'var(--x,'.repeat(10_000)}red${')'.repeat(10_000)}`),
    ends: 'in-register',
  },
  { name: 'a property that names itself', make: () => styled('--a:var(--a)'), ends: 'in-register' },
  {
    name: 'a circle of a thousand properties',
    make: () => styled(`${repeat(1_000, (i) => `--a${i}:var(--a${(i + 1) % 1_000});`)}`, 'fill:var(--a0)'),
    ends: 'in-register',
  },
  {
    name: 'doubling from level to level',
    make: () =>
      drawCarton({
        art: `<g style="--a:red">${repeat(60, '<g style="--b:var(--a) var(--a)"><g style="--a:var(--b) var(--b)">')}<rect style="fill:var(--a)" x="40" y="35" width="1" height="1"/>${'</g></g>'.repeat(60)}</g>`,
      }),
    ends: 'in-register',
  },
  {
    name: 'three thousand properties inherited by three thousand shapes',
    make: () =>
      drawCarton({
        first: `<style>#w{${repeat(3_000, (i) => `--a${i}:red;`)}}</style>`,
        art: `<g id="w">${repeat(3_000, (i) => `<rect style="--b:${i};fill:var(--a7)" x="40" y="35" width="1" height="1"/>`)}</g>`,
      }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a property of a megabyte used a hundred times',
    make: () =>
      drawCarton({
        first: `<style>#w{--a:${'x'.repeat(1_000_000)}}</style>`,
        art: `<g id="w">${repeat(100, (i) => `<rect style="--b${i}:1;fill:var(--a)" x="40" y="35" width="1" height="1"/>`)}</g>`,
      }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'properties named like parts of every object',
    make: () =>
      styled('--__proto__:red;--constructor:blue;--toString:red', 'fill:var(--__proto__);stroke:var(--hasOwnProperty)'),
    ends: 'in-register',
  },
];

attackEach('custom properties', CASES);
