// A reverse pass mirrored about the axis of the turn.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  inspect,
  type JobResult,
  joinPieces,
  makeJobRunSheet,
  type OutputFile,
  readTicket,
  split,
} from '../../../src/index.js';
import type { RunSheet } from '../../../src/model/run-sheet.js';
import { resolveSource, scanBytes } from '../../../src/road/read-artwork.js';
import { turnPass } from '../../../src/road/turn-pass.js';
import { makeProfile } from '../run/check-profile.js';

const RULES = ['Crease', 'Artwork', 'Cut'].map((layer, i) => ({ pass: ['crease', 'print', 'cut'][i], layer }));

async function run(
  first: object,
  more: object = {},
): Promise<{
  readonly sheet: RunSheet;
  readonly files: readonly OutputFile[];
  readonly plain: OutputFile;
  readonly job: JobResult;
}> {
  const passes = [
    { name: 'crease', role: 'reverse-creasing', ...first },
    { name: 'print', role: 'print' },
    { name: 'cut', role: 'cutting' },
  ];
  const ticket = readTicket({ pinbar: 1, passes, rules: RULES, ...more });
  const job = await split(readFileSync('samples/tuck-carton.svg'), ticket, {
    fileName: 'tuck-carton.svg',
    skipChecks: true,
  });
  return { ...(await makeJobRunSheet(job, { profile: makeProfile() })), plain: job.files[0]!, job };
}

interface Manifest {
  readonly passes: readonly { readonly turned?: object }[];
  readonly ties?: readonly { readonly tiesTurned?: object }[];
}

function readManifest(job: JobResult): Manifest {
  return JSON.parse(Buffer.from(joinPieces(job.manifest!.pieces)).toString('utf8')) as Manifest;
}

/** Boxes of the drawn shapes, mm: left, top, right, bottom. */
function boxesOf(bytes: Uint8Array): readonly (readonly number[])[] {
  const artwork = resolveSource(scanBytes(bytes, {}), {}, null);
  const { mmPerPx } = artwork.artboard;
  return artwork.shapes.map(({ fillBox }) =>
    [fillBox.x0, fillBox.y0, fillBox.x1, fillBox.y1].map((px) => px * mmPerPx),
  );
}

