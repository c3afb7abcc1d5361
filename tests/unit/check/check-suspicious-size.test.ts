// Sizes that look as if units were mixed up, and those that do not.
import { describe, expect, it } from 'vitest';
import { checkSuspiciousSize } from '../../../src/check/check-suspicious-size.js';
import { readFacts, type Wishes } from './read-facts.js';

async function complain(width: string, height: string, checks: Wishes['checks'] = {}) {
  const facts = await readFacts({ checks: { smallestMm: 0, ...checks }, marks: { wanted: false } }, [
    ['width="200mm" height="150mm"', `width="${width}" height="${height}"`],
  ]);
  return checkSuspiciousSize(facts);
}

describe('a scale of the drawing', () => {
  // One unit of the drawing, 200 x 150 of them, in a unit that somebody draws in: mm, cm, in, pt, px, a tenth.
  it.each([
    ['200mm', '150mm'],
    ['200cm', '150cm'],
    ['20cm', '15cm'],
    ['20in', '15in'],
    ['200pt', '150pt'],
    ['52.9167mm', '39.6875mm'],
    ['100mm', '75mm'],
    ['20mm', '15mm'],
  ])('of %s x %s is somebody’s', async (width, height) => {
    expect(await complain(width, height)).toEqual([]);
  });

  it.each([
    ['150mm', '112.5mm', 0.75],
    ['266.6667mm', '200mm', 4 / 3],
    ['39.6875mm', '29.765625mm', 0.75],
  ])('of %s x %s is nobody’s: 72 and 96 to the inch were mixed up', async (width, height, ratio) => {
    const found = await complain(width, height);
    expect(found.map(({ code }) => code)).toEqual(['check/size-suspicious']);
    expect(found[0]!.data.ratio).toBeCloseTo(ratio, 5);
  });

  it('that is not sure is left to the finding that says so', async () => {
    expect(await complain('150px', '112.5px')).toEqual([]);
  });
});

describe('a size that the ticket asks for', () => {
  const asked = { artboardWidthMm: 200, artboardHeightMm: 150 };

  it.each([
    ['150mm', '112.5mm', 'at 96 units to the inch was taken for 72'],
    ['266.67mm', '200mm', 'at 96 units to the inch was taken for 72'],
    ['2000mm', '1500mm', 'centimetres'],
    ['20mm', '15mm', 'centimetres'],
    ['5080mm', '3810mm', 'inches'],
    ['7.874mm', '5.9055mm', 'inches'],
    ['52.917mm', '39.6875mm', '96 to the inch'],
    ['70.556mm', '52.917mm', 'points'],
    ['566.93mm', '425.2mm', 'points'],
  ])('but is %s x %s: %s', async (width, height, cause) => {
    const [found] = await complain(width, height, asked);
    expect(found!.message).toContain(', as when');
    expect(found!.message).toContain(cause);
  });

  it('is told without a cause where no unit explains it', async () => {
    const found = await complain('210mm', '150mm', asked);
    expect(found).toHaveLength(1);
    expect(found[0]!.message).toBe('The artboard is 210 mm wide; the ticket says 200 mm. That is 1.05 times as much.');
  });

  it('may be off by rounding, and one side alone may be asked for', async () => {
    expect(await complain('200.9mm', '150.7mm', asked)).toEqual([]);
    expect(await complain('199.1mm', '149.3mm', asked)).toEqual([]);
    expect(await complain('201.1mm', '150mm', asked)).toHaveLength(1);
    const [found] = await complain('200mm', '15mm', { artboardHeightMm: 150 });
    expect(found!.message).toContain('15 mm high');
  });
});

describe('all that is drawn', () => {
  it('may be as long as the ticket says, and no longer', async () => {
    // The marks of the sheet reach from 20 to the blank's print at 133.
    expect(await complain('200mm', '150mm', { largestMm: 113 })).toEqual([]);
    const [found] = await complain('200mm', '150mm', { largestMm: 112.9 });
    expect(found!.data).toEqual({ measuredMm: 113, allowedMm: 112.9 });
    expect(found!.remedy).toContain('a tenth of the size it would be 11.3 mm');
  });

  it('may be as short as the ticket says, and no shorter', async () => {
    expect(await complain('200mm', '150mm', { smallestMm: 113 })).toEqual([]);
    const [found] = await complain('200mm', '150mm', { smallestMm: 113.1 });
    expect(found!.data).toEqual({ measuredMm: 113, allowedMm: 113.1 });
  });
});
