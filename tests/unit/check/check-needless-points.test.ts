// Points that a simplification takes away: counts by hand.
import { describe, expect, it } from 'vitest';
import { checkNeedlessPoints } from '../../../src/check/check-needless-points.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import { dieFacts } from './die-facts.js';

async function find(cut: readonly string[], checks: Partial<CheckSettings> = {}): Promise<readonly unknown[]> {
  const found = checkNeedlessPoints(await dieFacts({ cut }, checks));
  return found.map(({ data: { points, left, allowed, count } }) => [points, left, allowed, count]);
}

/** A line with points between its ends, each off it by some height, up and down in turn. */
const line = (between: number, height: number = 0): string =>
  `M50 50${Array.from({ length: between }, (_, i) => `L${51 + i} ${50 + (i % 2 === 0 ? height : -height)}`).join('')}L${51 + between} 50`;

describe('checkNeedlessPoints', () => {
  it('allows 50 and nothing more', async () => {
    expect(await find([line(50)])).toEqual([]);
    expect(await find([line(51)])).toEqual([[53, 2, 50, 1]]);
    expect(await find([line(11)], { needlessPoints: 10 })).toEqual([[13, 2, 10, 1]]);
  });

  it('keeps points that lie further off than 0.02 mm', async () => {
    expect(await find([line(51, 0.0199)])).toEqual([[53, 2, 50, 1]]);
    expect(await find([line(51, 0.0201)])).toEqual([]);
    expect(await find([line(51, 0.0201)], { simplifyMm: 0.03 })).toEqual([[53, 2, 50, 1]]);
  });

  it('counts line by line', async () => {
    expect(await find([line(51), line(60).replaceAll(' 50', ' 90'), 'M20 20H40'])).toEqual([[53 + 62, 4, 50, 2]]);
    const below = line(30).replaceAll(' 50', ' 90');
    expect(await find([line(30), below])).toEqual([]);
    // One line in two parts.
    expect(await find([line(30), below, 'M81 50V90'])).toEqual([[64, 4, 50, 1]]);
    expect(await find(['M20 50H50', line(30), 'M120 50H81'], { needlessPoints: 31 })).toEqual([[34, 2, 31, 1]]);
    // Runs of one path.
    expect(await find([`${line(51)}M50 90H60${line(60).replaceAll(' 50', ' 120')}`])).toEqual([[53 + 62, 4, 50, 1]]);
  });

  it('keeps curves and the corners of a closed outline', async () => {
    const side = Array.from({ length: 60 }, (_, i) => `H${51 + i}`).join('');
    expect(await find([`M50 50${side}V110H50Z`])).toEqual([[63, 4, 50, 1]]);
    const bows = Array.from({ length: 60 }, () => 'q.5 0 1 0').join('');
    expect(await find([`M50 50${bows}`])).toEqual([]);
  });
});
