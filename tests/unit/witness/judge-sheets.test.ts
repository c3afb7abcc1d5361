// The second judge on small sheets: nothing to say of right ones, and each seeded fault found and named.
import { describe, expect, it } from 'vitest';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { type DrawnPart, judgeSheets, type WitnessVerdict } from '../../../src/witness/judge-sheets.js';

/** Adds `n`, the ordinal, to every start tag, so that claims can be read off the tags that are left. */
function numberTags(text: string): string {
  let n = -1;
  return text.replace(/<([a-zA-Z][\w:]*)/g, (tag) => {
    n += 1;
    return `${tag} n="${n}"`;
  });
}

const SOURCE =
  numberTags(`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="100mm" height="50mm" viewBox="0 0 200 100">
  <style>.art{fill:#123456} .shade{fill:url(#shade)}</style>
  <defs>
    <linearGradient id="shade"><stop offset="0"/><stop offset="1"/></linearGradient>
    <clipPath id="clip"><rect width="50" height="50"/></clipPath>
    <symbol id="leaf" viewBox="0 0 10 10"><path d="M0 0L10 10"/></symbol>
  </defs>
  <g id="print" transform="translate(10 5) rotate(30)" clip-path="url(#clip)">
    <rect id="panel" class="art" x="10" y="10" width="30" height="20"/>
    <circle id="sun" class="shade" cx="60" cy="30" r="12.345678"/>
    <use id="twig" xlink:href="#leaf" x="5" y="6" width="20" height="20"/>
    <text id="word" x="3" y="4">carton <tspan>one</tspan></text>
  </g>
  <g id="cut" transform="scale(-1 1) translate(-200 0)">
    <path id="outline" d="M0 0L190 0 190 90 0 90Z" fill="none" stroke="red"/>
    <path id="hole" d="M50 50a5 5 0 1 0 10 0a5 5 0 1 0-10 0" fill="none" stroke="red"/>
    <polygon id="flap" points="1,1 5,1 5,5" style="fill:#eee;stroke:red"/>
  </g>
</svg>`);

function cutOut(text: string, ...ids: readonly string[]): string {
  let left = text;
  for (const id of ids) {
    const tag = new RegExp(`\\s*<(\\w+)[^>]* id="${id}"[^>]*?(/>|>)`).exec(left)!;
    const from = tag.index;
    const to = tag[2] === '/>' ? from + tag[0].length : left.indexOf(`</${tag[1]}>`, from) + tag[1]!.length + 3;
    left = left.slice(0, from) + left.slice(to);
  }
  return left;
}

const MARKS = `<g id="pinbar-marks" transform="matrix(2 0 0 2 0 0)"><path data-mark="corner" d="M1 3V1H3M99 47V49H97" style="fill:none;stroke:#000;stroke-width:0.25"/><path data-mark="cross" d="M4 10H8M6 8V12" style="fill:none;stroke:#000;stroke-width:0.25"/></g>`;

function addMarks(text: string, marks: string = MARKS): string {
  return text.replace('</svg>', `${marks}</svg>`);
}

const PRINT = addMarks(cutOut(SOURCE, 'cut'));
const CUT = addMarks(cutOut(SOURCE, 'print', 'shade', 'clip', 'leaf'));

function ordinalOf(id: string): number {
  return Number(new RegExp(`<\\w+ n="(\\d+)" id="${id}"`).exec(SOURCE)![1]);
}

function readRows(text: string): Int32Array {
  return Int32Array.from(text.match(/<[a-zA-Z][\w:]*(?: n="\d+")?/g)!, (tag) =>
    Number(/n="(\d+)"/.exec(tag)?.[1] ?? -1),
  );
}

type Drawn = Readonly<Record<string, DrawnPart>>;
const PRINT_DRAWN: Drawn = { panel: 'whole', sun: 'whole', twig: 'whole', word: 'whole' };
const CUT_DRAWN: Drawn = { outline: 'whole', hole: 'whole', flap: 'whole' };

