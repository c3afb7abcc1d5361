// The hot folder by itself: what comes of what is dropped.
import {
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import {
  askingArt,
  badArt,
  drop,
  hashOutput,
  listRoom,
  listTree,
  listUnproved,
  openShop,
  readJournal,
  runCommand,
  SAMPLES,
  smallArt,
  until,
  watchOn,
  watchOnce,
} from './shop.js';

const strokes = (cut: string): string =>
  JSON.stringify({
    pinbar: 1,
    rules: [
      { pass: 'cutting', stroke: cut },
      { pass: 'print', rest: true },
    ],
    severities: {},
  });

describe('pinbar watch --once', () => {
  const shop = openShop();
  drop(shop, {
    'carton.svg': readFileSync(join(SAMPLES, 'tuck-carton.svg')),
    'other name.svg': readFileSync(join(SAMPLES, 'tuck-carton.svg')),
    'bad.svg': badArt(),
    'asking.svg': askingArt(),
    'broken.svg': '<svg xmlns="http://www.w3.org/2000/svg"><g></svg>',
    'packed.svgz': gzipSync(smallArt(3)),
    'notes.txt': 'no art',
  });
  const strict = join(shop, 'ticket.json');
  writeFileSync(strict, '{"pinbar": 1, "severities": {"check/outline-open": "error"}}');
  const ran = runCommand(
    'watch',
    shop,
    '--once',
    '--quiet-time',
    '0.1',
    '--jobs',
    '1',
    '--json',
    '--log-level',
    'warn',
    '--poll-only',
  );

  it('counts what came of it, on one line of JSON, and fails where a job failed', () => {
    expect(ran.status).toBe(1);
    expect(JSON.parse(ran.out)).toEqual({
      pinbar: 1,
      document: 'watched',
      done: 2,
      duplicate: 1,
      failed: 2,
      waiting: 1,
      left: 0,
      resting: false,
    });
  });

  it('moves each delivery to one room, whole, and leaves what is no art', () => {
    expect(listTree(join(shop, 'in'))).toEqual(['notes.txt']);
    expect(listRoom(shop, 'work')).toEqual([]);
    expect(listRoom(shop, 'done')).toEqual(['carton', 'other name', 'packed']);
    expect(listRoom(shop, 'failed')).toEqual(['bad', 'broken']);
    expect(listRoom(shop, 'waiting')).toEqual(['asking']);
    expect(readFileSync(join(shop, 'failed/bad/bad.svg'), 'utf8')).toBe(badArt());
    expect(readFileSync(join(shop, 'done/carton/carton.svg'))).toEqual(readFileSync(join(SAMPLES, 'tuck-carton.svg')));
  });

  it('gives the files that split gives, once for equal bytes', () => {
    expect(listRoom(shop, 'out')).toHaveLength(2);
    const [carton] = listRoom(shop, 'out').filter((name) => /^(?:carton|other name)-[0-9a-f]{12}$/.test(name));
    const stem = carton!.replace(/-[0-9a-f]{12}$/, '');
    writeFileSync(join(shop, `${stem}.svg`), readFileSync(join(SAMPLES, 'tuck-carton.svg')));
    expect(
      runCommand('split', join(shop, `${stem}.svg`), '--ticket', strict, '--out', join(shop, 'plain')).status,
    ).toBe(0);
    const names = readdirSync(join(shop, 'plain'));
    expect(readdirSync(join(shop, 'out', carton!))).toEqual(names);
    for (const name of names) {
      expect(readFileSync(join(shop, 'out', carton!, name))).toEqual(readFileSync(join(shop, 'plain', name)));
    }
    expect(listUnproved(shop)).toEqual([]);
  });

  it('says in the journal how each job ended, on a line of its own', () => {
    const lines = readJournal(shop);
    const endings = Object.fromEntries(lines.map(({ name, ending }) => [name, ending]));
    expect(lines).toHaveLength(5);
    expect([endings['carton.svg'], endings['other name.svg']].sort()).toEqual(['done', 'duplicate']);
    expect(endings).toMatchObject({ 'bad.svg': 'failed', 'broken.svg': 'failed', 'packed.svgz': 'done' });
    expect(lines.find(({ name }) => name === 'bad.svg')!.codes).toContain('check/outline-open');
  });

  it('reports failed jobs in words, as JSON, and in a picture where there is one to draw', () => {
    const report = join(shop, 'failed/bad/report');
    expect(readFileSync(join(report, 'report.txt'), 'utf8')).toContain('check/outline-open');
    expect(readFileSync(join(report, 'findings.svg'), 'utf8')).toMatch(/<title>.*<\/title>/);
    const json = JSON.parse(readFileSync(join(report, 'report.json'), 'utf8')) as { readonly findings: unknown[] };
    expect(json).toMatchObject({ document: 'report', outcome: 'refused' });
    expect(json.findings.length).toBeGreaterThan(0);
    expect(readdirSync(join(shop, 'failed/broken/report'))).toEqual(['report.json', 'report.txt']);
  });

  it('asks one question in plain words', () => {
    const question = readFileSync(join(shop, 'waiting/asking/question.txt'), 'utf8');
    expect(question).toContain('Layer 7');
    // The rules as layer names give them, and a place for the answer: nothing goes to another pass by copying.
    expect(question).toContain('"rules":[{"pass":"cutting","layer":"Cut"},{"pass":"WHICH-PASS","layer":"Layer 7"}]');
    expect(question).not.toContain('--');
    const report = readFileSync(join(shop, 'waiting/asking/report/report.txt'), 'utf8');
    const answers = report.slice(report.indexOf('Answers in a ticket'));
    expect(answers).toContain('"pass":"WHICH-PASS","layer":"Layer 7"');
    expect(answers).not.toContain('--');
  });

  it('logs names and codes, and nothing of the art', () => {
    const lines = ran.err
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(lines.map(({ level, msg }) => `${level} ${msg}`).sort()).toEqual([
      'warn failed',
      'warn failed',
      'warn waiting',
    ]);
    expect(lines.every(({ time }) => new Date(String(time)).toISOString() === time)).toBe(true);
    // Every key once: parsers differ in what they make of a second one.
    for (const line of ran.err.trim().split('\n')) expect(line.match(/"name":/g)).toHaveLength(1);
    expect(ran.err).not.toMatch(/c2185b|Layer 7/);
  });

  it('goes on waiting where its example is copied without an answer', async () => {
    const question = readFileSync(join(shop, 'waiting/asking/question.txt'), 'utf8');
    writeFileSync(join(shop, 'waiting/asking/ticket.json'), /^ +(\{.*\})$/m.exec(question)![1]!);
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 0, waiting: 1 });
    writeFileSync(join(shop, 'waiting/asking/question.old'), question);
  });

  it('goes on when a ticket beside the art answers, with its keys laid over the ticket', async () => {
    const question = readFileSync(join(shop, 'waiting/asking/question.old'), 'utf8');
    rmSync(join(shop, 'waiting/asking/question.old'));
    const answer = /^ +(\{.*\})$/m.exec(question)![1]!.replace('WHICH-PASS', 'print');
    writeFileSync(join(shop, 'waiting/asking/ticket.json'), answer);
    const { counts } = await watchOnce(shop);
    expect(counts).toMatchObject({ done: 1, failed: 0, waiting: 0 });
    expect(listTree(join(shop, 'done/asking'))).toEqual(['.job.json', 'asking.svg', 'ticket.json']);
    expect(listRoom(shop, 'waiting')).toEqual([]);
    expect(listUnproved(shop)).toEqual([]);
  });
});

