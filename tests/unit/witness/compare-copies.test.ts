// Sheets of copies against the drawing they were made of: right ones, and each way in which a copy can be wrong.
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Comparison, copiesOf, type Finding, joinPieces, readTicket, split, verify } from '../../../src/index.js';

interface Made {
  readonly source: { readonly name: string; readonly bytes: Uint8Array };
  readonly texts: readonly (readonly [string, string])[];
  readonly manifest: unknown;
}

const SHEET = { widthMm: 700, heightMm: 500, gutterMm: 6, ups: '2x2', turn: 'head-to-tail' };

async function make(name: string, more: Record<string, unknown>, ticket: Record<string, unknown> = {}): Promise<Made> {
  const bytes = new Uint8Array(readFileSync(`samples/${name}.svg`));
  const asked = { pinbar: 1, witness: 'never', ...ticket, sheet: { ...SHEET, ...more } };
  const job = await split(bytes, readTicket(asked), { fileName: `${name}.svg`, skipChecks: true });
  expect(job.files.length).toBeGreaterThan(1);
  const read = (pieces: readonly Uint8Array[]): string => Buffer.from(joinPieces(pieces)).toString('utf8');
  return {
    source: { name: `${name}.svg`, bytes },
    texts: job.files.map((file) => [file.name, read(file.pieces)] as const),
    manifest: JSON.parse(read(job.manifest!.pieces)),
  };
}

/** The files with changes to one of them, held against the source. */
async function look(
  { source, texts, manifest }: Made,
  how: 'said' | 'found',
  change: (text: string, name: string) => string = (text) => text,
): Promise<Comparison> {
  const files = texts.map(([name, text]) => ({ name, bytes: new Uint8Array(Buffer.from(change(text, name))) }));
  return verify(files, source, how === 'said' ? { copiesMm: copiesOf(manifest)! } : {});
}

const codes = (findings: readonly Finding[]): readonly string[] =>
  findings.filter(({ severity }) => severity === 'error').map(({ code }) => code);

const swap = (text: string, from: string | RegExp, to: string): string => {
  expect(text).toMatch(from);
  return text.replace(from, to);
};

const FORMS = ['written', 'referenced'] as const;
const WAYS = ['said', 'found'] as const;

describe.each(FORMS)('sheets of cartons, copies %s', (copies) => {
  let made: Made;
  beforeAll(async () => {
    made = await make('tuck-carton', { copies });
  });

  it.each(WAYS)('are in register, where the copies are %s', async (how) => {
    const seen = await look(made, how);
    expect(codes(seen.findings)).toEqual([]);
    expect(seen.inRegister).toBe(true);
    expect(seen.copies!.from).toBe(how);
    expect(seen.copies!.list).toHaveLength(4);
    for (const { greatestDeviationMm, shapes: count } of seen.copies!.list) {
      expect(greatestDeviationMm).toBeLessThan(1e-6);
      expect(count).toBe(seen.matches.length / 4);
    }
    const wanted = copiesOf(made.manifest)!;
    for (const { matrixMm } of seen.copies!.list) {
      const near = wanted.some((matrix) => matrix.every((value, i) => Math.abs(value - matrixMm[i]!) < 1e-5));
      expect(near).toBe(true);
    }
  });
});

