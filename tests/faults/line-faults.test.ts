// Faults put by hand into ties and order are caught by judges that know the drawing by closed forms and the files by their text.
import { describe, expect, it } from 'vitest';
import { LINE_FAULTS } from './line-faults.js';
import { judgeLineJob, LINE_JOBS } from './line-job.js';

describe('without a fault', () => {
  it.each(LINE_JOBS)('the judges see nothing: %s', async (name) => {
    expect(await judgeLineJob(name, { file: 'ties/plan-ties.ts', changes: [] })).toEqual([]);
  });
});

describe('a fault in ties or order', () => {
  it('is one of many', () => {
    expect(LINE_FAULTS.length).toBeGreaterThan(40);
    expect(new Set(LINE_FAULTS.map(({ name }) => name)).size).toBe(LINE_FAULTS.length);
  });

  it.each(LINE_FAULTS)('is caught: $name', async ({ job, sees, ...fault }) => {
    const faults = await judgeLineJob(job, fault);
    expect(faults).not.toEqual([]);
    expect(faults.join('; ')).toContain(sees);
  });
});
