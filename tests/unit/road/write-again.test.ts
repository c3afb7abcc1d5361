// Copies that are written out: the pass again, under ids of its own, and what a copy could lose by it.
import { describe, expect, it } from 'vitest';
import { judge, PASS, readShapes, toBytes } from './two-copies.js';

describe('copies that are written out', () => {
  it('are the pass to the byte, then the pass without what is not drawn, under ids of their own', () => {
    const { form, text, first, second } = judge(PASS, 'written');
    expect({ form, first, second }).toEqual({ form: 'groups', first: [], second: [] });
    expect(text.replace(/\n/g, '')).toBe(
      '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 400 200">' +
        '<g id="pinbar-copy-1" transform="matrix(1 0 0 1 20 20)">' +
        '<defs><linearGradient id="fade"><stop stop-color="#cc0000"/></linearGradient></defs>' +
        '<g id="Art"><path d="M10 10H50V40Z" fill="url(#fade)"/><circle id="dot" cx="70" cy="20" r="6"/></g></g>' +
        '<g id="pinbar-copy-2" transform="matrix(-1 0 0 -1 220 120)">' +
        '<g id="Art-copy-2"><path d="M10 10H50V40Z" fill="url(#fade)"/><circle id="dot-copy-2" cx="70" cy="20" r="6"/></g></g>' +
        '</svg>',
    );
  });

  it.each([
    ['a copy that lies elsewhere', [['matrix(-1 0 0 -1 220 120)', 'matrix(-1 0 0 -1 220 120.01)']]],
    ['a copy that is turned', [['matrix(-1 0 0 -1 220 120)', 'matrix(1 0 0 1 100 40)']]],
    ['a first copy that lies elsewhere', [['matrix(1 0 0 1 20 20)', 'matrix(1 0 0 1 20.01 20)']]],
    ['a shape that is gone from a copy', [['<circle id="dot-copy-2" cx="70" cy="20" r="6"/>', '']]],
    [
      'a shape too many in a copy',
      [['<circle id="dot-copy-2"', '<rect width="5" height="5"/><circle id="dot-copy-2"']],
    ],
    [
      'a point that moved in a copy',
      [['<g id="Art-copy-2"><path d="M10 10H50', '<g id="Art-copy-2"><path d="M10 10H50.1']],
    ],
    ['a paint that changed in a copy', [['id="dot-copy-2"', 'id="dot-copy-2" fill="#00ff00"']]],
    ['a shape beside the copies', [['</svg>', '<rect width="5" height="5"/></svg>']]],
    ['an id that stands twice', [['dot-copy-2', 'dot']]],
    ['a group that moves what it holds', [['<g id="Art-copy-2"', '<g id="Art-copy-2" transform="translate(0.1)"']]],
    ['a hidden copy', [['<g id="pinbar-copy-2"', '<g display="none" id="pinbar-copy-2"']]],
  ] as const)('and damage is seen by each judge alone: %s', (_, damage) => {
    const { first, second } = judge(PASS, 'written', damage);
    expect(first).not.toEqual([]);
    expect(second).not.toEqual([]);
  });

  it('get other ids where the first choice is taken', () => {
    const taken = PASS.replace('id="Art"', 'id="dot-copy-2"');
    const { text, first, second } = judge(taken, 'written');
    expect(text).toContain('id="dot--copy-2"');
    expect([first, second]).toEqual([[], []]);
  });

  it('leave ids that the designer gave twice as they are, once in each copy', () => {
    const twice = PASS.replace('id="Art"', 'id="dot"');
    expect(judge(twice, 'written')).toMatchObject({ first: [], second: [] });
  });

  it('are found under a prefix of the namespace', () => {
    const prefixed = PASS.replace('xmlns=', 'xmlns:s=').replace(/<(\/?)(\w)/g, '<$1s:$2');
    for (const copies of ['written', 'referenced'] as const)
      expect(judge(prefixed, copies)).toMatchObject({ first: [], second: [] });
  });
});

