// The first judge as a whole: one file read back, files against each other, the verdict.
import { describe, expect, it } from 'vitest';
import type { Artboard, Artwork, Shape } from '../../../src/model/artwork.js';
import type { Placement } from '../../../src/model/pass.js';
import type { Source } from '../../../src/source/source.js';
import {
  compareSheets,
  haveEqualExtents,
  judgeReadings,
  type Original,
  readBack,
  type SheetReading,
} from '../../../src/verify/verify.js';
import { BOARD, boxOf, makeArtwork, makeShape, placeAll } from './make-shape.js';
import { scanSvg, scanText } from './scan-svg.js';

const SOURCE = scanSvg('<rect id="r" x="0"/><rect id="s" x="1"/><g id="h"><rect id="t" x="2"/></g>');
const SHAPES = [makeShape(0), makeShape(1), makeShape(2, { element: 4, carrier: 4 })];
const PASSES = [
  { order: 1, name: 'print', role: 'print' } as const,
  { order: 2, name: 'cut', role: 'cutting' } as const,
];

interface Draft {
  readonly artwork?: Partial<Artwork>;
  readonly placements?: readonly Placement[];
  readonly original?: Partial<Original>;
  readonly shown?: readonly number[];
  readonly board?: Partial<Artboard>;
  readonly after?: readonly Shape[];
  /** Stands for a large source. */
  readonly source?: Source;
}

function back(text: string, rows: readonly number[], draft: Draft = {}): SheetReading {
  const placements = draft.placements ?? placeAll(SHAPES);
  const original: Original = {
    source: draft.source ?? SOURCE,
    artwork: makeArtwork(SHAPES, draft.artwork),
    assignment: { passes: PASSES, placements, exclusions: [], shownElements: draft.shown ?? [] },
    marginMm: 0,
    rootMayChange: false,
    cleanedRows: new Set(),
    removed: new Uint8Array(SOURCE.elements.count),
    ...draft.original,
  };
  const written = { file: 'print.svg', bytes: new Uint8Array(Buffer.from(text)), rows: Int32Array.from(rows) };
  return readBack(original, written, 0, {
    scan: (bytes) => scanText(Buffer.from(bytes).toString('utf8')),
    resolveArtboard: () => ({ ...BOARD, ...draft.board }),
    resolve: () => makeArtwork(draft.after ?? SHAPES, { artboard: { ...BOARD, ...draft.board } }),
  });
}

const TEXT = Buffer.from(SOURCE.text).toString('utf8');
const ROWS = [0, 1, 2, 3, 4];

function codes(reading: SheetReading): readonly string[] {
  return reading.findings.map((item) => item.code);
}