describe('a copy that is wrong', () => {
  let made: Made;
  let list: readonly (readonly number[])[];
  beforeAll(async () => {
    made = await make('tuck-carton', {});
    list = copiesOf(made.manifest)!.map((matrix) => [...matrix]);
  });
  const third = /(<g id="pinbar-copy-3" transform=")([^"]*)/;
  const isCut = (name: string): boolean => name.includes('cut');

  it.each(WAYS)('lies elsewhere on one pass, %s', async (how) => {
    const seen = await look(made, how, (text, name) =>
      isCut(name) ? swap(text, third, '$1translate(0.3 -0.2) $2') : text,
    );
    expect(codes(seen.findings)).toEqual(['verify/moved']);
    const [moved] = seen.findings.filter(({ code }) => code === 'verify/moved');
    const copy = moved!.data.copy as number;
    const { matrixMm } = seen.copies!.list[copy - 1]!;
    for (const [i, value] of list[2]!.entries()) expect(matrixMm[i]).toBeCloseTo(value, 5);
    expect(moved!.data).toMatchObject({ dxMm: 0.3, dyMm: -0.2, count: 5 });
    expect(moved!.message).toContain(`in copy ${copy}`);
    expect(seen.copies!.list[copy - 1]!.greatestDeviationMm).toBeCloseTo(0.3, 6);
    expect(seen.copies!.list.filter(({ greatestDeviationMm }) => greatestDeviationMm > 1e-6)).toHaveLength(1);
  });

  it.each(WAYS)('is missing on one pass, %s', async (how) => {
    const seen = await look(made, how, (text, name) =>
      isCut(name) ? swap(text, /<g id="pinbar-copy-3"[\s\S]*?(?=<g id="pinbar-copy-4")/, '') : text,
    );
    expect(codes(seen.findings)).toEqual(['verify/missing']);
    expect(seen.findings.find(({ code }) => code === 'verify/missing')!.data).toMatchObject({ count: 5 });
  });

  it.each(WAYS)('stands twice on one pass, %s', async (how) => {
    const seen = await look(made, how, (text, name) =>
      isCut(name) ? swap(text, /(<g id="pinbar-copy-3"[\s\S]*?)(?=<g id="pinbar-copy-4")/, '$1$1') : text,
    );
    expect(codes(seen.findings)).toEqual(['verify/doubled']);
    expect(seen.findings.find(({ code }) => code === 'verify/doubled')!.data).toMatchObject({ count: 5, times: 2 });
  });

  it.each(WAYS)('is scaled on one pass, %s', async (how) => {
    const seen = await look(made, how, (text, name) => (isCut(name) ? swap(text, third, '$1$2 scale(1.002)') : text));
    expect(new Set(codes(seen.findings)).has('verify/scaled')).toBe(true);
    const copies = new Set(seen.findings.filter(({ severity }) => severity === 'error').map(({ data }) => data.copy));
    expect(copies.size).toBe(1);
  });

  it('has one shape that moved, in one copy', async () => {
    const seen = await look(made, 'found', (text, name) =>
      isCut(name) ? swap(text, /(<g id="pinbar-copy-2"[\s\S]*?<path )/, '$1transform="translate(0 0.05)" ') : text,
    );
    const [moved] = seen.findings.filter(({ code }) => code === 'verify/moved');
    expect(moved!.data.count).toBe(1);
    expect(Math.abs(moved!.data.dyMm as number)).toBeCloseTo(0.05, 6);
  });
});

describe('other sheets', () => {
  it.each(WAYS)('with a margin, a scale and a quarter turn, %s', async (how) => {
    const made = await make('tuck-carton', { turn: 90, scale: 0.5 }, { marginMm: 7 });
    const seen = await look(made, how);
    expect(codes(seen.findings)).toEqual([]);
    expect(seen.copies!.list).toHaveLength(4);
  });

  it('of labels that are alike among themselves are still told from their sheet', async () => {
    const made = await make('label-sheet', { widthMm: 1000, heightMm: 700, turn: 0 });
    const seen = await look(made, 'found');
    expect(codes(seen.findings)).toEqual([]);
    expect(seen.copies!.list).toHaveLength(4);
  });

  it('of one job, once, are no sheet of copies', async () => {
    const bytes = new Uint8Array(readFileSync('samples/label-sheet.svg'));
    const job = await split(bytes, readTicket({ pinbar: 1 }), { fileName: 'label-sheet.svg', skipChecks: true });
    const files = job.files.map(({ name, pieces }) => ({ name, bytes: joinPieces(pieces) }));
    const seen = await verify(files, { name: 'label-sheet.svg', bytes });
    expect([seen.inRegister, seen.copies]).toEqual([true, undefined]);
    const shifted = files.map(({ name, bytes: one }) => ({
      name,
      bytes: new Uint8Array(Buffer.from(Buffer.from(one).toString('utf8').replace('viewBox="0 0 ', 'viewBox="1 0 '))),
    }));
    expect((await verify(shifted, { name: 'label-sheet.svg', bytes })).copies).toBeUndefined();
  });

  it('say nothing of copies in a manifest without a sheet, or in none', () => {
    for (const value of [null, 3, {}, { document: 'manifest', passes: [], input: { name: 'a' } }])
      expect(copiesOf(value)).toBeNull();
  });
});
