// Documents about corners of SVG and CSS: what is written oddly, and what programs read differently.

const NAMES = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"';

function draw(body: string): string {
  return `<svg ${NAMES} width="200" height="100" viewBox="0 0 100 80">${body}</svg>`;
}

/** A rect and, in a group, a circle under a style sheet. */
function dress(css: string): string {
  const shapes =
    '<rect id="r" class="a b" x="3" y="4" width="10" height="20"/><g id="g"><circle id="c" r="5" cx="9" class="b"/></g>';
  return draw(`<style>${css.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</style>${shapes}`);
}

/** The same element with one value after the other. */
function vary(values: readonly string[], write: (value: string) => string): string {
  return draw(values.map((value) => write(value.replaceAll('"', '&quot;'))).join(''));
}

const SELECTORS = {
  has: 'g:has(circle) { fill: red } svg:has(> rect) { stroke: blue }',
  'nth of': ':nth-child(1 of .b) { fill: red } :nth-last-child(1) { stroke: lime }',
  where: ':where(rect.a) { fill: red } rect { fill: blue } :is(#r, .q) { stroke: red } .a.b { stroke: blue }',
  root: ':root { --c: red; fill: var(--c); } svg { stroke: blue } rect { stroke-width: var(--w, 3) }',
  attribute:
    '[class~="A" i] { fill: red } [class|="a"] { stroke-width: 9 } [cx] { fill: blue } [x="3"] { stroke: red }',
  namespace: '@namespace url(http://www.w3.org/2000/svg); rect { fill: red } *|circle { fill: blue } |g { fill: red }',
  case: 'RECT { fill: red } Rect { stroke: red } .A { stroke: blue } rect { FILL-OPACITY: 0.3; Stroke: RED }',
  unknown: 'rect:unknown, circle { fill: red } rect:hover { stroke: red } circle:not(:hover) { stroke: lime }',
  escapes: '#\\72  { fill: red } .\\61 { stroke: blue }',
} as const;

const SHEETS = {
  comments: '/* x */ rect /* y */ { fill /* */ : /* */ red /* */; stroke: re/**/d; } circle {;;fill:red;;}',
  broken:
    'rect { fill: red; stroke blue; stroke-width: 3 } } circle { fill: red } g { fill: ; stroke: } circle { stroke: blue',
  cycle:
    ':root { --a: var(--b); --b: var(--a); --e: initial } rect { stroke-width: var(--a, 5px); fill: var(--a); stroke: var(--e, red) }',
  custom:
    'svg { --c: 3px; --d: var(--c) } circle { stroke-width: var(--d); stroke-dasharray: var(--c) var(--d); fill: VAR(--x, lime) }',
  all: 'rect { fill: red; all: initial } circle { all: unset; stroke: red }',
  revert: 'rect { fill: revert } #r { stroke: revert-layer } g { fill: red } circle { fill: revert; stroke: unset }',
  font: 'rect { font: 30px serif; width: 2em } circle { mask: none; stroke: red; r: 1em }',
  calc: 'rect { stroke-width: calc(1px + 2mm); x: calc(2px * 3); fill-opacity: calc(0.5 * 0.5) }',
} as const;

