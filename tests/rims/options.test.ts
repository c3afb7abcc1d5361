// Every option of the command changes what comes out, and says so.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const command = resolve(import.meta.dirname, '../../bin/pinbar.js');
const samples = resolve(import.meta.dirname, '../../samples');
const scratch = mkdtempSync(join(tmpdir(), 'pinbar-options-'));

afterAll(() => rmSync(scratch, { recursive: true, force: true }));

interface Said {
  readonly inRegister?: boolean;
  readonly outcome?: string;
  readonly code?: string;
  readonly artboard?: { readonly widthMm: number };
  readonly findings: readonly { readonly code: string; readonly message: string }[];
}

function run(...args: readonly string[]): { readonly status: number | null; readonly said: Said } {
  const ran = spawnSync(process.execPath, [command, ...args, '--json'], { cwd: scratch, input: '', encoding: 'utf8' });
  return { status: ran.status, said: JSON.parse(ran.stdout) as Said };
}

function codesOf({ said }: { readonly said: Said }): readonly string[] {
  return said.findings.map((item) => item.code);
}

function read(folder: string, pass: string): string {
  const name = readdirSync(join(scratch, folder)).find((path) => path.includes(`-${pass}.`))!;
  return readFileSync(join(scratch, folder, name), 'utf8');
}

const carton = join(samples, 'tuck-carton.svg');

writeFileSync(
  join(scratch, 'px.svg'),
  `<svg xmlns="http://www.w3.org/2000/svg" width="720" height="720"><g id="Art"><rect x="288" y="288" width="144" height="144"/></g>
<g id="Cut"><rect x="288" y="288" width="144" height="144" fill="none" stroke="#c2185b"/></g></svg>`,
);

