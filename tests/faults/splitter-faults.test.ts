// Faults put into the splitter by hand are caught, by each judge alone unless its blindness is listed with the reason.
import { beforeAll, describe, expect, it } from 'vitest';
import { JOB_NAMES, type JobName, type Judge, judgeBroken } from './broken-job.js';
import { FAULTS, HARMLESS } from './splitter-faults.js';

const SOUND = { file: 'split/edit.ts', changes: [] };
const JUDGES: readonly Judge[] = ['readBack', 'bytes', 'witness', 'verify'];
const soundHashes = new Map<JobName, readonly string[]>();

beforeAll(async () => {
  for (const name of JOB_NAMES) soundHashes.set(name, (await judgeBroken(name, SOUND)).hashes);
});

describe('without a fault', () => {
  it.each(JOB_NAMES)('no judge sees anything: %s', async (name) => {
    const { verdicts } = await judgeBroken(name, SOUND);
    // A layer that was hidden and is shown counts as added for a comparison that knows no ticket.
    expect(verdicts).toEqual({
      readBack: [],
      bytes: [],
      witness: [],
      verify: name === 'hidden' ? ['verify/added'] : [],
    });
  });
});

describe('a fault in the splitter', () => {
  it('is one of many', () => {
    expect(FAULTS.length).toBeGreaterThan(50);
    expect(new Set(FAULTS.map(({ name }) => name)).size).toBe(FAULTS.length);
  });

  it.each(FAULTS)('is caught: $name', async (fault) => {
    const { verdicts, hashes } = await judgeBroken(fault.job, fault);
    expect(hashes).not.toEqual(soundHashes.get(fault.job));
    const blind = JUDGES.filter((judge) => verdicts[judge].length === 0);
    expect(blind).toEqual(Object.keys(fault.blind ?? {}));
    expect(blind.includes('readBack') && blind.includes('witness')).toBe(false);
  });
});

describe('a fault that harms no overlay', () => {
  it.each(HARMLESS)('is seen by nobody: $name', async (fault) => {
    const { verdicts, hashes } = await judgeBroken(fault.job, fault);
    expect(hashes).not.toEqual(soundHashes.get(fault.job));
    expect(verdicts).toEqual({ readBack: [], bytes: [], witness: [], verify: [] });
  });
});
