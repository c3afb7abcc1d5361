// Sheets of copies as a browser lays them out: every shape of every copy where the matrix of the copy puts that of the drawing.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Matrix, multiply } from '../../../src/geometry/matrix.js';
import { type JobResult, joinPieces, readTicket, split } from '../../../src/index.js';
import { describeWith } from '../../house/witnesses.js';
import { recallAnswers, recordAnswers } from './answer-store.js';
import { type Answer, askBrowser, openBrowser } from './ask-browser.js';
import type { AskedFile } from './list-files.js';

const SAMPLES = ['tuck-carton', 'label-sheet', 'counters'];
const FORMS = ['written', 'referenced'] as const;
const COPIES = 4;
/** The browser answers with 9 digits of a matrix and 8 of a box. */
const CLOSE = 2e-6;

/** A shape: matrix to the root's user units, and box in its own. */
interface Seen {
  readonly matrix: Matrix;
  readonly box: readonly number[];
}

function listSeen({ shapes, matrices, refused, left }: Answer): readonly Seen[] {
  expect([refused, left]).toEqual([undefined, []]);
  return shapes.map(([, , at, , ...box]) => {
    const [a, b, c, d, e, f] = matrices[at!]!;
    return { matrix: [a!, b!, c!, d!, e!, f!], box };
  });
}

async function splitSample(name: string, more: Record<string, unknown>): Promise<JobResult> {
  const bytes = new Uint8Array(readFileSync(`samples/${name}.svg`));
  const ticket = readTicket({ pinbar: 1, witness: 'never', marks: { wanted: false }, ...more });
  const job = await split(bytes, ticket, { fileName: `${name}.svg`, skipChecks: true });
  expect(job.files.length).toBeGreaterThan(1);
  return job;
}

function filesOf({ files }: JobResult): readonly AskedFile[] {
  return files.map(({ name, pieces }) => ({ name, bytes: joinPieces(pieces) }));
}

/** A matrix of mm in the user units of a root, by the size that the root states. */
function toUser([a, b, c, d, e, f]: Matrix, bytes: Uint8Array): Matrix {
  const head = /<svg[^>]*>/.exec(Buffer.from(bytes).toString('utf8'))![0];
  const mm = Number(/ width="([\d.]+)mm"/.exec(head)![1]);
  const units = Number(/ viewBox="\S+ \S+ (\S+) /.exec(head)![1]);
  return [a, b, c, d, (e * units) / mm, (f * units) / mm];
}

function expectClose(one: readonly number[], other: readonly number[]): void {
  expect(one).toHaveLength(other.length);
  const size = Math.max(1, ...other.map(Math.abs));
  for (const [i, value] of one.entries()) expect(Math.abs(value - other[i]!)).toBeLessThan(CLOSE * size);
}

/** The files of a sample: drawing, passes, and in each form the sheets, one after the other. */
interface Case {
  readonly name: string;
  readonly files: readonly AskedFile[];
  readonly passes: number;
  readonly matricesMm: readonly Matrix[];
}

async function makeCase(name: string): Promise<Case> {
  const plain = await splitSample(name, {});
  const files: AskedFile[] = [{ name: `${name}.svg`, bytes: new Uint8Array(readFileSync(`samples/${name}.svg`)) }];
  files.push(...filesOf(plain));
  let matricesMm: readonly Matrix[] = [];
  for (const copies of FORMS) {
    const sheet = { widthMm: 1200, heightMm: 900, gutterMm: 7, ups: '2x2', turn: 'head-to-tail', copies };
    const laid = await splitSample(name, { sheet });
    files.push(...filesOf(laid).map((file) => ({ ...file, name: `${copies}/${file.name}` })));
    matricesMm = laid.layout!.matricesMm;
  }
  expect(matricesMm).toHaveLength(COPIES);
  return { name, files, passes: plain.files.length, matricesMm };
}

/** Holds the browser's answers about the sheets against those about the passes, and these against that about the drawing. */
function judge({ files, passes: count, matricesMm }: Case, answers: readonly Answer[]): void {
  const [source, ...seen] = answers.map(listSeen);
  const passes = seen.slice(0, count);
  // The passes are the drawing: each of its shapes in one of them.
  const spell = ({ matrix, box }: Seen): string => JSON.stringify([matrix, box]);
  expect(passes.flat().map(spell).sort()).toEqual(source!.map(spell).sort());
  for (const [i, sheet] of seen.slice(count).entries()) {
    const pass = passes[i % count]!;
    expect(sheet).toHaveLength(COPIES * pass.length);
    for (const [at, { matrix, box }] of sheet.entries()) {
      const before = pass[at % pass.length]!;
      const copy = toUser(matricesMm[Math.floor(at / pass.length)]!, files[1 + count + i]!.bytes);
      expectClose(matrix, multiply(copy, before.matrix));
      expectClose(box, before.box);
    }
  }
}

async function makeCases(): Promise<readonly Case[]> {
  const cases: Case[] = [];
  for (const name of SAMPLES) cases.push(await makeCase(name));
  return cases;
}

function judgeAll(cases: readonly Case[], answers: readonly Answer[]): void {
  let at = 0;
  for (const one of cases) {
    judge(one, answers.slice(at, at + one.files.length));
    at += one.files.length;
  }
  expect(at).toBe(answers.length);
}

describe('recorded answers about sheets of copies', () => {
  it('have each copy of each pass under its matrix, in both forms', { timeout: 240_000 }, async () => {
    const cases = await makeCases();
    if (process.env.ORACLES !== 'record')
      judgeAll(
        cases,
        recallAnswers(
          'sheets',
          cases.flatMap(({ files }) => files),
        ),
      );
  });
});

describeWith('chromium', 'sheets of copies in a browser', () => {
  it('have each copy of each pass under its matrix, in both forms', { timeout: 240_000 }, async () => {
    const cases = await makeCases();
    const files = cases.flatMap((one) => one.files);
    const { browser, page } = await openBrowser();
    try {
      const answers = await askBrowser(page, files);
      judgeAll(cases, answers);
      if (process.env.ORACLES === 'record') recordAnswers('sheets', browser.version(), files, answers);
    } finally {
      await browser.close();
    }
  });
});
