// Shapes as they are drawn: matrices, boxes, uses, viewports, hiding.
import { describe, expect, it } from 'vitest';
import { isEmptyBox } from '../../../src/geometry/box.js';
import { resolve, shapeLength } from '../../../src/resolve/resolve.js';
import published from '../../oracles/resolve/published.json' with { type: 'json' };
import { codesOf, resolveBody, resolveText, scanText, shapeOf, xywh } from './resolve-text.js';

const RECT = '<rect id="r" x="1" y="2" width="10" height="20"/>';

function matrixOf(body: string, id = 'r', attributes = ''): readonly number[] {
  return shapeOf(resolveBody(body, attributes), id).matrix.map((value) => Number(value.toFixed(9)) + 0);
}

describe('the table of SVG 2, section 8.10', () => {
  const published810 = (id: string) => published.bbox.find((entry) => entry.id === id)!.xywh;
  const artwork = resolveBody(`<defs id="defs-1"><rect id="rect-1" x="20" y="20" width="40" height="40"/></defs>
    <g id="group-1"><use id="use-1" href="#rect-1" x="10" y="10"/>
    <g id="group-2" display="none"><rect id="rect-2" x="10" y="10" width="100" height="100" fill="red"/></g></g>`);

  it('use-1, drawn from definitions that draw nothing themselves', () => {
    expect(artwork.shapes).toHaveLength(2);
    expect(xywh(shapeOf(artwork, 'rect-1').fillBox)).toEqual(published810('use-1'));
  });

  it('rect-2, hidden and judged as if shown', () => {
    const shape = shapeOf(artwork, 'rect-2');
    expect(xywh(shape.fillBox)).toEqual(published810('rect-2'));
    expect([shape.hidden, shape.draws]).toEqual([true, true]);
  });

  it('group-1, whose hidden content does not count: its far corner stays where it is', () => {
    const grown = resolveBody(`<defs><rect id="rect-1" x="20" y="20" width="40" height="40"/></defs>
      <g style="transform-box: fill-box; transform-origin: 100% 100%; transform: scale(2)"><use href="#rect-1" x="10" y="10"/>
      <g display="none"><rect id="rect-2" x="10" y="10" width="100" height="100"/></g></g>`);
    const [x = 0, y = 0, width = 0, height = 0] = published810('group-1');
    expect(xywh(shapeOf(grown, 'rect-1').fillBox)).toEqual([x - width, y - height, 2 * width, 2 * height]);
  });
});