describe('a file read back', () => {
  it('that is as it should be', () => {
    const reading = back(TEXT, ROWS);
    expect(reading).toMatchObject({ file: 'print.svg', marks: null, shapes: 3, deviationMm: 0, deviationAt: '' });
    expect(reading.findings).toEqual([]);
    expect(reading.proof).toEqual({
      pass: 'print',
      shapes: 3,
      artExtentMm: { x: 0, y: 5, width: 28, height: 4 },
      drawnExtentMm: { x: 0, y: 5, width: 28, height: 4 },
    });
    expect(Buffer.from(reading.head).toString('utf8')).toBe(TEXT.slice(0, TEXT.indexOf('>') + 1));
  });

  it('counts only the shapes of its own pass', () => {
    const placements = placeAll(SHAPES).map((placement, i) => ({ ...placement, pass: i === 1 ? 1 : 0 }));
    const text = TEXT.replace('<rect id="s" x="1"/>', '');
    const reading = back(text, [0, 1, 3, 4], { placements, after: [SHAPES[0]!, SHAPES[2]!] });
    expect(reading.findings).toEqual([]);
    expect(reading.shapes).toBe(2);
    expect(codes(back(TEXT, ROWS, { placements, after: [SHAPES[0]!, SHAPES[2]!] }))).toEqual(['verify/unexpected']);
  });

  it('has an extent of six decimals, moved by the margin; none where nothing is drawn', () => {
    const shapes = [makeShape(0, { drawnBound: boxOf(1 / 3, 1, 2, 2), drawnBox: boxOf(1 / 3, 1, 2, 2) })];
    const grown = { width: 110, height: 70, matrix: [1, 0, 0, 1, 5, 5] } as const;
    const moved = SHAPES.map((shape) => ({ ...shape, fillBox: boxOf(10 * shape.index + 5, 10, 8, 4) }));
    const reading = back(TEXT, ROWS, {
      artwork: { shapes: [shapes[0]!, ...SHAPES.slice(1)] },
      placements: placeAll(shapes),
      original: { marginMm: 5 },
      board: grown,
      after: [moved[0]!],
    });
    expect(reading.proof.artExtentMm).toEqual({ x: 5.333333, y: 6, width: 2, height: 2 });
    expect(codes(reading)).toEqual(['verify/unexpected', 'verify/unexpected']);
    expect(back(TEXT, ROWS, { placements: [] }).proof.artExtentMm).toBeNull();
  });

  it('is measured in millimetres, whatever a px is', () => {
    const small = { mmPerPx: 0.5 } as const;
    const reading = back(TEXT, ROWS, { artwork: { artboard: { ...BOARD, ...small } }, board: small });
    expect(reading).toMatchObject({ deviationMm: 0, findings: [] });
    expect(reading.proof.artExtentMm).toEqual({ x: 0, y: 2.5, width: 14, height: 2 });
    const other = { width: 50, height: 30, matrix: [0.5, 0, 0, 0.5, 0, 0] } as const;
    const after = SHAPES.map((shape) => ({ ...shape, fillBox: boxOf(5 * shape.index, 2.5, 4, 2) }));
    expect(back(TEXT, ROWS, { artwork: { artboard: { ...BOARD, ...small } }, board: other, after }).findings).toEqual(
      [],
    );
  });

  it('tells active content', () => {
    const reading = back(TEXT.replace('id="r"', 'id="r" onclick="go()"'), ROWS);
    expect(codes(reading)).toEqual(['verify/bytes-changed', 'verify/active-content']);
  });

  it('unites its marks with its art', () => {
    const pins = 'transform:none!important;stroke:none!important';
    const marks = `<g id="pinbar-marks" transform="matrix(1 0 0 1 0 0)"><path data-mark="disc" d="M60 40h10v5z" style="${pins}"/></g>`;
    const reading = back(TEXT.replace('</svg>', `${marks}</svg>`), [...ROWS, -1, -1]);
    expect(reading.proof.drawnExtentMm).toEqual({ x: 0, y: 5, width: 70, height: 40 });
    expect(new Set(codes(reading))).toEqual(new Set(['verify/marks-differ']));
    expect(reading.findings.map((item) => item.message)).toContain(
      'print.svg: display of its marks is "" instead of "inline".',
    );
  });
});

describe('the artboard of a file', () => {
  const moved = (board: Partial<Artboard>, draft: Draft = {}): SheetReading => back(TEXT, ROWS, { board, ...draft });

  it('may differ by the tolerance and no more', () => {
    expect(codes(moved({ matrix: [1, 0, 0, 1, 0.0009, 0] }))).toEqual([]);
    const far = moved({ matrix: [1, 0, 0, 1, 0, 0.5] });
    expect(codes(far)).toEqual(['verify/artboard-differs']);
    expect(far).toMatchObject({ deviationMm: 0.5, deviationAt: 'the artboard of print.svg' });
    expect(far.findings[0]).toMatchObject({
      message:
        'print.svg: its artboard, or the drawing on it, ends 0.5000 mm from where it should; 0.001 mm is allowed.',
      place: { file: 'print.svg' },
      data: { deviationMm: 0.5 },
    });
  });

  it.each([
    [{ matrix: [1.01, 0, 0, 1, 0, 0] }, 1],
    [{ matrix: [1, 0, 0, 1.1, 0, 0] }, 6],
    [{ matrix: [1, 0.02, 0, 1, 0, 0] }, 2],
    [{ matrix: [1, 0, 0.05, 1, 0, 0] }, 3],
    [{ width: 102 }, 2],
    [{ height: 57 }, 3],
  ] as const)('%j is %d mm off', (board, mm) => {
    expect(moved(board).deviationMm).toBeCloseTo(mm, 9);
  });

  it('grows by the margin on both sides', () => {
    const original = { marginMm: 4 };
    const after = SHAPES.map((shape) => ({ ...shape, fillBox: boxOf(10 * shape.index + 4, 9, 8, 4) }));
    const grown = { width: 108, height: 68, matrix: [1, 0, 0, 1, 4, 4] } as const;
    expect(moved(grown, { original, after }).findings).toEqual([]);
    expect(codes(moved({ ...grown, width: 104 }, { original, after }))).toEqual(['verify/artboard-differs']);
    expect(codes(moved({ ...grown, height: 60 }, { original, after }))).toEqual(['verify/artboard-differs']);
  });

  it('without a viewBox is as large as it is', () => {
    const artwork = { artboard: { ...BOARD, viewBox: null } };
    expect(moved({ viewBox: null, matrix: [1.01, 0, 0, 1, 0, 0] }, { artwork }).deviationMm).toBeCloseTo(1, 9);
  });

  it('with a viewBox elsewhere is held at its corners', () => {
    const artwork = { artboard: { ...BOARD, viewBox: [-50, -30, 10, 10] as const } };
    expect(moved({ matrix: [1.1, 0, 0, 1, 0, 0] }, { artwork }).deviationMm).toBeCloseTo(5, 9);
  });
});

