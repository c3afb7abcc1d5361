// The steps of a job on a disk that forgets: whatever is dropped, whoever dies and when, nothing is lost. And faults put in on purpose are found.
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { claimJob } from '../../src/hot-folder/claim-job.js';
import { joinPath } from '../../src/hot-folder/folder-disk.js';
import type { JobAsked } from '../../src/hot-folder/job-message.js';
import { layOut, openRooms } from '../../src/hot-folder/layout.js';
import { recoverJob, takeOver } from '../../src/hot-folder/recover-jobs.js';
import { type Runner, runJob } from '../../src/hot-folder/run-job.js';
import { scanIn } from '../../src/hot-folder/scan-in.js';
import { type HeldJob, JobLost, type Station } from '../../src/hot-folder/station.js';
import type { WorkerResult } from '../../src/hot-folder/worker-pool.js';
import { Crash, createForgetfulDisk, type DiskFaults, type ForgetfulDisk } from './forgetful-disk.js';

const layout = layOut(Buffer.from('shop'));

/** Art by kind; equal numbers are equal bytes. */
interface Drop {
  readonly name: string;
  readonly kind: 'good' | 'bad' | 'asks';
  readonly number: number;
}

function bytesOf({ kind, number }: Drop): Buffer {
  return Buffer.from(`<svg>${kind} ${number}</svg>`);
}

function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** What a worker would say of art, from its bytes alone. */
function answer(bytes: Buffer, { fileName }: JobAsked): WorkerResult {
  const text = bytes.toString();
  if (!text.includes('good')) {
    const kind = text.includes('asks') ? 'asks' : 'refused';
    return { answer: { kind, question: 'q', text: 't', json: '{}', picture: null, codes: [] } };
  }
  const sheet = Buffer.from(`sheet of ${text}`);
  const manifest = {
    document: 'manifest',
    input: { sha256: sha256(bytes) },
    passes: [{ file: `${fileName}.1.svg`, sha256: sha256(sheet) }],
  };
  const files = [
    { name: `${fileName}.1.svg`, bytes: sheet },
    { name: 'manifest.json', bytes: Buffer.from(JSON.stringify(manifest)) },
  ];
  return { answer: { kind: 'made', sha256: sha256(bytes), files, pictures: [], codes: [] } };
}

interface Life {
  /** At which change it dies; far beyond the end: it lives. */
  readonly diesAt: number;
  readonly losesPower: boolean;
  /** Which unsynced changes are kept nevertheless. */
  readonly keeps: readonly boolean[];
}

const LONG = 1_000_000;

function openStation(disk: ForgetfulDisk, number: number, diesAt: number): Station {
  const opened = disk.open(diesAt);
  const home = joinPath(layout.work, `w.${number}`);
  let count = 0;
  openRooms(opened, layout);
  opened.makeFolder(home);
  return {
    disk: opened,
    layout,
    home,
    owner: 'w',
    nextId: () => {
      count++;
      return `${number}-${count}`;
    },
    now: () => '',
    onLine: () => undefined,
  };
}

/** A watcher's life: what the dead left, then what lies there. */
async function live(disk: ForgetfulDisk, number: number, diesAt: number): Promise<void> {
  const station = openStation(disk, number, diesAt);
  const ask = async (asked: JobAsked): Promise<WorkerResult> =>
    answer(station.disk.read(Buffer.from(asked.path)), asked);
  const runner: Runner = { station, ask, limits: {}, keys: new Map(), onEvent: () => undefined };
  const run = async (job: HeldJob, interrupted: boolean): Promise<void> => {
    try {
      await runJob(runner, { ...job, interrupted, alone: false });
    } catch (error) {
      if (!(error instanceof JobLost)) throw error;
    }
  };
  for (const room of station.disk.list(layout.work)) {
    const home = joinPath(layout.work, room.name);
    if (room.name[0] === 0x2e || home.equals(station.home)) continue;
    for (const folder of takeOver(station, home)) {
      const job = recoverJob(station, folder, () => undefined);
      if (job !== null) await run(job, true);
    }
    station.disk.remove(home);
  }
  for (const delivery of scanIn(station.disk, layout.in).deliveries) {
    const job = claimJob(station, delivery);
    if (typeof job === 'object') await run(job, false);
  }
}