describe('the matrix of a shape', () => {
  it.each([
    ['nothing', RECT, [1, 0, 0, 1, 0, 0]],
    [
      'groups from the outside in',
      `<g transform="translate(10 20)"><g transform="scale(2 3)">${RECT}</g></g>`,
      [2, 0, 0, 3, 10, 20],
    ],
    ['its own attribute', '<rect id="r" width="1" height="1" transform="matrix(1 2 3 4 5 6)"/>', [1, 2, 3, 4, 5, 6]],
    ['a link', `<a href="#x" transform="translate(3)">${RECT}</a>`, [1, 0, 0, 1, 3, 0]],
    [
      'CSS before the attribute',
      `<g transform="scale(9)" style="transform: translate(5px, 6px)">${RECT}</g>`,
      [1, 0, 0, 1, 5, 6],
    ],
    [
      'translate and scale of their own before the attribute',
      `<g style="translate: 5px 6px; scale: 2" transform="translate(1)">${RECT}</g>`,
      [2, 0, 0, 2, 7, 6],
    ],
    [
      'an origin',
      '<rect id="r" width="1" height="1" style="transform: scale(2); transform-origin: 10px 20px"/>',
      [2, 0, 0, 2, -10, -20],
    ],
    [
      'an origin for the attribute',
      '<rect id="r" width="1" height="1" transform="scale(2)" transform-origin="10 20"/>',
      [2, 0, 0, 2, -10, -20],
    ],
    [
      'an origin in percent of the viewport',
      '<rect id="r" width="1" height="1" style="transform: scale(2); transform-origin: 50% 100%"/>',
      [2, 0, 0, 2, -100, -100],
    ],
    [
      'the corner of its own box',
      '<rect id="r" x="5" y="6" width="1" height="1" style="transform: scale(2); transform-box: fill-box"/>',
      [2, 0, 0, 2, -5, -6],
    ],
    [
      'a share of its own box',
      '<rect id="r" x="5" y="6" width="10" height="20" style="transform: translate(100%, 50%); transform-box: fill-box"/>',
      [1, 0, 0, 1, 10, 10],
    ],
  ])('%s', (_, body, matrix) => {
    expect(matrixOf(body)).toEqual(matrix);
  });

  it('can refer to the box with the stroke', () => {
    const body = `<rect id="r" x="5" y="6" width="9" height="9" stroke="red" stroke-width="4" style="transform: scale(2); transform-box: stroke-box"/>`;
    expect(matrixOf(body)).toEqual([2, 0, 0, 2, -3, -4]);
    expect(matrixOf(body.replace('stroke-box', 'fill-box'))).toEqual([2, 0, 0, 2, -5, -6]);
  });

  it('turns about the middle of a group by its box', () => {
    const body = `<g style="transform: rotate(90deg); transform-box: fill-box; transform-origin: center">${RECT}</g>`;
    // The middle of the rect is (6, 12).
    expect(matrixOf(body)).toEqual([0, 1, -1, 0, 18, 6]);
  });

  it('says what it cannot read, once per text', () => {
    const artwork = resolveBody(`<g transform="sclae(2)">${RECT}</g><g transform="sclae(2)"/>`);
    expect(shapeOf(artwork, 'r').matrix).toEqual([1, 0, 0, 1, 0, 0]);
    expect(codesOf(artwork)).toEqual(['resolve/transform-invalid']);
    expect(artwork.findings[0]!.data).toEqual({ count: 2, value: 'sclae(2)' });
  });

  it('leaves out a transform of the whole drawing, and says so', () => {
    for (const attributes of ['transform="scale(2)"', 'style="transform: scale(2)"']) {
      const artwork = resolveBody(RECT, attributes);
      expect(shapeOf(artwork, 'r').matrix).toEqual([1, 0, 0, 1, 0, 0]);
      expect(codesOf(artwork)).toEqual(['resolve/root-transform']);
    }
  });
});

