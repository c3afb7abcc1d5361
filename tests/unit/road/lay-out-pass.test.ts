// Sheets of copies: the pass once to the byte, each copy under its matrix, and damage that each judge sees by itself.
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { multiply } from '../../../src/geometry/matrix.js';
import { type JobResult, joinPieces, readTicket, split } from '../../../src/index.js';
import { listForms } from '../../../src/road/write-copies.js';
import { judge, PASS, readShapes, toBytes } from './two-copies.js';

const SHEET = { widthMm: 1000, heightMm: 700, gripperMm: 12, gutterMm: 6, ups: '2x2', turn: 'head-to-tail' };

async function splitSample(name: string, ticket: Record<string, unknown> = {}): Promise<JobResult> {
  const bytes = new Uint8Array(readFileSync(`samples/${name}.svg`));
  const said = { pinbar: 1, witness: 'always', ...ticket };
  return split(bytes, readTicket(said), { fileName: `${name}.svg`, skipChecks: true });
}

const BOTH = ['written', 'referenced'] as const;

describe.each(['tuck-carton', 'label-sheet'].flatMap((name) => BOTH.map((copies) => [name, copies] as const)))(
  'sheets of %s, copies %s',
  (name, copies) => {
    let plain: JobResult;
    let laid: JobResult;
    beforeAll(async () => {
      plain = await splitSample(name, { marks: { wanted: false } });
      laid = await splitSample(name, { sheet: { ...SHEET, copies } });
    });

    it('are in register, by both judges, passes and sheets', () => {
      expect(laid.outcome).toBe('in-register');
      expect(laid.proof.judges.map(({ judge, of, looked }) => [judge, of ?? 'passes', looked])).toEqual([
        ['read-back', 'passes', true],
        ['witness', 'passes', true],
        ['read-back', 'sheets', true],
        ['witness', 'sheets', true],
      ]);
      const [passes, , sheets, seen] = laid.proof.judges.map(({ shapesJudged }) => shapesJudged);
      expect(sheets).toBeGreaterThanOrEqual(4 * passes!);
      expect(seen).toBe(sheets);
      expect(laid.proof.equalExtents).toBe(true);
      for (const { greatestDeviationMm } of laid.proof.judges) expect(greatestDeviationMm).toBeLessThan(1e-6);
    });

    it('hold the pass to the byte', () => {
      laid.files.forEach((file, i) => {
        const text = Buffer.from(joinPieces(file.pieces)).toString('utf8');
        const pass = Buffer.from(joinPieces(plain.files[i]!.pieces)).toString('utf8');
        const content = pass.slice(pass.indexOf('>', pass.indexOf('<svg')) + 1, pass.lastIndexOf('</svg>'));
        expect(text.split(content)).toHaveLength(2);
        expect(text.match(/width="1000mm" height="700mm"/g)).toHaveLength(1);
        expect(text.match(/id="pinbar-marks"/g)).toHaveLength(1);
        const ids = [...text.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
        expect(new Set(ids).size).toBe(ids.length);
        if (copies === 'referenced') return;
        expect(text).not.toContain('href="#pinbar-blank"');
        // As many uses as the designer's own, in every copy.
        const uses = (one: string): number => one.split('<use').length - 1;
        expect(uses(text)).toBe(
          4 * uses(content.replace(/<defs>[\s\S]*?<\/defs>/g, '')) +
            uses(content.match(/<defs>[\s\S]*?<\/defs>/g)?.join('') ?? ''),
        );
      });
    });

    it('carry one and the same list of matrices', () => {
      const listed = laid.files.map((file) =>
        Buffer.from(joinPieces(file.pieces))
          .toString('utf8')
          .match(/id="pinbar-copy-\d+"[^>]*?transform="[^"]*"/g)
          ?.map((text) => text.replace(/xmlns.*?href="#pinbar-blank" /, '')),
      );
      expect(listed[0]).toHaveLength(4);
      for (const list of listed) expect(list).toEqual(listed[0]);
    });

    it('put every shape where the matrix of its copy puts it', () => {
      const { matricesMm } = laid.layout!;
      laid.files.forEach((file, at) => {
        const before = readShapes(joinPieces(plain.files[at]!.pieces)).artwork;
        const after = readShapes(joinPieces(file.pieces)).artwork;
        const { mmPerPx } = before.artboard;
        expect(after.shapes).toHaveLength(4 * before.shapes.length);
        after.shapes.forEach((shape, i) => {
          const { matrix } = before.shapes[i % before.shapes.length]!;
          const [a, b, c, d, e, f] = matricesMm[Math.floor(i / before.shapes.length)]!;
          const wanted = multiply([a, b, c, d, e / mmPerPx, f / mmPerPx], matrix);
          for (const [k, value] of wanted.entries()) expect(shape.matrix[k]).toBeCloseTo(value, 7);
        });
      });
    });
  },
);

describe('the manifest', () => {
  it('lists matrices and yield of a sheet, and says nothing of one where none was asked for', async () => {
    const laid = await splitSample('tuck-carton', { sheet: SHEET });
    const manifest = JSON.parse(Buffer.from(joinPieces(laid.manifest!.pieces)).toString('utf8'));
    expect(manifest.sheet.matrices).toEqual(laid.layout!.matricesMm);
    expect(manifest.sheet).toMatchObject({ widthMm: 1000, heightMm: 700, copies: 4, columns: 2, rows: 2, scale: 1 });
    expect(manifest.sheet.yieldShare).toBeCloseTo(laid.layout!.yieldShare, 6);
    expect(manifest.marks).toHaveLength(10);
    const plain = await splitSample('tuck-carton');
    expect(Buffer.from(joinPieces(plain.manifest!.pieces)).toString('utf8')).not.toContain('"sheet"');
  });
});

describe('damage to a sheet', () => {
  it('is not seen where there is none', () => {
    expect(judge(PASS, 'referenced')).toMatchObject({ form: 'uses', first: [], second: [] });
  });

  it.each([
    ['a copy that lies elsewhere', [['matrix(-1 0 0 -1 220 120)', 'matrix(-1 0 0 -1 220 120.01)']]],
    ['a copy that is turned', [['matrix(-1 0 0 -1 220 120)', 'matrix(1 0 0 1 100 40)']]],
    ['a first copy that lies elsewhere', [['matrix(1 0 0 1 20 20)', 'matrix(1 0 0 1 20.01 20)']]],
    ['a copy that is gone', [['<use id="pinbar-copy-2"', '<metadata id="pinbar-copy-2"']]],
    ['a copy too many', [['</svg>', '<use href="#pinbar-blank" transform="translate(9 9)"/></svg>']]],
    ['a shape beside the copies', [['</svg>', '<rect width="5" height="5"/></svg>']]],
    ['a shape in the first copy alone', [['</g></g>', '</g><rect width="5" height="5"/></g>']]],
    ['a point that moved', [['M10 10H50', 'M10 10H50.1']]],
    ['a paint that changed', [['id="dot"', 'id="dot" fill="#00ff00"']]],
    ['a sheet of another size', [['width="200mm"', 'width="201mm"']]],
    ['a use of something else', [[' href="#pinbar-blank"', ' href="#dot"']]],
  ] as const)('is seen by each judge alone: %s', (_, damage) => {
    const { first, second } = judge(PASS, 'referenced', damage);
    expect(first).not.toEqual([]);
    expect(second).not.toEqual([]);
  });
});

describe('style rules', () => {
  const styled = (css: string): string => PASS.replace('<defs>', `<style>${css}</style><defs>`);

  it('by class leave the plain form', () => {
    expect(judge(styled('.a{fill:#123456}'), 'referenced')).toMatchObject({ form: 'uses', first: [], second: [] });
  });

  it.each(['svg > g path{fill:#123456}', 'g{fill:#123456}', 'g > path{fill:#123456}'])(
    'that look at the root or at groups find it in a frame: %s',
    (css) => {
      expect(judge(styled(css), 'referenced')).toMatchObject({ form: 'framed-uses', first: [], second: [] });
    },
  );

  it('that look at siblings or positions have no form: a use draws a tree of its own, and browsers count in that', () => {
    for (const css of ['svg > :nth-child(3) path{fill:#123456}', 'defs + g circle{fill:#123456}']) {
      const { source, artwork } = readShapes(toBytes(styled(css)));
      const { artboard, usesPercent, structural } = artwork;
      expect(listForms({ source, artboard, usesPercent, structural }, 'referenced')).toEqual([]);
    }
  });

  it('that must have the outermost root are refused by the first judge', () => {
    const css = ':root > g > path{fill:#123456}';
    for (const copies of BOTH) expect(judge(styled(css), copies).first).not.toEqual([]);
  });

  it('that would turn or hide a copy are overruled', () => {
    expect(judge(styled('use{transform:scale(3);display:none;opacity:0.1}'), 'referenced')).toMatchObject({
      first: [],
    });
  });
});

describe('copies that are too much to be read back', () => {
  it.each(['elements', 'bytes'] as const)(
    'are refused by %s where they are written out, and say what helps',
    async (kind) => {
      const bytes = toBytes(PASS.replace('width="60mm" height="40mm"', 'width="60mm" height="40mm" id="top"'));
      const ticket = (copies: string) =>
        readTicket({
          pinbar: 1,
          marks: { wanted: false },
          rules: [{ pass: 'print', rest: true }],
          sheet: { widthMm: 700, heightMm: 500, ups: '3x3', copies },
        });
      const options = { limits: { [kind]: kind === 'elements' ? 20 : 1000 }, skipChecks: true };
      await expect(split(bytes, ticket('written'), options)).rejects.toMatchObject({ code: `limit/${kind}` });
      await expect(split(bytes, ticket('written'), options)).rejects.toThrow(/9 copies written out hold \d+/);
      if (kind === 'elements') expect((await split(bytes, ticket('referenced'), options)).outcome).toBe('in-register');
    },
  );
});
