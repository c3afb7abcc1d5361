// Computed values, property by property.
import { describe, expect, test } from 'vitest';
import { styleDocument } from './compute-style.js';

/** The style of one path with the given attributes inside a group with the given attributes. */
function styleOf(attributes: string, around = '') {
  return styleDocument(`<g id="g" ${around}><path id="p" ${attributes}/></g>`).style('p');
}

test('initial values', () => {
  const style = styleOf('');
  // SVG 2, sections 13.4 to 13.7.
  expect(style.paint).toEqual({
    fill: { kind: 'colour', colour: { key: '#000000', rgb: [0, 0, 0], alpha: 1 } },
    stroke: { kind: 'none' },
    fillOpacity: 1,
    strokeOpacity: 1,
    fillRule: 'nonzero',
    strokeWidth: 1,
    strokeLinecap: 'butt',
    strokeLinejoin: 'miter',
    strokeMiterlimit: 4,
    strokeDasharray: [],
    strokeDashoffset: 0,
    nonScalingStroke: false,
  });
  expect(style).toMatchObject({
    strokePercent: null,
    visibility: 'visible',
    display: 'inline',
    opacity: 1,
    fontSize: 16,
    transform: null,
    transformBefore: null,
    transformOrigin: null,
    transformBox: 'view-box',
    clipPath: null,
    mask: null,
    filter: null,
    overflow: 'visible',
    vectorEffect: 'none',
    markers: { start: null, mid: null, end: null },
    clipRule: 'nonzero',
    references: [],
  });
  expect(Object.values(style.geometry).every((value) => value === null)).toBe(true);
});

describe('strokes', () => {
  test.each([
    ['stroke-width="0.25mm"', { strokeWidth: (0.25 * 96) / 25.4 }],
    ['stroke-width="0"', { strokeWidth: 0 }],
    ['style="stroke-width:3"', { strokeWidth: 3 }],
    ['stroke-width="2em" font-size="10"', { strokeWidth: 20 }],
    ['stroke-width="calc(1px + 1em)" style="font-size:10px"', { strokeWidth: 11 }],
    ['stroke-width="-1"', { strokeWidth: 1 }],
    ['stroke-width="1 2"', { strokeWidth: 1 }],
    ['stroke-miterlimit="10"', { strokeMiterlimit: 10 }],
    ['stroke-miterlimit="-1"', { strokeMiterlimit: 4 }],
    ['stroke-linecap="ROUND"', { strokeLinecap: 'round' }],
    ['stroke-linejoin="bevel"', { strokeLinejoin: 'bevel' }],
    ['stroke-dasharray="3, 4 5"', { strokeDasharray: [3, 4, 5] }],
    ['stroke-dasharray="1mm,2mm"', { strokeDasharray: [96 / 25.4, (2 * 96) / 25.4] }],
    ['style="stroke-dasharray:1px 2"', { strokeDasharray: [1, 2] }],
    ['stroke-dasharray="0 0"', { strokeDasharray: [] }],
    ['stroke-dasharray="0 1"', { strokeDasharray: [0, 1] }],
    ['stroke-dasharray="none"', { strokeDasharray: [] }],
    ['stroke-dasharray="1 -2"', { strokeDasharray: [] }],
    ['stroke-dasharray="1,,2"', { strokeDasharray: [] }],
    ['stroke-dashoffset="-2"', { strokeDashoffset: -2 }],
    ['stroke-opacity="50%"', { strokeOpacity: 0.5 }],
    ['fill-opacity="1.5"', { fillOpacity: 1 }],
    ['fill-opacity="-1"', { fillOpacity: 0 }],
    ['fill-opacity=".5"', { fillOpacity: 0.5 }],
    ['fill-rule="evenodd"', { fillRule: 'evenodd' }],
    ['vector-effect="non-scaling-stroke"', { nonScalingStroke: true }],
    ['style="vector-effect: non-scaling-size non-scaling-stroke"', { nonScalingStroke: true }],
  ])('%s', (attributes, paint) => {
    expect(styleOf(attributes).paint).toMatchObject(paint);
  });

  test('a length relative to type is settled where it stands', () => {
    expect(styleOf('font-size="50"', 'font-size="10" stroke-width="2em"').paint.strokeWidth).toBe(20);
  });

  test('vector-effect is not inherited', () => {
    expect(styleOf('', 'vector-effect="non-scaling-stroke"').paint.nonScalingStroke).toBe(false);
  });
});