describe('a use', () => {
  it('moves by x and y after its transform', () => {
    expect(matrixOf(`<defs>${RECT}</defs><use xlink:href="#r" transform="scale(2)" x="5" y="6"/>`)).toEqual([
      2, 0, 0, 2, 10, 12,
    ]);
  });

  it('hands its style down, and draws in its own place in paint order', () => {
    const artwork = resolveBody(
      `<rect id="a" width="9" height="9"/><use id="u" href="#s" fill="#00ff00"/><g fill="#ff0000"><rect id="s" width="5" height="5"/></g>`,
    );
    expect(artwork.shapes.map(({ id, element, carrier, paint }) => [id, element, carrier, paint.fill])).toMatchObject([
      ['a', 1, 1, { colour: { key: '#000000' } }],
      ['s', 4, 2, { colour: { key: '#00ff00' } }],
      ['s', 4, 4, { colour: { key: '#ff0000' } }],
    ]);
  });

  it('of a use carries the outermost', () => {
    const artwork = resolveBody(
      `<defs><g id="two"><use href="#r" x="1"/><use href="#r" x="2"/></g>${RECT}</defs><use id="u" href="#two" y="10"/>`,
    );
    expect(artwork.shapes.map(({ carrier, matrix }) => [carrier, matrix[4], matrix[5]])).toEqual([
      [6, 1, 10],
      [6, 2, 10],
    ]);
  });

  it('gives a symbol its size, and the symbol cuts what reaches beyond', () => {
    const artwork = resolveBody(
      `<symbol id="s" viewBox="0 0 10 10"><rect id="r" x="-5" y="0" width="10" height="10"/></symbol><use href="#s" x="20" y="10" width="40" height="40"/>`,
    );
    const shape = shapeOf(artwork, 'r');
    expect(shape.matrix).toEqual([4, 0, 0, 4, 20, 10]);
    expect(xywh(shape.fillBox)).toEqual([0, 10, 40, 40]);
    expect(xywh(shape.drawnBox)).toEqual([20, 10, 20, 40]);
  });

  it('lets a symbol stand by its reference point', () => {
    const body = (attributes: string) =>
      `<symbol id="s" viewBox="0 0 10 10" overflow="visible" ${attributes}>${RECT}</symbol><use href="#s" x="20" y="10" width="40" height="40"/>`;
    expect(matrixOf(body('refX="5" refY="2"'))).toEqual([4, 0, 0, 4, 0, 2]);
    expect(matrixOf(body('refX="right" refY="center"'))).toEqual([4, 0, 0, 4, -20, -10]);
    // Unset is not zero: SVG 2, section 5.5. The viewBox does not begin at its origin here.
    expect(matrixOf(body('').replace('0 0 10 10', '5 5 10 10'))).toEqual([4, 0, 0, 4, 0, -10]);
    expect(matrixOf(body('refX="0" refY="0"').replace('0 0 10 10', '5 5 10 10'))).toEqual([4, 0, 0, 4, 20, 10]);
  });

  it('overrides the size of a nested svg alone', () => {
    const svg = `<defs><svg id="s" width="10" height="10" viewBox="0 0 10 10">${RECT}</svg></defs>`;
    expect(matrixOf(`${svg}<use href="#s" width="30" height="30"/>`)).toEqual([3, 0, 0, 3, 0, 0]);
    expect(matrixOf(`${svg}<use href="#s"/>`)).toEqual([1, 0, 0, 1, 0, 0]);
    expect(matrixOf(`<defs><g id="s">${RECT}</g></defs><use href="#s" width="30" height="30"/>`)).toEqual([
      1, 0, 0, 1, 0, 0,
    ]);
  });

  it('draws nothing where it leads to a definition, out of the file, or nowhere', () => {
    const artwork = resolveBody(
      '<linearGradient id="g"/><use href="#g"/><use href="other.svg#a"/><use href=""/><use/><use href="#gone"/>',
    );
    expect(artwork.shapes).toEqual([]);
    expect(codesOf(artwork)).toEqual(['resolve/reference-missing']);
    expect(artwork.findings[0]!.data).toMatchObject({ target: 'gone' });
  });

  it.each([
    ['itself', '<use id="u" href="#u"/>', 0, 1],
    ['what is around it', `<g id="a">${RECT}<use href="#a"/></g>`, 1, 1],
    ['each other', `<g id="a">${RECT}<use href="#b"/></g><g id="b"><use href="#a"/></g>`, 1, 2],
    ['the drawing', `${RECT}<use href="#root"/>`, 1, 1],
  ])('of %s is not followed', (_, body, shapes, cycles) => {
    const artwork = resolveBody(body, 'id="root"');
    expect(artwork.shapes).toHaveLength(shapes);
    expect(codesOf(artwork)).toEqual(new Array(cycles).fill('resolve/reference-cycle'));
  });
});

describe('a nested viewport', () => {
  it('is placed, fitted and cuts what reaches beyond', () => {
    const artwork = resolveBody(
      '<svg x="10" y="20" width="50" height="50" viewBox="0 0 100 100"><rect id="r" x="50" y="-10" width="100" height="60"/></svg>',
    );
    const shape = shapeOf(artwork, 'r');
    expect(shape.matrix).toEqual([0.5, 0, 0, 0.5, 10, 20]);
    expect(xywh(shape.fillBox)).toEqual([35, 15, 50, 30]);
    expect(xywh(shape.drawnBox)).toEqual([35, 20, 25, 25]);
  });

  it('cuts nothing where overflow is visible, and the artboard never does', () => {
    const artwork = resolveBody(
      '<svg width="5" height="5" overflow="visible"><rect id="a" width="500" height="9"/></svg><rect id="b" x="-9" width="999" height="9"/>',
    );
    expect(xywh(shapeOf(artwork, 'a').drawnBox)).toEqual([0, 0, 500, 9]);
    expect(xywh(shapeOf(artwork, 'b').drawnBox)).toEqual([-9, 0, 999, 9]);
  });

  it('is what percentages are of', () => {
    const artwork = resolveBody(
      '<svg width="40" height="30" viewBox="0 0 80 60"><rect id="r" x="50%" y="50%" width="25%" height="10%"/><circle id="c" r="10%"/></svg>',
    );
    expect(xywh(shapeOf(artwork, 'r').fillBox)).toEqual([20, 15, 10, 3]);
    // SVG 2, section 8.9: the diagonal over the root of two, here sqrt((6400 + 3600) / 2).
    expect(shapeOf(artwork, 'c').fillBox.x1).toBeCloseTo(Math.sqrt(5000) / 10 / 2, 10);
    expect(artwork.usesPercent).toBe(false);
  });

  it('draws nothing with a side of zero', () => {
    for (const attributes of ['width="0"', 'viewBox="0 0 0 5"'])
      expect(resolveBody(`<svg ${attributes}>${RECT}</svg>`).shapes).toEqual([]);
  });
});

