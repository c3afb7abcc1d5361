// CWE-835 and CWE-409: references that go in circles, or that draw more than is written.
import { attackEach } from './attack-each.js';
import { drawCarton, type HostileCase, repeat } from './hostile-case.js';

const SPECK = '<rect x="40" y="35" width="1" height="1"/>';

function defined(defs: string, art: string): Uint8Array {
  return drawCarton({ first: `<defs>${defs}</defs>`, art });
}

/** Each link refers to the one before it `fan` times. */
function chain(
  links: number,
  fan: number,
  link: (i: number, inside: string) => string,
  refer: (i: number) => string,
): string {
  return repeat(links, (i) => link(i + 1, refer(i).repeat(fan)));
}

const usesOf = (i: number): string => `<use href="#l${i}"/>`;
const groupOf = (i: number, inside: string): string => `<g id="l${i}">${inside}</g>`;
const FIRST = `<g id="l0">${SPECK}</g>`;

/** A shape painted, cut or marked by the link before. */
const shapeWith =
  (property: string) =>
  (i: number): string =>
    `<rect ${property}="url(#l${i})" x="40" y="35" width="1" height="1"/>`;
const patternOf = (i: number, inside: string): string =>
  `<pattern id="l${i}" width="1" height="1" patternUnits="userSpaceOnUse">${inside}</pattern>`;
const clipOf = (i: number, inside: string): string => `<clipPath id="l${i}">${inside}</clipPath>`;
const maskOf = (i: number, inside: string): string => `<mask id="l${i}">${inside}</mask>`;
const markerOf = (i: number, inside: string): string =>
  `<marker id="l${i}" markerWidth="1" markerHeight="1">${inside}</marker>`;
const lineWith = (i: number): string => `<path marker-mid="url(#l${i})" d="M40 35h1h1h1" stroke="#333"/>`;

const KINDS = [
  ['patterns', patternOf, shapeWith('fill')],
  ['clip paths', clipOf, shapeWith('clip-path')],
  ['masks', maskOf, shapeWith('mask')],
  ['markers', markerOf, lineWith],
] as const;

const KIND_CASES = KINDS.flatMap(([plural, link, refer]): readonly HostileCase[] => [
  {
    name: `${plural} that double forty times`,
    make: () => defined(link(0, SPECK) + chain(40, 2, link, refer), refer(40)),
    ends: 'in-register',
  },
  {
    name: `a chain of two thousand ${plural}`,
    make: () => defined(link(0, SPECK) + chain(2_000, 1, link, refer), refer(2_000)),
    ends: plural === 'clip paths' ? 'limit/depth' : 'in-register',
  },
  {
    name: `a circle of ${plural}`,
    make: () => defined(link(1, refer(2)) + link(2, refer(1)), refer(1)),
    ends: 'in-register',
  },
  {
    name: `${plural}: one that refers to itself, on three thousand shapes`,
    make: () =>
      defined(
        link(1, refer(1)),
        repeat(3_000, () => refer(1)),
      ),
    ends: 'in-register',
    alone: true,
  },
]);

