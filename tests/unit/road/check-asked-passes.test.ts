// Passes that marks, sequence and ties name: those that this job does not have are told, the others are served.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type JobResult, joinPieces, readTicket, split } from '../../../src/index.js';

const RULES = [
  { pass: 'fold', layer: 'Crease' },
  { pass: 'print', layer: 'Artwork' },
  { pass: 'knife', layer: 'Cut' },
];
const PASSES = [
  { name: 'fold', role: 'creasing' },
  { name: 'print', role: 'print' },
  { name: 'knife', role: 'cutting' },
];

async function run(more: object): Promise<JobResult> {
  const ticket = readTicket({ pinbar: 1, passes: PASSES, rules: RULES, ...more });
  return split(readFileSync('samples/tuck-carton.svg'), ticket, { fileName: 'tuck-carton.svg', skipChecks: true });
}

function told({ findings }: JobResult): readonly (readonly string[])[] {
  return findings
    .filter(({ code }) => code.endsWith('/no-such-pass'))
    .map(({ severity, message, remedy }) => [severity, message, remedy]);
}

function hold(...passes: readonly string[]): object {
  return { ties: passes.map((pass, i) => ({ pass, mode: 'hold', tieMm: i + 1 })) };
}

describe('passes that the ticket names', () => {
  it('are told with those that it could be, and the job goes on without', async () => {
    const job = await run(hold('foil-stamp'));
    expect(job.outcome).toBe('in-register');
    expect(told(job)).toEqual([
      [
        'warning',
        'ties[0].pass is "foil-stamp", but this job has no such pass: no ties are made for it.',
        'Name one of: fold, knife; or take it out of the ticket.',
      ],
    ]);
    expect(job.ties).toEqual([]);
  });

  it('are told with the nearest where one is near', async () => {
    const job = await run({ sequence: { passes: ['creasing', 'crease'] } });
    expect(told(job)).toEqual([
      ['warning', expect.stringContaining('sequence.passes[1] is "crease"'), 'Did you mean "creasing"?'],
    ]);
    expect(job.sequence.map(({ pass }) => pass)).toEqual(['fold']);
  });

  it('may be no pass that covers areas, whose strokes are art', async () => {
    const [plain, tied] = await Promise.all([run({}), run(hold('print'))]);
    expect(told(tied)).toEqual([
      ['warning', expect.stringContaining('but no tool runs along the lines of that pass'), expect.any(String)],
    ]);
    expect(tied.files.map(({ sha256 }) => sha256)).toEqual(plain.files.map(({ sha256 }) => sha256));
  });

  it('are served by name before role, and an item that is left over is told', async () => {
    const job = await run(hold('cutting', 'knife'));
    expect(told(job)).toEqual([
      [
        'warning',
        expect.stringContaining('ties[0].pass is "cutting", but all such passes get ties'),
        expect.any(String),
      ],
    ]);
    expect(job.ties.map(({ pass, ties, tiesMm }) => [pass, tiesMm / ties])).toEqual([['knife', expect.closeTo(2, 6)]]);
  });

  it('carry register marks by name or role', async () => {
    const job = await run({ marks: { passes: ['creasing', 'print', 'varnish'] } });
    expect(told(job)).toEqual([
      ['warning', expect.stringContaining('marks.passes[2] is "varnish"'), expect.any(String)],
    ]);
    const texts = job.files.map(({ pieces }) => Buffer.from(joinPieces(pieces)).toString('utf8'));
    expect(texts.map((text) => text.includes('data-mark="cross"'))).toEqual([true, true, false]);
  });
});