describe('pinbar split', () => {
  it('--no-marks leaves the marks out, with a note', () => {
    const [with_, without] = [run('split', carton, '--out', 'm'), run('split', carton, '--out', 'n', '--no-marks')];
    expect([with_.status, without.status]).toEqual([0, 0]);
    expect(read('m', 'cut')).toContain('id="pinbar-marks"');
    expect(read('n', 'cut')).not.toContain('pinbar-marks');
    expect(codesOf(with_)).not.toContain('mark/left-out');
    expect(codesOf(without)).toContain('mark/left-out');
  });

  it('--witness never keeps the second judge away, with a note', () => {
    expect(codesOf(run('split', carton, '--dry-run', '--witness', 'always'))).not.toContain('witness/not-asked');
    expect(codesOf(run('split', carton, '--dry-run', '--witness', 'never'))).toContain('witness/not-asked');
  });

  it('--compact makes smaller files that are still in register', () => {
    const ran = run('split', carton, '--out', 'c', '--compact');
    expect(ran.said.outcome).toBe('in-register');
    run('split', carton, '--out', 'plain');
    for (const pass of ['crease', 'print', 'cut']) {
      expect(read('c', pass).length).toBeLessThan(read('plain', pass).length);
    }
    const files = readdirSync(join(scratch, 'c')).filter((name) => /\d-/.test(name));
    expect(run('verify', ...files.map((name) => join('c', name))).said.inRegister).toBe(true);
  });

  it('--sequence cuts the outline of the board last, and says how far the tool goes lifted', () => {
    const counters = join(samples, 'counters.svg');
    const [plain, ordered] = [
      run('split', counters, '--out', 's0'),
      run('split', counters, '--out', 's1', '--sequence'),
    ];
    expect([plain.status, ordered.status]).toEqual([0, 0]);
    const ids = (folder: string): readonly string[] =>
      [...read(folder, 'cut').matchAll(/class="cut" id="([^"]*)"/g)].map(([, id]) => id!);
    expect(ids('s0')[0]).toBe('board');
    expect(ids('s1').at(-1)).toBe('board');
    expect([...ids('s1')].sort()).toEqual([...ids('s0')].sort());
    expect(plain.said).not.toHaveProperty('sequence');
    expect(ordered.said).toHaveProperty('sequence');
  });

  it('--restart-contours shortens the way further by other start points', () => {
    const counters = join(samples, 'counters.svg');
    const travel = (...flags: readonly string[]): number => {
      const { said } = run('split', counters, '--dry-run', ...flags);
      const { sequence } = said as Said & {
        readonly sequence: readonly { readonly pass: string; readonly travelAfterMm: number }[];
      };
      return sequence.find(({ pass }) => pass === 'cut')!.travelAfterMm;
    };
    expect(travel('--restart-contours')).toBeLessThan(travel('--sequence') - 50);
  });

  it('--perforate, --hold and --ties-pass write stretches, and the ties beside them', () => {
    const counters = join(samples, 'counters.svg');
    const ran = run(
      'split',
      counters,
      '--out',
      't1',
      '--perforate',
      'perforate=6x2',
      '--hold',
      'cut=0.5',
      '--ties-pass',
    );
    expect(ran.status).toBe(0);
    expect(read('t1', 'perforate').match(/id="stub" d="(M[^M"]*){18}"/)).not.toBeNull();
    expect(readdirSync(join(scratch, 't1')).filter((name) => name.endsWith('-ties.svg'))).toEqual([
      'counters.3-perforate-ties.svg',
      'counters.4-cut-ties.svg',
    ]);
    expect(ran.said).toHaveProperty('ties');
    run('split', counters, '--out', 't2', '--hold', 'cut=0.5');
    expect(readdirSync(join(scratch, 't2')).filter((name) => name.endsWith('-ties.svg'))).toEqual([]);
    const wrong = spawnSync(process.execPath, [command, 'split', counters, '--hold', 'cut=1x2'], { encoding: 'utf8' });
    expect(wrong.status).toBe(2);
    expect(wrong.stderr).toContain('cut=0.5');
    expect(spawnSync(process.execPath, [command, 'split', counters, '--perforate', 'cut=6']).status).toBe(2);
  });

  it('--part-paint parts a shape that is filled and stroked', () => {
    const tag = join(samples, 'hang-tag.svg');
    const ticket = JSON.parse(readFileSync(join(samples, 'hang-tag.ticket.json'), 'utf8')) as object;
    writeFileSync(join(scratch, 'whole.json'), JSON.stringify({ ...ticket, partPaint: false }));
    const whole = run('split', tag, '--dry-run', '--ticket', 'whole.json');
    expect(whole.status).toBe(5);
    expect(codesOf(whole)).toContain('classify/fill-and-stroke');
    const parted = run('split', tag, '--out', 'p', '--ticket', 'whole.json', '--part-paint');
    expect(parted.status).toBe(0);
    expect(read('p', 'print')).toContain('stroke:none!important');
    expect(read('p', 'cut')).toContain('fill:none!important');
  });

  it('--user-units-per-inch settles a size in px', () => {
    const unsure = run('inspect', 'px.svg');
    expect(unsure.said.artboard!.widthMm).toBeCloseTo(190.5, 9);
    const settled = run('inspect', 'px.svg', '--user-units-per-inch', '72');
    expect(settled.said.artboard!.widthMm).toBeCloseTo(254, 9);
    expect(run('split', 'px.svg', '--out', 'u', '--user-units-per-inch', '72').status).toBe(0);
    expect(read('u', 'cut')).toContain('width="254mm"');
  });

  it('--skip-checks makes files that are not fit to run, and says so', () => {
    const ticket = { pinbar: 1, checks: { materialWidthMm: 100, materialHeightMm: 100 } };
    writeFileSync(join(scratch, 'small-sheet.json'), JSON.stringify(ticket));
    const checked = run('split', carton, '--out', 'k', '--ticket', 'small-sheet.json');
    expect(checked.status).toBe(5);
    expect(codesOf(checked)).toContain('check/artboard-too-large');
    const skipped = run('split', carton, '--out', 'k', '--ticket', 'small-sheet.json', '--skip-checks');
    expect(skipped.status).toBe(0);
    expect(codesOf(skipped).filter((code) => code.startsWith('check/'))).toEqual([]);
    const manifest = JSON.parse(readFileSync(join(scratch, 'k', 'manifest.json'), 'utf8')) as { checks: unknown };
    expect(manifest.checks).toEqual({ skipped: true, findings: 0 });
  });

  it('--sheet lays copies out: gripper, margin, gutter, number, turn, place and scale, echoed in mm', () => {
    const sheet = ['--sheet', '70cmx50cm', '--ups', '2x1', '--gutter', '4,6'];
    const more = [
      '--gripper',
      '12:left',
      '--sheet-margin',
      '5mm',
      '--turn',
      '270',
      '--place',
      'origin',
      '--scale',
      '0.5',
      '--copy-mark',
      '--copies',
      'referenced',
    ];
    const ran = run('split', carton, '--out', 's', ...sheet, ...more);
    expect(ran.status).toBe(0);
    expect(read('s', 'cut')).toContain('width="700mm" height="500mm"');
    const manifest = JSON.parse(readFileSync(join(scratch, 's', 'manifest.json'), 'utf8'));
    expect(manifest.ticket.sheet).toEqual({
      widthMm: 700,
      heightMm: 500,
      gripperMm: 12,
      gripperSide: 'left',
      marginsMm: 5,
      gutterMm: 4,
      gutterXMm: 4,
      gutterYMm: 6,
      ups: '2x1',
      turn: 270,
      place: 'origin',
      copyMark: true,
      copies: 'referenced',
      scale: 0.5,
    });
    expect(manifest.sheet).toMatchObject({ copies: 2, columns: 2, rows: 1, scale: 0.5 });
    expect(manifest.sheet.matrices[0].slice(0, 4)).toEqual([0, -0.5, 0.5, 0]);
    const said = spawnSync(process.execPath, [command, 'split', carton, '--dry-run', ...sheet, ...more], {
      encoding: 'utf8',
    });
    expect(said.stderr).toContain(
      'sheet: 700 x 500 mm, gripper 12 mm (left), other margins 5 mm, gutter 4 mm across and 6 mm down',
    );
    expect(said.stdout).toMatch(/Yield \d+\.\d %/);
  });

  it.each([
    [['--ups', '3x2'], 'use/wrong'],
    [['--sheet', '700'], null],
    [['--sheet', '700x500', '--gripper', '12:middle'], null],
    [['--sheet', '700x500', '--gutter', '1,2,3'], null],
    [['--sheet', '700x500', '--ups', '0x2'], null],
    [['--sheet', '700x500', '--turn', '45'], null],
  ])('sheets that cannot be read are wrong use: %s', (args, code) => {
    const ran = spawnSync(process.execPath, [command, 'split', carton, '--dry-run', '--json', ...args], {
      cwd: scratch,
      encoding: 'utf8',
    });
    expect(ran.status).toBe(2);
    if (code !== null) expect((JSON.parse(ran.stdout) as Said).code).toBe(code);
  });

  it('--limit lowers a bound', () => {
    const ran = run('split', carton, '--dry-run', '--limit', 'elements=10');
    expect(ran.status).toBe(3);
    expect(ran.said.code).toBe('limit/elements');
    expect(run('split', carton, '--dry-run', '--limit', 'elements=1000').status).toBe(0);
  });
});