describe('tickets', () => {
  const shop = openShop();
  writeFileSync(join(shop, 'ticket.json'), strokes('#c2185b'));
  const art = (cut: string): string =>
    smallArt(5).replace('id="Cut"', 'id="L1"').replace('id="Print"', 'id="L2"').replace('#c2185b', cut);
  drop(shop, {
    'plain.svg': art('#c2185b'),
    'film/ticket.json': strokes('#00aa00'),
    'film/deep/green.svg': art('#00aa00'),
    'film/own.svg': art('#0000cc'),
    'film/own.ticket.json': strokes('#0000cc'),
    'wrong.svg': smallArt(6),
    'wrong.ticket.json': '{"pinbar": 1, "hiden": "skip"}',
  });

  it('count from the nearest on: beside the art, of its folder, of the hot folder', async () => {
    const { counts } = await watchOnce(shop);
    expect(counts).toMatchObject({ done: 3, failed: 0, waiting: 1 });
    expect(listTree(join(shop, 'done/film_own'))).toEqual(['.job.json', 'own.svg', 'own.ticket.json']);
    expect(listTree(join(shop, 'in'))).toEqual(['film/ticket.json']);
    expect(readFileSync(join(shop, 'waiting/wrong/question.txt'), 'utf8')).toContain('hiden');
  });

  it('that were wrong are put right in their place', async () => {
    writeFileSync(join(shop, 'waiting/wrong/wrong.ticket.json'), '{"pinbar": 1}');
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 1, waiting: 0 });
  });

  it('of a folder that were wrong are put right by one that bears the name of the art, as the question says', async () => {
    const question = /put right, as (\S+) beside it/;
    drop(shop, { 'lot/ticket.json': '{"pinbar": 1, "hiden": "skip"}', 'lot/zip.svg': smallArt(11) });
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 0, waiting: 1 });
    const told = readFileSync(join(shop, 'waiting/lot_zip/question.txt'), 'utf8');
    expect(told).toContain('hiden');
    writeFileSync(join(shop, 'waiting/lot_zip', question.exec(told)![1]!), '{"pinbar": 1, "marginMm": 3}');
    // And an answer is laid over that, whichever name comes first in the alphabet.
    writeFileSync(join(shop, 'waiting/lot_zip/ticket.json'), '{"pinbar": 1, "marginMm": 7}');
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 1, waiting: 0 });
    const out = listRoom(shop, 'out').find((name) => name.startsWith('lot_zip'))!;
    expect(JSON.parse(readFileSync(join(shop, 'out', out, 'manifest.json'), 'utf8'))).toMatchObject({
      ticket: { marginMm: 7 },
    });
    rmSync(join(shop, 'in/lot'), { recursive: true });
  });

  it('are waited for where --wait-ticket says so', async () => {
    drop(shop, { 'late.svg': smallArt(7), 'ready.svg': smallArt(8), 'ready.ticket.json': '{"pinbar": 1}' });
    const args = [
      'watch',
      shop,
      '--once',
      '--wait-ticket',
      '--quiet-time',
      '0.05',
      '--patience',
      '0.01',
      '--poll',
      '0.1',
    ];
    const ran = runCommand(...args);
    expect(ran.status).toBe(0);
    expect(ran.out).toBe('1 done, 0 again, 0 failed, 0 waiting, 1 left\n');
    expect(ran.err).toContain('no-ticket');
    expect(listTree(join(shop, 'in'))).toEqual(['film/ticket.json', 'late.svg']);
  });

  it('of another kind make another job of the same bytes', async () => {
    drop(shop, {
      'late.ticket.json': '{"pinbar": 1, "marginMm": 5}',
      'late too.svg': smallArt(7),
      'late too.ticket.json': '{"pinbar": 1}',
    });
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 2, duplicate: 0 });
    const outs = listRoom(shop, 'out').filter((name) => name.startsWith('late'));
    expect(outs).toHaveLength(2);
  });
});

