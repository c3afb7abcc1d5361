// Classification: every shape is accounted for once, and the order of layers does not matter.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Classification } from '../../src/classify/classify.js';
import type { Artwork, Layer, Shape } from '../../src/model/artwork.js';
import type { Json } from '../../src/model/finding.js';
import { isToolpath } from '../../src/model/pass.js';
import {
  classifyBy,
  type LayerDraft,
  makeArtwork,
  type ShapeDraft,
  tellPlaces,
} from '../unit/classify/make-artwork.js';

const NAMES = ['Cut', 'Crease', 'Art', 'Meadow', 'Guides', 'cut and crease', 'Die', 'White'];
const COLOURS = ['#f00', '#00f', '#0a0'];
const CODES_OF_OPEN = new Set([
  'layer/hidden-asked',
  'classify/unclaimed',
  'classify/claimed-twice',
  'classify/name-against-paint',
  'classify/name-unsure',
  'classify/fill-and-stroke',
  'classify/use-divided',
]);

const layers: fc.Arbitrary<readonly LayerDraft[]> = fc
  .array(fc.record({ name: fc.constantFrom(...NAMES), around: fc.nat(), hidden: fc.nat({ max: 5 }) }), { maxLength: 6 })
  .map((drafts) =>
    drafts.map(({ name, around, hidden }, i) => ({
      name: `${name} ${i}`,
      parent: (around % (i + 1)) - 1,
      hidden: hidden === 0,
    })),
  );

const colour = fc.option(fc.constantFrom(...COLOURS), { nil: undefined });

const shape = fc.record({
  layer: fc.nat(),
  fill: colour,
  stroke: colour,
  id: fc.constantFrom('', 'a', 'b'),
  dashed: fc.boolean(),
  draws: fc.nat({ max: 7 }).map((n) => n > 0),
  copy: fc.nat({ max: 9 }),
});

const conditions = fc
  .record(
    {
      layer: fc.constantFrom('Cut*', 'Crease*', 'Art*', 'Meadow*', 'Die*'),
      stroke: fc.constantFrom(...COLOURS),
      fill: fc.constantFrom(...COLOURS, 'any', 'none'),
      dashed: fc.boolean(),
      id: fc.constantFrom('a', 'b'),
    },
    { requiredKeys: [] },
  )
  .filter((rule) => Object.keys(rule).length > 0);

const rule = fc
  .tuple(fc.constantFrom('cutting', 'creasing', 'print', 'ignore'), conditions)
  .map(([pass, rest]) => ({ pass, ...rest }) as { readonly [key: string]: Json });

const ticket = fc
  .record({
    rules: fc.array(rule, { maxLength: 4 }),
    rest: fc.boolean(),
    hidden: fc.constantFrom('ask', 'skip', 'include', 'stop'),
    partPaint: fc.boolean(),
  })
  .map(({ rules, rest, ...others }) => ({
    ...others,
    rules: rest ? [...rules, { pass: 'print', rest: true }] : rules,
  }));

const artwork: fc.Arbitrary<Artwork> = fc.tuple(layers, fc.array(shape, { maxLength: 20 })).map(([drafts, shapes]) =>
  makeArtwork(
    drafts,
    shapes.map(({ layer, fill, stroke, copy, ...others }): ShapeDraft => {
      const at = (layer % (drafts.length + 1)) - 1;
      return {
        ...others,
        layer: at,
        ...(fill === undefined ? {} : { fill }),
        ...(stroke === undefined ? {} : { stroke }),
        // Copies stand in one layer, since their carrier does.
        ...(copy < 2 ? { carrier: 500 + copy + 2 * (at + 1) } : {}),
      };
    }),
  ),
);

/** The same drawing with its layers listed in another order. */
function reorderLayers(art: Artwork, seed: number): Artwork {
  const order = art.layers.map((layer) => layer.index).sort((a, b) => ((a * seed) % 7) - ((b * seed) % 7) || b - a);
  const place = new Map(order.map((old, i) => [old, i]));
  const move = (old: number): number => (old < 0 ? -1 : place.get(old)!);
  return {
    ...art,
    layers: order.map((old, index): Layer => ({ ...art.layers[old]!, index, parent: move(art.layers[old]!.parent) })),
    shapes: art.shapes.map((item): Shape => ({ ...item, layer: move(item.layer) })),
  };
}