describe('lengths in percent', () => {
  it.each([
    ['geometry', '<rect width="50%" height="5"/>'],
    ['CSS geometry', '<rect style="width: 50%" height="5"/>'],
    ['a nested svg that fills the artboard', `<svg viewBox="0 0 5 5">${RECT}</svg>`],
    ['a stroke width', '<path d="M0 0H9" stroke="red" stroke-width="1%"/>'],
    ['an origin', '<rect width="5" height="5" style="transform: scale(2); transform-origin: 50% 0"/>'],
    ['a gradient in user space', '<linearGradient id="g" gradientUnits="userSpaceOnUse"/>'],
    ['text', '<text x="50%">a</text>'],
  ])('are known: %s', (_, body) => {
    expect(resolveBody(body).usesPercent).toBe(true);
  });

  it('are not suspected', () => {
    const body = `${RECT}<linearGradient id="g"><stop offset="50%"/></linearGradient><svg width="5" height="5"><rect width="50%" height="5"/></svg>`;
    expect(resolveBody(body).usesPercent).toBe(false);
  });
});

describe('a switch', () => {
  it.each([
    [
      'the first child that holds',
      '<switch><rect id="a" width="1" height="1"/><rect id="b" width="1" height="1"/></switch>',
      ['a'],
    ],
    [
      'by language',
      '<switch><rect id="a" systemLanguage="de" width="1" height="1"/><rect id="b" systemLanguage="fr, en-GB" width="1" height="1"/></switch>',
      ['b'],
    ],
    [
      'not by extensions',
      '<switch><foreignObject requiredExtensions="http://example.org/x" width="1" height="1"/><g><rect id="b" width="1" height="1"/></g></switch>',
      ['b'],
    ],
    [
      'whatever features are asked for',
      '<switch><rect id="a" requiredFeatures="x" width="1" height="1"/></switch>',
      ['a'],
    ],
    ['none', '<switch><rect id="a" systemLanguage="" width="1" height="1"/></switch>', []],
    [
      'and conditions hold outside of it',
      '<rect id="a" systemLanguage="de" width="1" height="1"/><rect id="b" width="1" height="1"/>',
      ['b'],
    ],
  ])('draws %s', (_, body, ids) => {
    expect(resolveBody(body).shapes.map((shape) => shape.id)).toEqual(ids);
  });
});