describe('names', () => {
  const shop = openShop();
  const bytes = (text: string): Buffer => Buffer.from(text, 'latin1');
  const names = [
    bytes('caf\xe9.svg'),
    Buffer.from('日本語 ✂.svg'),
    bytes('a\nb.svg'),
    bytes('-rf.svg'),
    bytes('con.svg'),
    bytes('..dots...svg'),
    bytes(`${'x'.repeat(250)}.svg`),
    bytes('quote\'s "$(x)`y`;&|.svg'),
    bytes('back\\slash.svg'),
    bytes('\x7f\x01.SVG'),
    Buffer.from('ä.svg'.normalize('NFC')),
    Buffer.from('ä.svg'.normalize('NFD')),
    bytes('A.svg'),
    bytes('a.svg'),
    bytes(' .svg'),
    bytes('%00%2e%2e%2f.svg'),
  ];
  for (const [index, name] of names.entries()) {
    writeFileSync(Buffer.concat([Buffer.from(`${shop}/in/`), name]), smallArt(100 + index));
  }

  it('of any bytes give outputs whose names are safe and differ', async () => {
    expect((await watchOnce(shop)).counts).toMatchObject({ done: names.length - 1, left: 0 });
    const done = readdirSync(join(shop, 'done'), { encoding: 'buffer' });
    const kept = done.flatMap((folder) =>
      readdirSync(Buffer.concat([Buffer.from(`${shop}/done/`), folder]), { encoding: 'buffer' }),
    );
    const wanted = names.filter((name) => name[0] !== 0x2e).map((name) => name.toString('hex'));
    expect(
      kept
        .map((name) => name.toString('hex'))
        .filter((name) => wanted.includes(name))
        .sort(),
    ).toEqual(wanted.sort());
    const outs = listRoom(shop, 'out');
    expect(new Set(outs.map((name) => name.normalize('NFC').toLowerCase())).size).toBe(names.length - 1);
    for (const path of listTree(join(shop, 'out')))
      expect(path).not.toMatch(/[<>:"|?*\\\u0000-\u001f\u007f\ufffd]|^[-.]/);
    expect(listUnproved(shop)).toEqual([]);
  });

  it('that begin with a point are being written, and are left', () => {
    expect(listTree(join(shop, 'in'))).toEqual(['..dots...svg']);
  });
});

describe('links', () => {
  it('are refused, and nothing outside the folder is touched', async () => {
    const [shop, outside] = [openShop(), openShop()];
    drop(outside, { 'secret.svg': smallArt(1) });
    symlinkSync(join(outside, 'in/secret.svg'), join(shop, 'in/link.svg'));
    symlinkSync(join(outside, 'in'), join(shop, 'in/folder'));
    linkSync(join(outside, 'in/secret.svg'), join(shop, 'in/hard.svg'));
    const { counts, news } = await watchOnce(shop);
    expect(counts).toMatchObject({ done: 1 });
    expect(listRoom(shop, 'in')).toEqual(['folder', 'link.svg']);
    expect(listTree(outside)).toEqual(['in/secret.svg']);
    expect(
      news
        .filter(({ facts }) => facts.why === 'link-or-device')
        .map(({ facts }) => facts.name)
        .sort(),
    ).toEqual(['folder', 'link.svg']);
  });

  it('in place of a room make the folder rest', async () => {
    const [shop, outside] = [openShop(), openShop()];
    drop(shop, { 'a.svg': smallArt(1) });
    symlinkSync(join(outside, 'in'), join(shop, 'out'));
    const { counts, news } = await watchOnce(shop);
    expect(counts).toMatchObject({ done: 0, resting: true });
    expect(JSON.stringify(news)).toContain('out in the hot folder is a link or a file');
    expect(listTree(outside)).toEqual([]);
    expect(listTree(join(shop, 'in'))).toEqual(['a.svg']);
  });
});

describe('a job that breaks its bounds', () => {
  it.each([
    ['time', ['--time-limit', '0.001']],
    ['memory', ['--memory-limit', '20']],
  ])('of %s is run again alone, then set aside, and its neighbours are done', (bound, args) => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1) });
    const ran = runCommand('watch', shop, '--once', '--quiet-time', '0.05', '--stop-time', '1', ...args);
    expect(ran.status).toBe(1);
    expect(readJournal(shop)).toMatchObject([{ name: 'a.svg', ending: 'failed', codes: [`worker/${bound}`] }]);
    expect(ran.err).toContain('"msg":"again"');
    expect(readFileSync(join(shop, 'failed/a/report/report.txt'), 'utf8')).toContain('set aside');
    expect(readFileSync(join(shop, 'failed/a/a.svg'), 'utf8')).toBe(smallArt(1));
  });
});

