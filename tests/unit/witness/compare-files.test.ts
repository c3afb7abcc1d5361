// Files made by hand elsewhere: right ones give no finding, and each seeded fault is found, named and measured.
import { describe, expect, it } from 'vitest';
import type { Finding, FindingCode } from '../../../src/model/finding.js';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { compareFiles, type FileComparison } from '../../../src/witness/compare-files.js';

const HEAD =
  '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="100mm" height="50mm" viewBox="0 0 100 50">';
const MARKS =
  '<g id="pinbar-marks"><path data-mark="corner" d="M1 4V1H4M99 46V49H96" style="fill:none;stroke:#000;stroke-width:0.25"/></g>';
const ART =
  '<g id="print"><rect id="panel" x="10" y="10" width="30" height="20" fill="#ff0000"/><circle id="sun" cx="60" cy="30" r="5" fill="gold"/><path d="M70 10C80 10 80 20 90 20" fill="none" stroke="#00f"/></g>';
const LINES =
  '<g id="cut" transform="translate(2 3)"><path id="outline" d="M5 5L85 5 85 40 5 40Z" fill="none" stroke="#e5007d" stroke-width="0.5"/><polygon id="flap" points="20,20 30,20 30,35" fill="#eee" stroke="#e5007d"/></g>';
const SOURCE = `${HEAD}${ART}${LINES}</svg>`;
const PRINT = `${HEAD}${ART}${MARKS}</svg>`;
const CUT = `${HEAD}${LINES}${MARKS}</svg>`;

interface Case {
  readonly print?: string;
  readonly cut?: string;
  readonly source?: string | null;
  readonly toleranceMm?: number;
  readonly shiftMm?: readonly [number, number];
  readonly userUnitsPerInch?: number | null;
}

function compare(seeded: Case): FileComparison {
  const source = seeded.source === undefined ? SOURCE : seeded.source;
  return compareFiles(
    [
      { name: 'print.svg', bytes: encodeUtf8(seeded.print ?? PRINT) },
      { name: 'cut.svg', bytes: encodeUtf8(seeded.cut ?? CUT) },
    ],
    source === null ? null : { name: 'carton.svg', bytes: encodeUtf8(source) },
    {
      toleranceMm: seeded.toleranceMm ?? 0.001,
      shiftMm: seeded.shiftMm ?? [0, 0],
      userUnitsPerInch: seeded.userUnitsPerInch ?? null,
      copiesMm: null,
    },
  );
}

function change(text: string, from: string, to: string): string {
  expect(text).toContain(from);
  return text.replace(from, to);
}

function only(seeded: Case): Finding {
  const { findings } = compare(seeded);
  expect(findings.map((finding) => finding.message)).toHaveLength(1);
  return findings[0]!;
}