interface Case {
  readonly print?: string;
  readonly cut?: string;
  readonly printDrawn?: Drawn;
  readonly cutDrawn?: Drawn;
  readonly source?: string;
  readonly grownMm?: number;
  readonly printRows?: Int32Array;
}

function judge(seeded: Case): WitnessVerdict {
  const claim = (name: string, text: string, drawn: Drawn, rows?: Int32Array) => ({
    name,
    bytes: encodeUtf8(text),
    rows: rows ?? readRows(text),
    drawn: new Map(Object.entries(drawn).map(([id, part]) => [ordinalOf(id), part])),
  });
  const expected = new Set([...Object.keys(PRINT_DRAWN), ...Object.keys(CUT_DRAWN)].map(ordinalOf));
  return judgeSheets(
    encodeUtf8(seeded.source ?? SOURCE),
    [
      claim('print.svg', seeded.print ?? PRINT, seeded.printDrawn ?? PRINT_DRAWN, seeded.printRows),
      claim('cut.svg', seeded.cut ?? CUT, seeded.cutDrawn ?? CUT_DRAWN),
    ],
    { mmPerPx: 25.4 / 96, expected, grownMm: seeded.grownMm ?? 0 },
  );
}

function messages(seeded: Case): readonly string[] {
  return judge(seeded).findings.map((finding) => finding.message);
}

function change(text: string, from: string, to: string): string {
  expect(text).toContain(from);
  return text.replace(from, to);
}

describe('judgeSheets on right sheets', () => {
  it('has nothing to say, and says how far it looked', () => {
    const verdict = judge({});
    expect(verdict.findings).toEqual([]);
    expect(verdict.shapesJudged).toBe(7);
    expect(verdict.greatestDeviationPx).toBe(0);
    expect(verdict.greatestDeviationAt).not.toBe('');
  });

  it('takes a byte order mark, comments and a document type of the source', () => {
    expect(messages({ source: `\ufeff<!DOCTYPE svg [<!ELEMENT svg ANY>]><!-- a -->${SOURCE}` })).toEqual([]);
  });

  it('takes a shape in two parts', () => {
    const print = change(
      PRINT,
      '<g id="pinbar-marks"',
      `<g n="${ordinalOf('cut')}" id="cut" transform="scale(-1 1) translate(-200 0)"><polygon n="${ordinalOf('flap')}" id="flap" points="1,1 5,1 5,5" style="fill:#eee;stroke:red;stroke:none!important"/></g><g id="pinbar-marks"`,
    );
    const cut = change(CUT, 'fill:#eee;stroke:red"', 'fill:#eee;stroke:red;fill:none!important"');
    expect(
      messages({
        print,
        cut,
        printDrawn: { ...PRINT_DRAWN, flap: 'fill' },
        cutDrawn: { ...CUT_DRAWN, flap: 'stroke' },
      }),
    ).toEqual([]);
  });

  it('takes stand-ins, definition wrappers and removed handlers', () => {
    const source = change(SOURCE, 'id="outline"', 'id="outline" onclick="go()"');
    const cut = change(
      CUT,
      '<path n="18" id="hole"',
      '<path id="x" data-pinbar="stand-in" style="display:none!important"/><path n="18" id="hole"',
    );
    expect(messages({ source, cut })).toEqual([]);
  });

  it('takes a definition kept from the layer of another pass', () => {
    const source = change(SOURCE, 'xlink:href="#leaf"', 'xlink:href="#hole"');
    const wrapped = `<g n="16" id="cut" transform="scale(-1 1) translate(-200 0)"><defs data-pinbar="definition"><path n="18" id="hole" d="M50 50a5 5 0 1 0 10 0a5 5 0 1 0-10 0" fill="none" stroke="red"/></defs></g><g id="pinbar-marks"`;
    const print = change(change(PRINT, 'xlink:href="#leaf"', 'xlink:href="#hole"'), '<g id="pinbar-marks"', wrapped);
    expect(messages({ source, print })).toEqual([]);
    const drawn = print.replace('<defs data-pinbar="definition">', '').replace('</defs></g>', '</g>');
    expect(messages({ source, print: drawn }).join('\n')).toContain('print.svg: path "hole" is drawn');
  });

  it('takes an artboard grown alike', () => {
    const grow = (text: string): string =>
      text
        .replace(
          'width="100mm" height="50mm" viewBox="0 0 200 100"',
          'width="110mm" height="60mm" viewBox="-10 -10 220 120"',
        )
        .replace('matrix(2 0 0 2 0 0)', 'matrix(2 0 0 2 -10 -10)');
    expect(messages({ print: grow(PRINT), cut: grow(CUT), grownMm: 5 })).toEqual([]);
    expect(messages({ print: grow(PRINT), cut: grow(CUT), grownMm: 0 }).join('\n')).toContain('artboard');
  });
});

