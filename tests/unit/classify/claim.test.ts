// Which rule wins: the nearest name, name with paint before name alone, and a question where two passes are as near.
import { describe, expect, it } from 'vitest';
import type { Json } from '../../../src/model/finding.js';
import { classifyBy, makeArtwork, type ShapeDraft, tellPlaces } from './make-artwork.js';

const LAYERS = [{ name: 'Die' }, { name: 'Inner', parent: 0 }, { name: 'Core', parent: 1 }];
const LINE: ShapeDraft = { layer: 2, stroke: '#f00', id: 'edge', classes: ['thin', 'die'] };

type RuleJson = { readonly [key: string]: Json };

/** Where one line in Die/Inner/Core goes, and what is said of it. */
function decide(rules: readonly RuleJson[], shape: ShapeDraft = LINE): readonly string[] {
  const artwork = makeArtwork(LAYERS, [shape]);
  const made = classifyBy(artwork, { rules });
  return [...tellPlaces(artwork, made), ...made.findings.map((item) => item.code)];
}

const CUT = { pass: 'cutting' };
const CREASE = { pass: 'creasing' };

describe('between names', () => {
  it.each<[string, RuleJson, RuleJson, readonly string[]]>([
    ['inner before outer', { ...CUT, layer: 'Core' }, { ...CREASE, layer: 'Inner' }, ['cut']],
    ['next before outermost', { ...CUT, layer: 'Inner' }, { ...CREASE, layer: 'Die' }, ['cut']],
    ['id before layer', { ...CUT, id: 'edge' }, { ...CREASE, layer: 'Core' }, ['cut']],
    ['class before layer', { ...CUT, class: 'die' }, { ...CREASE, layer: 'Core' }, ['cut']],
    ['id against class', { ...CUT, id: 'edge' }, { ...CREASE, class: 'die' }, ['(open)', 'classify/claimed-twice']],
    [
      'name against path',
      { ...CUT, layer: 'Core' },
      { ...CREASE, layer: 'Die/*/Core' },
      ['(open)', 'classify/claimed-twice'],
    ],
    ['twice the same pass', { ...CUT, layer: 'Core' }, { ...CUT, id: 'edge' }, ['cut']],
  ])('%s', (_, first, second, expected) => {
    const unused = (places: readonly string[]) => places.filter((item) => item !== 'classify/rule-unused');
    expect(unused(decide([first, second]))).toEqual(expected);
    expect(unused(decide([second, first]))).toEqual(expected);
  });
});

describe('names with paint', () => {
  it.each<[string, RuleJson, RuleJson, readonly string[]]>([
    ['before the name alone', { ...CUT, layer: 'Core', stroke: '#f00' }, { ...CREASE, layer: 'Core' }, ['cut']],
    ['before paint alone', { ...CUT, layer: 'Core', stroke: '#f00' }, { ...CREASE, stroke: '#f00' }, ['cut']],
    ['not from further out', { ...CUT, layer: 'Core' }, { ...CREASE, layer: 'Die', stroke: '#f00' }, ['cut']],
    [
      'against one another',
      { ...CUT, layer: 'Core', stroke: '#f00' },
      { ...CREASE, layer: 'Core', dashed: false },
      ['(open)', 'classify/claimed-twice'],
    ],
  ])('%s', (_, first, second, expected) => {
    const unused = (places: readonly string[]) => places.filter((item) => item !== 'classify/rule-unused');
    expect(unused(decide([first, second]))).toEqual(expected);
    expect(unused(decide([second, first]))).toEqual(expected);
  });
});

describe('paint', () => {
  it('asks where two passes claim it', () => {
    expect(
      decide([
        { ...CUT, stroke: '#f00' },
        { ...CREASE, dashed: false },
      ]),
    ).toEqual(['(open)', 'classify/claimed-twice']);
    expect(
      decide([
        { ...CUT, stroke: '#f00' },
        { ...CUT, dashed: false },
      ]),
    ).toEqual(['cut']);
  });

  it('against a name is asked about, in agreement is not', () => {
    expect(
      decide([
        { ...CUT, layer: 'Die' },
        { ...CREASE, stroke: '#f00' },
      ]),
    ).toEqual(['(open)', 'classify/name-against-paint']);
    expect(
      decide([
        { ...CUT, layer: 'Die' },
        { ...CUT, stroke: '#f00' },
      ]),
    ).toEqual(['cut']);
  });

  it('of two passes is settled by no plain name', () => {
    const rules = [
      { ...CUT, layer: 'Die' },
      { ...CUT, stroke: '#f00' },
      { ...CREASE, dashed: false },
    ];
    expect(decide(rules)).toEqual(['(open)', 'classify/claimed-twice']);
  });
});

describe('rest', () => {
  it('takes what nothing else takes', () => {
    expect(
      decide([
        { ...CUT, layer: 'Art' },
        { ...CREASE, rest: true },
      ]),
    ).toEqual(['crease', 'classify/rule-unused']);
    expect(
      decide([
        { ...CREASE, rest: true },
        { ...CUT, stroke: '#f00' },
      ]),
    ).toEqual(['cut']);
  });

  it('missing, leaves it to a question, whatever the layers are called', () => {
    expect(decide([{ pass: 'print', stroke: '#00f' }])).toEqual([
      '(open)',
      'classify/unclaimed',
      'classify/rule-unused',
    ]);
  });
});

describe('shapes alike in paint', () => {
  it('are told apart by id, class and width', () => {
    const px = 96 / 25.4;
    const artwork = makeArtwork(
      [],
      [
        { stroke: '#f00', id: 'a', strokeWidth: px },
        { stroke: '#f00', id: 'b', strokeWidth: px },
        { stroke: '#f00', classes: ['x'], strokeWidth: px },
        { stroke: '#f00', strokeWidth: px, scale: 2 },
        { stroke: '#f00', id: 'a', strokeWidth: px },
      ],
    );
    const [{ paint }] = artwork.shapes as unknown as [(typeof artwork.shapes)[number]];
    const shared = { ...artwork, shapes: artwork.shapes.map((shape) => ({ ...shape, paint })) };
    const rules = [
      { pass: 'cutting', id: 'a' },
      { pass: 'creasing', class: 'x' },
      { pass: 'perforating', widthMm: 2 },
      { pass: 'print', rest: true },
    ];
    expect(tellPlaces(shared, classifyBy(shared, { rules }))).toEqual(['cut', 'print', 'crease', 'perforate', 'cut']);
  });

  it('are told apart by layer and kind', () => {
    const artwork = makeArtwork(LAYERS, [
      { stroke: '#f00', layer: 0 },
      { stroke: '#f00', layer: 2 },
      { stroke: '#f00', kind: 'rect' },
      { stroke: '#f00' },
    ]);
    const [{ paint }] = artwork.shapes as unknown as [(typeof artwork.shapes)[number]];
    const shared = { ...artwork, shapes: artwork.shapes.map((shape) => ({ ...shape, paint })) };
    const rules = [
      { ...CUT, layer: 'Core' },
      { ...CREASE, element: 'rect' },
      { pass: 'print', rest: true },
    ];
    expect(tellPlaces(shared, classifyBy(shared, { rules }))).toEqual(['print', 'cut', 'crease', 'print']);
  });
});
