// The artboard against the material: what gripper and margins leave of it, by hand.
import { describe, expect, it } from 'vitest';
import { checkArtboardSize } from '../../../src/check/check-artboard-size.js';
import { readFacts } from './read-facts.js';

/** Allowed width and height, and whether a quarter turn helps; null where the artboard of 200 x 150 mm fits. */
async function judge(checks: object, marginMm: number = 0): Promise<readonly unknown[] | null> {
  const [found] = checkArtboardSize(await readFacts({ checks, marginMm, marks: { wanted: false } }));
  if (found === undefined) return null;
  const { allowedWidthMm, allowedHeightMm, fitsTurned } = found.data;
  return [allowedWidthMm, allowedHeightMm, fitsTurned];
}

describe('checkArtboardSize', () => {
  it('is silent where no material is said', async () => {
    expect(await judge({})).toBeNull();
    expect(await judge({ gripperMm: 12, sideMarginMm: 5 })).toBeNull();
  });

  it('takes gripper and margins off the material', async () => {
    const margins = { gripperMm: 12, sideMarginMm: 5, gripperSide: 'bottom' };
    expect(await judge({ materialWidthMm: 210, materialHeightMm: 167, ...margins })).toBeNull();
    expect(await judge({ materialWidthMm: 209.9, materialHeightMm: 167, ...margins })).toEqual([199.9, 150, false]);
    expect(await judge({ materialWidthMm: 210, materialHeightMm: 166.9, ...margins })).toEqual([200, 149.9, false]);
    const left = { ...margins, gripperSide: 'left' };
    expect(await judge({ materialWidthMm: 217, materialHeightMm: 160, ...left })).toBeNull();
    expect(await judge({ materialWidthMm: 216.9, materialHeightMm: 160, ...left })).toEqual([199.9, 150, false]);
  });

  it('takes the wider of gripper and margin on its side', async () => {
    const checks = { gripperMm: 3, sideMarginMm: 5, gripperSide: 'top', materialWidthMm: 210, materialHeightMm: 160 };
    expect(await judge(checks)).toBeNull();
    expect(await judge({ ...checks, materialHeightMm: 159.9 })).toEqual([200, 149.9, false]);
  });

  it('lets sizes be that differ by less than 0.05 mm', async () => {
    expect(await judge({ materialWidthMm: 199.951 })).toBeNull();
    expect(await judge({ materialWidthMm: 199.949 })).toEqual([199.949, null, true]);
  });

  it('sees where a quarter turn helps', async () => {
    expect(await judge({ materialWidthMm: 160, materialHeightMm: 220 })).toEqual([160, 220, true]);
    expect(await judge({ materialWidthMm: 149, materialHeightMm: 220 })).toEqual([149, 220, false]);
  });

  it('counts the margin in, and lets the artboard be the sheet', async () => {
    expect(await judge({ materialWidthMm: 210 }, 5)).toBeNull();
    expect(await judge({ materialWidthMm: 209 }, 5)).toEqual([209, null, true]);
    const sheet = { materialWidthMm: 200, materialHeightMm: 150, gripperMm: 12, sideMarginMm: 5 };
    expect(await judge({ ...sheet, artboardIs: 'sheet' })).toBeNull();
    expect(await judge({ ...sheet, artboardIs: 'reach' })).toEqual([190, 133, false]);
  });
});
