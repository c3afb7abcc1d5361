// A written sheet beside its source: what is lost, doubled, moved into another group, or no longer the designer's to the byte.
import { describe, expect, it } from 'vitest';
import type { Artwork } from '../../../src/model/artwork.js';
import { listNeeds } from '../../../src/verify/find-left-behind.js';
import { readSheet, type SheetClaim } from '../../../src/verify/read-sheet.js';
import { scanText } from './scan-svg.js';

const ROOT = '<svg xmlns="http://www.w3.org/2000/svg" width="9">';
const TEXT = `${ROOT}
<g id="a"><rect id="r"/><circle id="c"/></g>
<g id="b"><path id="p" d="M0 0"/><text id="t">Tea <tspan>cup</tspan></text><style>x{}</style></g>
</svg>`;
const SOURCE = scanText(TEXT);
/** Rows: svg 0, g a 1, rect 2, circle 3, g b 4, path 5, text 6, tspan 7, style 8. */
const WHOLE = [0, 1, 2, 3, 4, 5, 6, 7, 8];
const CARRIERS = [2, 3, 5, 6];

interface Draft {
  readonly text?: string;
  readonly rows?: readonly number[];
  readonly expected?: readonly number[];
  readonly carriers?: readonly number[];
  readonly overrides?: readonly (readonly [number, string])[];
  readonly rootMayChange?: boolean;
  readonly cleanedRows?: readonly number[];
}

function flag(rows: readonly number[]): Uint8Array {
  const flags = new Uint8Array(SOURCE.elements.count);
  for (const row of rows) flags[row] = 1;
  return flags;
}

function read(draft: Draft): { readonly said: readonly string[]; readonly drawn: number } {
  const artwork = { references: new Map(), ids: new Map() } as unknown as Artwork;
  const claim: SheetClaim = {
    file: 'cut.svg',
    sheet: scanText(draft.text ?? TEXT),
    rows: Int32Array.from(draft.rows ?? WHOLE),
    expected: flag(draft.expected ?? CARRIERS),
    carriers: flag(draft.carriers ?? CARRIERS),
    needs: listNeeds(SOURCE, artwork, flag([8])),
    overrides: new Map(draft.overrides ?? []),
    rootMayChange: draft.rootMayChange ?? false,
    cleanedRows: new Set(draft.cleanedRows ?? []),
  };
  const { findings, drawn } = readSheet(SOURCE, claim);
  return { said: findings.map(({ code, message }) => `${code.slice(7)} ${message.replace('cut.svg, ', '')}`), drawn };
}

/** A sheet with something put in the place of something else. */
function change(from: string, to: string, draft: Draft = {}): readonly string[] {
  expect(TEXT).toContain(from);
  return read({ text: TEXT.replace(from, to), ...draft }).said;
}

describe('a sheet', () => {
  it('that is the source is fine', () => {
    expect(read({})).toEqual({ said: [], drawn: 4 });
  });

  it('that leaves things out between kept tags is fine where they are not expected', () => {
    const text = TEXT.replace('<circle id="c"/>', '').replace('<path id="p" d="M0 0"/>', '');
    expect(read({ text, rows: [0, 1, 2, 4, 6, 7, 8], expected: [2, 6] })).toEqual({ said: [], drawn: 2 });
  });

  it('draws what is expected, and counts it', () => {
    expect(read({ expected: [2] })).toEqual({
      said: [
        'unexpected line 2: circle "c": is drawn, but belongs to another pass.',
        'unexpected line 3: path "p": is drawn, but belongs to another pass.',
        'unexpected line 3: text "t": is drawn, but belongs to another pass.',
      ],
      drawn: 1,
    });
    expect(read({ expected: [2, 3], carriers: [2, 3] })).toEqual({ said: [], drawn: 2 });
  });

  it('that lacks something says where the source has it', () => {
    const text = TEXT.replace('<circle id="c"/>', '');
    expect(read({ text, rows: [0, 1, 2, 4, 5, 6, 7, 8] })).toEqual({
      said: ['lost cut.svg: the circle "c" of line 2 in the source is missing.'],
      drawn: 3,
    });
  });

  it('has as many elements as it is said to', () => {
    expect(read({ rows: WHOLE.slice(1) })).toEqual({
      said: ['unexpected line 1: svg: the file holds 9 elements instead of 8.'],
      drawn: 0,
    });
  });
});

