// Which groups are layers.
import { describe, expect, it } from 'vitest';
import { codesOf, resolveBody, shapeOf } from './resolve-text.js';

const BOX = '<rect width="5" height="5"/>';

function pathsOf(body: string): readonly string[] {
  return resolveBody(body).layers.map((layer) => layer.path);
}

describe('outermost groups', () => {
  it('are all layers, in document order, by whatever name', () => {
    expect(pathsOf(`<g id="Cut">${BOX}</g><g id="g12">${BOX}</g><g>${BOX}</g><g id="Empty"/><g/>`)).toEqual([
      'Cut',
      'g12',
      'group 3',
      'Empty',
    ]);
  });

  it('leave loose shapes beside them without a layer', () => {
    const artwork = resolveBody(
      `<rect id="a" width="5" height="5"/><g id="Cut"><rect id="b" width="5" height="5"/></g>`,
    );
    expect(shapeOf(artwork, 'a').layer).toBe(-1);
    expect(shapeOf(artwork, 'b').layer).toBe(0);
  });

  it('need not be there', () => {
    const artwork = resolveBody(BOX);
    expect(artwork.layers).toEqual([]);
    expect(artwork.shapes[0]!.layer).toBe(-1);
  });

  it('do not stand in definitions or foreign elements', () => {
    expect(pathsOf(`<defs><g id="Cut">${BOX}</g></defs><e:x><g id="Cut">${BOX}</g></e:x>`)).toEqual([]);
  });
});

describe('a wrapper group', () => {
  it.each([
    ['without a name', `<g transform="scale(2)"><g id="Cut">${BOX}</g></g>`, ['Cut']],
    [
      'with a name, around at least two',
      `<g id="page"><g id="Art">${BOX}</g><g id="Cut">${BOX}</g></g>`,
      ['Art', 'Cut'],
    ],
    ['in another', `<g id="page"><g id="g1"><g id="Art">${BOX}</g><g id="Cut">${BOX}</g></g></g>`, ['Art', 'Cut']],
    ['beside empty groups', `<g id="Off"/><g><g id="Art">${BOX}</g><g id="Cut">${BOX}</g></g>`, ['Art', 'Cut']],
    [
      'that is a switch',
      `<switch><foreignObject requiredExtensions="x"/><g><g id="Art">${BOX}</g><g id="Cut">${BOX}</g></g></switch>`,
      ['Art', 'Cut'],
    ],
    ['around marked layers', `<g id="page"><g id="x" e:groupmode="layer">${BOX}</g></g>`, ['x']],
  ])('%s is seen through', (_, body, paths) => {
    expect(pathsOf(body)).toEqual(paths);
  });

  it.each([
    ['a named group around one named group', `<g id="Die"><g id="Folds">${BOX}</g></g>`, ['Die', 'Die/Folds']],
    [
      'a named group with shapes of its own',
      `<g id="Cut">${BOX}<g id="Holes">${BOX}</g><g id="Slots">${BOX}</g></g>`,
      ['Cut', 'Cut/Holes', 'Cut/Slots'],
    ],
    ['a named group around nameless ones', `<g id="Cut"><g>${BOX}</g><g>${BOX}</g></g>`, ['Cut']],
    ['a marked group', `<g id="page" e:groupmode="layer"><g>${BOX}</g><g>${BOX}</g></g>`, ['page']],
    [
      'one of two groups that draw',
      `<g id="page"><g id="Art">${BOX}</g><g id="Cut">${BOX}</g></g><g id="x">${BOX}</g>`,
      ['page', 'page/Art', 'page/Cut', 'x'],
    ],
  ])('%s is none', (_, body, paths) => {
    expect(pathsOf(body)).toEqual(paths);
  });
});