describe('compareFiles on right files', () => {
  it('has nothing to say and measures every file', () => {
    const { findings, files, matches, greatestDeviationMm } = compare({});
    expect(findings).toEqual([]);
    expect(greatestDeviationMm).toBe(0);
    expect(matches.map((match) => match.shape)).toEqual([
      'rect "panel"',
      'circle "sun"',
      'path 3',
      'path "outline"',
      'polygon "flap"',
    ]);
    expect(files[1]).toEqual({
      name: 'cut.svg',
      widthMm: 100,
      heightMm: 50,
      sizeIsSure: true,
      viewBox: [0, 0, 100, 50],
      shapes: 2,
      extentsMm: { x: 0.875, y: 0.875, width: 98.25, height: 48.25 },
      marks: true,
    });
  });

  it('compares without a source', () => {
    const { findings, matches, greatestDeviationAt } = compare({ source: null });
    expect([findings, matches, greatestDeviationAt]).toEqual([[], [], '']);
  });

  it('sees through other spellings: baked transforms, other groups, colours and styles', () => {
    const print = change(
      change(PRINT, 'fill="#ff0000"', 'style="fill:red"'),
      '<g id="print">',
      '<g><g transform="scale(1)">',
    ).replace('</g><g id="pinbar', '</g></g><g id="pinbar');
    const cut = change(CUT, ' transform="translate(2 3)"', '')
      .replace('M5 5L85 5 85 40 5 40Z', 'M7 8H87V43H7Z')
      .replace('20,20 30,20 30,35', '22 23 32 23 32 38')
      .replaceAll('#e5007d', 'rgb(229, 0, 125)');
    expect(compare({ print, cut }).findings).toEqual([]);
  });

  it('takes fill and stroke of a shape from two files', () => {
    const cut = change(CUT, 'fill="#eee" stroke="#e5007d"', 'fill="none" stroke="#e5007d"');
    const flap = '<polygon points="22,23 32,23 32,38" fill="#eee"/>';
    expect(compare({ cut, print: change(PRINT, MARKS, flap + MARKS) }).findings).toEqual([]);
    expect(only({ cut }).code).toBe('verify/repainted');
  });

  it('follows uses and symbols, and skips what is hidden', () => {
    const print = change(
      PRINT,
      '<circle id="sun" cx="60" cy="30" r="5" fill="gold"/>',
      '<defs><circle id="s" cx="10" cy="10" r="5"/></defs><use id="sun" xlink:href="#s" x="50" y="20" fill="gold"/><g style="display:none"><rect width="9" height="9"/></g><rect width="9" height="9" visibility="hidden"/>',
    );
    expect(compare({ print }).findings).toEqual([]);
  });

  it('knows the shift it is told', () => {
    const moved = (text: string): string =>
      text.replace(HEAD, `${HEAD}<g transform="translate(4 -1)">`).replace('<g id="pinbar', '</g><g id="pinbar');
    const { findings, greatestDeviationMm } = compare({ print: moved(PRINT), cut: moved(CUT), shiftMm: [4, -1] });
    expect(findings).toEqual([]);
    expect(greatestDeviationMm).toBeLessThan(1e-9);
  });

  it('takes an artboard grown by the shift on every side, and no other', () => {
    const grow = (text: string, width: number): string =>
      text.replace(
        'width="100mm" height="50mm" viewBox="0 0 100 50"',
        `width="${width}mm" height="60mm" viewBox="-5 -5 ${width} 60"`,
      );
    expect(compare({ print: grow(PRINT, 110), cut: grow(CUT, 110), shiftMm: [5, 5] }).findings).toEqual([]);
    const wider = compare({ print: grow(PRINT, 111), cut: grow(CUT, 111), shiftMm: [5, 5] }).findings;
    expect(wider.map((finding) => finding.code)).toEqual(['verify/size-differs', 'verify/size-differs']);
  });

  it('lets the later of two rules of equal weight win', () => {
    const styled = (text: string): string =>
      text.replace(HEAD, `${HEAD}<style>.b{fill:blue} .a{fill:red}</style>`).replace('fill="#ff0000"', 'class="a b"');
    expect(compare({ print: styled(PRINT) }).findings).toEqual([]);
  });

  it('measures a size that is not sure as it is told', () => {
    const bare = (text: string): string =>
      text.replace('width="100mm" height="50mm" viewBox="0 0 100 50"', 'width="720" height="360" viewBox="0 0 100 50"');
    const told = compare({ print: bare(PRINT), cut: bare(CUT), source: null, userUnitsPerInch: 72 });
    expect(told.findings).toEqual([]);
    expect(told.files[0]).toMatchObject({ widthMm: 254, heightMm: 127, sizeIsSure: false });
    const untold = compare({ print: bare(PRINT), cut: bare(CUT), source: null });
    expect(untold.findings.map((finding) => finding.code)).toEqual(['resolve/size-unsure', 'resolve/size-unsure']);
  });
});