describe('pinbar verify', () => {
  it('--tolerance says how much counts as equal', () => {
    const moved = readFileSync(join(scratch, 'px.svg'), 'utf8').replace(/x="288"/g, 'x="288.1"');
    writeFileSync(join(scratch, 'moved.svg'), moved);
    const strict = run('verify', 'moved.svg', '--source', 'px.svg');
    expect(strict.status).toBe(1);
    expect(codesOf(strict)).toContain('verify/moved');
    const loose = run('verify', 'moved.svg', '--source', 'px.svg', '--tolerance', '0.1');
    expect(codesOf(loose)).not.toContain('verify/moved');
    expect(loose.said.inRegister).toBe(true);
  });
});

describe('pinbar check', () => {
  it('--out puts the numbered picture over nothing and over an older one, and over no other file', () => {
    const first = run('check', carton, '--out', 'checks.svg');
    expect(first.status).toBe(0);
    expect(first.said).toMatchObject({ document: 'checks', outcome: 'fit', picture: 'checks.svg' });
    const before = readFileSync(join(scratch, 'checks.svg'), 'utf8');
    expect(before).toContain('<title>Checks of tuck-carton</title>');
    expect(run('check', 'px.svg', '--out', 'checks.svg').status).toBe(0);
    expect(readFileSync(join(scratch, 'checks.svg'), 'utf8')).toContain('<title>Checks of px</title>');
    const drawing = readFileSync(join(scratch, 'px.svg'), 'utf8');
    const refused = run('check', 'px.svg', '--out', 'px.svg');
    expect([refused.status, refused.said.code]).toEqual([4, 'write/exists']);
    expect(readFileSync(join(scratch, 'px.svg'), 'utf8')).toBe(drawing);
    expect(run('check', 'px.svg', '--out', join('nowhere', 'checks.svg')).status).toBe(4);
    expect(readdirSync(scratch).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('--ticket brings the numbers of the job, --take the passes', () => {
    writeFileSync(join(scratch, 'sheet.json'), JSON.stringify({ pinbar: 1, checks: { materialWidthMm: 100 } }));
    const small = run('check', carton, '--ticket', 'sheet.json');
    expect(small.status).toBe(5);
    expect(codesOf(small)[0]).toBe('check/artboard-too-large');
    expect(codesOf(run('check', 'px.svg', '--take', 'cutting=layer:Cut'))).toContain('classify/unclaimed');
    expect(codesOf(run('check', 'px.svg', '--take', 'cutting=layer:Cut', '--take', 'print=rest'))).not.toContain(
      'classify/unclaimed',
    );
  });

  it('--user-units-per-inch settles a size in px', () => {
    expect(codesOf(run('check', 'px.svg'))).toContain('resolve/size-unsure');
    expect(codesOf(run('check', 'px.svg', '--user-units-per-inch', '72'))).not.toContain('resolve/size-unsure');
  });

  it('ends with 1 where the drawing must be mended, and says the worst first', () => {
    const off = readFileSync(join(scratch, 'px.svg'), 'utf8').replace(
      'height="144" fill="none"',
      'height="500" fill="none"',
    );
    writeFileSync(join(scratch, 'off.svg'), off);
    const ran = spawnSync(process.execPath, [command, 'check', 'off.svg'], { cwd: scratch, encoding: 'utf8' });
    expect(ran.status).toBe(1);
    expect(ran.stderr).toBe('');
    expect(ran.stdout).toMatch(/^off: not fit to run\n/);
    expect(ran.stdout.indexOf('To be settled before')).toBeLessThan(ran.stdout.indexOf('To be looked at'));
    expect(ran.stdout).toContain('check/blank-off-sheet');
  });
});