describe('the second look at every shape', () => {
  const after = [makeShape(0), makeShape(1, { fillBox: boxOf(10.25, 5, 8, 4) }), SHAPES[2]!];
  const long = ' '.repeat(4 * 1024 * 1024 + 1 - SOURCE.text.length);
  const large = scanText(TEXT.replace('</svg>', `<!--${long}--></svg>`));

  it('is taken of small files', () => {
    const reading = back(TEXT, ROWS, { after });
    expect(codes(reading)).toEqual(['verify/box-moved']);
    expect(reading).toMatchObject({ deviationMm: 0.25, deviationAt: 'rect 2 in paint order in print.svg' });
  });

  it('is taken of large ones where rules count', () => {
    expect(codes(back(TEXT, ROWS, { after, source: large }))).toEqual([]);
    expect(codes(back(TEXT, ROWS, { after, source: large, artwork: { structural: true } }))).toEqual([
      'verify/box-moved',
    ]);
  });

  it('leaves a greater distance of the artboard standing', () => {
    const reading = back(TEXT, ROWS, { after, board: { width: 101 } });
    expect(reading).toMatchObject({ deviationMm: 1, deviationAt: 'the artboard of print.svg' });
  });
});

describe('overrides', () => {
  it('part the paint', () => {
    const placements = [
      ...placeAll([SHAPES[0]!], 'stroke'),
      ...placeAll([SHAPES[1]!], 'fill'),
      ...placeAll([SHAPES[2]!]),
    ];
    const text = TEXT.replace('x="0"', 'x="0" style="fill:none!important"').replace(
      'x="1"',
      'x="1" style="stroke:none!important"',
    );
    const none = { kind: 'none' } as const;
    const after = [makeShape(0, { paint: { ...SHAPES[0]!.paint, fill: none } }), SHAPES[1]!, SHAPES[2]!];
    expect(back(text, ROWS, { placements, after }).findings).toEqual([]);
    expect(codes(back(TEXT, ROWS, { placements, after }))).toEqual(['verify/bytes-changed', 'verify/bytes-changed']);
  });

  it('show what was hidden, on every row that hides it', () => {
    const show = 'display:inline!important;visibility:visible!important';
    const draft: Draft = { artwork: { hiders: new Set([3, 4, 2]) }, shown: [4] };
    const text = TEXT.replace('id="h"', `id="h" style="${show}"`).replace('x="2"', `x="2" style="${show}"`);
    expect(back(text, ROWS, draft).findings).toEqual([]);
    expect(codes(back(TEXT, ROWS, draft))).toEqual(['verify/bytes-changed', 'verify/bytes-changed']);
  });

  it('show and part at once', () => {
    const placements = [...placeAll(SHAPES.slice(0, 2)), ...placeAll([SHAPES[2]!], 'fill')];
    const css = 'display:inline!important;visibility:visible!important;stroke:none!important';
    const draft: Draft = { artwork: { hiders: new Set([4]) }, shown: [4], placements };
    expect(back(TEXT.replace('x="2"', `x="2" style="${css}"`), ROWS, draft).findings).toEqual([]);
  });
});