/** What is wrong with the folder at this instant. */
function findLosses(disk: ForgetfulDisk, drops: readonly Drop[]): readonly string[] {
  const files = disk.list();
  const inRooms = [...files].filter(
    ([path]) => /^shop\/(?:in|work|done|failed|waiting)\/.*\.svg$/i.test(path) && !/\/(?:\.out|report)\//.test(path),
  );
  const there = inRooms.map(([, bytes]) => bytes.toString()).sort();
  const losses: string[] = [];
  if (
    there.join() !==
    drops
      .map((drop) => bytesOf(drop).toString())
      .sort()
      .join()
  )
    losses.push(`there is ${there.join()}`);
  const outs = new Set(
    [...files.keys()].filter((path) => path.startsWith('shop/out/')).map((path) => path.split('/')[2]!),
  );
  const made = new Set<string>();
  for (const out of outs) {
    const manifest = files.get(`shop/out/${out}/manifest.json`)?.toString() ?? '';
    const { input, passes } = (manifest === '' ? {} : JSON.parse(manifest)) as {
      readonly input?: { readonly sha256: string };
      readonly passes?: readonly { readonly file: string; readonly sha256: string }[];
    };
    const whole = passes?.every(
      ({ file, sha256: hash }) => sha256(files.get(`shop/out/${out}/${file}`) ?? Buffer.alloc(0)) === hash,
    );
    if (whole !== true) losses.push(`${out} is not whole`);
    if (made.has(input?.sha256 ?? '')) losses.push(`${out} is made twice`);
    made.add(input?.sha256 ?? '');
  }
  for (const [path, bytes] of inRooms) {
    if (path.startsWith('shop/done/') && !made.has(sha256(bytes))) losses.push(`${path} is done without output`);
  }
  return losses;
}

/** What is wrong when nobody died any more. */
function findUnsettled(disk: ForgetfulDisk, drops: readonly Drop[]): readonly string[] {
  const files = disk.list();
  const room = { good: 'done', bad: 'failed', asks: 'waiting' } as const;
  const losses = drops.filter((drop) => {
    const bytes = bytesOf(drop);
    return ![...files].some(([path, there]) => path.startsWith(`shop/${room[drop.kind]}/`) && there.equals(bytes));
  });
  const journal = files.get('shop/journal.ndjson')?.toString() ?? '';
  const names = journal.split('\n').flatMap((line) => /"id":"([^"]+)".*\}$/.exec(line)?.[1] ?? []);
  const ended = drops.filter(({ kind }) => kind !== 'asks').length;
  return [
    ...losses.map(({ name }) => `${name} is not settled`),
    ...(new Set(names).size === names.length && names.length === ended ? [] : [`the journal has ${names.join()}`]),
  ];
}

async function play(drops: readonly Drop[], lives: readonly Life[], faults: DiskFaults): Promise<readonly string[]> {
  const disk = createForgetfulDisk(faults);
  const shop = disk.open(LONG);
  shop.makeFolder(Buffer.from('shop'));
  shop.makeFolder(layout.in);
  for (const drop of drops) shop.writeNew(joinPath(layout.in, drop.name), [bytesOf(drop)]);
  shop.sync(layout.in);
  shop.sync(layout.folder);
  if (faults.filesUnsynced === true || faults.foldersUnsynced === true) disk.losePower(() => true);
  const found: string[] = [];
  for (const [number, { diesAt, losesPower, keeps }] of lives.entries()) {
    try {
      await live(disk, number, diesAt);
    } catch (error) {
      if (!(error instanceof Crash)) throw error;
    }
    found.push(...findLosses(disk, drops));
    if (losesPower) disk.losePower((index) => keeps[index % Math.max(1, keeps.length)] ?? true);
    found.push(...findLosses(disk, drops));
  }
  await live(disk, lives.length, LONG);
  return [...found, ...findLosses(disk, drops), ...findUnsettled(disk, drops)];
}

const drop: fc.Arbitrary<Drop> = fc.record({
  name: fc.constantFrom('a.svg', 'b.svg', 'c.svg', 'd.svg', 'e.SVG', '\u00e4.svg'),
  kind: fc.constantFrom('good', 'good', 'bad', 'asks'),
  number: fc.nat(2),
});
const life: fc.Arbitrary<Life> = fc.record({
  diesAt: fc.integer({ min: 8, max: 90 }),
  losesPower: fc.boolean(),
  keeps: fc.array(fc.boolean(), { minLength: 1, maxLength: 40 }),
});
const drops = fc.uniqueArray(drop, { minLength: 1, maxLength: 4, selector: ({ name }) => name });
const lives = fc.array(life, { maxLength: 3 });

function seek(faults: DiskFaults, numRuns: number): Promise<fc.RunDetails<[Drop[], Life[]]>> {
  const property = fc.asyncProperty(drops, lives, async (dropped, lived) => {
    expect(await play(dropped, lived, faults)).toEqual([]);
  });
  return fc.check(property, { numRuns, seed: 20 }) as Promise<fc.RunDetails<[Drop[], Life[]]>>;
}

describe('the hot folder on a disk that forgets', () => {
  it('loses nothing, whoever dies when', async () => {
    const found = await seek({}, process.env.CRASH === 'all' ? 20_000 : 400);
    expect(found.failed ? `${fc.defaultReportMessage(found)} ${String(found.errorInstance)}` : '').toBe('');
  }, 3_600_000);

  it.each<readonly [string, DiskFaults]>([
    ['files are not synced', { filesUnsynced: true }],
    ['folders are not synced', { foldersUnsynced: true }],
    ['a move copies before it takes away', { movesInTwo: true }],
  ])(
    'is found out where %s',
    async (_name, faults) => {
      expect((await seek(faults, 1500)).failed).toBe(true);
    },
    60_000,
  );
});