describe('a watcher that goes on', () => {
  it('takes what is dropped later, by events, and answers too', async () => {
    const shop = openShop();
    const watch = watchOn(shop, { pollOnly: false, pollMs: 60_000 });
    await until(() => watch.news.some(({ event }) => event === 'watching'), 'it watches');
    await new Promise((next) => setTimeout(next, 300));
    drop(shop, { 'a.svg': smallArt(1), 'ask.svg': askingArt() });
    await until(
      () => listRoom(shop, 'done').length === 1 && listRoom(shop, 'waiting').length === 1,
      'both are settled',
    );
    writeFileSync(
      join(shop, 'waiting/ask/ticket.json'),
      '{"pinbar": 1, "rules": [{"pass": "cutting", "layer": "Cut"}, {"pass": "print", "rest": true}]}',
    );
    await until(() => listRoom(shop, 'done').length === 2, 'the answer is taken');
    expect(await watch.stop()).toMatchObject({ done: 2, waiting: 1, failed: 0 });
    expect(listRoom(shop, 'work')).toEqual([]);
    expect(Object.keys(hashOutput(shop)).length).toBe(8);
  });

  it('takes no file before its end, however slowly it is written', async () => {
    const shop = openShop();
    const watch = watchOn(shop, { quietMs: 80, pollMs: 50, patienceMs: 500 });
    const inner = smallArt(1).replace('</g>', '<svg x="40" y="40"><rect width="5" height="5"/></svg></g>');
    const cut = inner.indexOf('</svg>') + 6;
    mkdirSync(join(shop, 'in'), { recursive: true });
    const packed = gzipSync(smallArt(4));
    const parts = [inner.slice(0, 40), inner.slice(40, cut), inner.slice(cut)];
    for (const [index, part] of parts.entries()) {
      writeFileSync(join(shop, 'in/slow.svg'), part, { flag: 'a' });
      writeFileSync(join(shop, 'in/slow.svgz'), packed.subarray(...([[0, 60], [60, 61], [61]] as const)[index]!), {
        flag: 'a',
      });
      if (index < 2) await new Promise((next) => setTimeout(next, 350));
      if (index < 2) expect(watch.jobs).toEqual([]);
    }
    writeFileSync(join(shop, 'in/never.svg'), '<svg xmlns="http://www.w3.org/2000/svg"><g>');
    await until(() => watch.jobs.length === 2, 'both are settled');
    await until(
      () => watch.news.some(({ facts }) => facts.why === 'not-complete' && facts.name === 'never.svg'),
      'it is named',
    );
    expect(watch.jobs.map(({ kind }) => kind)).toEqual(['done', 'done']);
    await watch.stop();
    expect(listTree(join(shop, 'in'))).toEqual(['never.svg']);
    expect(existsSync(join(shop, 'out'))).toBe(true);
  });
});
