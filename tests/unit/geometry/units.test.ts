// Units against published values.
import { describe, expect, it } from 'vitest';
import {
  MM_PER_INCH,
  MM_PER_PX,
  PT_PER_INCH,
  PX_PER_INCH,
  PX_PER_MM,
  PX_PER_UNIT,
} from '../../../src/geometry/units.js';
import published from '../../oracles/geometry/published.json' with { type: 'json' };

describe('units', () => {
  const { src, ...units } = published.units;
  for (const [unit, px] of Object.entries(units)) {
    it(`${src}: ${unit}`, () => {
      expect(PX_PER_UNIT[unit as keyof typeof PX_PER_UNIT]).toBe(px);
    });
  }

  it('lists no other', () => {
    expect(Object.keys(PX_PER_UNIT).sort()).toEqual(Object.keys(units).sort());
  });

  it('agree with each other', () => {
    expect(PX_PER_MM).toBe(PX_PER_UNIT.mm);
    expect(MM_PER_PX * PX_PER_INCH).toBe(MM_PER_INCH);
    expect(PX_PER_UNIT.pt * PT_PER_INCH).toBe(PX_PER_INCH);
    expect(PX_PER_MM * MM_PER_PX).toBeCloseTo(1, 15);
  });
});