/** Art whose paint hangs on what a copy could lose: definitions elsewhere, ids, classes, places among siblings. */
const HAZARDS: readonly (readonly [string, string])[] = [
  [
    'a gradient and a clip path',
    '<defs><linearGradient id="fade"><stop stop-color="#cc0000"/></linearGradient><clipPath id="cut-out"><circle cx="40" cy="40" r="20"/></clipPath></defs><g id="Art" clip-path="url(#cut-out)"><rect id="a" width="50" height="40" fill="url(#fade)" stroke="#0000cc"/></g>',
  ],
  ['a rule by id', '<style>#dot{fill:#ff0000}</style><g><circle id="dot" cx="30" cy="30" r="9"/></g>'],
  [
    'a rule by id within a group and a list',
    '<style>#Art .a, #dot, .b{fill:#ff0000;stroke:#00ff00}</style><g id="Art"><path class="a" d="M5 5h20v9z"/><circle id="dot" cx="30" cy="30" r="9"/></g><path class="b" d="M50 5h20v9z"/>',
  ],
  [
    'a rule by id for print alone',
    '<style>@media print{#dot{fill:#ff0000}}</style><g><circle id="dot" cx="30" cy="30" r="9"/></g>',
  ],
  [
    'a sheet for print alone',
    '<style media="print">#dot{fill:#ff0000}</style><g><circle id="dot" cx="30" cy="30" r="9"/></g>',
  ],
  [
    'a rule by the attribute',
    '<style>circle[id="dot"]{fill:#ff0000}</style><g><circle id="dot" cx="30" cy="30" r="9"/></g>',
  ],
  ['an escaped id', '<style>#\\31 st{fill:#ff0000}</style><g><circle id="1st" cx="30" cy="30" r="9"/></g>'],
  [
    'rules by id that weigh against each other',
    '<style>#Art #dot{fill:#ff0000}#dot.x{fill:#00ff00}#dot{fill:#0000ff}</style><g id="Art"><circle id="dot" class="x" cx="30" cy="30" r="9"/></g>',
  ],
  [
    'classes',
    '<style>.a{fill:#ff0000}.b{fill:#00ff00}</style><g><path class="a b" d="M5 5h20v9z"/><path class="a" d="M5 25h20v9z"/></g>',
  ],
  [
    'a place among siblings',
    '<style>g > :nth-child(2){fill:#ff0000}path + path{stroke:#00ff00}</style><g><path d="M5 5h20v9z"/><path d="M5 25h20v9z"/><path d="M5 45h20v9z"/></g>',
  ],
  [
    'a place among siblings, said among the definitions',
    '<defs><style>g > :nth-child(2), #mid{fill:#ff0000}</style></defs><g><path d="M5 5h20v9z"/><path d="M5 25h20v9z"/><path id="mid" d="M5 45h20v9z"/></g>',
  ],
  [
    'a place below the root',
    '<style>svg > :nth-child(3) path{fill:#ff0000}</style><g><path d="M5 5h20v9z"/></g><g><path d="M5 25h20v9z"/></g>',
  ],
  ['groups', '<style>g{fill:#ff0000}</style><path d="M50 5h20v9z"/><g><path d="M5 5h20v9z"/></g>'],
  ['children of the root', '<style>svg > g path{fill:#ff0000}</style><g><path d="M5 5h20v9z"/></g>'],
  ['lengths in percent', '<rect width="50%" height="40%" x="10%" fill="#ff0000"/>'],
  [
    'uses of the designer',
    '<defs><path id="p" d="M5 5h20v9z"/></defs><use href="#p"/><use href="#p" x="40" fill="#ff0000"/>',
  ],
  ['uses of what is drawn too', '<g id="p"><path id="q" d="M5 5h20v9z" fill="#ff0000"/></g><use href="#p" x="40"/>'],
  ['type with marked words', '<text id="t" x="10" y="30">One <tspan id="u" fill="#ff0000">two</tspan> three</text>'],
];

describe('hazards', () => {
  const draw = (inner: string): string =>
    `<svg xmlns="http://www.w3.org/2000/svg" id="top" width="60mm" height="40mm" viewBox="0 0 120 80">${inner}</svg>`;

  it.each(HAZARDS)('written out, both judges find each copy as the pass: %s', (_, inner) => {
    const pass = draw(inner);
    const { first, second, text } = judge(pass, 'written');
    expect([first, second]).toEqual([[], []]);
    const before = readShapes(toBytes(pass)).artwork.shapes;
    const after = readShapes(toBytes(text)).artwork.shapes;
    const paint = (shapes: typeof before) =>
      shapes.map(({ paint: { fill, stroke } }) => JSON.stringify([fill, stroke]));
    expect(paint(after)).toEqual([...paint(before), ...paint(before)]);
  });
});
