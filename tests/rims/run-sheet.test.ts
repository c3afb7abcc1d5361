// run-sheet, and split with a profile, spawned as a person runs them.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { RunSheet } from '../../src/index.js';

const COMMAND = resolve('bin/pinbar.js');
const PROFILE = resolve('samples/shop.profile.json');
const folder = mkdtempSync(join(tmpdir(), 'pinbar-run-sheet-'));

function run(...args: readonly string[]): { status: number | null; stdout: string; stderr: string } {
  return spawnSync(process.execPath, [COMMAND, ...args], { cwd: folder, encoding: 'utf8', input: '' });
}

function read(path: string): string {
  return readFileSync(join(folder, path), 'utf8');
}

beforeAll(() => {
  expect(run('split', resolve('samples/tuck-carton.svg'), '--out', 'job').status).toBe(0);
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('pinbar run-sheet', () => {
  it('writes a page and a document into the job, and again over its own', () => {
    expect(run('run-sheet', 'job', '--profile', PROFILE).status).toBe(0);
    const again = run('run-sheet', 'job', '--profile', PROFILE, '--sheets', '40');
    expect(again.status).toBe(0);
    expect(again.stdout).toContain('40 sheets of folding board 300 on table');
    expect(read('job/run-sheet.html')).toContain('<title>Run sheet of tuck-carton</title>');
    const sheet = JSON.parse(read('job/run-sheet.json')) as RunSheet & { readonly document: string };
    expect(sheet.document).toBe('run-sheet');
    expect(sheet.totals.sheets).toBe(40);
    expect(sheet.passes.map(({ name, tool }) => [name, tool?.name ?? null])).toEqual([
      ['crease', 'crease wheel'],
      ['print', null],
      ['cut', 'knife'],
    ]);
  });

  it('says the document with --json and writes to --out', () => {
    const ran = run('run-sheet', 'job', '--profile', PROFILE, '--out', '.', '--json');
    expect(ran.status).toBe(0);
    expect(JSON.parse(ran.stdout)).toEqual(JSON.parse(read('run-sheet.json')));
    expect((JSON.parse(ran.stdout) as RunSheet).totals.sheets).toBe(250);
  });

  it('writes over nothing else', () => {
    writeFileSync(join(folder, 'own.html'), 'mine');
    rmSync(join(folder, 'busy'), { recursive: true, force: true });
    spawnSync('mkdir', [join(folder, 'busy')]);
    writeFileSync(join(folder, 'busy', 'run-sheet.html'), 'mine');
    const ran = run('run-sheet', 'job', '--profile', PROFILE, '--out', 'busy');
    expect(ran.status).toBe(4);
    expect(read('busy/run-sheet.html')).toBe('mine');
  });

  it('refuses a machine or material that is not there, and says the nearest', () => {
    const machine = run('run-sheet', 'job', '--profile', PROFILE, '--machine', 'tabel');
    expect([machine.status, machine.stderr]).toEqual([2, expect.stringContaining('Did you mean "table"?')]);
    const material = run('run-sheet', 'job', '--profile', PROFILE, '--material', 'folding board 30');
    expect([material.status, material.stderr]).toEqual([2, expect.stringContaining('"folding board 300"')]);
    expect(run('run-sheet', 'job', '--profile', PROFILE, '--sheets', '1.5').status).toBe(2);
  });

  it('takes ties and mirrored files from the job, and refuses those that were changed', () => {
    const ticket = {
      pinbar: 1,
      passes: [
        { name: 'crease', role: 'reverse-creasing', turn: 'work-and-turn' },
        { name: 'print', role: 'print' },
        { name: 'cut', role: 'cutting' },
      ],
      rules: [
        { pass: 'crease', layer: 'Crease' },
        { pass: 'print', layer: 'Artwork' },
        { pass: 'cut', layer: 'Cut' },
      ],
      ties: [{ pass: 'cut', mode: 'hold', tiesPass: true }],
    };
    writeFileSync(join(folder, 'reverse.json'), JSON.stringify(ticket));
    const art = resolve('samples/tuck-carton.svg');
    expect(run('split', art, '--ticket', 'reverse.json', '--out', 'reverse', '--skip-checks').status).toBe(0);
    expect(readdirSync(join(folder, 'reverse'))).toEqual(
      expect.arrayContaining(['tuck-carton.1-crease.turned.svg', 'tuck-carton.3-cut-ties.svg']),
    );
    const ran = run('run-sheet', 'reverse', '--profile', PROFILE);
    expect(ran.status).toBe(0);
    expect(ran.stdout).toContain('3b  cut ties: knife');
    for (const name of ['tuck-carton.1-crease.turned.svg', 'tuck-carton.3-cut-ties.svg']) {
      const path = join(folder, 'reverse', name);
      const before = readFileSync(path);
      writeFileSync(path, '<svg xmlns="http://www.w3.org/2000/svg"/>');
      const refused = run('run-sheet', 'reverse', '--profile', PROFILE);
      expect([refused.status, refused.stderr]).toEqual([3, expect.stringContaining(`${name} is not the file`)]);
      writeFileSync(path, before);
    }
    const marks = ['marks.csv', '--job', 'reverse', '--passes', 'crease,cut', '--tolerance', '1', '--fit', 'shift'];
    const { marks: drawn } = JSON.parse(read('reverse/manifest.json')) as {
      readonly marks: readonly { readonly name: string; readonly xMm: number; readonly yMm: number }[];
    };
    const rows = drawn.map(({ name, xMm, yMm }) => `${name},${xMm + 0.2},${yMm}`);
    writeFileSync(join(folder, 'marks.csv'), rows.join('\n'));
    const corrected = run('correct', ...marks);
    expect(corrected.status).toBe(0);
    expect(corrected.stdout).toContain('tuck-carton.1-crease.turned.svg, tuck-carton.1-crease.svg mirrored');
    // A shift to the right is one to the left in the mirror.
    const shiftOf = (name: string): number =>
      Number(
        /id="pinbar-register" transform="matrix\(1 0 0 1 ([-\d.]+) 0\)"/.exec(read(`reverse.corrected/${name}`))![1],
      );
    expect(shiftOf('tuck-carton.1-crease.svg')).toBeCloseTo(0.2, 9);
    const turned = read('reverse.corrected/tuck-carton.1-crease.turned.svg');
    const across = Number(/width="([\d.]+)mm"/.exec(turned)![1]);
    expect(/id="pinbar-turned" transform="matrix\(-1 0 0 1 ([-\d.]+) 0\)"/.exec(turned)![1]).toBe(String(across));
    expect(shiftOf('tuck-carton.1-crease.turned.svg')).toBeCloseTo(0.2, 9);
    expect(readdirSync(join(folder, 'reverse.corrected'))).toContain('tuck-carton.3-cut-ties.svg');
    expect(read('reverse.corrected/tuck-carton.3-cut-ties.svg')).toContain('pinbar-register');
  });

  it('asks for a profile, and refuses a job whose files were changed', () => {
    expect(run('run-sheet', 'job').status).toBe(2);
    expect(run('run-sheet', 'job', '--profile', 'nowhere.json').status).toBe(2);
    spawnSync('cp', ['-r', join(folder, 'job'), join(folder, 'changed')]);
    writeFileSync(join(folder, 'changed', 'tuck-carton.3-cut.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
    const ran = run('run-sheet', 'changed', '--profile', PROFILE);
    expect(ran.status).toBe(3);
    expect(ran.stderr).toContain('is not the file that the manifest');
  });
});

describe('pinbar split with a profile', () => {
  it('puts the run sheet into the job, the very same', () => {
    const ran = run('split', resolve('samples/tuck-carton.svg'), '--out', 'whole', '--profile', PROFILE, '--json');
    expect(ran.status).toBe(0);
    const names = (JSON.parse(ran.stdout) as { readonly files: readonly { readonly name: string }[] }).files;
    expect(names.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['run-sheet.html', 'run-sheet.json', 'run-sheet.xjdf']),
    );
    expect(readdirSync(join(folder, 'whole'))).toContain('run-sheet.html');
    run('run-sheet', 'job', '--profile', PROFILE);
    expect(read('whole/run-sheet.json')).toBe(read('job/run-sheet.json'));
    expect(read('whole/run-sheet.html')).toBe(read('job/run-sheet.html'));
    expect(read('whole/run-sheet.xjdf')).toBe(read('job/run-sheet.xjdf'));
  });

  it('wants the profile for what goes with it', () => {
    const ran = run('split', resolve('samples/tuck-carton.svg'), '--out', 'none', '--sheets', '5');
    expect(ran.status).toBe(2);
    expect(ran.stderr).toContain('--profile');
  });
});
