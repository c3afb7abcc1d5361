// Shapes of a sheet against those of the source: number, place, paint.
import { describe, expect, it } from 'vitest';
import { EMPTY_BOX } from '../../../src/geometry/box.js';
import type { Paint, Shape } from '../../../src/model/artwork.js';
import { boxDistanceMm, judgeShapes, nameShape, TOLERANCE_MM } from '../../../src/verify/judge-shapes.js';
import { BOARD, boxOf, colour, makeArtwork, makeShape, PLAIN, placeAll } from './make-shape.js';
import { scanSvg } from './scan-svg.js';

const CONTEXT = { file: 'cut.svg', shiftMm: 0 };

function paintDifference(
  before: Partial<Paint>,
  after: Partial<Paint>,
  part: 'whole' | 'fill' | 'stroke' = 'whole',
): unknown {
  const shapes = [makeShape(0, { paint: { ...PLAIN, ...before } })];
  const sheet = makeArtwork([makeShape(0, { paint: { ...PLAIN, ...after } })]);
  const { findings } = judgeShapes(makeArtwork(shapes), sheet, placeAll(shapes, part), CONTEXT);
  expect(findings.every((item) => item.code === 'verify/paint-changed')).toBe(true);
  return findings.map((item) => item.data.difference);
}

describe('the distance of boxes', () => {
  it('is that of the sides farthest apart', () => {
    const box = boxOf(1, 2, 3, 4);
    expect(boxDistanceMm(box, 1, box, 1, 0)).toBe(0);
    expect(boxDistanceMm(box, 1, { ...box, x0: 1.5 }, 1, 0)).toBe(0.5);
    expect(boxDistanceMm(box, 1, { ...box, y0: 1.25 }, 1, 0)).toBe(0.75);
    expect(boxDistanceMm(box, 1, { ...box, x1: 2 }, 1, 0)).toBe(2);
    expect(boxDistanceMm(box, 1, { ...box, y1: 9 }, 1, 0)).toBe(3);
  });

  it('takes both scales and the shift into account', () => {
    expect(boxDistanceMm(boxOf(2, 2, 2, 2), 2, boxOf(5, 5, 4, 4), 1, 1)).toBe(0);
    expect(boxDistanceMm(boxOf(2, 2, 2, 2), 2, boxOf(5, 5, 4, 4), 1, 0)).toBe(1);
  });

  it('of empty ones is none, of an empty one and another endless', () => {
    expect(boxDistanceMm(EMPTY_BOX, 1, EMPTY_BOX, 1, 5)).toBe(0);
    expect(boxDistanceMm(EMPTY_BOX, 1, boxOf(0, 0, 1, 1), 1, 0)).toBe(Infinity);
    expect(boxDistanceMm(boxOf(0, 0, 1, 1), 1, EMPTY_BOX, 1, 0)).toBe(Infinity);
  });
});

describe('the name of a shape', () => {
  it('is its id, else its place in paint order', () => {
    expect(nameShape(makeShape(2, { id: 'sun', kind: 'circle' }))).toBe('circle "sun"');
    expect(nameShape(makeShape(2))).toBe('rect 3 in paint order');
  });
});

describe('shapes of a sheet', () => {
  const shapes = [makeShape(0), makeShape(1, { id: 'sun' }), makeShape(2)];
  const judge = (after: readonly Shape[], context: object = {}): ReturnType<typeof judgeShapes> =>
    judgeShapes(makeArtwork(shapes), makeArtwork(after), placeAll(shapes), { ...CONTEXT, ...context });

  it('that are the same give nothing; undrawn and hidden ones do not count', () => {
    const after = [makeShape(0), makeShape(9, { draws: false }), ...shapes.slice(1), makeShape(9, { hidden: true })];
    expect(judge(after)).toEqual({ shapes: 3, greatestDeviationMm: 0, greatestDeviationAt: '', findings: [] });
  });

  it('are counted', () => {
    expect(judge(shapes.slice(0, 2))).toMatchObject({
      shapes: 2,
      findings: [
        {
          code: 'verify/lost',
          message: 'cut.svg draws another number of shapes than it should: 2 instead of 3.',
          place: { file: 'cut.svg' },
        },
      ],
    });
    expect(judge([...shapes, makeShape(3)])).toMatchObject({
      shapes: 3,
      findings: [
        {
          code: 'verify/unexpected',
          message: 'cut.svg draws another number of shapes than it should: 4 instead of 3.',
        },
      ],
    });
  });

  it('may lie apart by the tolerance and no more', () => {
    const moved = (by: number): readonly Shape[] => [
      shapes[0]!,
      makeShape(1, { fillBox: boxOf(10 + by, 5, 8, 4), element: 2 }),
      shapes[2]!,
    ];
    const near = judge(moved(TOLERANCE_MM / 2));
    expect(near.findings).toEqual([]);
    expect(near.greatestDeviationMm).toBeCloseTo(TOLERANCE_MM / 2, 12);
    expect(near.greatestDeviationAt).toBe('rect "sun" in cut.svg');
    const far = judge(moved(0.25), { source: scanSvg('<g/>\n<rect/>') });
    expect(far.findings).toEqual([
      expect.objectContaining({
        code: 'verify/box-moved',
        message: 'cut.svg: rect "sun" lies 0.2500 mm from its place in the source; 0.001 mm is allowed.',
        place: expect.objectContaining({ file: 'cut.svg', id: 'sun', element: 'rect', line: 3 }),
        data: { deviationMm: 0.25 },
      }),
    ]);
  });

  it('name the one that lies farthest', () => {
    const after = [0.5, 0.75, 0.25].map((by, i) => makeShape(i, { fillBox: boxOf(10 * i + by, 5, 8, 4) }));
    expect(judge(after)).toMatchObject({ greatestDeviationMm: 0.75, greatestDeviationAt: 'rect "sun" in cut.svg' });
  });

  it('without numbers are told', () => {
    const after = [shapes[0]!, makeShape(1, { fillBox: boxOf(Number.NaN, 5, 8, 4) }), shapes[2]!];
    const judged = judge(after);
    expect(judged.findings.map((item) => item.code)).toEqual(['verify/box-moved']);
    expect(judged.greatestDeviationMm).toBeNaN();
    expect(judged.greatestDeviationAt).toBe('rect "sun" in cut.svg');
  });

  it('may sit further right and down, on an artboard of another scale', () => {
    const after = shapes.map(({ index }) => makeShape(index, { fillBox: boxOf(20 * index + 6, 16, 16, 8) }));
    const sheet = makeArtwork(after, { artboard: { ...BOARD, mmPerPx: 0.5 } });
    const judged = judgeShapes(makeArtwork(shapes), sheet, placeAll(shapes), { file: 'cut.svg', shiftMm: 3 });
    expect(judged).toMatchObject({ greatestDeviationMm: 0, findings: [] });
  });

  it('are told a hundred times, not more', () => {
    const many = Array.from({ length: 150 }, (_, i) => makeShape(i));
    const after = many.map(({ index }) => makeShape(index, { fillBox: boxOf(10 * index + 1, 5, 8, 4) }));
    const { findings } = judgeShapes(makeArtwork(many), makeArtwork(after), placeAll(many), CONTEXT);
    expect(findings).toHaveLength(100);
  });
});