const CASES: readonly HostileCase[] = [
  {
    name: 'uses that double forty times',
    make: () => defined(FIRST + chain(40, 2, groupOf, usesOf), usesOf(40)),
    ends: 'limit/references',
  },
  {
    name: 'uses that double four hundred times',
    make: () => defined(FIRST + chain(240, 2, groupOf, usesOf), usesOf(240)),
    ends: 'limit/references',
  },
  {
    name: 'uses that double without ever drawing',
    make: () => defined(`<g id="l0"/>${chain(60, 2, groupOf, usesOf)}`, usesOf(60)),
    ends: 'limit/references',
  },
  {
    name: 'uses of one group of a thousand shapes, a thousand times',
    make: () => defined(`<g id="l0">${SPECK.repeat(1_000)}</g>`, usesOf(0).repeat(1_000)),
    ends: 'limit/references',
  },
  {
    name: 'a use of itself',
    make: () => defined('', '<use id="l1" href="#l1"/>'),
    ends: 'in-register resolve/reference-cycle',
  },
  {
    name: 'a use of the group around it',
    make: () => defined('', '<g id="l1"><use href="#l1"/></g>'),
    ends: 'in-register resolve/reference-cycle',
  },
  {
    name: 'a use of the whole drawing',
    make: () => drawCarton({ root: 'id="all"', art: '<use href="#all"/>' }),
    ends: 'in-register resolve/reference-cycle',
  },
  {
    name: 'a circle of a hundred uses, each twice',
    make: () =>
      defined(
        chain(100, 2, groupOf, (i) => usesOf(i === 0 ? 100 : i)),
        usesOf(1),
      ),
    ends: 'in-register resolve/reference-cycle',
  },
  {
    name: 'three thousand uses in circles of their own',
    make: () =>
      defined(
        '',
        repeat(3_000, (i) => `<g id="l${i}"><use href="#l${i}"/></g>`),
      ),
    ends: 'in-register resolve/reference-cycle',
    alone: true,
  },
  {
    name: 'symbols that double in viewports of their own',
    make: () =>
      defined(
        `<symbol id="l0" viewBox="0 0 9 9">${SPECK}</symbol>${chain(40, 2, (i, inside) => `<symbol id="l${i}" viewBox="0 0 9 9">${inside}</symbol>`, usesOf)}`,
        usesOf(40),
      ),
    ends: 'limit/references',
  },
  ...KIND_CASES,
  {
    name: 'gradients in a circle',
    make: () =>
      defined(
        '<linearGradient id="l1" href="#l2"/><linearGradient id="l2" href="#l1"/>',
        '<rect fill="url(#l1)" x="40" y="35" width="1" height="1"/>',
      ),
    ends: 'in-register',
  },
  {
    name: 'a chain of five thousand gradients',
    make: () =>
      defined(
        repeat(5_000, (i) => `<linearGradient id="l${i + 1}" href="#l${i}"/>`),
        '<rect fill="url(#l5000)" x="40" y="35" width="1" height="1"/>',
      ),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'clip paths on the content of clip paths and on themselves, doubling',
    make: () =>
      defined(
        `<clipPath id="l0">${SPECK}</clipPath>${repeat(16, (i) => `<clipPath id="l${i + 1}" clip-path="url(#l${i})"><rect clip-path="url(#l${i})" width="90" height="70" transform="rotate(1)"/></clipPath>`)}`,
        '<rect clip-path="url(#l16)" x="40" y="35" width="1" height="1"/>',
      ),
    ends: 'in-register',
  },
  {
    name: 'a clip path of three hundred turned shapes on three hundred turned shapes',
    make: () =>
      defined(
        `<clipPath id="l0">${repeat(300, '<path transform="rotate(1)" d="M0 0h90v70z"/>')}</clipPath>`,
        repeat(
          300,
          (i) =>
            `<g transform="rotate(${i / 1e5})"><rect clip-path="url(#l0)" x="40" y="35" width="1" height="1"/></g>`,
        ),
      ),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'clip paths in units of the box of a group of a thousand, a thousand times',
    make: () =>
      defined(
        '<clipPath id="l0" clipPathUnits="objectBoundingBox"><rect width="1" height="1"/></clipPath>',
        `${'<g clip-path="url(#l0)" transform="rotate(.001)">'.repeat(60)}${SPECK.repeat(2_000)}${'</g>'.repeat(60)}`,
      ),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'filters that refer to themselves',
    make: () =>
      defined(
        '<filter id="l1"><feImage href="#me"/></filter>',
        '<rect id="me" filter="url(#l1)" x="40" y="35" width="1" height="1"/>',
      ),
    ends: 'in-register resolve/filter-unmeasured',
  },
  {
    name: 'type on a path that is inside the type',
    make: () => defined('', '<text id="t" x="40" y="40"><textPath href="#t">a</textPath><tref href="#t"/></text>'),
    ends: 'in-register',
  },
  {
    name: 'five thousand references to nothing',
    make: () =>
      defined(
        '',
        repeat(5_000, (i) => `<rect fill="url(#n${i})" x="40" y="35" width="1" height="1"/>`),
      ),
    ends: 'in-register resolve/reference-missing',
    alone: true,
  },
  {
    name: 'one id ten thousand times, and a use of it',
    make: () => defined('', `${repeat(10_000, '<g id="l0"/>')}<use href="#l0"/>`),
    ends: 'in-register',
  },
];

attackEach('references', CASES);