describe('turnPass', () => {
  it.each([
    ['work-and-turn', 'top', undefined, 'vertical', 120],
    ['work-and-tumble', 'bottom', undefined, 'horizontal', 118],
    ['work-and-turn', 'left', undefined, 'horizontal', 118],
    ['work-and-tumble', 'right', undefined, 'vertical', 120],
    ['work-and-turn', 'top', 119.5, 'vertical', 119.5],
  ] as const)('%s, held at the %s, axis %s', async (turn, gripperSide, axisMm, axis, wanted) => {
    const asked = { turn, ...(axisMm === undefined ? {} : { axisMm }) };
    const { sheet, plain, job } = await run(asked, { checks: { gripperSide } });
    const [crease] = sheet.passes;
    expect(crease!.register.turn).toEqual({ axis, axisMm: wanted, way: turn });
    const made = job.turnedFiles.find(({ name }) => name === 'tuck-carton.1-crease.turned.svg')!;
    const entry = readManifest(job).passes[0]!.turned;
    expect(entry).toEqual({
      file: made.name,
      bytes: made.byteLength,
      sha256: createHash('sha256').update(joinPieces(made.pieces)).digest('hex'),
      axis,
      axisMm: wanted,
      way: turn,
      deviationMm: made.deviationMm,
    });
    expect(crease!.turnedFile).toMatchObject({ name: made.name, bytes: made.byteLength, sha256: made.sha256 });
    expect(crease!.turnedFile!.deviationMm).toBeLessThan(1e-6);
    const [before, after] = [boxesOf(joinPieces(plain.pieces)), boxesOf(joinPieces(made.pieces))];
    // The marks of the plain pass are known as such; in the mirrored file they are art like the rest, behind it.
    expect(before).toHaveLength(12);
    for (const [i, [x0, y0, x1, y1]] of before.entries()) {
      const image =
        axis === 'vertical'
          ? [2 * wanted - x1!, y0!, 2 * wanted - x0!, y1!]
          : [x0!, 2 * wanted - y1!, x1!, 2 * wanted - y0!];
      for (const [k, value] of image.entries()) expect(after[i]![k]).toBeCloseTo(value, 6);
    }
  });

  it('keeps the artboard, and every byte of the pass', async () => {
    const { plain, job } = await run({ turn: 'work-and-turn' });
    const made = Buffer.from(joinPieces(job.turnedFiles[0]!.pieces)).toString('utf8');
    const text = made
      .replace(/<g id="pinbar-turned" transform="matrix\(-1 0 0 1 240 0\)">/, '')
      .replace('</g></svg>', '</svg>');
    expect(text).toBe(Buffer.from(joinPieces(plain.pieces)).toString('utf8'));
    const boards = await Promise.all([made, text].map((svg) => inspect(new Uint8Array(Buffer.from(svg)))));
    expect(boards[0]!.artboard).toEqual(boards[1]!.artboard);
  });

  it('turns the sheet back over the same axis, and leaves fronts as they are', async () => {
    const { sheet, files, job } = await run({ turn: 'work-and-turn' });
    expect(sheet.passes.map(({ register, turnedFile }) => [register.turn === null, turnedFile === null])).toEqual([
      [false, false],
      [false, true],
      [true, true],
    ]);
    expect(sheet.passes[1]!.register.turn).toEqual(sheet.passes[0]!.register.turn);
    expect(job.turnedFiles.map(({ of }) => of)).toEqual(['tuck-carton.1-crease.svg']);
    expect(readManifest(job).passes.map(({ turned }) => turned !== undefined)).toEqual([true, false, false]);
    const html = Buffer.from(joinPieces(files[0]!.pieces)).toString('utf8');
    expect(html).toContain('<b>tuck-carton.1-crease.turned.svg</b>, mirrored');
    expect(html).toContain('(work and turn): left and right change places, axis 120 mm from the left');
    expect(html).toContain('<g transform="matrix(-1 0 0 1 240 0)">');
    expect(Buffer.from(joinPieces(files[2]!.pieces)).toString('utf8')).toContain(
      'URL="tuck-carton.1-crease.turned.svg"',
    );
  });

  it('makes no file where nobody says how the sheet is turned, and says so', async () => {
    const { sheet, files, job } = await run({});
    expect([job.turnedFiles, readManifest(job).passes[0]!.turned]).toEqual([[], undefined]);
    expect(sheet.passes[0]!.turnedFile).toBeNull();
    expect(files).toHaveLength(3);
    expect(sheet.notes).toContain('The file of crease is not mirrored.');
  });

  it('mirrors copies on a sheet about its middle, and the ties of a pass', async () => {
    const { job, sheet } = await run(
      { name: 'crease', turn: 'work-and-turn' },
      {
        sheet: { widthMm: 700, heightMm: 500, gutterMm: 6, ups: '2x1' },
        ties: [{ pass: 'crease', mode: 'pattern', cutMm: 8, tieMm: 2, tiesPass: true }],
      },
    );
    expect(job.turnedFiles.map(({ name, turn }) => [name, turn.axisMm])).toEqual([
      ['tuck-carton.1-crease.turned.svg', 350],
      ['tuck-carton.1-crease-ties.turned.svg', 350],
    ]);
    const [, ties] = job.turnedFiles;
    expect(readManifest(job).ties![0]!.tiesTurned).toMatchObject({ file: ties!.name, sha256: ties!.sha256 });
    expect(sheet.passes[1]!.turnedFile).toMatchObject({ name: ties!.name, bytes: ties!.byteLength });
    const plain = job.tieFiles[0]!;
    const [before, after] = [boxesOf(joinPieces(plain.pieces)), boxesOf(joinPieces(ties!.pieces))];
    for (const [i, [x0, , x1]] of before.entries()) {
      expect(after[i]![0]).toBeCloseTo(700 - x1!, 6);
      expect(after[i]![2]).toBeCloseTo(700 - x0!, 6);
    }
  });

  it('refuses a file that is turned already', async () => {
    const { plain } = await run({});
    const turn = { axis: 'vertical', axisMm: 120, way: null } as const;
    const once = await turnPass({ name: 'a.svg', bytes: joinPieces(plain.pieces) }, turn);
    await expect(turnPass({ name: 'a.svg', bytes: joinPieces(once.pieces) }, turn)).rejects.toThrow(
      'a.svg was turned before',
    );
  });
});