describe('groups inside layers', () => {
  it('are layers by a name that a person gave, also through nameless groups', () => {
    const body = `<g id="Art">${BOX}</g><g id="Die"><g id="g7"><g id="Folds"><rect id="s" width="5" height="5"/></g></g></g>`;
    const artwork = resolveBody(body);
    expect(artwork.layers.map(({ path, parent }) => [path, parent])).toEqual([
      ['Art', -1],
      ['Die', -1],
      ['Die/Folds', 1],
    ]);
    expect(shapeOf(artwork, 's').layer).toBe(2);
  });

  it('are layers only where marked once the file marks any', () => {
    const body = `<g id="Art">${BOX}</g><g id="x" e:label="Die" e:groupmode="layer"><g id="Folds">${BOX}</g><g e:label="Cut" e:groupmode="layer">${BOX}</g></g>`;
    expect(pathsOf(body)).toEqual(['Art', 'Die', 'Die/Cut']);
  });

  it('belong to the use that draws them, not to themselves', () => {
    const artwork = resolveBody(
      `<g id="Art"><g id="Logo"><rect id="s" width="5" height="5"/></g></g><g id="Cut"><use id="u" href="#Logo"/></g>`,
    );
    expect(artwork.shapes.map(({ layer, carrier }) => [artwork.layers[layer]!.path, carrier])).toEqual([
      ['Art/Logo', 3],
      ['Cut', 5],
    ]);
  });
});

describe('names', () => {
  it('that repeat are told apart by position, with a note', () => {
    const artwork = resolveBody(`<g id="Cut">${BOX}</g><g data-name="Cut">${BOX}</g><g id="Cut_1_">${BOX}</g>`);
    expect(artwork.layers.map((layer) => layer.path)).toEqual(['Cut', 'Cut (2)', 'Cut (3)']);
    expect(artwork.layers.map((layer) => layer.name)).toEqual(['Cut', 'Cut', 'Cut']);
    expect(codesOf(artwork)).toEqual(['layer/same-name']);
  });

  it('with a slash are escaped in the path alone', () => {
    const [layer] = resolveBody(`<g id="Cut/front">${BOX}</g><g id="x">${BOX}</g>`).layers;
    expect(layer).toMatchObject({ name: 'Cut/front', path: 'Cut\\/front' });
  });
});

describe('a layer', () => {
  it('is hidden by itself, by what is around it, or by its mark', () => {
    const body = `<g id="A" display="none"><g id="B">${BOX}</g></g><g id="C" visibility="hidden">${BOX}</g><g id="D" e:layer="yes" e:visible="no">${BOX}</g><g id="E">${BOX}</g>`;
    const artwork = resolveBody(body.replace('e:layer="yes" ', ''));
    expect(artwork.layers.map(({ name, hidden }) => [name, hidden])).toEqual([
      ['A', true],
      ['B', true],
      ['C', true],
      ['D', true],
      ['E', false],
    ]);
  });

  it('is hidden by a wrapper', () => {
    expect(resolveBody(`<g style="display:none"><g id="A">${BOX}</g><g id="B">${BOX}</g></g>`).layers[0]!.hidden).toBe(
      true,
    );
  });

  it('is locked or not for print, with all inside, and the latter is noted', () => {
    const artwork = resolveBody(
      `<g id="A" e:insensitive="true" e:printed="no"><g id="B">${BOX}</g></g><g id="C" e:editable="no">${BOX}</g>`,
    );
    expect(artwork.layers.map(({ name, locked, printable }) => [name, locked, printable])).toEqual([
      ['A', true, false],
      ['B', true, false],
      ['C', true, true],
    ]);
    expect(codesOf(artwork)).toEqual(['layer/not-printed']);
    expect(artwork.findings[0]!.place).toMatchObject({ layerPath: 'A', line: 1 });
  });
});

it('leaves the group of marks out of layers and shapes', () => {
  const artwork = resolveBody(`<g id="Cut">${BOX}</g><g id="pinbar-marks">${BOX}<g id="x">${BOX}</g></g>`);
  expect(artwork.layers.map((layer) => layer.path)).toEqual(['Cut']);
  expect(artwork.shapes).toHaveLength(1);
  expect(artwork.marks).toBe(3);
  expect(resolveBody(`<g><g id="pinbar-marks">${BOX}</g></g>`).marks).toBe(-1);
});
