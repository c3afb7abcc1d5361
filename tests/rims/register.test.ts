// measure and correct, spawned as a person runs them.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const COMMAND = resolve('bin/pinbar.js');
const folder = mkdtempSync(join(tmpdir(), 'pinbar-register-'));

function run(args: readonly string[], input = ''): { status: number | null; stdout: string; stderr: string } {
  return spawnSync(process.execPath, [COMMAND, ...args], { cwd: folder, encoding: 'utf8', input });
}

interface Mark {
  readonly name: string;
  readonly shape: string;
  readonly xMm: number;
  readonly yMm: number;
}

/** A table of the discs, moved. */
function measureAs(move: (x: number, y: number) => readonly [number, number]): string {
  const { marks } = JSON.parse(readFileSync(join(folder, 'job', 'manifest.json'), 'utf8')) as {
    marks: readonly Mark[];
  };
  return marks
    .filter(({ shape }) => shape === 'disc')
    .map(({ name, xMm, yMm }) => [name, ...move(xMm, yMm).map((value) => value.toFixed(2))].join(','))
    .join('\n');
}

beforeAll(() => {
  const made = run(['split', resolve('samples/tuck-carton.svg'), '--out', 'job']);
  expect(made.status).toBe(0);
  writeFileSync(
    join(folder, 'marks.csv'),
    measureAs((x, y) => [x + 0.4, y - 0.15]),
  );
  writeFileSync(
    join(folder, 'turned.csv'),
    measureAs((x, y) => [400 - x, 300 - y]),
  );
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('pinbar measure', () => {
  it('says how far the passes are out and what corrects it', () => {
    const { status, stdout } = run(['measure', 'marks.csv', '--job', 'job', '--tolerance', '0.2']);
    expect(status).toBe(0);
    expect(stdout).toContain('Out by up to 0.427 mm, more than the 0.2 mm that the shop allows');
    expect(stdout).toContain('> shift: +0.400 mm right, -0.150 mm down');
  });

  it('reads the sample of README', () => {
    const table = resolve('samples/tuck-carton.marks.csv');
    const { status, stdout } = run(['measure', table, '--job', 'job', '--tolerance', '0.1', '--json']);
    expect([status, JSON.parse(stdout).chosen, JSON.parse(stdout).verdict]).toEqual([0, 'scale', 'correctable']);
  });

  it('reads a table that a spreadsheet saved as UTF-16', () => {
    const table = readFileSync(join(folder, 'marks.csv'), 'utf8');
    const wide = Buffer.from(`\uFEFF${table}`, 'utf16le');
    writeFileSync(join(folder, 'wide.csv'), wide);
    writeFileSync(join(folder, 'swapped.csv'), Buffer.from(wide).swap16());
    const { stdout } = run(['measure', 'marks.csv', '--job', 'job', '--json']);
    for (const name of ['wide.csv', 'swapped.csv']) {
      expect(run(['measure', name, '--job', 'job', '--json'])).toMatchObject({ status: 0, stdout });
    }
  });

  it('leaves the verdict to the shop where it gave no tolerance', () => {
    expect(run(['measure', 'marks.csv', '--job', 'job']).stdout).toContain("the shop's to say");
  });

  it('gives one document, also from standard input', () => {
    const table = 'a,0,0,0.1,0\nb,100,0,100.1,0\nc,0,100,0.1,100\nd,100,100,100.1,100\n';
    const { status, stdout } = run(['measure', '-', '--json', '--tolerance', '0.05'], table);
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({
      document: 'register',
      chosen: 'shift',
      verdict: 'correctable',
      fits: [{ kind: 'shift', shiftMm: [expect.closeTo(0.1, 9), 0] }, {}, {}, {}],
    });
  });

  it('ends with 1 for a sheet that lies turned, with 3 for a table it cannot read', () => {
    const turned = run(['measure', 'turned.csv', '--job', 'job']);
    expect([turned.status, turned.stdout.includes('turned by 180 degrees')]).toEqual([1, true]);
    expect(run(['measure', '-'], 'a;b').status).toBe(3);
    expect(run(['measure', 'nowhere.csv']).status).toBe(3);
    expect(run(['measure', 'marks.csv', '--job', '.']).status).toBe(2);
    expect(run(['measure', 'marks.csv', '--job', 'job', '--tolerance', '-0.2']).status).toBe(2);
  });
});

describe('pinbar correct', () => {
  it('writes the passes asked for, and leaves the job as it was', () => {
    const before = readdirSync(join(folder, 'job')).map((name) => readFileSync(join(folder, 'job', name), 'utf8'));
    const made = run(['correct', 'marks.csv', '--job', 'job', '--passes', 'crease,cut', '--fit', 'turn']);
    expect(made.status).toBe(0);
    expect(made.stdout).toContain('Read back: every shape is drawn as before');
    expect(readdirSync(join(folder, 'job.corrected')).sort()).toEqual([
      'manifest.json',
      'tuck-carton.1-crease.svg',
      'tuck-carton.3-cut.svg',
    ]);
    expect(readdirSync(join(folder, 'job')).map((name) => readFileSync(join(folder, 'job', name), 'utf8'))).toEqual(
      before,
    );
    const cut = readFileSync(join(folder, 'job.corrected', 'tuck-carton.3-cut.svg'), 'utf8');
    const numbers = /<g id="pinbar-register" transform="matrix\(([^)]*)\)">/.exec(cut)![1]!.split(' ').map(Number);
    expect(numbers.map((value) => Math.round(value * 1e4) / 1e4 + 0)).toEqual([1, 0, 0, 1, 0.4, -0.15]);
  });

  it('writes over nothing unasked', () => {
    const args = ['correct', 'marks.csv', '--job', 'job', '--passes', 'cut', '--out'];
    expect(run([...args, 'once']).status).toBe(0);
    expect(run([...args, 'once']).status).toBe(4);
    expect(run([...args, 'once', '--force']).status).toBe(0);
    expect(run([...args, 'job', '--force']).status).toBe(4);
  });

  it('corrects nothing where the marks say that something is wrong', () => {
    const args = ['correct', 'turned.csv', '--job', 'job', '--passes', 'cut', '--out', 'wrong', '--json'];
    const { status, stdout } = run(args);
    expect(status).toBe(1);
    expect(JSON.parse(stdout)).toMatchObject({ document: 'correction', written: false, files: [] });
    expect(readdirSync(folder)).not.toContain('wrong');
  });

  it('says what a fit leaves that is asked for instead of the one marked', () => {
    const table = resolve('samples/tuck-carton.marks.csv');
    const args = ['correct', table, '--job', 'job', '--passes', 'cut', '--force', '--out', 'asked', '--fit'];
    const rough = run([...args, 'shift', '--tolerance', '0.1']);
    expect(rough.status).toBe(0);
    expect(rough.stdout).toContain(
      'Corrected by a shift, as asked; it leaves 0.190 mm at most, MORE than the 0.1 mm that the shop allows;',
    );
    expect(run([...args, 'affine', '--tolerance', '0.1']).stdout).toContain(
      'Corrected by an affine fit, as asked; it leaves 0.017 mm at most; the passes',
    );
    expect(run([...args, 'scale', '--tolerance', '0.1']).stdout).toContain('one scale; the passes');
  });

  it('knows passes and fits by name', () => {
    const args = ['correct', 'marks.csv', '--job', 'job'];
    expect(run([...args, '--passes', 'gold']).stderr).toContain('it has crease, print, cut');
    expect(run([...args, '--passes', 'cut', '--fit', 'bend']).status).toBe(2);
  });
});