describe('compareFiles on seeded faults', () => {
  const cases: readonly (readonly [string, Case, FindingCode, string])[] = [
    [
      'a moved shape',
      { cut: change(CUT, 'M5 5L85 5 85 40 5 40Z', 'M5.3 5L85.3 5 85.3 40 5.3 40Z') },
      'verify/moved',
      'cut.svg: path "outline" moved by 0.3, 0 mm against the source.',
    ],
    [
      'a dropped transform',
      { cut: change(CUT, ' transform="translate(2 3)"', '') },
      'verify/moved',
      'cut.svg: 2 shapes (path "outline", polygon "flap") moved by -2, -3 mm against the source.',
    ],
    [
      'a moved shape that lost its id',
      { print: change(PRINT, '<circle id="sun" cx="60"', '<circle cx="61.5"') },
      'verify/moved',
      'print.svg: a circle without id moved by 1.5, 0 mm',
    ],
    [
      'a mirrored path',
      { print: change(PRINT, 'M70 10C80 10 80 20 90 20', 'M70 20C80 20 80 10 90 10') },
      'verify/moved',
      'print.svg: a path without id turned, mirrored or bent in place, by up to 10 mm',
    ],
    [
      'a scaled shape',
      { print: change(PRINT, 'width="30" height="20"', 'width="33" height="22"') },
      'verify/scaled',
      'print.svg: rect "panel" drawn at 110 % in width and 110 % in height of the source.',
    ],
    [
      'a scaled shape that lost its id',
      { print: change(PRINT, 'M70 10C80 10 80 20 90 20', 'M70 10C75 10 75 20 80 20') },
      'verify/scaled',
      'print.svg: a path without id drawn at 50 % in width and 100 % in height',
    ],
    [
      'a missing shape',
      { cut: CUT.replace(/<polygon[^>]*>/, '') },
      'verify/missing',
      'polygon "flap" of the source drawn in none of the files.',
    ],
    [
      'a shape made a definition',
      { cut: CUT.replace(/(<polygon[^>]*>)/, '<defs>$1</defs>') },
      'verify/missing',
      'polygon "flap"',
    ],
    [
      'a doubled shape',
      { cut: CUT.replace(/(<polygon[^>]*>)/, '$1$1') },
      'verify/doubled',
      'cut.svg: polygon "flap" drawn 2 times, in the source once.',
    ],
    [
      'a shape in both files',
      { print: change(PRINT, MARKS, LINES.replace(/<polygon[^>]*>/, '') + MARKS) },
      'verify/doubled',
      'cut.svg: path "outline" drawn 2 times',
    ],
    [
      'an extra shape',
      { cut: change(CUT, '<polygon', '<ellipse id="new" cx="50" cy="25" rx="4" ry="2"/><polygon') },
      'verify/added',
      'cut.svg: ellipse "new" drawn, which the source does not have.',
    ],
    [
      'a repainted stroke',
      { cut: change(CUT, 'stroke="#e5007d" stroke-width', 'stroke="#e5007e" stroke-width') },
      'verify/repainted',
      'cut.svg: path "outline" painted with fill none and stroke #e5007e, in the source with fill none and stroke #e5007d.',
    ],
    [
      'a repainted fill',
      { print: change(PRINT, 'fill="#ff0000"', 'class="a"') },
      'verify/repainted',
      'rect "panel" painted with fill #000000',
    ],
    [
      'a rounded number',
      { cut: change(CUT, '85 40 5 40Z', '85 40.0012 5 40.0012Z') },
      'verify/moved',
      'path "outline"',
    ],
    [
      'another size',
      {
        cut: change(
          CUT,
          'width="100mm" height="50mm" viewBox="0 0 100 50"',
          'width="200mm" height="50mm" viewBox="0 0 100 50" preserveAspectRatio="xMinYMin"',
        ),
        source: null,
      },
      'verify/size-differs',
      'cut.svg is 200 x 50 mm, but print.svg is 100 x 50 mm.',
    ],
    [
      'another viewBox',
      { cut: change(CUT, 'viewBox="0 0 100 50"', 'viewBox="0 0 100.5 50"') },
      'verify/artboard-differs',
      'cut.svg has viewBox "0 0 100.5 50", but print.svg has viewBox "0 0 100 50".',
    ],
    [
      'another alignment',
      { cut: change(CUT, HEAD, HEAD.replace('>', ' preserveAspectRatio="xMinYMin">')) },
      'verify/artboard-differs',
      'and preserveAspectRatio "xMinYMin"',
    ],
    [
      'a shape beyond the marks',
      { cut: change(CUT, 'M5 5L85 5', 'M5 5L105 5') },
      'verify/extents-differ',
      'cut.svg draws',
    ],
    [
      'a shifted mark',
      { cut: change(CUT, 'M99 46V49H96', 'M99 46V48.9H96') },
      'verify/marks-differ',
      'cut.svg and print.svg: the mark "corner" lies elsewhere, by 0.1 mm.',
    ],
    [
      'missing marks',
      { cut: CUT.replace(MARKS, '') },
      'verify/marks-missing',
      'cut.svg has no marks that pinbar knows.',
    ],
    [
      'an unreadable file',
      { cut: CUT.replace('</svg>', '') },
      'witness/unreadable',
      'cut.svg: the second judge cannot read it: unclosed xml tag(s): svg.',
    ],
    [
      'copies of copies',
      {
        cut: `${HEAD}${Array.from({ length: 22 }, (_, i) => `<g id="g${i}">${i === 0 ? '<path d="M0 0h1"/>' : `<use href="#g${i - 1}"/><use href="#g${i - 1}"/>`}</g>`).join('')}</svg>`,
      },
      'witness/unreadable',
      'its uses draw more copies',
    ],
  ];
  it.each(cases)('finds %s', (_, seeded, code, said) => {
    const found = compare(seeded).findings.filter((finding) => finding.code === code);
    expect(found.map((finding) => finding.message).join('\n')).toContain(said);
  });

  it('says one thing of one fault, with place and measure', () => {
    const finding = only({ cut: change(CUT, 'points="20,20 30,20 30,35"', 'points="20.1,20 30.1,20 30.1,35"') });
    expect(finding.place).toEqual({ file: 'cut.svg', element: 'polygon', id: 'flap' });
    expect(finding.data).toMatchObject({ dxMm: 0.1, dyMm: 0, count: 1 });
    expect(finding.data.deviationMm).toBeCloseTo(0.1, 9);
  });

  it('pairs shapes that share an outline by their paint before anything else', () => {
    const box = (paint: string): string => `<rect x="1" y="1" width="9" height="9" ${paint}/>`;
    const fill = box('fill="red"');
    const line = box('fill="none" stroke="blue"');
    const print = `${HEAD}${box('fill="lime"')}${fill}</svg>`;
    const { findings } = compare({ print, cut: `${HEAD}${line}</svg>`, source: `${HEAD}${fill}${line}</svg>` });
    const found = (code: FindingCode): readonly unknown[] =>
      findings.filter((one) => one.code === code).map((one) => one.data.count);
    expect(found('verify/doubled')).toEqual([1]);
    expect(found('verify/repainted')).toEqual([1]);
  });

  it('says where the greatest deviation is', () => {
    const { greatestDeviationMm, greatestDeviationAt } = compare({ print: change(PRINT, 'cx="60"', 'cx="60.0004"') });
    expect(greatestDeviationMm).toBeCloseTo(0.0004, 9);
    expect(greatestDeviationAt).toBe('circle "sun" in print.svg');
  });

  it('pairs twins that all moved by one shift, in order', () => {
    const row = (shift: number): string =>
      Array.from(
        { length: 60 },
        (_, i) => `<circle cx="${5 + (i % 30) * 3 + shift}" cy="${10 + Math.floor(i / 30) * 3}" r="1"/>`,
      ).join('');
    const file = `${HEAD}${row(0.2)}</svg>`;
    const finding = compare({ print: file, cut: `${HEAD}</svg>`, source: `${HEAD}${row(0)}</svg>` }).findings.find(
      (one) => one.code === 'verify/moved',
    );
    expect(finding?.data).toMatchObject({ count: 60, dxMm: 0.2, dyMm: 0 });
  });

  it('gathers many different shifts, so that the list stays short', () => {
    const row = (shift: number): string =>
      Array.from({ length: 40 }, (_, i) => `<circle id="c${i}" cx="${10 + i + shift * i}" cy="9" r="1"/>`).join('');
    const { findings } = compare({
      print: `${HEAD}${row(0.01)}</svg>`,
      cut: `${HEAD}</svg>`,
      source: `${HEAD}${row(0)}</svg>`,
    });
    const moved = findings.filter((one) => one.code === 'verify/moved');
    expect(moved).toHaveLength(21);
    expect(moved.reduce((sum, one) => sum + Number(one.data.count), 0)).toBe(39);
  });

  it('compares paint by class and sheet where a rule is not understood', () => {
    const styled = (text: string, css: string): string =>
      text.replace(HEAD, `${HEAD}<style>${css}</style>`).replace('fill="#ff0000"', 'class="a"');
    const right = {
      print: styled(PRINT, 'g > .a{fill:red}'),
      source: styled(SOURCE, 'g > .a{fill:red}'),
      cut: CUT.replace(HEAD, `${HEAD}<style>g > .a{fill:red}</style>`),
    };
    expect(compare(right).findings).toEqual([]);
    const { findings } = compare({ ...right, print: styled(PRINT, 'g > .a{fill:blue}') });
    expect(new Set(findings.map((finding) => finding.code))).toEqual(new Set(['verify/repainted']));
    expect(findings[0]!.message).toContain('by another style sheet');
  });
});