describe('judgeSheets on seeded faults', () => {
  const cases: readonly (readonly [string, Case, string])[] = [
    [
      'a dropped ancestor transform',
      { cut: change(CUT, ' transform="scale(-1 1) translate(-200 0)"', '') },
      'cut.svg: path "outline" lies elsewhere',
    ],
    [
      'a changed ancestor',
      { print: change(PRINT, 'rotate(30)', 'rotate(30.001)') },
      'g "print" is not as in the source: transform',
    ],
    [
      'a wrong viewBox copy',
      { cut: change(CUT, 'viewBox="0 0 200 100"', 'viewBox="0 0 200 101"') },
      'cut.svg: svg (element 1 of the file) puts its viewBox elsewhere',
    ],
    [
      'another size',
      { cut: change(CUT, 'width="100mm"', 'width="101mm"') },
      'has width "101mm", but print.svg has "100mm"',
    ],
    ['a lost definition', { print: cutOut(PRINT, 'leaf') }, 'use "twig" refers to "#leaf"'],
    ['a lost clip path', { print: cutOut(PRINT, 'clip') }, 'g "print" refers to "#clip"'],
    [
      'a gradient lost that a style sheet alone names',
      { print: cutOut(PRINT, 'shade') },
      'circle "sun" refers to "#shade"',
    ],
    [
      'a definition that lost its inside',
      { print: change(PRINT, '<stop n="4" offset="0"/>', '') },
      'linearGradient "shade" has lost stop',
    ],
    ['a missing shape', { cut: cutOut(CUT, 'hole') }, 'path "hole" should be drawn here, but is missing'],
    [
      'a doubled shape',
      {
        cut: change(
          CUT,
          '<polygon',
          '<path id="hole" d="M50 50a5 5 0 1 0 10 0a5 5 0 1 0-10 0" fill="none" stroke="red"/><polygon',
        ),
      },
      'cut.svg: path "hole" is not in the source at this place',
    ],
    [
      'a shape twice, claimed twice',
      {
        cut: change(
          CUT,
          '<polygon',
          '<path n="18" id="hole" d="M50 50a5 5 0 1 0 10 0a5 5 0 1 0-10 0" fill="none" stroke="red"/><polygon',
        ),
      },
      'cut.svg: path "hole" stands here a second time',
    ],
    [
      'swapped order',
      {
        cut: change(
          CUT.replace(/\s*<polygon[^>]*>/, ''),
          '<path n="17"',
          '<polygon n="19" id="flap" points="1,1 5,1 5,5" style="fill:#eee;stroke:red"/><path n="17"',
        ),
      },
      'path "outline"',
    ],
    [
      'a shifted mark',
      { cut: change(CUT, 'M6 8V12', 'M6.01 8V12') },
      'cut.svg does not agree with print.svg: the mark "cross" lies elsewhere',
    ],
    ['a lost corner mark', { cut: change(CUT, 'M99 47V49H97', '') }, 'the mark "corner" lies elsewhere'],
    ['no marks on one sheet', { cut: CUT.replace(MARKS, '') }, 'cut.svg has no marks'],
    [
      'a rounded number',
      { print: change(PRINT, '12.345678', '12.3457') },
      'circle "sun" lies elsewhere than in the source, by',
    ],
    [
      'a repainted shape',
      { cut: change(CUT, 'fill="none" stroke="red"/>', 'fill="none" stroke="blue"/>') },
      'stroke is "blue", in the source "red"',
    ],
    [
      'a removed class',
      { print: change(PRINT, ' class="art"', '') },
      'rect "panel" is not as in the source: class="art" of the source is missing',
    ],
    [
      'changed style text',
      { print: change(PRINT, '#123456', '#654321') },
      'style (element 2 of the file) holds another text',
    ],
    [
      'a missing style sheet',
      { print: PRINT.replace(/<style[\s\S]*<\/style>/, '') },
      'of the source is missing; it may paint',
    ],
    ['changed words', { print: change(PRINT, 'carton <tspan', 'cartons <tspan') }, 'text "word" holds another text'],
    ['a lost tspan', { print: PRINT.replace(/<tspan.*<\/tspan>/, '') }, 'text "word" has lost tspan'],
    [
      'an extra drawn shape',
      { cut: change(CUT, '<polygon', '<rect width="5" height="5"/><polygon') },
      'cut.svg: rect (element 7 of the file) is not in the source',
    ],
    [
      'a shape of another pass',
      { cutDrawn: { outline: 'whole', hole: 'whole' } },
      'polygon "flap" is drawn, but does not belong on this sheet',
    ],
    [
      'a shape made a definition',
      {
        cut: change(
          change(CUT, '<path n="18"', '<defs data-pinbar="definition"><path n="18"'),
          '<polygon',
          '</defs><polygon',
        ),
      },
      'path "hole" stands in a definition',
    ],
    ['a hidden shape', { cut: change(CUT, 'id="hole"', 'id="hole" display="none"') }, 'path "hole" is hidden'],
    ['a hidden layer', { cut: change(CUT, 'id="cut"', 'id="cut" style="display:none"') }, 'polygon "flap" is hidden'],
    ['a use put elsewhere', { print: change(PRINT, 'x="5" y="6"', 'x="5" y="6.5"') }, 'use "twig" lies elsewhere'],
    [
      'a use given another size',
      { print: change(PRINT, 'width="20" height="20"', 'width="20" height="21"') },
      'use "twig" is not as in the source: height is "21"',
    ],
    [
      'paint taken away',
      { cut: change(CUT, 'stroke:red"', 'stroke:red;fill:none!important"') },
      'polygon "flap" has its fill taken away',
    ],
    ['paint not taken away', { cutDrawn: { ...CUT_DRAWN, flap: 'stroke' } }, 'should show its stroke alone'],
    ['a script', { cut: change(CUT, '<polygon', '<script>1</script><polygon') }, 'holds the element script'],
    [
      'an animation',
      { cut: change(CUT, '<polygon', '<set attributeName="x" to="1"/><polygon') },
      'holds the element set',
    ],
    [
      'a handler',
      {
        source: change(SOURCE, 'id="hole"', 'id="hole" onload="go()"'),
        cut: change(CUT, 'id="hole"', 'id="hole" onload="go()"'),
      },
      'path "hole" holds onload="go()"',
    ],
    [
      'a reference to the outside',
      { print: change(PRINT, 'xlink:href="#leaf"', 'xlink:href="https://example.org/a.svg#leaf"') },
      'use "twig" holds xlink:href="https://example.org/a.svg#leaf"',
    ],
    [
      'a style that loads',
      { print: change(PRINT, '.art{', '@import "a.css";.art{') },
      'holds a style sheet that loads from outside',
    ],
    ['a document type', { cut: `<!DOCTYPE svg>${CUT}` }, 'cut.svg holds a document type'],
    [
      'an instruction',
      { cut: `<?xml-stylesheet href="a.css"?>${CUT}` },
      'cut.svg holds the processing instruction "xml-stylesheet"',
    ],
    [
      'a shape claimed by nobody',
      { cut: cutOut(CUT, 'hole'), cutDrawn: { outline: 'whole', flap: 'whole' } },
      'path "hole" of the source is drawn on none of the sheets',
    ],
    [
      'a shape claimed by two',
      { cutDrawn: { ...CUT_DRAWN, panel: 'whole' } },
      'The sheets together: rect "panel" is drawn 2 times',
    ],
    [
      'a stand-in that draws',
      { cut: change(CUT, '<path n="18"', '<path id="x" data-pinbar="stand-in"/><path n="18"') },
      'is a stand-in, but is not kept from being drawn',
    ],
  ];
  it.each(cases)('finds %s', (_, seeded, said) => {
    const verdict = judge(seeded);
    expect(verdict.findings.map((finding) => finding.message).join('\n')).toContain(said);
    expect(new Set(verdict.findings.map((finding) => finding.code))).toEqual(new Set(['witness/disagrees']));
  });

  it('says by how much and where the greatest deviation is', () => {
    // 12.345678 against 12.3457: 0.000022 user units of 0.5 mm each.
    const verdict = judge({ print: change(PRINT, '12.345678', '12.3457') });
    expect(verdict.greatestDeviationPx * (25.4 / 96)).toBeCloseTo(0.000011, 8);
    expect(verdict.greatestDeviationAt).toBe('circle "sun" in print.svg');
  });

  it('finds an id that means another element than in the source', () => {
    const print = PRINT.replace(
      /<symbol[\s\S]*<\/symbol>/,
      '<symbol id="leaf" data-pinbar="stand-in" style="display:none!important"/>',
    );
    expect(messages({ print })).toEqual([
      'print.svg: use "twig" refers to "#leaf", which is another element here than in the source.',
    ]);
  });

  it('finds the counterparts itself where the claim is wrong', () => {
    const rows = readRows(PRINT);
    rows.set([9, 8], 8);
    const said = messages({ printRows: rows }).join('\n');
    expect(said).toContain('is claimed to be element 9 of the source, but the second judge finds element 8');
    expect(said).not.toContain('lies elsewhere');
    expect(messages({ printRows: readRows(PRINT).slice(0, 5) }).join('\n')).toContain('but the claim names 5');
  });

  it('finds a drawn picture whose address was taken away', () => {
    const source = change(
      SOURCE,
      '<text',
      '<image x="1" y="1" width="9" height="9" xlink:href="data:;base64,AA"/><text',
    );
    const print = change(PRINT, '<text', '<image n="99" x="1" y="1" width="9" height="9"/><text');
    const { findings } = judgeSheets(
      encodeUtf8(source.replace(/ n="\d+"/g, '')),
      [
        {
          name: 'print.svg',
          bytes: encodeUtf8(print.replace(/ n="\d+"/g, '')),
          rows: Int32Array.from([...Array(17).keys(), -1, -1, -1]),
          drawn: new Map([11, 12, 13, 14, 15].map((ordinal) => [ordinal, 'whole'])),
        },
      ],
      { mmPerPx: 25.4 / 96, expected: new Set([11, 12, 13, 14, 15]), grownMm: 0 },
    );
    expect(findings.map((finding) => finding.message)).toEqual([
      'print.svg: image (element 15 of the file) should be drawn here, but what it refers to is taken away.',
    ]);
  });

  it('lists a hundred differences and counts the rest', () => {
    const said = messages({ cut: change(CUT, '<polygon', `${'<rect width="1" height="1"/>'.repeat(130)}<polygon`) });
    expect(said.filter((text) => text.startsWith('cut.svg'))).toHaveLength(101);
    expect(said.find((text) => text.includes('not listed'))).toBe('cut.svg: 30 more differences are not listed.');
  });

  it('tells twins apart by what they hold, without the claim', () => {
    const source = `<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm"><g><path d="M0 0L1 1"/></g><g><path d="M0 0L2 2"/></g></svg>`;
    const sheet = `<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm"><g><path d="M0 0L2 2"/></g></svg>`;
    const verdict = judgeSheets(
      encodeUtf8(source),
      [{ name: 'a.svg', bytes: encodeUtf8(sheet), rows: Int32Array.of(0, -1, -1), drawn: new Map([[4, 'whole']]) }],
      { mmPerPx: 25.4 / 96, expected: new Set([4]), grownMm: 0 },
    );
    expect(verdict.findings.map((finding) => finding.message)).toEqual([
      'a.svg: g (element 2 of the file) is claimed to be something pinbar put there, but the second judge finds element 3 of the source.',
      'a.svg: path (element 3 of the file) is claimed to be something pinbar put there, but the second judge finds element 4 of the source.',
    ]);
  });
});