const VALUES: Readonly<Record<string, string>> = {
  lengths: vary(
    [
      '10.',
      '1.e1',
      '1e1',
      '5.px',
      '5 ',
      '5 px',
      '5%px',
      '5m',
      '5x',
      '0x10',
      '1,5',
      '5;',
      '-5',
      'auto',
      'NaN',
      '1PC',
      '5q',
      '5rem',
      '--5',
      '+5',
    ],
    (value) => `<rect x="${value}" width="9" height="3"/><circle r="4" cy="${value}"/>`,
  ),
  strokes: vary(
    ['5 ', '5 px', '5;', '-5', '5mm', '.5', '5.', '1e1', '5 5', 'thin', '0', '-0', '5%', 'inherit', 'none'],
    (value) => `<path d="M0 0h5" stroke="red" stroke-width="${value}" stroke-miterlimit="${value}"/>`,
  ),
  dashes: vary(
    ['1,2,,3', '1 -2', '1.5e1mm', 'none', '5. 3.', '0', '0 0', '1;2', '1px -1', '1 2 , 3', '10% 2'],
    (value) => `<path d="M0 0h5" stroke="red" stroke-dasharray="${value}"/>`,
  ),
  shares: vary(
    ['0.5 ', '50%', '.5', '1.5', '-1', 'none', '0.5;', '1e-1', '0,5', 'inherit', '150%', '0.'],
    (value) => `<path d="M0 0h5" stroke="red" fill-opacity="${value}" opacity="${value}"/>`,
  ),
  colours: vary(
    [
      ...['red ', ' RED', '#F00', '#ff', '#ff0000ff', '#12345', '#abcd', 'rgb(100%,0%,0%)', 'rgb(1 2 3)', 'rgb(1,2 3)'],
      ...[
        'rgba(1,2,3,.5)',
        'rgb(1.6,2.4,3.5)',
        'rgb(300,-5,0)',
        'hsl(120,50%,50%)',
        'hsl(120deg 50% 50% / .5)',
        'none',
      ],
      ...['transparent', 'currentColor', 'inherit', 'ff0000', '0', 'url(#x)', 'red !important', 'grey', 'RGB(1,2,3)'],
      ...[
        'rgb(1,2,3)x',
        'hsl(1turn 50% 50%)',
        'rgb(none 2 3)',
        'rgb(1e2,0,0)',
        'rgb (1,2,3)',
        'rgb(1,2,3,50%)',
        'hwb(120 20% 30%)',
      ],
    ],
    (value) => `<path d="M0 0h5" fill="${value}"/>`,
  ),
  transforms: vary(
    [
      ...['', 'none', 'rotate(10 , 5 5)', 'translate(10px, 5px)', 'rotate(10deg)', 'scale(2) foo', 'scale(2)translate'],
      ...['matrix(1 0 0 1 1)', 'scale(0)', 'translate(1-2)', 'translate(10. 5.)', 'scale(1.e1)', 'rotate(.5.5.5)'],
      ...[
        'translate(1,,2)',
        'translate(,1)',
        'translate(1,)',
        'Translate(1)',
        'translate (1)',
        'translate(1) ,',
        'translate(1);',
      ],
    ],
    (value) => `<rect width="3" height="4" transform="${value}"/>`,
  ),
  'css transforms': vary(
    [
      ...[
        'transform: translate(10)',
        'transform: rotate(10)',
        'transform: scale(50%)',
        'transform: translate3d(1px,2px,3px)',
      ],
      ...[
        'transform: rotateZ(10deg) scale3d(2,2,1)',
        'transform: rotateX(60deg)',
        'rotate: z 10deg',
        'scale: 50% 2; translate: 10%',
      ],
      ...['transform: matrix3d(1,0,0,0,0,1,0,0,0,0,1,0,3,4,0,1)', 'transform: none', 'transform: rotate(0)', 'zoom: 2'],
    ],
    (value) => `<rect width="3" height="4" style="${value}" transform="translate(7 8)"/>`,
  ),
  paths: vary(
    [
      ...[
        'M0 0L10 10L5',
        'M0 0 10 10 20',
        'm5 5 5 5zl3 3',
        'L5 5',
        'M0 0A5 5 0 2 1 5 5',
        'M0 0a5 5 0 01.5.5',
        'M0 0h1e',
      ],
      ...[
        'M0,0,5,5',
        'M0 0z5 5',
        ' M 1.5.5-.5+3',
        'M0 0x',
        'none',
        'M10. 5L20. 30.',
        'M1e1.5h3',
        'M+5-5h+3',
        'M0 0h1E+1v1e-1',
      ],
    ],
    (value) => `<path d="${value}"/>`,
  ),
  viewBoxes: vary(
    [
      '0 0 10. 20.',
      '0,0,10,20,',
      '0 0 10 20 30',
      '0 0 10 20 x',
      '0px 0 10 20',
      '0 0 -10 20',
      'none',
      '0;0;10;20',
      ' 0,0 , 10 20 ',
    ],
    (value) => `<svg viewBox="${value}"><rect width="3" height="4"/></svg>`,
  ),
  alignments: vary(
    [
      'xMinYMin',
      'xMinYMin  slice',
      'xminymin',
      'none slice',
      'xMidYMid meet foo',
      ' xMaxYMax',
      'xMaxYMax,slice',
      'slice',
      '',
    ],
    (value) =>
      `<svg viewBox="0 0 10 20" width="50" height="40" preserveAspectRatio="${value}"><rect width="3" height="4"/></svg>`,
  ),
};

