// What reaches into gripper and margins: by how much, by hand.
import { describe, expect, it } from 'vitest';
import { checkGripper } from '../../../src/check/check-gripper.js';
import { briefly } from './die-facts.js';
import { readFacts, type Wishes } from './read-facts.js';

/** The artboard of 200 x 150 mm, with art from 67 to 133 and from 52 to 98 mm and a mark from 20 to 28 mm on its left. */
async function find(checks: object, more: Wishes = {}): Promise<readonly unknown[]> {
  return briefly(
    checkGripper(await readFacts({ marks: { wanted: false }, ...more, checks: { markLayers: [], ...checks } })),
  );
}

describe('checkGripper', () => {
  it('finds art in the strip along each side, once past it', async () => {
    const strips = [
      ['top', 52],
      ['bottom', 52],
      ['left', 20],
      ['right', 67],
    ] as const;
    for (const [gripperSide, clear] of strips) {
      expect(await find({ gripperMm: clear, gripperSide })).toEqual([]);
      expect((await find({ gripperMm: clear + 0.1, gripperSide }))[0]).toEqual(['art-in-gripper', 1, 0.1]);
    }
  });

  it('tells marks of the designer apart from art', async () => {
    const checks = { gripperMm: 21, gripperSide: 'left' };
    expect(await find({ ...checks, markLayers: ['Marks'] })).toEqual([['marks-in-gripper', 1, 1]]);
    expect(await find(checks)).toEqual([['art-in-gripper', 1, 1]]);
  });

  it('looks at the margins of all sides', async () => {
    expect(await find({ sideMarginMm: 20 })).toEqual([]);
    expect(await find({ sideMarginMm: 20.5 })).toEqual([['art-in-gripper', 1, 0.5]]);
    // The wider of the two.
    expect(await find({ sideMarginMm: 21, gripperMm: 5, gripperSide: 'left' })).toEqual([['art-in-gripper', 1, 1]]);
  });

  it('counts the margin of the sheet in', async () => {
    expect(await find({ gripperMm: 25, gripperSide: 'left' }, { marginMm: 5 })).toEqual([]);
    expect(await find({ gripperMm: 25.2, gripperSide: 'left' }, { marginMm: 5 })).toEqual([['art-in-gripper', 1, 0.2]]);
  });

  it('is silent where the artboard is what the machine reaches, or no strip is said', async () => {
    const checks = { gripperMm: 30, gripperSide: 'left', materialWidthMm: 300 };
    expect(await find(checks)).toEqual([]);
    expect(await find({ ...checks, artboardIs: 'sheet' })).toEqual([['art-in-gripper', 1, 10]]);
    expect(await find({})).toEqual([]);
  });
});
