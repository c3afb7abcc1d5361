// CWE-1284 and CWE-190: numbers that are none, or too large, and paths without end.

import { encodeUtf8 } from '../../src/model/platform.js';
import { attackEach } from './attack-each.js';
import { drawCarton, type HostileCase, repeat } from './hostile-case.js';

function path(d: string, more = ''): Uint8Array {
  return drawCarton({ art: `<path fill="none" stroke="#333" stroke-width=".2" ${more} d="${d}"/>` });
}

function rect(attributes: string): Uint8Array {
  return drawCarton({ art: `<rect x="40" y="35" width="2" height="2" ${attributes}/>` });
}

/** A point of a spiral whose turns lie nearer to each other than the line is wide. */
function turn(i: number): string {
  const [angle, radius] = [i / 20, i / 4000];
  return `L${(50 + radius * Math.cos(angle)).toFixed(3)} ${(40 + radius * Math.sin(angle)).toFixed(3)}`;
}

const CASES: readonly HostileCase[] = [
  {
    name: 'two hundred thousand segments',
    make: () => path(`M40 35${'h.1h-.1'.repeat(100_000)}`),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a stroke of three hundred turns over its own width',
    make: () => path(`M50 40${repeat(40_000, turn)}`, 'stroke-linejoin="round"'),
    ends: 'in-register check/bleed-unchecked',
    alone: true,
  },
  {
    name: 'fifty thousand curves',
    make: () => path(`M40 35${'c1 1 1-1 0 0'.repeat(50_000)}`),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'thirty thousand arcs',
    make: () => path(`M40 35${'a1 1 0 011 0z'.repeat(30_000)}`),
    ends: 'in-register',
    alone: true,
  },
  { name: 'fifty thousand subpaths', make: () => path('M40 35h1z'.repeat(50_000)), ends: 'in-register', alone: true },
  {
    name: 'a number of four hundred thousand digits',
    make: () => path(`M40 35h.${'1'.repeat(400_000)}`),
    ends: 'in-register',
  },
  { name: 'a number of a million zeros', make: () => path(`M40 35h${'0'.repeat(1_000_000)}1`), ends: 'in-register' },
  {
    name: 'numbers run together, two hundred thousand',
    make: () => path(`M40 35l${'.1'.repeat(200_000)}`),
    ends: 'answer-needed mark/no-room',
  },
  { name: 'NaN in a path', make: () => path('M40 35 LNaN NaN 42 36'), ends: 'in-register resolve/path-broken' },
  { name: 'Infinity in a path', make: () => path('M40 35 LInfinity 0'), ends: 'in-register resolve/path-broken' },
  { name: '1e400 in a path', make: () => path('M40 35 L1e400 0'), ends: 'in-register resolve/path-broken' },
  {
    name: '1e308 in a path, and back',
    make: () => path('M40 35 l1e308 0 1e308 0 -1e308 0'),
    ends: 'in-register resolve/path-broken',
  },
  { name: '1e-400 in a path', make: () => path('M40 35 l1e-400 1'), ends: 'in-register' },
  {
    name: 'an exponent of four hundred thousand digits',
    make: () => path(`M40 35 l1e-${'9'.repeat(400_000)} 1`),
    ends: 'in-register',
  },
  { name: 'arcs with radii of 1e400', make: () => path('M40 35 A1e400 1e400 0 0 1 42 36'), ends: 'in-register' },
  { name: 'arcs with radii of 1e-300', make: () => path('M40 35 A1e-300 1e-300 1e300 0 1 42 36'), ends: 'in-register' },
  {
    name: 'a million commands in a row',
    make: () => path('M'.repeat(1_000_000)),
    ends: 'in-register resolve/path-broken',
  },
  {
    name: 'a million closings',
    make: () => path(`M40 35h1${'z'.repeat(1_000_000)}`),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a polygon of a hundred thousand points',
    make: () => drawCarton({ art: `<polygon points="${'40 35 41 36 '.repeat(50_000)}"/>` }),
    ends: 'in-register',
    alone: true,
  },
  {
    name: 'a thick line of four thousand turns',
    make: () => path(`M40 35${'l.1.1-.1.1'.repeat(2_000)}`, 'stroke-linejoin="round"').slice(),
    ends: 'answer-needed',
    alone: true,
  },
  {
    name: 'a dash list of two hundred thousand lengths',
    make: () => path('M40 35h3', `stroke-dasharray="${'.1 '.repeat(200_000)}"`),
    ends: 'in-register',
    alone: true,
  },
  { name: 'dashes of 1e-300', make: () => path('M40 35h3', 'stroke-dasharray="1e-300"'), ends: 'in-register' },
  {
    name: 'a line width of 1e400',
    make: () => path('M40 35h3', 'style="stroke-width:1e400"'),
    ends: 'in-register resolve/length-invalid',
  },
  {
    name: 'a miter limit of 1e308',
    make: () => path('M40 35h3l-3 1e-9', 'stroke-miterlimit="1e308"'),
    ends: 'answer-needed mark/no-room',
  },
  {
    name: 'a width of NaN',
    make: () => rect('rx="NaN" ry="NaN" stroke-width="NaN"'),
    ends: 'in-register resolve/length-invalid',
  },
  { name: 'a place of 1e400', make: () => rect('transform="translate(1e400)"'), ends: 'in-register' },
  { name: 'a scale of 1e308 twice', make: () => rect('transform="scale(1e308) scale(1e308)"'), ends: 'in-register' },
  { name: 'a scale of zero', make: () => rect('transform="scale(0)"'), ends: 'in-register' },
  {
    name: 'lengths in units nobody knows',
    make: () => rect('rx="1parsec" ry="1e400em"'),
    ends: 'in-register resolve/length-invalid',
  },
  {
    name: 'an artboard of 1e400 mm',
    make: () =>
      encodeUtf8(
        '<svg xmlns="http://www.w3.org/2000/svg" width="1e400mm" height="1e400mm"><g id="Cut"><path d="M0 0h1" stroke="red" fill="none"/></g></svg>',
      ),
    ends: 'answer-needed',
  },
  {
    name: 'a viewBox of NaN and 1e400',
    make: () =>
      encodeUtf8(
        '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm" viewBox="NaN 0 1e400 -1"><g id="Cut"><path d="M0 0h1" stroke="red" fill="none"/></g></svg>',
      ),
    ends: 'answer-needed',
  },
  {
    name: 'a negative artboard',
    make: () =>
      encodeUtf8(
        '<svg xmlns="http://www.w3.org/2000/svg" width="-9mm" height="-9mm" viewBox="0 0 9 9"><g id="Cut"><path d="M0 0h1" stroke="red" fill="none"/></g></svg>',
      ),
    ends: 'answer-needed',
  },
  {
    name: 'an artboard of 1e-300 mm',
    make: () =>
      encodeUtf8(
        '<svg xmlns="http://www.w3.org/2000/svg" width="1e-300mm" height="1e-300mm" viewBox="0 0 1e300 1e300"><g id="Cut"><path d="M0 0h1" stroke="red" fill="none"/></g></svg>',
      ),
    ends: 'refused classify/no-sheet classify/draws-nothing',
  },
];

attackEach('numbers and paths', CASES);