describe('paint', () => {
  const DEFS =
    '<linearGradient id="l"/><pattern id="t"/><path id="x"/><radialGradient id="a b"/><rect id="d"/><pattern id="d"/>';

  test.each([
    ['url(#l)', { kind: 'server', id: 'l', fallback: null }],
    ['url("#t")', { kind: 'server', id: 't', fallback: null }],
    ["url( '#t' ) none", { kind: 'server', id: 't', fallback: null }],
    ['url(#a%20b)', { kind: 'server', id: 'a b', fallback: null }],
    ['url(#x)', { kind: 'missing', id: 'x', fallback: null }],
    ['url(#d)', { kind: 'missing', id: 'd', fallback: null }],
    [
      'url(#nowhere) #f00',
      { kind: 'missing', id: 'nowhere', fallback: { key: '#ff0000', rgb: [255, 0, 0], alpha: 1 } },
    ],
    ['url(#l) currentColor', { kind: 'server', id: 'l', fallback: { key: '#0000ff', rgb: [0, 0, 255], alpha: 1 } }],
    ['url(other.svg#l)', { kind: 'missing', id: 'other.svg#l', fallback: null }],
    ['NONE', { kind: 'none' }],
    ['context-fill', { kind: 'none' }],
    ['transparent', { kind: 'colour', colour: { key: '#000000', rgb: [0, 0, 0], alpha: 0 } }],
  ])('%s', (fill, source) => {
    const { style } = styleDocument(
      `<defs>${DEFS}</defs><path id="p" color="blue" fill="${fill.replaceAll('"', '&quot;')}"/>`,
    );
    expect(style('p').paint.fill).toEqual(source);
  });
});

describe('type', () => {
  test.each([
    ['font-size="20"', 20],
    ['style="font-size:20"', 20],
    ['style="font-size:20px"', 20],
    ['font-size="2em"', 20],
    ['font-size="150%"', 15],
    ['font-size="larger"', 12],
    ['font-size="medium"', 16],
    ['font-size="1in"', 96],
    ['style="font: italic bold 12pt/1.5 Serif, sans"', 16],
    ['style="font: inherit"', 10],
    ['font="20px a"', 10],
    ['style="font-size:2rem"', 32],
    ['font-size="-1"', 10],
  ])('%s', (attributes, size) => {
    expect(styleOf(attributes, 'font-size="10"').fontSize).toBeCloseTo(size, 12);
  });

  test('a size without a unit is none in a style sheet', () => {
    const { style } = styleDocument('<style>path{font-size:20}</style><path id="p"/>');
    expect(style('p').fontSize).toBe(16);
  });

  test('rem is the size of the root', () => {
    const { style } = styleDocument(
      '<svg xmlns="http://www.w3.org/2000/svg" font-size="10"><path id="p" style="font-size:3rem"/></svg>',
    );
    expect(style('p').fontSize).toBe(30);
  });

  test('families are taken over as written', () => {
    expect(styleOf('', 'style="font: 12px \'My Type\', serif"').fontFamily).toBe("'My Type', serif");
    expect(styleOf('font-family="Gill"').fontFamily).toBe('Gill');
  });
});

