// The order of writing, syncing and renaming, read from a trace of the calls.
import { rmSync } from 'node:fs';
import { afterAll, expect, it } from 'vitest';
import { describeWith } from '../house/witnesses.js';
import { openBrokenShop, traceRun } from './broken-run.js';

interface Call {
  readonly name: string;
  /** Paths below the hot folder that the call names, by string or by descriptor. */
  readonly paths: readonly string[];
  readonly creates: boolean;
}

function parseCall(line: string, shop: string): Call {
  const name = /^\w+/.exec(line)?.[0] ?? '';
  const paths = [...line.matchAll(/["<]([^"<>]+)[">]/g)]
    .map(([, path]) => path!)
    .filter((path) => path.startsWith(shop));
  return { name, paths: paths.map((path) => path.slice(shop.length + 1)), creates: line.includes('O_CREAT|O_EXCL') };
}

describeWith('strace', 'the trace of a run', () => {
  const shop = openBrokenShop();
  afterAll(() => rmSync(shop, { recursive: true, force: true }));
  const calls = traceRun(shop)
    .map((line) => parseCall(line, shop))
    .filter(({ paths }) => paths.length > 0);
  const moves = calls.flatMap((call, at) =>
    call.name === 'rename' ? [{ at, from: call.paths[0]!, to: call.paths[1]! }] : [],
  );

  /** Places of calls of a name on a path, in a stretch of the trace. */
  function places(name: string, path: string, from = 0, to: number = calls.length): readonly number[] {
    return calls.flatMap((call, at) =>
      at >= from && at < to && call.name === name && call.paths.includes(path) ? [at] : [],
    );
  }

  it('writes every output, syncs it, then its folder, then renames that, the manifest last', () => {
    const published = moves.filter(({ to }) => to.startsWith('out/'));
    expect(published).toHaveLength(1);
    for (const { at, from } of published) {
      const files = calls
        .slice(0, at)
        .filter((call) => call.name === 'openat' && call.creates && call.paths[0]!.startsWith(`${from}/`))
        .map(({ paths }) => paths[0]!);
      expect(files.length).toBe(4);
      expect(files.at(-1)).toBe(`${from}/manifest.json`);
      const [folderSynced] = places('fsync', from, 0, at).slice(-1);
      for (const file of files) {
        const lastWrite = places('pwrite64', file, 0, at).at(-1)!;
        expect(places('fsync', file, lastWrite, folderSynced)).toHaveLength(1);
      }
    }
  });

  it('moves a delivery to done only when the output and its name are kept, and the journal has its line', () => {
    const published = moves.find(({ to }) => to.startsWith('out/'))!;
    const done = moves.filter(({ to }) => to.startsWith('done/'));
    expect(done.map(({ to }) => to)).toEqual(['done/a', 'done/c']);
    const [kept] = places('fsync', 'out', published.at, done[0]!.at);
    const [told] = places('fsync', 'journal.ndjson', kept, done[0]!.at);
    expect(told).toBeGreaterThan(kept!);
  });

  it('keeps the record of a job before it claims the art', () => {
    const claims = moves.filter(
      ({ from, to }) => from.startsWith('in/') && to.startsWith('work/') && to.endsWith('.svg'),
    );
    expect(claims).toHaveLength(4);
    for (const { at, to } of claims) {
      const folder = to.slice(0, to.lastIndexOf('/'));
      const [recordKept] = places('fsync', `${folder}/.job.json`, 0, at);
      expect(places('fsync', folder, recordKept, at)).toHaveLength(1);
    }
  });

  it('keeps reports and questions before a job moves to failed or waiting', () => {
    for (const { at, from } of moves.filter(({ to }) => /^(?:failed|waiting)\//.test(to))) {
      for (const file of ['report.txt', 'report.json', 'findings.svg']) {
        expect(places('fsync', `${from}/report/${file}`, 0, at)).toHaveLength(1);
      }
      expect(places('fsync', from, 0, at).length).toBeGreaterThan(0);
    }
  });

  it('moves whole folders alone into the rooms that people see', () => {
    const seen = moves.filter(({ to }) => /^(?:out|done|failed|waiting)\//.test(to));
    expect(seen).toHaveLength(5);
    for (const { to } of seen) expect(to.split('/')).toHaveLength(2);
    const written = calls.filter(({ name, creates }) => name === 'openat' && creates).map(({ paths }) => paths[0]!);
    expect(written.filter((path) => !path.startsWith('work/'))).toEqual([]);
  });
});
