// Values of a strip: both ends, evenly spread, and no strip that could not be run or read.
import { describe, expect, it } from 'vitest';
import { planStrip } from '../../../src/strip/plan-strip.js';
import type { StripRequest } from '../../../src/strip/strip-request.js';

const request: StripRequest = {
  role: 'creasing',
  setting: 'pressure',
  from: 100,
  to: 400,
  steps: 7,
  widthMm: 210,
  heightMm: 297,
};

function refusal(change: Partial<StripRequest>): string {
  try {
    planStrip({ ...request, ...change });
    return '';
  } catch (error) {
    return (error as Error).message;
  }
}

describe('planStrip', () => {
  it('spreads the values evenly, both ends among them', () => {
    expect(planStrip(request).map(({ value }) => value)).toEqual([100, 150, 200, 250, 300, 350, 400]);
    const down = planStrip({ ...request, setting: 'offset', from: 0.5, to: 0, steps: 3 });
    expect(down.map(({ value, pass }) => [value, pass])).toEqual([
      [0.5, 'crease-0.5-mm'],
      [0.25, 'crease-0.25-mm'],
      [0, 'crease-0-mm'],
    ]);
  });

  it('lays the fields in rows of three on A4, in the middle', () => {
    const steps = planStrip(request);
    expect(steps.map(({ xMm, yMm }) => [xMm, yMm])).toEqual([
      [24, 42],
      [78, 42],
      [132, 42],
      [24, 86],
      [78, 86],
      [132, 86],
      [24, 130],
    ]);
  });

  it('takes as many steps as the sheet has room for, and no more', () => {
    // (297 - 40 - 22) / 44 = 5.3 rows of 3.
    expect(planStrip({ ...request, steps: 15 })).toHaveLength(15);
    expect(refusal({ steps: 16 })).toContain('has room for 15 fields of 54 x 44 mm; 16 steps were asked for');
    expect(planStrip({ ...request, steps: 20, heightMm: 400 })).toHaveLength(20);
    expect(refusal({ steps: 21, heightMm: 400 })).toContain('2 to 20');
    expect(refusal({ steps: 2, widthMm: 93.9 })).toContain('room for 0 fields');
  });

  it.each([
    [{ setting: 'offset', from: 0, to: 0.002, steps: 5 }, 'the same to a thousandth'],
    [{ steps: 1 }, '2 to 20'],
    [{ steps: 2.5 }, '2 to 20'],
    [{ from: 400 }, 'no range of pressure'],
    [{ from: 0 }, 'no range of pressure'],
    [{ setting: 'offset', from: -0.1 }, 'no range of offset'],
    [{ setting: 'speed', to: Number.POSITIVE_INFINITY }, 'cm/s is no range of speed'],
    [{ role: 'print' }, 'print is none'],
  ] as const)('refuses %j', (change, words) => {
    expect(refusal(change)).toContain(words);
  });
});