describe('what draws', () => {
  const drawn = (body: string) => resolveBody(body).shapes.map((shape) => shape.draws);

  it.each([
    ['a fill', RECT, true],
    ['no paint', '<rect width="5" height="5" fill="none"/>', false],
    ['a fill that cannot be seen', '<rect width="5" height="5" fill-opacity="0"/>', false],
    ['a transparent colour', '<rect width="5" height="5" fill="rgba(0,0,0,0)"/>', false],
    ['opacity zero', '<rect width="5" height="5" opacity="0"/>', false],
    ['opacity zero around it', '<g opacity="0"><g><rect width="5" height="5"/></g></g>', false],
    ['a width of zero', '<rect width="0" height="5" stroke="red"/>', false],
    ['a stroke of width zero', '<path d="M0 0H5" stroke="red" stroke-width="0"/>', false],
    ['a line with a fill alone', '<line x2="5" y2="5"/>', false],
    ['a straight path with a fill alone', '<path d="M0 0L5 5"/>', false],
    ['a straight path closed', '<path d="M0 0L5 5Z"/>', false],
    ['a triangle', '<path d="M0 0L5 5L5 0"/>', true],
    ['a stroked line', '<line x2="5" y2="5" stroke="red"/>', true],
    ['a point with a round cap', '<path d="M5 5Z" stroke="red" stroke-linecap="round" fill="none"/>', true],
    ['a point with a butt cap', '<path d="M5 5Z" stroke="red" fill="none"/>', false],
    ['a server that is not there, without fallback', '<rect width="5" height="5" fill="url(#gone)"/>', false],
    ['a server that is not there, with fallback', '<rect width="5" height="5" fill="url(#gone) red"/>', true],
    ['a picture, whatever its fill', '<image href="a.png" width="5" height="5" fill="none"/>', true],
    ['a picture without an address', '<image width="5" height="5"/>', false],
    ['text', '<text x="1" y="1">a</text>', true],
    ['text without letters', '<text x="1" y="1"> <tspan/> </text>', false],
    ['a flat matrix', '<rect width="5" height="5" transform="scale(0 1)"/>', false],
  ])('%s: %s', (_, body, draws) => {
    expect(drawn(body)).toEqual([draws]);
  });

  it('widens the drawn box by paint alone', () => {
    const body = '<rect id="r" x="10" y="10" width="20" height="20" stroke="red" stroke-width="4" ';
    const fillOnly = shapeOf(resolveBody(`${body} stroke-opacity="0"/>`), 'r');
    expect(xywh(fillOnly.drawnBox)).toEqual([10, 10, 20, 20]);
    expect(xywh(fillOnly.strokeBox)).toEqual([8, 8, 24, 24]);
    const both = shapeOf(resolveBody(`${body} fill="none"/>`), 'r');
    expect(xywh(both.drawnBox)).toEqual([8, 8, 24, 24]);
    expect(xywh(both.fillBox)).toEqual([10, 10, 20, 20]);
  });

  it('is nothing of definitions, captions, foreign elements and unknown ones', () => {
    const body = [
      'defs',
      'clipPath',
      'mask',
      'pattern',
      'marker',
      'title',
      'metadata',
      'e:g',
      'blink',
      'symbol',
      'text',
    ]
      .map((name) => `<${name}>${RECT}</${name}>`)
      .join('');
    expect(resolveBody(body).shapes.map((shape) => shape.kind)).toEqual(['text']);
  });
});

describe('strokes', () => {
  it('are scaled with the shape, unevenly too', () => {
    const artwork = resolveBody(
      '<g transform="scale(2 5)"><path id="r" d="M10 10H20" stroke="red" stroke-width="2"/></g>',
    );
    expect(xywh(shapeOf(artwork, 'r').strokeBox)).toEqual([20, 45, 20, 10]);
  });

  it('that do not scale are outlined on the artboard', () => {
    const artwork = resolveBody(
      '<g transform="scale(2 5)"><path id="r" d="M10 10H20" stroke="red" stroke-width="2" vector-effect="non-scaling-stroke"/><circle id="c" r="10" fill="none" stroke="red" stroke-width="4" vector-effect="non-scaling-stroke"/></g>',
    );
    expect(xywh(shapeOf(artwork, 'r').strokeBox)).toEqual([20, 49, 20, 2]);
    expect(xywh(shapeOf(artwork, 'c').strokeBox)).toEqual([-22, -52, 44, 104]);
  });

  it('in percent share one paint per viewport', () => {
    // The artboard is 200 by 100: SVG 2, section 8.9.
    const artwork = resolveBody('<g stroke="red" stroke-width="10%"><path d="M0 0H9"/><path d="M0 5H9"/></g>');
    expect(artwork.shapes[0]!.paint.strokeWidth).toBeCloseTo(Math.sqrt(25000) / 10, 10);
    expect(artwork.shapes[0]!.paint).toBe(artwork.shapes[1]!.paint);
  });
});