const STRUCTURES: Readonly<Record<string, string>> = {
  important: draw(
    '<style>rect { fill: red !important; stroke: red } #r { fill: blue } .a { stroke: lime !IMPORTANT }</style><rect id="r" class="a" style="fill: green; stroke: black" width="9" height="9"/>',
  ),
  inherit: draw(
    '<g opacity="0.3" stroke-dasharray="10%"><g opacity="inherit" style="x: 5px"><rect x="inherit" width="9" height="3" style="opacity: inherit; x: inherit; stroke-dasharray: inherit"/></g></g>',
  ),
  'nested svg with a transform': draw(
    '<svg transform="rotate(10)" x="3" y="4" width="40" height="30" viewBox="0 0 10 10"><rect width="3" height="4"/></svg><svg style="transform: rotate(10deg); transform-origin: 10px 10px" x="3" width="40" height="30"><rect width="3" height="4"/></svg>',
  ),
  'sizes of type': draw(
    '<g font-size="2em"><rect width="1em" height="1rem" stroke-width="0.1em"/><g style="font: italic bold 10px/2 serif"><rect width="2em" height="3em"/></g><g font-size="small"><rect width="1em" height="1em"/></g><g font-size="smaller"><rect width="1em" height="1em"/></g></g>',
  ),
  visibility: draw(
    '<g visibility="hidden"><rect width="3" height="3"/><circle r="3" visibility="visible"/><g display="none"><rect width="3" height="3" visibility="visible"/></g></g>',
  ),
  currentColor: draw(
    '<g color="red"><g color="currentColor"><rect fill="currentColor" width="3" height="3"/><rect style="fill: currentcolor; color: blue" width="3" height="3"/></g></g>',
  ),
  switch: draw(
    '<switch><rect systemLanguage="de" width="3" height="3"/><rect systemLanguage="" width="3" height="3"/><rect systemLanguage="en-US, fr" width="4" height="3"/><rect width="5" height="5"/></switch><g systemLanguage="fr"><rect width="3" height="3"/></g>',
  ),
  percentages: `<svg ${NAMES} width="200" height="100"><rect x="10%" y="10%" width="50%" height="50%" rx="10%" stroke-width="5%"/><svg width="50%" height="50%"><circle r="10%" cx="50%"/><svg viewBox="0 0 7 7" x="10%"><circle r="10%" cx="50%"/></svg></svg><symbol id="s"><circle r="10%"/></symbol><use href="#s" x="10%" width="50%"/></svg>`,
  uses: draw(
    '<rect id="a" width="3" height="4"/><circle id="k" r="4"/><use id="b" href="#a" x="5"/><use id="c" href="#b" x="5"/><use href="#c" transform="scale(2)"/><use href="#nope"/><use href="#d" id="d"/><use/><use href="#a" xlink:href="#k"/><use href=" #k "/>',
  ),
  'reference boxes that uses change': draw(
    '<defs><rect id="q" x="10" y="10" width="20" height="20" style="transform-box: stroke-box; transform: scale(2)"/></defs><use href="#q"/><use href="#q" stroke="red" stroke-width="4"/>',
  ),
  'ids twice': draw('<rect id="a" width="3" height="4"/><circle id="a" r="4"/><use href="#a"/>'),
  entities: `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY st "fill:red"><!ENTITY r "<rect width='5' height='3'/>">]><svg ${NAMES} width="100" height="50"><g style="&st;">&r;</g></svg>`,
  prefixes:
    '<s:svg xmlns:s="http://www.w3.org/2000/svg" width="100" height="50"><s:rect width="5" height="5"/><rect width="3" height="3"/><g xmlns="http://www.w3.org/2000/svg"><rect width="9" height="3"/></g></s:svg>',
  'in the wrong place': draw(
    '<foo><rect width="3" height="3"/></foo><metadata><rect width="3" height="3"/></metadata><g><title><rect width="3" height="3"/></title></g><rect width="3" height="3"><circle r="3"/></rect>',
  ),
};

/** What the two read differently, and why ours stays. */
export const DISAGREEMENTS: Readonly<Record<string, { readonly why: string; readonly text: string }>> = {
  medium: {
    why: 'The browser shows on a screen, pinbar prepares for a press: its medium is print.',
    text: dress('@media print { rect { fill: red } } @media screen { circle { fill: red } }'),
  },
  'css size of a nested svg': {
    why: 'x, y, width and height of a nested svg are properties (SVG 2, 8.5); the browser reads the attributes alone.',
    text: draw('<svg style="x: 5px; width: 50px; height: 50%" viewBox="0 0 10 10"><rect width="3" height="4"/></svg>'),
  },
  'profile colours': {
    why: 'The sRGB stand-in of a profile colour counts (SVG 1.1, 11.2); the browser drops the whole paint.',
    text: draw('<path d="M0 0h5" fill="#FF0000 icc-color(x,1,2)"/>'),
  },
  'commas between transforms': {
    why: 'Any number of commas may stand between transforms (SVG 1.1, 7.6); the browser allows one.',
    text: draw('<rect width="3" height="4" transform="translate(1),,scale(2)"/>'),
  },
  defer: {
    why: 'A leading defer has no meaning but on images (SVG 1.1, 7.8); the browser no longer knows it.',
    text: draw(
      '<svg viewBox="0 0 10 20" width="50" height="40" preserveAspectRatio="defer xMaxYMax"><rect width="3" height="4"/></svg>',
    ),
  },
  points: {
    why: 'Points are drawn up to the error (SVG 2, 9.5.4, for paths), with a finding; the browser draws none.',
    text: draw('<polyline points="0 0 5 5,9 x 3"/>'),
  },
  layers: {
    why: 'Cascade layers are not read; a finding says so.',
    text: dress('@layer x { rect { fill: red } } @layer y { rect { fill: green !important } }'),
  },
  'mixed colours': {
    why: 'color-mix() is not read; a finding says so.',
    text: dress('rect { fill: color-mix(in srgb, red 50%, blue) }'),
  },
};

/** Documents that both read alike, by what they are about. */
export function listCorners(): readonly (readonly [string, string])[] {
  const sheets = Object.entries({ ...SELECTORS, ...SHEETS }).map(([name, css]) => [name, dress(css)] as const);
  return [...sheets, ...Object.entries(VALUES), ...Object.entries(STRUCTURES)];
}