describe('order and groups', () => {
  it('twice the same is told', () => {
    const said = change('<circle id="c"/>', '<circle id="c"/><circle id="c"/>', {
      rows: [0, 1, 2, 3, 3, 4, 5, 6, 7, 8],
    });
    expect(said).toEqual([
      'doubled line 2: circle "c": stands again or out of order.',
      'doubled line 2: circle "c": stands twice.',
    ]);
  });

  it('another order is told', () => {
    const said = change('<rect id="r"/><circle id="c"/>', '<circle id="c"/><rect id="r"/>', {
      rows: [0, 1, 3, 2, 4, 5, 6, 7, 8],
    });
    expect(said).toEqual(['doubled line 2: rect "r": stands again or out of order.']);
  });

  it('another group is told', () => {
    const said = change('<circle id="c"/></g>\n<g id="b">', '</g>\n<g id="b"><circle id="c"/>', {
      rows: [0, 1, 2, 4, 3, 5, 6, 7, 8],
    });
    expect(said).toContain('chain-changed line 3: circle "c": stands in another group than in the source.');
  });

  it('a group that is left out is told', () => {
    const said = change('<g id="a"><rect id="r"/><circle id="c"/></g>', '<rect id="r"/><circle id="c"/>', {
      rows: [0, 2, 3, 4, 5, 6, 7, 8],
    });
    expect(said).toEqual([
      'chain-changed line 2: rect "r": stands in another group than in the source.',
      'chain-changed line 2: circle "c": stands in another group than in the source.',
    ]);
  });

  it('elements inside equal bytes must be the ones they are said to be', () => {
    const said = read({
      text: TEXT.replace('width="9"', 'width="8"'),
      rows: [0, 1, 2, 2, 4, 5, 6, 7, 8],
      rootMayChange: true,
    });
    expect(said.said).toEqual(['bytes-changed line 2: circle "c": is not the element it is said to be.']);
  });

  it('equal bytes of another length of rows are looked at one by one', () => {
    expect(read({ rows: [0, 1, 2, 3, 4, 5, 6, 7, 7] }).said).not.toEqual([]);
  });
});

describe('bytes', () => {
  it('of a start tag may not change', () => {
    expect(change('d="M0 0"', 'd="M0 1"')).toEqual([
      'bytes-changed line 3: path "p": its attribute d is "M0 1" instead of "M0 0".',
    ]);
    expect(change('<rect id="r"/>', '<rect  id="r"/>')).toEqual([]);
  });

  it('of the root may change where it was restated', () => {
    expect(change('width="9"', 'width="8"')).toEqual([
      'bytes-changed line 1: svg: its attribute width is "8" instead of "9".',
    ]);
    expect(change('width="9"', 'width="8"', { rootMayChange: true })).toEqual([]);
    expect(change('<g id="a"', '<g width="8" id="a"', { rootMayChange: true })).toEqual([
      'bytes-changed line 2: g "a": it has a new attribute width.',
    ]);
  });

  it('of text may not change, where elements stand in it or not', () => {
    expect(change('Tea ', 'Tee ')).toEqual(['bytes-changed line 3: text "t": its text differs from the source.']);
    expect(change('cup', 'mug')).toEqual(['bytes-changed line 3: tspan: its text differs from the source.']);
    expect(change('x{}', 'y{}')).toEqual(['bytes-changed line 3: style: its text differs from the source.']);
    expect(change('x{}', 'y{}', { cleanedRows: [8] })).toEqual([]);
  });

  it('between the children of a group are not looked at', () => {
    expect(change('<rect id="r"/><circle', '<rect id="r"/> <circle')).toEqual([]);
  });

  it('are told a hundred times, not more', () => {
    const many = `${ROOT}${'<rect x="1"/>'.repeat(150)}</svg>`;
    const artwork = { references: new Map(), ids: new Map() } as unknown as Artwork;
    const source = scanText(many);
    const rows = Int32Array.from({ length: 151 }, (_, i) => i);
    const flags = new Uint8Array(151);
    const { findings } = readSheet(source, {
      file: 'cut.svg',
      sheet: scanText(many.replaceAll('x="1"', 'x="2"')),
      rows,
      expected: flags,
      carriers: flags,
      needs: listNeeds(source, artwork, flags),
      overrides: new Map(),
      rootMayChange: false,
      cleanedRows: new Set(),
    });
    expect(findings).toHaveLength(100);
    const lost = readSheet(source, {
      file: 'cut.svg',
      sheet: scanText(`${ROOT}</svg>`),
      rows: Int32Array.of(0),
      expected: new Uint8Array(151).fill(1, 1),
      carriers: flags,
      needs: listNeeds(source, artwork, flags),
      overrides: new Map(),
      rootMayChange: false,
      cleanedRows: new Set(),
    });
    expect(lost.findings).toHaveLength(100);
  });
});