describe('geometry', () => {
  it('can come from CSS, which beats the attributes', () => {
    const artwork = resolveBody(
      '<circle id="c" r="99" style="r: 5px; cx: 10px"/><path id="p" d="M0 0" style="d: path(\'M1 1H9V9\')"/>',
    );
    expect(xywh(shapeOf(artwork, 'c').fillBox)).toEqual([5, -5, 10, 10]);
    expect(xywh(shapeOf(artwork, 'p').fillBox)).toEqual([1, 1, 8, 8]);
  });

  it('reads references and line ends in path data', () => {
    const artwork = resolveBody('<path id="p" d="M0&#32;0\n\tH5&#x0a;V7"/><polygon id="q" points="1,1&#9;4,1 4,8"/>');
    expect(xywh(shapeOf(artwork, 'p').fillBox)).toEqual([0, 0, 5, 7]);
    expect(xywh(shapeOf(artwork, 'q').fillBox)).toEqual([1, 1, 3, 7]);
    expect(artwork.findings).toEqual([]);
  });

  it('is drawn up to an error, which is said with its place', () => {
    const artwork = resolveBody('\n<path id="p" d="M0 0H5V5 oops"/>');
    expect(xywh(shapeOf(artwork, 'p').fillBox)).toEqual([0, 0, 5, 5]);
    expect(codesOf(artwork)).toEqual(['resolve/path-broken']);
    expect(artwork.findings[0]!.place).toMatchObject({ line: 2, column: 1, id: 'p', element: 'path' });
  });

  it('takes one radius for both where only one is said', () => {
    const artwork = resolveBody('<ellipse id="e" rx="3"/><ellipse id="f" rx="auto" ry="4"/>');
    expect(xywh(shapeOf(artwork, 'e').fillBox)).toEqual([-3, -3, 6, 6]);
    expect(xywh(shapeOf(artwork, 'f').fillBox)).toEqual([-4, -4, 8, 8]);
  });

  it('says which length it cannot read', () => {
    const artwork = resolveBody('<rect id="r" x="1O" width="5" height="5"/>');
    expect(xywh(shapeOf(artwork, 'r').fillBox)).toEqual([0, 0, 5, 5]);
    expect(codesOf(artwork)).toEqual(['resolve/length-invalid']);
  });

  it('beyond measure has no box', () => {
    const artwork = resolveBody('<path id="p" d="M0 0H1e200V1e200" transform="scale(1e200)"/>');
    expect(isEmptyBox(shapeOf(artwork, 'p').fillBox)).toBe(true);
    expect(shapeOf(artwork, 'p').draws).toBe(false);
  });
});

describe('hiding', () => {
  it('is known from display and visibility, on it and around it', () => {
    const artwork = resolveBody(
      '<g display="none"><rect id="a" width="5" height="5"/></g><g visibility="hidden"><rect id="b" width="5" height="5"/><rect id="c" visibility="visible" width="5" height="5"/></g><rect id="d" visibility="collapse" width="5" height="5"/><g display="none"><rect id="e" style="display: inline" width="5" height="5"/></g>',
    );
    expect(artwork.shapes.map(({ id, hidden, draws }) => [id, hidden, draws])).toEqual([
      ['a', true, true],
      ['b', true, true],
      ['c', false, true],
      ['d', true, true],
      ['e', true, true],
    ]);
    expect([...artwork.hiders]).toEqual([1, 3, 6, 7]);
  });

  it('is set again inside what is hidden', () => {
    const artwork = resolveBody(
      '<g visibility="hidden"><rect visibility="hidden" width="5" height="5"/><rect width="5" height="5"/></g>',
    );
    expect([...artwork.hiders]).toEqual([1, 2]);
  });
});

describe('references', () => {
  it('are listed for every element, definitions included, by link and by style', () => {
    const artwork = resolveBody(
      '<defs><linearGradient id="a" href="#b"/><linearGradient id="b"/><clipPath id="c"><use href="#r"/></clipPath></defs><g clip-path="url(#c)"><rect id="r" fill="url(#a)" width="5" height="5"/></g><a href="#r"/>',
    );
    expect([...artwork.references]).toEqual([
      [2, ['b']],
      [5, ['r']],
      [6, ['c']],
      [7, ['a']],
    ]);
    expect(artwork.ids.get('r')).toBe(7);
    expect(artwork.findings).toEqual([]);
  });

  it('take the first element with an id', () => {
    const artwork = resolveBody('<rect id="r" width="1" height="1"/><rect id="r" width="2" height="2"/>');
    expect(artwork.ids.get('r')).toBe(1);
  });
});

