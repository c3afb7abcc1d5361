// Suggestions: the name says the role, the shapes say whether it is sure; a colour says nothing by itself.
import { describe, expect, it } from 'vitest';
import { explainLayers, looksLikeLine, suggestRoles } from '../../../src/classify/suggest.js';
import type { PaintSource, Shape } from '../../../src/model/artwork.js';
import { makeArtwork, type ShapeDraft } from './make-artwork.js';

const LINE: ShapeDraft = { stroke: '#2a7f62' };
const AREA: ShapeDraft = { fill: '#c9a227' };

function shapeOf(draft: ShapeDraft): Shape {
  return makeArtwork([], [draft]).shapes[0]!;
}

describe('looksLikeLine', () => {
  it('is a stroke alone', () => {
    expect(looksLikeLine(shapeOf(LINE))).toBe(true);
    expect(looksLikeLine(shapeOf(AREA))).toBe(false);
    expect(looksLikeLine(shapeOf({ ...LINE, ...AREA }))).toBe(false);
    expect(looksLikeLine(shapeOf({}))).toBe(false);
    expect(looksLikeLine(shapeOf({ ...LINE, kind: 'text' }))).toBe(false);
    expect(looksLikeLine(shapeOf({ ...LINE, kind: 'image' }))).toBe(false);
  });

  it('counts paint that shows only', () => {
    expect(looksLikeLine(shapeOf({ stroke: '#f00', fill: 'rgb(0 0 0 / 0)' }))).toBe(true);
    expect(looksLikeLine(shapeOf({ stroke: 'rgb(0 0 0 / 0)' }))).toBe(false);
    expect(looksLikeLine(shapeOf({ stroke: '#f00', strokeWidth: 0 }))).toBe(false);
    expect(looksLikeLine(shapeOf({ stroke: '#f00', fill: '#000', kind: 'line' }))).toBe(true);
    const shape = shapeOf(LINE);
    const withFill = (fill: PaintSource, fillOpacity = 1): Shape => ({
      ...shape,
      paint: { ...shape.paint, fill, fillOpacity },
    });
    expect(looksLikeLine(withFill({ kind: 'server', id: 'g', fallback: null }))).toBe(false);
    expect(looksLikeLine(withFill({ kind: 'server', id: 'g', fallback: null }, 0))).toBe(true);
    expect(looksLikeLine(withFill({ kind: 'missing', id: 'g', fallback: null }))).toBe(true);
    const colour = shapeOf(AREA).paint.fill as Extract<PaintSource, { kind: 'colour' }>;
    expect(looksLikeLine(withFill({ kind: 'missing', id: 'g', fallback: colour.colour }))).toBe(false);
  });
});

describe('suggestRoles', () => {
  it('is sure of a toolpath where every shape is a line without fill', () => {
    const { layers } = suggestRoles(makeArtwork([{ name: 'Cut' }], [{ ...LINE, layer: 0 }]));
    expect(layers[0]).toMatchObject({ role: 'cutting', sure: true });
  });

  it('is not sure where one shape is not, and counts it', () => {
    const shapes = [LINE, LINE, AREA].map((shape) => ({ ...shape, layer: 0 }));
    const { layers } = suggestRoles(makeArtwork([{ name: 'Cut' }], shapes));
    expect(layers[0]).toMatchObject({ role: 'cutting', sure: false });
    expect(layers[0]!.reason).toContain('1 of its 3 shapes');
  });

  it('does not count what draws nothing, nor what an inner layer decides', () => {
    const names = [{ name: 'Cut' }, { name: 'Art', parent: 0 }];
    const shapes = [
      { ...LINE, layer: 0 },
      { layer: 0, draws: false },
      { ...AREA, layer: 1 },
    ];
    const { layers, nearest } = suggestRoles(makeArtwork(names, shapes));
    expect(layers.map((item) => [item?.role, item?.sure])).toEqual([
      ['cutting', true],
      ['print', true],
    ]);
    expect(nearest).toEqual([0, 1]);
  });

  it('is sure of print whatever it holds', () => {
    const { layers } = suggestRoles(
      makeArtwork(
        [{ name: 'Art' }],
        [LINE, AREA].map((s) => ({ ...s, layer: 0 })),
      ),
    );
    expect(layers[0]).toMatchObject({ role: 'print', sure: true });
  });

  it('leaves guides out only where they look like it or say so', () => {
    const first = (name: string, shape: ShapeDraft, printable = true) =>
      suggestRoles(makeArtwork([{ name, printable }], [{ ...shape, layer: 0 }])).layers[0];
    expect(first('Guides', LINE)).toMatchObject({ role: 'ignore', sure: true });
    expect(first('Guides', AREA)).toMatchObject({ role: 'ignore', sure: false });
    expect(first('Guides', AREA, false)).toMatchObject({ role: 'ignore', sure: true });
    expect(first('No print', AREA)).toMatchObject({ role: 'ignore', sure: true });
  });

  it('looks outwards for a name that speaks', () => {
    const names = [{ name: 'Art' }, { name: 'Meadow', parent: 0 }, { name: 'Hills' }];
    const artwork = makeArtwork(names, []);
    const suggestions = suggestRoles(artwork);
    expect(suggestions.nearest).toEqual([0, 0, -1]);
    expect(suggestions.doubts).toEqual(['', '', '']);
    const told = explainLayers(artwork, suggestions);
    expect(told.map((item) => item?.role)).toEqual(['print', 'print', undefined]);
    expect(told[1]!.reason).toContain('"Art"');
  });

  it('lets a name in doubt hide the names around it', () => {
    const names = [{ name: 'Print' }, { name: 'cut and crease', parent: 0 }, { name: 'Inner', parent: 1 }];
    const { layers, nearest, doubts } = suggestRoles(makeArtwork(names, []));
    expect(layers.map((item) => item?.role)).toEqual(['print', undefined, undefined]);
    expect(nearest).toEqual([0, -1, -1]);
    expect(doubts[0]).toBe('');
    expect(doubts[1]).toContain('"cut, crease", which is for cutting and for creasing');
    expect(doubts[2]).toBe(doubts[1]);
  });

  it('suggests a stroke only where it stands in layers of one role alone', () => {
    const names = [{ name: 'Cut' }, { name: 'Crease' }, { name: 'Hills' }, { name: 'Knife' }];
    const shapes = [
      { stroke: '#ff0000', layer: 0 },
      { stroke: 'red', layer: 3 },
      { stroke: '#00f', layer: 0 },
      { stroke: '#00f', layer: 1 },
      { stroke: '#0f0', layer: 0 },
      { stroke: '#0f0', layer: 2 },
      { stroke: '#ff0' },
      { stroke: '#0ff', layer: 1, draws: false },
    ];
    const { strokes } = suggestRoles(makeArtwork(names, shapes));
    expect([...strokes].map(([key, item]) => [key, item.role])).toEqual([['#ff0000', 'cutting']]);
  });
});
