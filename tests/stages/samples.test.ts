// The samples are fit to run, but for the one that is wrong on purpose, which has exactly its list.
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { check, readTicket, split } from '../../src/index.js';

const folder = resolve(import.meta.dirname, '../../samples');

async function checkSample(name: string, ticket?: string) {
  const bytes = new Uint8Array(readFileSync(join(folder, `${name}.svg`)));
  const read = readTicket(ticket === undefined ? { pinbar: 1 } : readFileSync(join(folder, ticket), 'utf8'));
  const options = { fileName: `${name}.svg` };
  return { checked: await check(bytes, read, options), job: await split(bytes, read, options) };
}

/** Code and id, or message where the finding is about no one element. */
function list(findings: Awaited<ReturnType<typeof checkSample>>['checked']['findings']): readonly string[] {
  return findings.map(({ severity, code, place }) => `${severity} ${code} ${place.id ?? ''}`.trim());
}

describe('samples', () => {
  it.each([
    ['tuck-carton', undefined, []],
    ['sleeve', 'sleeve.ticket.json', []],
    ['label-sheet', undefined, []],
    ['counters', 'counters.ticket.json', []],
    [
      'hang-tag',
      'hang-tag.ticket.json',
      [
        'note order/interleaved front-panel',
        'note check/line-under-art front-panel',
        'note check/line-under-art back-panel',
        'note check/loose-piece front-hole',
        'note check/loose-piece back-hole',
        'note check/loose-piece small-hole',
      ],
    ],
  ] as const)('%s is fit to run, and splits in register', async (name, ticket, notes) => {
    const { checked, job } = await checkSample(name, ticket);
    expect(list(checked.findings)).toEqual(notes);
    expect(checked.outcome).toBe('fit');
    expect(job.outcome).toBe('in-register');
    expect([...list(job.findings)].sort()).toEqual([...notes].sort());
  });

  it('bad-carton has exactly its list by the names of its layers', async () => {
    const { checked, job } = await checkSample('bad-carton');
    expect(checked.outcome).toBe('answer-needed');
    expect(job.outcome).toBe('answer-needed');
    expect(list(checked.findings)).toEqual([
      'error layer/hidden-asked blank',
      'error classify/unclaimed window',
      'error classify/unclaimed axis-across',
      'error split/picture-linked',
      'warning check/outline-open thumb-cut',
      'note check/picture-unread',
    ]);
  });

  it('bad-carton has exactly its list by its ticket', async () => {
    const { checked } = await checkSample('bad-carton', 'bad-carton.ticket.json');
    expect(list(checked.findings)).toEqual([
      'error layer/hidden-asked blank',
      'error classify/claimed-twice fold-left',
      'error classify/fill-and-stroke window',
      'error classify/unclaimed axis-across',
      'error split/picture-linked',
      'warning classify/pass-empty',
      'warning check/outline-open thumb-cut',
      'note check/picture-unread',
    ]);
  });
});
