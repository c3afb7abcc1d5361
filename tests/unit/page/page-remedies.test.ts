// What to do, on a page: no options of the command line, and the values in their places.
import { describe, expect, it } from 'vitest';
import { finding } from '../../../src/model/finding.js';
import { sayRemedy } from '../../../src/page/page-remedies.js';
import { runVariant } from '../../findings/run-sample.js';
import { listSamples } from '../../findings/sample.js';

/** Samples of findings that the page can come upon. */
const SEEN = listSamples().filter(({ sample }) => ['inspect', 'split', 'check'].includes(sample.how));

describe('remedies', () => {
  it('name no option of the command line, for any finding of a sample', async () => {
    let options = 0;
    const wrong: string[] = [];
    for (const named of SEEN) {
      for (const found of (await runVariant(named, named.sample)).findings) {
        if (/--[a-z]/.test(found.remedy)) options += 1;
        const text = sayRemedy(found);
        if (/--[a-z]|\{|undefined|NUMBER/.test(text) || (text === '') !== (found.remedy === '')) wrong.push(text);
      }
    }
    expect(wrong).toEqual([]);
    expect(options).toBeGreaterThan(20);
  });

  it('keep their own words where these name no option', () => {
    const remedy = 'Join the two ends in the drawing.';
    expect(sayRemedy(finding('check/outline-open', { message: 'A gap.', remedy, place: {}, data: {} }))).toBe(remedy);
  });

  it('say the number that is asked for', () => {
    const made = finding('mark/no-room', {
      message: 'No room.',
      remedy: 'Say --margin 10.5.',
      place: {},
      data: { marginMm: 10.5 },
    });
    expect(sayRemedy(made)).toContain('grow by 10.5 mm');
  });
});