/** What was found, without regard to the order of layers. */
function tellFindings({ findings }: Classification): readonly string[] {
  return findings.map((item) => JSON.stringify(item)).sort();
}

describe('classify', () => {
  it('has every shape in passes or out of them, never both, never twice', () => {
    fc.assert(
      fc.property(artwork, ticket, (art, asked) => {
        const { assignment } = classifyBy(art, asked);
        const placed = assignment.placements.map((item) => item.shape);
        const left = assignment.exclusions.map((item) => item.shape);
        for (const { index } of art.shapes) {
          const parts = assignment.placements.filter((item) => item.shape === index).map((item) => item.part);
          const out = left.filter((item) => item === index).length;
          const told = [...parts].sort().join();
          expect([told, out]).toEqual(out === 1 ? ['', 1] : [told === 'whole' ? 'whole' : 'fill,stroke', 0]);
        }
        expect(Math.max(-1, ...placed, ...left)).toBe(art.shapes.length - 1);
        expect([...placed]).toEqual([...placed].sort((a, b) => a - b));
        expect([...left]).toEqual([...left].sort((a, b) => a - b));
      }),
      { numRuns: 500 },
    );
  });

  it('keeps only passes that have shapes, numbered from 1, none of them to ignore', () => {
    fc.assert(
      fc.property(artwork, ticket, (art, asked) => {
        const { passes, placements } = classifyBy(art, asked).assignment;
        expect(passes.map((pass) => pass.order)).toEqual(passes.map((_, i) => i + 1));
        expect([...new Set(placements.map((item) => item.pass))].sort()).toEqual(passes.map((_, i) => i));
        expect(passes.filter((pass) => pass.role === 'ignore')).toEqual([]);
        expect(new Set(passes.map((pass) => pass.name)).size).toBe(passes.length);
      }),
    );
  });

  it('has a finding for every open shape, and open shapes for every question', () => {
    fc.assert(
      fc.property(artwork, ticket, (art, asked) => {
        const { assignment, findings } = classifyBy(art, asked);
        const open = assignment.exclusions.filter((item) => item.cause === 'open').map((item) => item.shape);
        const told = findings
          .filter((item) => CODES_OF_OPEN.has(item.code))
          .flatMap((item) => item.data.shapes as number[]);
        expect([...told].sort((a, b) => a - b)).toEqual(open);
      }),
      { numRuns: 500 },
    );
  });

  it('sends no copy to two passes, and no fill to a tool by its stroke alone', () => {
    fc.assert(
      fc.property(artwork, ticket, (art, asked) => {
        const { passes, placements } = classifyBy(art, asked).assignment;
        const ways = new Map<number, number>();
        for (const { shape: index, pass, part } of placements) {
          const { carrier, element } = art.shapes[index]!;
          if (carrier !== element) expect(ways.get(carrier) ?? pass).toBe(pass);
          ways.set(carrier, pass);
          if (part !== 'whole') expect(isToolpath(passes[pass]!.role)).toBe(part === 'stroke');
        }
      }),
      { numRuns: 500 },
    );
  });

  it('does not mind the order of layers', () => {
    fc.assert(
      fc.property(artwork, ticket, fc.integer({ min: 1, max: 6 }), (art, asked, seed) => {
        const moved = reorderLayers(art, seed);
        const before = classifyBy(art, asked);
        const after = classifyBy(moved, asked);
        expect(tellPlaces(moved, after)).toEqual(tellPlaces(art, before));
        expect(tellFindings(after)).toEqual(tellFindings(before));
      }),
      { numRuns: 500 },
    );
  });

  it('does not mind the order of rules', () => {
    fc.assert(
      fc.property(artwork, ticket, (art, asked) => {
        const turned = { ...asked, rules: [...asked.rules].reverse() };
        expect(tellPlaces(art, classifyBy(art, turned))).toEqual(tellPlaces(art, classifyBy(art, asked)));
      }),
      { numRuns: 500 },
    );
  });
});