describe('paint', () => {
  it('that is the same is no difference', () => {
    expect(paintDifference({}, {})).toEqual([]);
    expect(paintDifference({ strokeDasharray: [1, 2] }, { strokeDasharray: [1, 2] })).toEqual([]);
  });

  it('of fill and stroke is told in words', () => {
    expect(paintDifference({}, { fill: colour('#ff0000') })).toEqual(['fill #ff0000 instead of #c9a227']);
    expect(paintDifference({}, { fill: colour('#c9a227', 0.5) })).toEqual([
      'fill #c9a227 with opacity 0.5 instead of #c9a227',
    ]);
    expect(paintDifference({ fill: { kind: 'none' } }, {})).toEqual(['fill #c9a227 instead of none']);
    expect(paintDifference({}, { fill: { kind: 'server', id: 'dusk', fallback: null } })).toEqual([
      'fill url(#dusk) instead of #c9a227',
    ]);
    expect(paintDifference({ stroke: colour('#2a7f62') }, {})).toEqual(['stroke none instead of #2a7f62']);
    expect(paintDifference({ stroke: colour('#2a7f62') }, { fill: { kind: 'none' } })).toEqual([
      'fill none instead of #c9a227',
    ]);
  });

  it('of the part that a pass does not draw must be none', () => {
    const both = { stroke: colour('#2a7f62') };
    const none = { kind: 'none' } as const;
    expect(paintDifference(both, { ...both, fill: none }, 'stroke')).toEqual([]);
    expect(paintDifference(both, both, 'stroke')).toEqual(['fill #c9a227 instead of none']);
    expect(paintDifference(both, { stroke: none }, 'fill')).toEqual([]);
    expect(paintDifference(both, both, 'fill')).toEqual(['stroke #2a7f62 instead of none']);
  });

  it.each([
    ['fillOpacity', 0.5, 1],
    ['strokeOpacity', 0.5, 1],
    ['fillRule', 'evenodd', 'nonzero'],
    ['strokeWidth', 2, 1],
    ['strokeLinecap', 'round', 'butt'],
    ['strokeLinejoin', 'bevel', 'miter'],
    ['strokeMiterlimit', 8, 4],
    ['strokeDashoffset', 1, 0],
    ['nonScalingStroke', true, false],
  ] as const)('differs in %s', (key, now, before) => {
    expect(paintDifference({}, { [key]: now })).toEqual([`${key} ${now} instead of ${before}`]);
  });

  it('differs in dashes', () => {
    expect(paintDifference({ strokeDasharray: [1, 2] }, { strokeDasharray: [1, 3] })).toEqual(['another dash pattern']);
    expect(paintDifference({ strokeDasharray: [1, 2] }, {})).toEqual(['another dash pattern']);
  });

  it('is told with its shape and what to do', () => {
    const shapes = [makeShape(0, { id: 'sun' })];
    const sheet = makeArtwork([makeShape(0, { paint: { ...PLAIN, strokeWidth: 3 } })]);
    const { findings } = judgeShapes(makeArtwork(shapes), sheet, placeAll(shapes), CONTEXT);
    expect(findings).toEqual([
      expect.objectContaining({
        message: 'cut.svg: rect "sun" has strokeWidth 3 instead of 1.',
        remedy: expect.stringContaining('give the shape its paint directly'),
        place: { file: 'cut.svg', id: 'sun', element: 'rect' },
      }),
    ]);
  });
});