describe('what elements need', () => {
  const artwork = { references: new Map([[3, ['p']]]), ids: new Map([['p', 5]]) } as unknown as Artwork;
  const lost = (text: string, rows: readonly number[]): readonly string[] => {
    const claim: SheetClaim = {
      file: 'cut.svg',
      sheet: scanText(text),
      rows: Int32Array.from(rows),
      expected: flag([]),
      carriers: flag([]),
      needs: listNeeds(SOURCE, artwork, flag([])),
      overrides: new Map(),
      rootMayChange: false,
      cleanedRows: new Set(),
    };
    return readSheet(SOURCE, claim).findings.map((item) => item.message);
  };
  const bare = TEXT.replace(/<g id="a".*<\/g>/, '').replace(/<text.*<\/text>/, '');

  it('came along, in equal bytes or not', () => {
    expect(lost(TEXT, WHOLE)).toEqual([]);
    expect(lost(bare, [0, 4, 5, 8])).toEqual([]);
    expect(lost(TEXT.replace('<rect id="r"/>', ''), [0, 1, 3, 4, 5, 6, 7, 8])).toEqual([]);
  });

  it('is missed where it stayed behind', () => {
    expect(lost(bare.replace('<style>x{}</style>', ''), [0, 4, 5])).toEqual([
      'cut.svg: the style of line 3 in the source is missing, though its rules may be what paints the rest.',
    ]);
    expect(lost(TEXT.replace('<path id="p" d="M0 0"/>', ''), [0, 1, 2, 3, 4, 6, 7, 8])).toEqual([
      'cut.svg: the path "p" of line 3 in the source is missing, though something in the file refers to it.',
    ]);
  });
});

describe('what pinbar put there', () => {
  const MARKS = '<g id="pinbar-marks"><path/></g>';
  const STAND_IN = '<circle id="c" data-pinbar="stand-in" style="display:none!important"/>';

  it('are marks below the root', () => {
    expect(change('\n</svg>', `${MARKS}\n</svg>`, { rows: [...WHOLE, -1, -1] })).toEqual([]);
    const said = change('<circle id="c"/>', `<circle id="c"/>${MARKS}`, { rows: [0, 1, 2, 3, -1, -1, 4, 5, 6, 7, 8] });
    expect(said).toEqual(['unexpected line 2: g "pinbar-marks": does not come from the source.']);
  });

  it('are stand-ins, empty and hidden', () => {
    const draft: Draft = { rows: [0, 1, 2, -1, 4, 5, 6, 7, 8], expected: [2, 5, 6] };
    expect(change('<circle id="c"/>', STAND_IN, draft)).toEqual([]);
    const said = ['unexpected line 2: circle "c": does not come from the source.'];
    expect(change('<circle id="c"/>', STAND_IN.replace('none', 'inline'), draft)).toEqual(said);
    expect(change('<circle id="c"/>', STAND_IN.replace('stand-in', 'other'), draft)).toEqual(said);
    const full = STAND_IN.replace('/>', '><rect/></circle>');
    expect(change('<circle id="c"/>', full, { ...draft, rows: [0, 1, 2, -1, -1, 4, 5, 6, 7, 8] })).toEqual(said);
  });

  it('are wrappers in which nothing is drawn, and through which groups are seen', () => {
    const wrapped = '<defs data-pinbar="definition"><rect id="r"/></defs>';
    const rows = [0, 1, -1, 2, 3, 4, 5, 6, 7, 8];
    expect(change('<rect id="r"/>', wrapped, { rows, expected: [3, 5, 6] })).toEqual([]);
    expect(change('<rect id="r"/>', wrapped, { rows })).toEqual([
      'lost cut.svg: the rect "r" of line 2 in the source is missing.',
    ]);
    const open = wrapped.replace(' data-pinbar="definition"', '');
    expect(change('<rect id="r"/>', open, { rows, expected: [3, 5, 6] })).toEqual([
      'unexpected line 2: defs: does not come from the source.',
    ]);
  });

  it('are overrides, where they are wanted and only there', () => {
    const css = 'fill:none!important';
    const draft: Draft = { overrides: [[2, css]] };
    expect(change('<rect id="r"/>', `<rect id="r" style="${css}"/>`, draft)).toEqual([]);
    expect(read(draft).said).toEqual([`bytes-changed line 2: rect "r": its style does not end in "${css}".`]);
    expect(change('x{}', 'y{}', { ...draft, cleanedRows: [8] })).toEqual([
      `bytes-changed line 2: rect "r": its style does not end in "${css}".`,
    ]);
    expect(change('<circle id="c"/>', `<circle id="c" style="${css}"/>`)).toEqual([
      'bytes-changed line 2: circle "c": it has a new attribute style.',
    ]);
    expect(change('<rect id="r"/>', `<rect id="r" style="x${css}"/>`, draft)).toEqual([
      'bytes-changed line 2: rect "r": it has a new attribute style.',
      `bytes-changed line 2: rect "r": its style does not end in "${css}".`,
    ]);
  });
});
