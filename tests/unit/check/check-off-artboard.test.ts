// Shapes off the artboard.
import { describe, expect, it } from 'vitest';
import { checkOffArtboard } from '../../../src/check/check-off-artboard.js';
import { DEFAULT_TICKET } from '../../../src/ticket/default-ticket.js';
import { carton, factsOf } from './carton-facts.js';

const BLANK = '<path d="M50 50H150V110H50Z"/>';
const GROUND = '<path d="M47 47H153V113H47Z" fill="#c9a227"/>';

async function find(print: string) {
  const marks = { ...DEFAULT_TICKET.marks, wanted: false };
  return checkOffArtboard(await factsOf(carton(print, BLANK), {}, { ticket: { marks } }));
}

describe('checkOffArtboard', () => {
  it('measures the clear distance, corner to corner too', async () => {
    const far = async (d: string): Promise<readonly unknown[]> =>
      (await find(`${GROUND}<path d="${d}" fill="#123"/>`)).map(({ data }) => data.measuredMm);
    expect(await far('M210 50H220V60H210Z')).toEqual([10]);
    expect(await far('M-13 -14H-3V-4H-13Z')).toEqual([5]);
    expect(await far('M190 50H220V60H190Z')).toEqual([]);
  });
});
