// Runs one variant of a sample by the door its sidecar names, and brings back what was found.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { vi } from 'vitest';
import { main } from '../../src/cli/main.js';
import { pictureReader } from '../../src/disk/read-input.js';
import {
  check,
  correctPasses,
  DEFAULT_TICKET,
  type Finding,
  inspect,
  judgeMarks,
  PinbarError,
  type RoadOptions,
  readMarks,
  readProfile,
  readTicket,
  split,
  type Ticket,
  verify,
} from '../../src/index.js';
import { compactSvg } from '../../src/write/compact-svg.js';
import { judgeDamaged } from './damage-sheet.js';
import { changeText, type NamedSample, readSampleBytes, SAMPLE_FOLDER, type Variant } from './sample.js';

/** What came of a run; `outcome` where it was a split. */
export interface Findings {
  readonly findings: readonly Finding[];
  readonly outcome: string | null;
}

function ticketOf(variant: Variant): Ticket {
  return variant.ticket === undefined ? DEFAULT_TICKET : readTicket(variant.ticket);
}

function optionsOf(named: NamedSample, variant: Variant): RoadOptions {
  const { limits, aborted } = variant.options ?? {};
  return {
    fileName: 'carton.svg',
    loadPicture: pictureReader(join(named.folder, 'carton.svg')),
    ...(limits === undefined ? {} : { limits }),
    ...(aborted === undefined ? {} : { signal: { aborted } }),
  };
}

/** The three files of `verify/by-hand`, changed as the sidecar says; carton.svg is the source. */
async function runVerify(variant: Variant): Promise<readonly Finding[]> {
  const changes = variant.change ?? [];
  const read = (name: string): { name: string; bytes: Uint8Array } => {
    let text = readFileSync(join(SAMPLE_FOLDER, 'verify', 'by-hand', name), 'utf8');
    for (const [file, from, to] of changes) if (file === name) text = changeText(text, from!, to!);
    return { name, bytes: new Uint8Array(Buffer.from(text)) };
  };
  return (await verify([read('print.svg'), read('cut.svg')], read('carton.svg'))).findings;
}

/** The command in a folder of its own, with carton.svg in it; what it found is read from its JSON. */
async function runCommand(variant: Variant): Promise<Findings> {
  const folder = mkdtempSync(join(tmpdir(), 'pinbar-findings-'));
  const before = process.cwd();
  let said = '';
  const out = vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    said += String(text);
    return true;
  });
  const err = vi.spyOn(process.stderr, 'write').mockImplementation(() => true);
  try {
    const files = { 'carton.svg': readFileSync(join(SAMPLE_FOLDER, 'carton.svg'), 'utf8'), ...variant.folder };
    for (const [path, text] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text);
    }
    process.chdir(folder);
    await main([...(variant.arguments ?? []), '--json']);
    return JSON.parse(said) as Findings;
  } finally {
    process.chdir(before);
    out.mockRestore();
    err.mockRestore();
    rmSync(folder, { recursive: true });
  }
}

async function runDoor(named: NamedSample, variant: Variant): Promise<Findings> {
  const options = optionsOf(named, variant);
  const bytes = (): Uint8Array => readSampleBytes(named, variant);
  const plain = (findings: readonly Finding[]): Findings => ({ findings, outcome: null });
  switch (variant.how) {
    case 'inspect':
      return plain((await inspect(bytes(), options)).findings);
    case 'split':
      // Samples of other codes need not be fit to run.
      return split(bytes(), ticketOf(variant), { ...options, skipChecks: !named.code.startsWith('check/') });
    case 'check':
      return check(bytes(), ticketOf(variant), options);
    case 'verify':
      return plain(await runVerify(variant));
    case 'cli':
      return runCommand(variant);
    case 'ticket':
      readTicket(Buffer.from(bytes()).toString('utf8'));
      return plain([]);
    case 'profile':
      readProfile(Buffer.from(bytes()).toString('utf8'));
      return plain([]);
    case 'damage': {
      const base = readSampleBytes(named, { how: 'damage', file: '../carton-two.svg' });
      return plain(judgeDamaged(base, ticketOf(variant), variant));
    }
    case 'measure': {
      const { marks = [], toleranceMm = null } = variant;
      return plain(judgeMarks(readMarks(marks.join('\n'), null), toleranceMm).findings);
    }
    case 'correct': {
      const report = judgeMarks(readMarks('a,0,0,0.1,0\nb,9,0,9.1,0', null), null);
      await correctPasses([{ name: 'carton.svg', bytes: bytes() }], report.fits[0]!, report);
      return plain([]);
    }
    case 'compact':
      return plain((await compactSvg(bytes(), 'carton.svg')).findings);
  }
}

/** Everything a variant gives, returned or thrown. Whatever is thrown and is no PinbarError goes on. */
export async function runVariant(named: NamedSample, variant: Variant): Promise<Findings> {
  try {
    return await runDoor(named, variant);
  } catch (error) {
    if (error instanceof PinbarError) return { findings: error.findings, outcome: 'thrown' };
    throw error;
  }
}
