// Rules made ready: what each condition fits, how far each layer is, which pass a word means.
import { describe, expect, it } from 'vitest';
import { compileRules, findPass, fitsRule } from '../../../src/classify/compile-rules.js';
import type { Shape } from '../../../src/model/artwork.js';
import { ROLES } from '../../../src/model/pass.js';
import type { Conditions, Ticket } from '../../../src/model/ticket.js';
import { readColour } from '../../../src/resolve/colour.js';
import { DEFAULT_TICKET } from '../../../src/ticket/default-ticket.js';
import { type LayerDraft, makeArtwork, type ShapeDraft } from './make-artwork.js';

/** One rule, made ready, without the ticket's reader before it. */
function compile(conditions: Conditions, layers: readonly LayerDraft[] = [], shapes: readonly ShapeDraft[] = []) {
  const artwork = makeArtwork(layers, shapes);
  const ticket: Ticket = { ...DEFAULT_TICKET, rules: [{ pass: 'cutting', ...conditions }] };
  return { artwork, rule: compileRules(artwork, ticket, readColour)[0]! };
}

function fits(conditions: Conditions, shape: ShapeDraft): boolean {
  const { artwork, rule } = compile(conditions, [], [shape]);
  return fitsRule(rule, artwork.shapes[0]!);
}

describe('conditions on paint', () => {
  it.each<[Conditions, ShapeDraft, boolean]>([
    [{ stroke: '#e5007d' }, { stroke: 'rgb(229, 0, 125)' }, true],
    [{ stroke: 'rgb(229 0 125)' }, { stroke: '#E5007D' }, true],
    [{ stroke: '#e5007d' }, { stroke: '#e5007c' }, false],
    [{ stroke: '#e5007d', colourTolerance: 1 }, { stroke: '#e5007c' }, true],
    [{ stroke: '#e5007d', colourTolerance: 1 }, { stroke: '#e50079' }, false],
    [{ stroke: '#e5007d' }, { fill: '#e5007d' }, false],
    [{ stroke: '#e5007d' }, { stroke: '#e5007d', strokeWidth: 0 }, false],
    [{ stroke: 'device-cmyk(0 1 0 0)' }, { stroke: 'device-cmyk(0 1 0 0)' }, true],
    [{ stroke: 'device-cmyk(0 1 0 0)' }, { stroke: '#ff00ff' }, false],
    [{ fill: '#fff' }, { fill: 'white' }, true],
    [{ fill: '#fff' }, {}, false],
    [{ fill: '#fff' }, { fill: 'white', kind: 'line' }, false],
    [{ fill: 'any' }, { fill: '#123' }, true],
    [{ fill: 'any' }, { stroke: '#123' }, false],
    [{ fill: 'none' }, { stroke: '#123' }, true],
    [{ fill: 'none' }, { fill: '#123' }, false],
    [{ dashed: true }, { stroke: '#123', dashed: true }, true],
    [{ dashed: true }, { stroke: '#123' }, false],
    [{ dashed: false }, { stroke: '#123' }, true],
    [{ dashed: false }, { stroke: '#123', dashed: true }, false],
    [{ dashed: false }, { fill: '#123' }, false],
    [{ element: 'rect' }, { kind: 'rect' }, true],
    [{ element: 'rect' }, { kind: 'path' }, false],
    [{ stroke: '#123', dashed: true }, { stroke: '#123' }, false],
  ])('%j, %j: %s', (conditions, shape, expected) => {
    expect(fits(conditions, shape)).toBe(expected);
  });

  it('measures the line width on the artboard within 0.01 mm', () => {
    const px = 96 / 25.4;
    const shape = { stroke: '#123', strokeWidth: 0.25 * px };
    expect(fits({ widthMm: 0.25 }, shape)).toBe(true);
    expect(fits({ widthMm: 0.259 }, shape)).toBe(true);
    expect(fits({ widthMm: 0.261 }, shape)).toBe(false);
    expect(fits({ widthMm: 0.5 }, { ...shape, scale: 2 })).toBe(true);
    expect(fits({ widthMm: 0.25 }, { ...shape, scale: 2 })).toBe(false);
    expect(fits({ widthMm: 0.25 }, { fill: '#123', strokeWidth: 0.25 * px })).toBe(false);
  });

  it('does not scale a stroke that does not scale', () => {
    const px = 96 / 25.4;
    const { artwork, rule } = compile({ widthMm: 0.25 }, [], [{ stroke: '#123', strokeWidth: 0.25 * px, scale: 3 }]);
    const [shape] = artwork.shapes as [Shape];
    expect(fitsRule(rule, shape)).toBe(false);
    expect(fitsRule(rule, { ...shape, paint: { ...shape.paint, nonScalingStroke: true } })).toBe(true);
  });

  it.each(['stroke', 'fill'] as const)('refuses a %s that is no colour', (part) => {
    expect(() => compile({ [part]: 'purplish' })).toThrow(
      expect.objectContaining({ code: 'ticket/wrong', message: expect.stringContaining(`rules[0].${part}`) }),
    );
  });
});

