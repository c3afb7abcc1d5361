// pinbar test-strip and register-target: jobs like any other, with a record of what to run at which value.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { verify } from '../../src/index.js';

const command = resolve(import.meta.dirname, '../../bin/pinbar.js');
const scratch = mkdtempSync(join(tmpdir(), 'pinbar-strip-'));

afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function run(...args: readonly string[]): {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
} {
  return spawnSync(process.execPath, [command, ...args], { cwd: scratch, encoding: 'utf8' });
}

async function agree(folder: string, names: readonly string[]): Promise<boolean> {
  const files = names.map((name) => ({ name, bytes: readFileSync(join(scratch, folder, name)) }));
  return (await verify(files)).inRegister;
}

describe('test-strip', () => {
  it('writes a legend, one file per value, and the record; all overlay', async () => {
    const ran = run('test-strip', '--tool', 'crease', '--from', '100', '--to', '400', '--steps', '7', '--json');
    expect(ran.status).toBe(0);
    const said = JSON.parse(ran.stdout);
    expect(said).toMatchObject({
      pinbar: 1,
      document: 'test-strip',
      tool: 'creasing',
      setting: 'pressure',
      unit: 'gf',
    });
    expect(said.steps.map((step: { value: number }) => step.value)).toEqual([100, 150, 200, 250, 300, 350, 400]);
    const written = readdirSync(join(scratch, 'crease-strip'));
    const passes = [said.legend, ...said.steps.map((step: { file: string }) => step.file)];
    expect(written.sort()).toEqual([...passes, 'manifest.json', 'proof.svg', 'strip.json'].sort());
    const { folder, ...record } = said;
    expect(folder).toBe('crease-strip');
    expect(JSON.parse(readFileSync(join(scratch, folder, 'strip.json'), 'utf8'))).toEqual(record);
    expect(await agree('crease-strip', passes)).toBe(true);
  });

  it('is told from the least value up, whichever end is named first, and says where the found one goes', () => {
    const ran = run('test-strip', '--tool', 'cut', '--from', '400', '--to', '100', '--steps', '3', '--out', 'down');
    expect(ran.status).toBe(0);
    const told = [...ran.stdout.matchAll(/^ +(\d) {2}(\d+) gf/gm)].map(([, field, value]) => [field, value]);
    expect(told).toEqual([
      ['3', '100'],
      ['2', '250'],
      ['1', '400'],
    ]);
    expect(ran.stdout).toContain('in the shop profile, under the settings of the tool');
  });

  it('answers a mistyped tool with the nearest', () => {
    const ran = run('test-strip', '--tool', 'creese', '--from', '1', '--to', '2');
    expect([ran.status, ran.stderr]).toEqual([2, expect.stringContaining('Did you mean "crease"?')]);
    const target = run('register-target', '--passes', 'crease,prnt');
    expect([target.status, target.stderr]).toEqual([2, expect.stringContaining('Did you mean "print"?')]);
  });

  it('replaces an older one only when told to, and goes where it is told', () => {
    const args = [
      'test-strip',
      '--tool',
      'cutting',
      '--from',
      '0.1',
      '--to',
      '0.5',
      '--setting',
      'offset',
      '--out',
      'a',
    ];
    expect(run(...args).status).toBe(0);
    expect(run(...args).stderr).toContain('holds an older job');
    const again = run(...args, '--force', '--sheet', '300x300', '--steps', '3');
    expect(again.status).toBe(0);
    expect(again.stdout).toContain('2  0.3 mm  cut-strip.3-cut-0.3-mm.svg');
  });

  it.each([
    [['--tool', 'glue'], 'gluing is none'],
    [['--tool', 'saw'], '"saw" is no pass that pinbar knows'],
    [['--tool', 'crease', '--sheet', '210'], 'A sheet is width x height'],
    [['--tool', 'crease', '--sheet', '100x100'], 'has room for 0 fields'],
  ])('says what is wrong with %j', (args, words) => {
    const ran = run('test-strip', '--from', '1', '--to', '2', '--out', 'wrong', ...args);
    expect(ran.status).toBe(2);
    expect(ran.stderr).toContain(words);
    expect(readdirSync(scratch)).not.toContain('wrong');
  });
});

describe('register-target', () => {
  it('says which passes get no file', () => {
    const ran = run('register-target', '--passes', 'white,print,cut', '--out', 'white', '--json');
    expect(ran.stderr).toContain('No file for white:');
    expect(JSON.parse(ran.stdout)).toMatchObject({ passes: ['print', 'cut'] });
  });

  it('writes one file per pass in the order asked for', async () => {
    const ran = run('register-target', '--passes', 'print,crease,perforate', '--json');
    expect(ran.status).toBe(0);
    const said = JSON.parse(ran.stdout);
    expect(said.files).toEqual([
      'register-target.1-print.svg',
      'register-target.2-crease.svg',
      'register-target.3-perforate.svg',
    ]);
    expect(await agree('register-target', said.files)).toBe(true);
  });

  it('has marks that measure knows', () => {
    expect(run('register-target', '--out', 'marks').stdout).toContain('in register');
    const manifest = JSON.parse(readFileSync(join(scratch, 'marks', 'manifest.json'), 'utf8'));
    expect(manifest.marks.length).toBeGreaterThanOrEqual(5);
    expect(manifest.checks.skipped).toBe(true);
  });
});
