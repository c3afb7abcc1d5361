// Segments below a step, and corners that a trailing knife cannot take: lengths and angles by hand.
import { describe, expect, it } from 'vitest';
import { checkTurns } from '../../../src/check/check-turns.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import { briefly, dieFacts } from './die-facts.js';

async function find(cut: string, checks: Partial<CheckSettings> = {}): Promise<readonly unknown[]> {
  return briefly(checkTurns(await dieFacts({ cut: [cut] }, checks)));
}

/** A notch with a bottom of some width, in a line from left to right. */
const notch = (width: string): string => `M50 50H100v10${width}v-10H150V110H50Z`;

describe('segments', () => {
  it('may be as short as a step', async () => {
    expect(await find(notch('h0.01'))).toEqual([]);
    expect(await find(notch('h0.0098'))).toEqual([['segment-short', 1, 0.0098]]);
    expect(await find(notch('h0.05'), { machineStepMm: 0.1 })).toEqual([['segment-short', 1, 0.05]]);
    expect(await find(notch('h0.005h0.005'))).toEqual([['segment-short', 2, 0.005]]);
  });

  it('are measured along a curve', async () => {
    // Half a circle, 0.0127 mm wide and 0.02 mm long: 0.018 mm as it is flattened.
    expect(await find(notch('a.00635 .00635 0 0 0 .0127 0'), { machineStepMm: 0.017 })).toEqual([]);
  });
});

describe('turns', () => {
  const knifeOffsetMm = 0.25;

  it('are judged where the offset of the knife is said', async () => {
    expect(await find(notch('h0.2'))).toEqual([]);
    expect(await find(notch('h0.2'), { knifeOffsetMm })).toEqual([['turn-sharp', 1, 0.2]]);
  });

  it('need the offset of the knife between them', async () => {
    expect(await find(notch('h0.25'), { knifeOffsetMm })).toEqual([]);
    expect(await find(notch('h0.249'), { knifeOffsetMm })).toEqual([['turn-sharp', 1, 0.249]]);
  });

  it('of 30 degrees are not sharp', async () => {
    // A step of 0.2 mm that rises by an angle, with flat lines before and after it.
    const step = (degrees: number): string => {
      const angle = (degrees * Math.PI) / 180;
      return `M50 50h50l${0.2 * Math.cos(angle)} ${0.2 * Math.sin(angle)}h50V110H50Z`;
    };
    expect(await find(step(30), { knifeOffsetMm })).toEqual([]);
    expect(await find(step(30.1), { knifeOffsetMm })).toEqual([['turn-sharp', 1, 0.2]]);
    expect(await find(step(30.1), { knifeOffsetMm, sharpTurnDegrees: 31 })).toEqual([]);
  });

  it('are sharp also where a point more lies between them', async () => {
    expect(await find(notch('h0.1h0.1'), { knifeOffsetMm })).toEqual([['turn-sharp', 1, 0.2]]);
    expect(await find(notch('h0.2h0.2'), { knifeOffsetMm })).toEqual([]);
    expect(await find('M100.1 60H100.2V50H150V110H50V50H100V60Z', { knifeOffsetMm })).toEqual([['turn-sharp', 1, 0.2]]);
    expect(await find('M100.1 60H100.2V50H150V110H50V50H100V60H100.1', { knifeOffsetMm })).toEqual([
      ['turn-sharp', 1, 0.2],
    ]);
  });

  it('are sharp in lines of several parts', async () => {
    const parts = ['M50 50H100V60', 'M100 60H100.2', 'M150 50H100.2V60'];
    expect(briefly(checkTurns(await dieFacts({ cut: parts }, { knifeOffsetMm })))).toEqual([['turn-sharp', 1, 0.2]]);
    const [found] = checkTurns(await dieFacts({ cut: parts }, { knifeOffsetMm }));
    expect(found!.data.shapes).toEqual([1]);
  });

  it('of one side, of curves and of creases are let be', async () => {
    expect(await find('M50 50H100h0.2', { knifeOffsetMm })).toEqual([]);
    expect(await find(notch('a.1 .1 0 0 0 .2 0'), { knifeOffsetMm })).toEqual([]);
    const crease = ['M50 50H100v10h.2v-10H150'];
    expect(briefly(checkTurns(await dieFacts({ crease, cut: ['M20 20H30'] }, { knifeOffsetMm })))).toEqual([]);
  });
});