describe('text patterns', () => {
  it.each<[string, string, boolean]>([
    ['outline', 'outline', true],
    ['OUTLINE', 'outline', true],
    ['outline', 'outlines', false],
    ['découpe', 'Decoupe', true],
    ['out*', 'outline', true],
    ['*line', 'outline', true],
    ['o*l*e', 'outline', true],
    ['*', 'x', true],
    ['out*x', 'outline', false],
    ['ab*ba', 'aba', false],
    ['a*a*a', 'aa', false],
    ['out?ine', 'outline', false],
    ['o.tline', 'outline', false],
    ['(', 'outline', false],
  ])('%s and %s: %s', (pattern, text, expected) => {
    expect(fits({ id: pattern }, { id: text })).toBe(expected);
    expect(fits({ class: pattern }, { classes: ['other', text] })).toBe(expected);
    const { rule } = compile({ layer: pattern }, [{ name: text }]);
    expect(rule.distances[1]).toBe(expected ? 1 : -1);
  });

  it('does not take a missing id or class for anything', () => {
    expect(fits({ id: '*' }, {})).toBe(false);
    expect(fits({ class: '*' }, {})).toBe(false);
  });
});

describe('distances', () => {
  const layers = [{ name: 'Die' }, { name: 'Inner', parent: 0 }, { name: 'Die', parent: 1 }, { name: 'Art' }];

  it('count outwards from the innermost layer; loose shapes stand nowhere', () => {
    expect([...compile({ layer: 'Die' }, layers).rule.distances]).toEqual([-1, 1, 2, 1, -1]);
    expect([...compile({ layer: 'die/inner' }, layers).rule.distances]).toEqual([-1, -1, 1, 2, -1]);
    expect([...compile({ layer: 'Die/*/Die' }, layers).rule.distances]).toEqual([-1, -1, -1, 1, -1]);
  });

  it('are nothing for what stands on the shape itself', () => {
    expect([...compile({ id: 'a' }, layers).rule.distances]).toEqual([0, 0, 0, 0, 0]);
    expect([...compile({ id: 'a', layer: 'Die' }, layers).rule.distances]).toEqual([-1, 0, 0, 0, -1]);
    expect([...compile({ class: 'a', layer: 'Art' }, layers).rule.distances]).toEqual([-1, -1, -1, -1, 0]);
  });

  it('behind a slash, take one whole path to the letter', () => {
    const alike = [...layers, { name: 'die' }, { name: 'D*' }];
    expect([...compile({ layer: '/Die' }, alike).rule.distances]).toEqual([-1, 1, 2, 3, -1, -1, -1]);
    expect([...compile({ layer: '/Die/Inner/Die' }, alike).rule.distances]).toEqual([-1, -1, -1, 1, -1, -1, -1]);
    expect([...compile({ layer: '/die' }, alike).rule.distances]).toEqual([-1, -1, -1, -1, -1, 1, -1]);
    expect([...compile({ layer: '/D*' }, alike).rule.distances]).toEqual([-1, -1, -1, -1, -1, -1, 1]);
    expect([...compile({ layer: '/Inner' }, alike).rule.distances]).toEqual([-1, -1, -1, -1, -1, -1, -1]);
    expect([...compile({ layer: '/\\/front' }, [{ name: '/front' }]).rule.distances]).toEqual([-1, 1]);
  });

  it('of a slash alone take what stands in no layer', () => {
    expect([...compile({ layer: '/' }, layers).rule.distances]).toEqual([1, -1, -1, -1, -1]);
    expect([...compile({ layer: '/', id: 'a' }, layers).rule.distances]).toEqual([0, -1, -1, -1, -1]);
  });

  it('know a slash in a name', () => {
    expect(compile({ layer: 'Cut/front' }, [{ name: 'Cut/front' }]).rule.distances[1]).toBe(1);
    expect(compile({ layer: 'Cut\\/front' }, [{ name: 'Cut/front' }]).rule.distances[1]).toBe(1);
  });
});

describe('findPass', () => {
  it('takes the name before the role, and makes what is not there', () => {
    const requests = [
      { name: 'first', role: 'creasing' },
      { name: 'cutting', role: 'perforating' },
    ] as const;
    expect(findPass('first', requests)).toEqual(requests[0]);
    expect(findPass('creasing', requests)).toEqual(requests[0]);
    expect(findPass('cutting', requests)).toEqual(requests[1]);
    expect(findPass('partial-cutting', requests)).toEqual({ name: 'partial-cut', role: 'partial-cutting' });
  });

  it('does not mix a pass it makes with a declared one that bears the name', () => {
    const requests = [{ name: 'cut', role: 'creasing' }] as const;
    expect(findPass('cutting', requests)).toEqual({ name: 'cutting', role: 'cutting' });
    expect(findPass('creasing', requests)).toEqual(requests[0]);
  });

  it('names the passes it makes by short verbs, each once', () => {
    const names = ROLES.map((role) => findPass(role, []).name);
    expect(new Set(names).size).toBe(ROLES.length);
    expect(names).toEqual(
      expect.arrayContaining(['crease', 'reverse-crease', 'print', 'cut', 'perforate', 'white', 'varnish', 'glue']),
    );
  });

  it('refuses a word that is neither', () => {
    expect(() => findPass('cut', [])).toThrow(expect.objectContaining({ code: 'ticket/wrong' }));
  });
});

it('tells a rule in words', () => {
  const { rule } = compile({ layer: 'Die', stroke: '#00f', dashed: true, widthMm: 0.3 });
  expect(rule.text).toBe('rule 1: layer "Die", stroke "#00f", width 0.3 mm, dashed');
  expect(compile({ rest: true }).rule.text).toBe('rule 1: the rest');
  expect(compile({ dashed: false }).rule.text).toBe('rule 1: solid');
});