function reading(draft: Partial<SheetReading>, x = 0): SheetReading {
  const extent = { x, y: 0, width: 1, height: 1 };
  return {
    file: 'print.svg',
    head: new Uint8Array([1]),
    artboard: BOARD,
    marks: null,
    proof: { pass: 'print', shapes: 1, artExtentMm: extent, drawnExtentMm: extent },
    shapes: 1,
    deviationMm: 0,
    deviationAt: '',
    findings: [],
    ...draft,
  };
}

describe('files against each other', () => {
  const MARKS = { marks: [], unlike: [], boxMm: boxOf(0, 0, 1, 1) };
  const said = (others: readonly SheetReading[], marked = false): readonly string[] =>
    compareSheets([reading({ marks: marked ? MARKS : null }), ...others], marked).map((item) => item.message);

  it('are alike, or there are none', () => {
    expect(compareSheets([], true)).toEqual([]);
    expect(said([reading({ file: 'cut.svg' })])).toEqual([]);
  });

  it('have the same root tag', () => {
    expect(said([reading({ file: 'cut.svg', head: new Uint8Array([2]) })])).toEqual([
      'cut.svg and print.svg have different root tags.',
    ]);
  });

  it('have the same extent, where there are marks to make it so', () => {
    const far = reading({ file: 'cut.svg', marks: MARKS }, 0.001);
    expect(said([far], true)).toEqual([
      'cut.svg and print.svg draw different extents; a machine that places by what is drawn would place them differently.',
    ]);
    expect(said([reading({ file: 'cut.svg' }, 0.001)])).toEqual([]);
    expect(said([reading({ file: 'cut.svg', marks: MARKS }, 2e-6)], true)).toEqual([]);
    const empty = reading({ file: 'cut.svg', marks: MARKS });
    expect(said([{ ...empty, proof: { ...empty.proof, drawnExtentMm: null } }], true)).toHaveLength(1);
  });

  it('have marks, where there should be some', () => {
    expect(compareSheets([reading({}), reading({ file: 'cut.svg' })], true).map((item) => item.message)).toEqual([
      'print.svg: it has no marks, though there should be some.',
      'cut.svg: it has no marks, though there should be some.',
    ]);
  });

  it('have marks alike', () => {
    expect(said([reading({ file: 'cut.svg', marks: MARKS })])).toEqual([
      'cut.svg and print.svg: only one of them has marks.',
    ]);
  });

  it('have extents that count as equal', () => {
    const nothing = reading({});
    const none = { ...nothing, proof: { ...nothing.proof, drawnExtentMm: null } };
    expect(haveEqualExtents([])).toBe(true);
    expect(haveEqualExtents([reading({}), reading({}, 1e-6)])).toBe(true);
    expect(haveEqualExtents([reading({}), reading({}, 1)])).toBe(false);
    expect(haveEqualExtents([none, none])).toBe(true);
    expect(haveEqualExtents([reading({}), none])).toBe(false);
    for (const key of ['x', 'y', 'width', 'height'] as const) {
      const other = reading({});
      const drawnExtentMm = { ...other.proof.drawnExtentMm!, [key]: 5 };
      expect(haveEqualExtents([reading({}), { ...other, proof: { ...other.proof, drawnExtentMm } }])).toBe(false);
    }
  });
});

describe('the verdict', () => {
  it('adds up, names the farthest shape and lists what was found', () => {
    const [own, between] = [
      back(TEXT, ROWS, { board: { width: 101 } }).findings,
      back(TEXT, ROWS, { board: { height: 61 } }).findings,
    ];
    const readings = [
      reading({ deviationMm: 1, deviationAt: 'a' }),
      reading({ deviationMm: 3, deviationAt: 'b', shapes: 4, findings: own }),
      reading({ deviationMm: 2, deviationAt: 'c' }),
    ];
    expect(judgeReadings(readings, between)).toEqual({
      judge: 'read-back',
      looked: true,
      why: '',
      shapesJudged: 6,
      greatestDeviationMm: 3,
      greatestDeviationAt: 'b',
      findings: [...own, ...between],
    });
    expect(judgeReadings([reading({})], [])).toMatchObject({ greatestDeviationMm: 0, greatestDeviationAt: '' });
  });
});