describe('what stays with its element', () => {
  test.each<[string, object]>([
    ['display="none"', { display: 'none' }],
    ['style="display:BLOCK"', { display: 'block' }],
    ['style="display:x"', { display: 'inline' }],
    ['style="display:inline flow-root"', { display: 'inline flow-root' }],
    ['vector-effect="x"', { vectorEffect: 'none' }],
    ['visibility="collapse"', { visibility: 'collapse' }],
    ['opacity="30%"', { opacity: 0.3 }],
    ['style="opacity:calc(0.25 * 2)"', { opacity: 0.5 }],
    ['style="transform:scale(2)"', { transform: 'scale(2)' }],
    ['style="-webkit-transform:scale(2)"', { transform: 'scale(2)' }],
    ['style="transform:none"', { transform: 'none' }],
    ['style="transform:initial"', { transform: 'none' }],
    ['style="transform:scale(2) rotate(4)"', { transform: null }],
    ['transform="scale(2)"', { transform: null }],
    ['style="translate:10px 5%"', { transformBefore: 'translate(10px,5%)' }],
    ['style="scale:2;rotate:45deg;translate:1px"', { transformBefore: 'translate(1px) rotate(45deg) scale(2)' }],
    ['style="rotate:z 45deg"', { transformBefore: 'rotatez(45deg)' }],
    ['style="rotate:0 0 1 45deg"', { transformBefore: 'rotate3d(0,0,1,45deg)' }],
    ['transform-origin="10 20"', { transformOrigin: '10 20' }],
    ['style="transform-origin:10 20"', { transformOrigin: null }],
    ['style="transform-origin:0 1px"', { transformOrigin: '0 1px' }],
    ['style="transform-origin:50% 50%"', { transformOrigin: '50% 50%' }],
    ['style="transform-box:fill-box"', { transformBox: 'fill-box' }],
    ['clip-path="url(#c)"', { clipPath: 'c', references: ['c'] }],
    ['clip-path="circle(5px)"', { clipPath: null, references: [] }],
    ['style="clip-path:url(#c) fill-box"', { clipPath: null }],
    ['mask="url(#m)"', { mask: 'm', references: ['m'] }],
    ['style="mask-image:url(#m)"', { mask: 'm' }],
    ['filter="url(#f) blur(2px) url(#h)"', { filter: 'f', references: ['f', 'h'] }],
    ['filter="blur(2px)"', { filter: null }],
    ['overflow="scroll"', { overflow: 'scroll' }],
    ['clip-rule="evenodd"', { clipRule: 'evenodd' }],
    ['marker-end="url(#k)"', { markers: { start: null, mid: null, end: 'k' }, references: ['k'] }],
    ['style="marker:url(#k)"', { markers: { start: 'k', mid: 'k', end: 'k' }, references: ['k'] }],
    ['style="marker:url(#k);marker-mid:none"', { markers: { start: 'k', mid: null, end: 'k' } }],
    ['fill="url(#f)" stroke="url(#s) red"', { references: ['f', 's'] }],
    ['style="shape-inside:url(#q)"', { references: ['q'] }],
  ])('%s', (attributes, expected) => {
    expect(styleOf(attributes)).toMatchObject(expected);
  });

  test('opacity, clips and transforms are not inherited, markers and paint references are', () => {
    const style = styleOf(
      '',
      'opacity="0.5" clip-path="url(#c)" filter="url(#f)" style="transform:scale(2)" marker="url(#k)" fill="url(#a)"',
    );
    expect(style).toMatchObject({ opacity: 1, clipPath: null, filter: null, transform: null, references: ['a'] });
    expect(styleOf('', 'style="marker:url(#k)"').markers.start).toBe('k');
  });
});

describe('geometry', () => {
  test.each([
    ['style="r:5px"', 'r', '5px'],
    ['style="R: 5PX "', 'r', '5px'],
    ['style="cx:2em;font-size:10px"', 'cx', '20px'],
    ['style="width:50%"', 'width', '50%'],
    ['style="width:calc(50% - 10px)"', 'width', 'calc(-10px + 50%)'],
    ['style="height:auto"', 'height', 'auto'],
    ['style="r:5"', 'r', null],
    ['r="5"', 'r', null],
    ['style="x:0"', 'x', '0px'],
    ['style="rx:initial"', 'rx', 'auto'],
    ['style="d:path(&quot;M0 0L1 1&quot;)"', 'd', 'path("M0 0L1 1")'],
    ['style="d:none"', 'd', 'none'],
    ['style="d:M0 0"', 'd', null],
  ] as const)('%s', (attributes, name, value) => {
    expect(styleOf(attributes).geometry[name]).toBe(value);
  });

  test('shares the object of elements that set none', () => {
    expect(styleOf('fill="red"').geometry).toBe(styleOf('stroke="blue"').geometry);
  });
});

describe('overflow', () => {
  test('is hidden by the user agent on what has a viewport of its own', () => {
    // SVG 2, section 6.7, user agent style sheet.
    const { style } = styleDocument(
      ' <svg id="a"/><symbol id="b"/><svg id="c" overflow="visible"/><svg id="d" style="overflow:initial"/><svg id="e" style="overflow:revert"/><g id="f"/><svg id="h"><svg id="i" overflow="inherit"/></svg>',
    );
    expect(['root', 'a', 'b', 'c', 'd', 'e', 'f', 'i'].map((id) => style(id).overflow)).toEqual([
      'visible',
      'hidden',
      'hidden',
      'visible',
      'visible',
      'hidden',
      'visible',
      'hidden',
    ]);
  });
});