describe('judgeSheets on files it cannot read', () => {
  const cases: readonly (readonly [string, string, string])[] = [
    ['a missing end tag', CUT.replace('</svg>', ''), 'unclosed xml tag'],
    ['a bare ampersand', change(CUT, 'id="hole"', 'id="hole&co"'), 'is neither a character nor'],
    ['an unknown entity', change(CUT, 'id="hole"', 'id="&hole;"'), 'is neither a character nor'],
    ['a null character reference', change(CUT, 'id="hole"', 'id="&#0;"'), '&#0; names no legal character'],
    ['a control character', change(CUT, 'id="hole"', 'id="\u0002"'), 'U+0002'],
    ['an attribute without quotes', change(CUT, 'id="hole"', 'id=hole'), 'missed'],
    [
      'two hyphens in a comment',
      change(CUT, '<polygon', '<!-- a -- b --><polygon'),
      'a comment is not closed or holds "--"',
    ],
    ['an undeclared prefix', change(CUT, '<polygon', '<a:b/><polygon'), 'cut.svg: the second judge cannot read it'],
    [
      'nesting beyond the bound',
      change(CUT, '<polygon', `${'<g>'.repeat(255)}${'</g>'.repeat(255)}<polygon`),
      'nested deeper than 256',
    ],
    ['another root', '<html xmlns="http://www.w3.org/1999/xhtml"/>', 'its root element is html, not svg'],
  ];
  it.each(cases)('refuses %s', (_, cut, said) => {
    const unreadable = judge({ cut }).findings.filter((finding) => finding.code === 'witness/unreadable');
    expect(unreadable.map((finding) => finding.message).join()).toContain(said);
    expect(unreadable[0]!.place).toEqual({ file: 'cut.svg' });
  });

  it('reads nesting at the bound, and a comment longer than the library takes', () => {
    const deep = change(CUT, '<polygon', `${'<g>'.repeat(254)}${'</g>'.repeat(254)}<polygon`);
    const codes = (cut: string): readonly string[] => judge({ cut }).findings.map((finding) => finding.code);
    expect(codes(deep)).not.toContain('witness/unreadable');
    expect(codes(change(CUT, '<polygon', `<!--${'x'.repeat(9_000_000)}--><polygon`))).toEqual([]);
  });

  it('refuses bytes that are not UTF-8, and files beyond the bound', () => {
    const judgeBytes = (bytes: Uint8Array): string =>
      judgeSheets(bytes, [], { mmPerPx: 1, expected: new Set(), grownMm: 0 }).findings[0]!.message;
    expect(judgeBytes(Uint8Array.of(0x3c, 0xff))).toContain('its bytes are not UTF-8');
    expect(judgeBytes(new Uint8Array(64 * 1024 * 1024 + 1))).toContain('reads up to 67108864');
  });
});
