// Artwork that nobody here wrote: every file splits and verifies with both judges, or is refused with a typed reason.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type JobResult, PinbarError, readTicket, split } from '../../src/index.js';
import { describeWith } from '../house/witnesses.js';
import { listLayeredOpenclipart, listOpenmoji } from './list-artwork.js';

interface Tally {
  inRegister: number;
  readonly refused: Map<string, number>;
  readonly broken: string[];
}

function countRefusal(tally: Tally, job: JobResult): void {
  const code = job.findings.find((item) => item.severity === 'error')?.code ?? 'none';
  tally.refused.set(code, (tally.refused.get(code) ?? 0) + 1);
}

/** Splits files by one ticket; what is neither in register nor refused with a reason of the artwork is broken. */
async function splitAll(paths: readonly string[], ticket: unknown): Promise<Tally> {
  const tally: Tally = { inRegister: 0, refused: new Map(), broken: [] };
  const read = readTicket(ticket);
  for (const path of paths) {
    try {
      const job = await split(new Uint8Array(readFileSync(path)), read, { fileName: path, skipChecks: true });
      const judged = job.findings.some((item) => item.severity === 'error' && /^(?:verify|witness)\//.test(item.code));
      if (judged) tally.broken.push(`${path}: ${job.findings.find((item) => item.severity === 'error')?.message}`);
      else if (job.outcome === 'in-register') tally.inRegister += 1;
      else countRefusal(tally, job);
    } catch (error) {
      if (error instanceof PinbarError) tally.refused.set(error.code, (tally.refused.get(error.code) ?? 0) + 1);
      else tally.broken.push(`${path}: ${error instanceof Error ? error.stack : String(error)}`);
    }
  }
  return tally;
}

describe('2,465 layered drawings of openmoji', () => {
  const paths = listOpenmoji();

  it('split into plotted lines and the rest', { timeout: 600_000 }, async () => {
    const tally = await splitAll(paths, {
      pinbar: 1,
      rules: [
        { pass: 'ignore', layer: 'grid' },
        { pass: 'cutting', layer: 'line*' },
        { pass: 'print', rest: true },
      ],
      marks: { wanted: false },
      witness: 'always',
    });
    expect(tally.broken).toEqual([]);
    expect({
      files: paths.length,
      inRegister: tally.inRegister,
      refused: Object.fromEntries(tally.refused),
    }).toMatchInlineSnapshot(`
      {
        "files": 2465,
        "inRegister": 2459,
        "refused": {
          "layer/hidden-asked": 6,
        },
      }
    `);
  });
});

describeWith('openclipart', '500 files of openclipart with layers', () => {
  it('split layer by layer', { timeout: 600_000 }, async () => {
    const layered = listLayeredOpenclipart();
    const tally = await splitAll(layered, {
      pinbar: 1,
      rules: [
        { pass: 'cutting', layer: '*1' },
        { pass: 'print', rest: true },
      ],
      hidden: 'skip',
      linkedPictures: 'leave-out',
      marks: { wanted: false },
      witness: 'always',
    });
    expect(tally.broken).toEqual([]);
    expect({
      files: layered.length,
      inRegister: tally.inRegister,
      refused: Object.fromEntries(tally.refused),
    }).toMatchInlineSnapshot(`
      {
        "files": 500,
        "inRegister": 498,
        "refused": {
          "classify/no-sheet": 2,
        },
      }
    `);
  });
});
