// The command as a user runs it: spawned, with its output, its files and its exit codes.
import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const command = resolve(import.meta.dirname, '../../bin/pinbar.js');
const samples = resolve(import.meta.dirname, '../../samples');
const scratch = mkdtempSync(join(tmpdir(), 'pinbar-cli-'));

afterAll(() => rmSync(scratch, { recursive: true, force: true }));

interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

function run(args: readonly string[], input?: string | Uint8Array): Ran {
  const ran = spawnSync(process.execPath, [command, ...args], { cwd: scratch, input: input ?? '', encoding: 'utf8' });
  return { status: ran.status, out: ran.stdout, err: ran.stderr };
}

function newFolder(name: string): string {
  const folder = join(scratch, name);
  mkdirSync(folder, { recursive: true });
  return folder;
}

function sample(name: string): string {
  return join(samples, name);
}

const SMALL = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 100 80">
<g id="Art"><rect x="30" y="30" width="40" height="20" fill="#2f6f5e"/></g>
<g id="Cut"><rect x="32" y="32" width="36" height="16" fill="none" stroke="#c2185b" stroke-width=".3"/></g>
</svg>`;

describe('pinbar split', () => {
  it('writes passes, proof and manifest beside the input, and says where and what was proved', () => {
    const folder = newFolder('beside');
    writeFileSync(join(folder, 'carton.svg'), readFileSync(sample('tuck-carton.svg')));
    const ran = run(['split', join(folder, 'carton.svg')]);
    expect(ran.err).toBe('');
    expect(ran.status).toBe(0);
    expect(readdirSync(join(folder, 'carton.passes')).sort()).toEqual([
      'carton.1-crease.svg',
      'carton.2-print.svg',
      'carton.3-cut.svg',
      'manifest.json',
      'proof.svg',
    ]);
    expect(ran.out).toContain('in register');
    expect(ran.out).toContain('greatest deviation 0.000000 mm');
    expect(readdirSync(folder).sort()).toEqual(['carton.passes', 'carton.svg']);
  });

  it('gives one JSON document on standard output and nothing else there', () => {
    const ran = run(['split', sample('tuck-carton.svg'), '--out', join(scratch, 'json'), '--json']);
    expect(ran.status).toBe(0);
    const document = JSON.parse(ran.out) as {
      pinbar: number;
      document: string;
      outcome: string;
      files: { sha256: string }[];
    };
    expect(document).toMatchObject({ pinbar: 1, document: 'split', outcome: 'in-register', written: true });
    const manifest = JSON.parse(readFileSync(join(scratch, 'json', 'manifest.json'), 'utf8')) as {
      passes: { sha256: string }[];
    };
    expect(manifest.passes.map((pass) => pass.sha256)).toEqual(document.files.slice(0, 3).map((file) => file.sha256));
  });

  it('reads standard input', () => {
    const ran = run(['split', '-', '--out', join(scratch, 'piped')], SMALL);
    expect(ran.status).toBe(0);
    expect(existsSync(join(scratch, 'piped', 'stdin.2-cut.svg'))).toBe(true);
  });

  it('writes nothing on a dry run', () => {
    const ran = run(['split', '-', '--out', join(scratch, 'dry'), '--dry-run'], SMALL);
    expect(ran.status).toBe(0);
    expect(ran.out).toContain('Would be written');
    expect(existsSync(join(scratch, 'dry'))).toBe(false);
  });

  it('replaces an older job only with --force, and nothing else at all', () => {
    const out = join(scratch, 'twice');
    expect(run(['split', '-', '--out', out], SMALL).status).toBe(0);
    const again = run(['split', '-', '--out', out], SMALL);
    expect(again.status).toBe(4);
    expect(again.err).toContain('--force');
    expect(run(['split', '-', '--out', out, '--force'], SMALL).status).toBe(0);
    const foreign = newFolder('foreign');
    writeFileSync(join(foreign, 'holiday.txt'), 'mine');
    expect(run(['split', '-', '--out', foreign, '--force'], SMALL).status).toBe(4);
    expect(readFileSync(join(foreign, 'holiday.txt'), 'utf8')).toBe('mine');
  });

  it('never writes over the input', () => {
    const folder = newFolder('self');
    writeFileSync(join(folder, 'a.svg'), SMALL);
    const ran = run(['split', join(folder, 'a.svg'), '--out', folder, '--force']);
    expect(ran.status).toBe(4);
    expect(readFileSync(join(folder, 'a.svg'), 'utf8')).toBe(SMALL);
  });

  it('takes rules from the command line', () => {
    const ran = run(
      [
        'split',
        '-',
        '--out',
        join(scratch, 'rules'),
        '--take',
        'cutting=stroke:#C2185B',
        '--take',
        'print=rest',
        '--json',
      ],
      SMALL,
    );
    expect(ran.status).toBe(0);
    const { passes } = JSON.parse(ran.out) as { passes: { name: string }[] };
    expect(passes.map((pass) => pass.name)).toEqual(['print', 'cut']);
  });

  it('exits 5 where an answer is needed, writes nothing, and says which answer', () => {
    const out = join(scratch, 'asks');
    const ran = run(['split', '-', '--out', out], SMALL.replace('id="Art"', 'id="Things"'));
    expect(ran.status).toBe(5);
    expect(ran.out).toContain('classify/unclaimed');
    expect(ran.out).toContain('--take');
    expect(existsSync(out)).toBe(false);
  });

  it('echoes bare lengths as millimetres', () => {
    const tight = SMALL.replace(
      'width="100mm" height="80mm" viewBox="0 0 100 80"',
      'width="44mm" height="24mm" viewBox="28 28 44 24"',
    );
    expect(run(['split', '-', '--out', join(scratch, 'tight')], tight).status).toBe(5);
    const ran = run(['split', '-', '--out', join(scratch, 'tight'), '--margin', '25'], tight);
    expect(ran.err).toContain('25 mm');
    expect(ran.status).toBe(0);
    expect(readFileSync(join(scratch, 'tight', 'stdin.1-print.svg'), 'utf8')).toContain(
      'width="94mm" height="74mm" viewBox="3 3 94 74"',
    );
  });

  it('embeds a picture from the folder of the file, and none from outside it', () => {
    const folder = newFolder('pictures/inner');
    const png = readFileSync(sample('leaf.png'));
    writeFileSync(join(folder, 'leaf.png'), png);
    writeFileSync(join(scratch, 'pictures', 'secret.png'), png);
    symlinkSync(join(scratch, 'pictures', 'secret.png'), join(folder, 'link.png'));
    const withPicture = (address: string): string =>
      SMALL.replace('</g>', `<image x="40" y="35" width="10" height="10" href="${address}"/></g>`);
    const split = (address: string, name: string): Ran => {
      writeFileSync(join(folder, 'a.svg'), withPicture(address));
      return run(['split', join(folder, 'a.svg'), '--out', join(scratch, name), '--embed']);
    };
    expect(split('leaf.png', 'p1').status).toBe(0);
    expect(readFileSync(join(scratch, 'p1', 'a.1-print.svg'), 'utf8')).toContain(
      `data:image/png;base64,${png.toString('base64')}`,
    );
    for (const [i, address] of [
      '../secret.png',
      'link.png',
      '%2e%2e/secret.png',
      join(scratch, 'pictures', 'secret.png'),
    ].entries()) {
      const ran = split(address, `p2-${i}`);
      expect(ran.status, address).toBe(1);
      expect(ran.out).toContain('split/picture-refused');
    }
    expect(run(['split', join(folder, 'a.svg'), '--out', join(scratch, 'p3')]).status).toBe(5);
    expect(
      run(['split', join(folder, 'a.svg'), '--out', join(scratch, 'p4'), '--linked-pictures', 'leave-out']).status,
    ).toBe(0);
  });
});

describe('a picture whose address leads out of the file', () => {
  it.each(['http://a.example/x.png', 'data:;base64,AAAA', '//a.example/x.png'])(
    '%s is left out with a warning',
    (address) => {
      const art = SMALL.replace('</g>', `<image x="40" y="35" width="10" height="10" href="${address}"/></g>`);
      const out = join(scratch, `outside-${address.replace(/\W/g, '_')}`);
      const ran = run(['split', '-', '--out', out], art);
      expect(ran.out).toContain('split/outside-reference-removed');
      expect(ran.status).toBe(0);
      expect(readFileSync(join(out, 'stdin.1-print.svg'), 'utf8')).not.toContain(address);
    },
  );
});

describe('pinbar inspect', () => {
  it('says size, layers, strokes and suggestions', () => {
    const ran = run(['inspect', '-'], SMALL);
    expect(ran.status).toBe(0);
    expect(ran.out).toContain('100 x 80 mm');
    expect(ran.out).toMatch(/Cut .*1 shape .*cutting/);
    expect(ran.out).toContain('104.0 mm long');
  });

  it('names both sizes of a file without a unit', () => {
    const ran = run(['inspect', '-', '--json'], SMALL.replace('width="100mm" height="80mm"', 'width="96" height="72"'));
    const { artboard } = JSON.parse(ran.out) as { artboard: { atPerInch: unknown } };
    expect(artboard.atPerInch).toEqual({
      96: { widthMm: 25.4, heightMm: 19.05 },
      72: { widthMm: 33.8667, heightMm: 25.4 },
    });
  });
});

describe('pinbar verify', () => {
  it('takes the files of a split as in register, and finds one that was moved', () => {
    const out = join(scratch, 'checked');
    expect(run(['split', sample('tuck-carton.svg'), '--out', out]).status).toBe(0);
    const files = readdirSync(out)
      .filter((name) => /\d-.*\.svg$/.test(name))
      .map((name) => join(out, name));
    const good = run(['verify', ...files, '--source', sample('tuck-carton.svg')]);
    expect(good.out).toContain('in register');
    expect(good.status).toBe(0);
    const cut = files.find((name) => name.includes('cut'))!;
    const moved = join(scratch, 'moved.svg');
    writeFileSync(
      moved,
      readFileSync(cut, 'utf8').replace(/<g ([^>]*)id="Cut"/, '<g transform="translate(0.2 0)" $1id="Cut"'),
    );
    expect(readFileSync(moved, 'utf8')).toContain('translate(0.2 0)');
    const bad = run(['verify', moved, '--source', sample('tuck-carton.svg'), '--json']);
    expect(bad.status).toBe(1);
    const { greatestDeviationMm } = JSON.parse(bad.out) as { greatestDeviationMm: number };
    expect(greatestDeviationMm).toBeCloseTo(0.2, 6);
  });

  it('holds each copy of a sheet against the source, by the manifest beside the files or without it', () => {
    const sheet = ['--sheet', '700x500', '--gutter', '6', '--ups', '2x1', '--out', 'verified-sheet'];
    expect(run(['split', sample('tuck-carton.svg'), '--skip-checks', ...sheet]).status).toBe(0);
    const files = readdirSync(join(scratch, 'verified-sheet'))
      .filter((name) => /-(?:crease|print|cut)\.svg$/.test(name))
      .map((name) => join('verified-sheet', name));
    expect(files).toHaveLength(3);
    const said = run(['verify', ...files, '--source', sample('tuck-carton.svg')]);
    expect([said.status, said.out]).toEqual([
      0,
      expect.stringContaining('2 copies of the source, where the manifest puts them'),
    ]);
    rmSync(join(scratch, 'verified-sheet', 'manifest.json'));
    const found = run(['verify', ...files, '--source', sample('tuck-carton.svg'), '--json']);
    expect(found.status).toBe(0);
    const { copies } = JSON.parse(found.out);
    expect([copies.from, copies.list.length, copies.list[0].shapes]).toEqual(['found', 2, copies.list[1].shapes]);
  });

  it('refuses one file alone: nothing compared is not in register', () => {
    const ran = run(['verify', sample('tuck-carton.svg')]);
    expect(ran.status).toBe(2);
    expect(ran.err).toContain('--source');
    expect(ran.out).toBe('');
  });

  it('takes a negative number as an ordinary value', () => {
    const shifted = SMALL.replace('<g id="Cut">', '<g id="Cut" transform="translate(-0.3 0)">').replace(
      '<g id="Art">',
      '<g id="Art" transform="translate(-0.3 0)">',
    );
    writeFileSync(join(scratch, 'source.svg'), SMALL);
    writeFileSync(join(scratch, 'shifted.svg'), shifted);
    const args = ['verify', 'shifted.svg', '--source', 'source.svg'];
    expect(run(args).status).toBe(1);
    const ran = run([...args, '--shift', '-0.3']);
    expect(ran.err).toContain('-0.3 mm right');
    expect(ran.status).toBe(0);
  });
});

describe('wrong use', () => {
  it.each([
    [['splt', 'a.svg'], 'split'],
    [['split', 'a.svg', '--tiket', 'x'], '--ticket'],
    [['split', 'a.svg', '--hidden', 'maybe'], 'skip'],
    [['split', 'a.svg', '--margin', '3px'], 'mm'],
    [['split', '-', '--take', 'cutting=strok:#f00'], 'stroke'],
  ])('%j exits 2 and names the right one', (args, hint) => {
    const ran = run(args, SMALL);
    expect(ran.status).toBe(2);
    expect(ran.err).toContain(hint);
    expect(ran.out).toBe('');
  });

  it('refuses an unknown ticket key with the nearest right one, all faults at once', () => {
    writeFileSync(join(scratch, 'bad.json'), '{"pinbar":1,"hiden":"skip","rules":[{"pass":"cutting","strok":"#f00"}]}');
    const ran = run(['split', '-', '--ticket', 'bad.json'], SMALL);
    expect(ran.status).toBe(2);
    expect(ran.err).toContain('hidden');
    expect(ran.err).toContain('stroke');
  });

  it('exits 3 for what cannot be read, with line, column, the line and a caret', () => {
    expect(run(['inspect', 'nowhere.svg']).status).toBe(3);
    const ran = run(['inspect', '-'], '<svg xmlns="http://www.w3.org/2000/svg">\n  <g id=a></g>\n</svg>');
    expect(ran.status).toBe(3);
    expect(ran.err).toContain('Line 2, column 9');
    expect(ran.err).toMatch(/<g id=a><\/g>\n\s+\^/);
  });

  it('gives the error as one JSON document where JSON is asked for', () => {
    const ran = run(['inspect', 'nowhere.svg', '--json']);
    expect(JSON.parse(ran.out)).toMatchObject({ pinbar: 1, document: 'error', code: 'read/failed', exitCode: 3 });
  });
});

describe('help', () => {
  it.each([['inspect'], ['split'], ['verify']])('%s --help shows an example', (name) => {
    const ran = run([name, '--help']);
    expect(ran.status).toBe(0);
    expect(ran.out).toContain(`pinbar ${name} `);
    expect(ran.out).toContain('Example');
  });

  it('--version is the version of the package', () => {
    const { version } = JSON.parse(readFileSync(resolve(import.meta.dirname, '../../package.json'), 'utf8')) as {
      version: string;
    };
    expect(run(['--version']).out).toBe(`${version}\n`);
  });
});