describe('live type', () => {
  it('is anchored, and said once per layer with its fonts', () => {
    const artwork = resolveBody(
      '<g id="Art" font-family="Someface"><text id="t" x="10" y="20">a<tspan x="30" y="5" font-family="Otherface">b</tspan></text><text y="9">c</text></g>',
    );
    const shape = shapeOf(artwork, 't');
    expect(xywh(shape.fillBox)).toEqual([10, 5, 20, 15]);
    expect(xywh(shape.drawnBox)).toEqual([10, 5, 20, 15]);
    expect(codesOf(artwork)).toEqual(['resolve/live-text']);
    expect(artwork.findings[0]!.data).toEqual({ count: 2, families: ['Otherface', 'Someface'] });
    expect(artwork.findings[0]!.place.layerPath).toBe('Art');
  });

  it('is anchored at the path it runs along', () => {
    const artwork = resolveBody(
      '<path id="p" d="M10 10H50" fill="none"/><text id="t"><textPath href="#p">a</textPath></text>',
    );
    expect(xywh(shapeOf(artwork, 't').fillBox)).toEqual([10, 10, 40, 0]);
  });
});

it('says markers and filters once per layer', () => {
  const artwork = resolveBody(
    '<marker id="m"/><filter id="f"/><g id="A"><path d="M0 0H5" stroke="red" marker-end="url(#m)"/><path d="M0 0H5" stroke="red" marker-end="url(#m)"/><rect width="5" height="5" marker-end="url(#m)"/></g><g id="B" filter="url(#f)"><rect width="5" height="5"/></g>',
  );
  expect(artwork.findings.map(({ code, place, data }) => [code, place.layerPath, data.count])).toEqual([
    ['resolve/marker-unmeasured', 'A', 2],
    ['resolve/filter-unmeasured', 'B', 1],
  ]);
});

describe('bounds', () => {
  // Ten uses of ten uses of ten: 1,000 copies.
  const tens = (target: string): string => new Array(10).fill(`<use href="#${target}"/>`).join('');
  const body = `<defs>${RECT}<g id="a">${tens('r')}</g><g id="b">${tens('a')}</g></defs>${tens('b')}`;
  const text = `<svg xmlns="http://www.w3.org/2000/svg" width="5mm" height="5mm">${body}</svg>`;

  it('hold at the bound and not one past it', () => {
    expect(resolveText(text, { limits: { references: 1000 } }).shapes).toHaveLength(1000);
    expect(() => resolveText(text, { limits: { references: 999 } })).toThrowError(
      expect.objectContaining({ name: 'PinbarError', code: 'limit/references' }),
    );
  });

  it('are counted, not expanded', () => {
    let deep = `<defs>${RECT}<g id="d0">${tens('r')}</g>`;
    for (let i = 1; i < 60; i += 1) deep += `<g id="d${i}">${tens(`d${i - 1}`)}</g>`;
    const file = `<svg xmlns="http://www.w3.org/2000/svg" width="5mm" height="5mm">${deep}</defs><use href="#d59"/></svg>`;
    expect(() => resolveText(file)).toThrowError(expect.objectContaining({ code: 'limit/references' }));
  });

  it('stop long chains of uses', () => {
    let chain = `<defs>${RECT}<use id="u0" href="#r"/>`;
    for (let i = 1; i < 5000; i += 1) chain += `<use id="u${i}" href="#u${i - 1}"/>`;
    const file = `<svg xmlns="http://www.w3.org/2000/svg" width="5mm" height="5mm">${chain}</defs><use href="#u4999"/></svg>`;
    expect(() => resolveText(file)).toThrowError(expect.objectContaining({ code: 'limit/depth' }));
  });

  it('let a caller stop', () => {
    expect(() => resolveText(text, { signal: { aborted: true } })).toThrowError(
      expect.objectContaining({ code: 'cancelled' }),
    );
  });
});

it('measures the length of a line on the artboard', () => {
  const source = scanText(
    '<svg xmlns="http://www.w3.org/2000/svg" width="5mm" height="5mm"><g transform="scale(2)"><path d="M0 0H3V4"/><rect width="1" height="2"/><text>a</text></g></svg>',
  );
  const artwork = resolve(source);
  expect(artwork.shapes.map((shape) => shapeLength(source, artwork, shape))).toEqual([14, 12, 0]);
});

it('draws a line that has nothing but its markers', () => {
  const body =
    '<marker id="m"><path d="M0 0H9V9Z"/></marker><path id="a" d="M0 0L9 9" marker-end="url(#m)"/><path id="b" d="M0 0L9 9" marker-end="url(#gone)"/>';
  const artwork = resolveBody(body);
  expect([shapeOf(artwork, 'a').draws, shapeOf(artwork, 'b').draws]).toEqual([true, false]);
});
