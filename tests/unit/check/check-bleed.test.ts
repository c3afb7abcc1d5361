// Bleed: closed forms for what is missing, and what is no fault.
import { describe, expect, it } from 'vitest';
import { checkBleed } from '../../../src/check/check-bleed.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import { carton, factsOf } from './carton-facts.js';

/** 100 x 60 mm. */
const BLANK = '<path d="M50 50H150V110H50Z"/>';
const QUARTER = (Math.PI * 3 * 3) / 4;

interface Missing {
  readonly areaMm2: number;
  readonly count: number;
  readonly measuredMm: number;
}

async function missing(
  print: string,
  { cut = BLANK, more = '', checks = {} }: { cut?: string; more?: string; checks?: Partial<CheckSettings> } = {},
): Promise<Missing> {
  const found = checkBleed(await factsOf(carton(print, cut, more), checks));
  const sum = (key: string): number => found.reduce((total, { data }) => total + Number(data[key]), 0);
  return {
    areaMm2: sum('areaMm2'),
    count: sum('count'),
    measuredMm: Math.min(Infinity, ...found.map(({ data }) => Number(data.measuredMm))),
  };
}

const NOTHING: Missing = { areaMm2: 0, count: 0, measuredMm: Infinity };
/** A square of 20 mm in the corner of the blank at a point, ending at the edge. */
function corner(x: number, y: number): string {
  const [dx, dy] = [x < 100 ? 20 : -20, y < 80 ? 20 : -20];
  return `M${x} ${y}h${dx}v${dy}h${-dx}Z`;
}

const panel = (d: string, fill = '#a33b4f'): string => `<path d="${d}" fill="${fill}"/>`;

describe('print that ends at the edge', () => {
  it('lacks the sides times the bleed, and a quarter circle at each corner', async () => {
    const { areaMm2, count, measuredMm } = await missing(panel('M50 50H150V110H50Z'));
    expect(areaMm2).toBeCloseTo(2 * 160 * 3 + 4 * QUARTER, 1);
    expect([count, measuredMm]).toEqual([1, 0]);
  });

  it('lacks what its own bleed leaves of the round-cornered one', async () => {
    const { areaMm2, measuredMm } = await missing(panel('M49 49H151V111H49Z'));
    // The corners of the bleed that print has reach out of no round corner: 1 mm square within 3 mm round.
    expect(areaMm2).toBeCloseTo(2 * 160 * 3 + 4 * QUARTER - (102 * 62 - 100 * 60), 1);
    expect(measuredMm).toBe(1);
  });

  it('lacks nothing where print reaches over the round corners', async () => {
    expect(
      await missing(panel('M47 50A3 3 0 0 1 50 47H150A3 3 0 0 1 153 50V110A3 3 0 0 1 150 113H50A3 3 0 0 1 47 110Z')),
    ).toEqual(NOTHING);
  });

  it('lacks a bleed along a window too, on the inside of it', async () => {
    const window = '<path d="M80 70H120V90H80Z"/>';
    const hole = panel('M47 47H153V113H47ZM80 70V90H120V70Z');
    const { areaMm2 } = await missing(hole, { cut: BLANK + window });
    expect(areaMm2).toBeCloseTo(40 * 20 - 34 * 14, 1);
    expect(await missing(panel('M47 47H153V113H47Z'), { cut: BLANK + window })).toEqual(NOTHING);
  });

  it('counts print that ends within the touch of the edge as touching it', async () => {
    const near = panel('M50.4 50.4H149.6V109.6H50.4Z');
    expect((await missing(near)).areaMm2).toBeCloseTo(2 * 160 * 3 + 4 * QUARTER, 1);
    expect(await missing(near, { checks: { touchMm: 0.3 } })).toEqual(NOTHING);
  });
});

describe('edges that print does not touch', () => {
  it('need no bleed', async () => {
    expect(await missing(panel('M60 60H140V100H60Z'))).toEqual(NOTHING);
    expect(await missing(panel('M47 47H100V113H47Z'))).toEqual(NOTHING);
  });

  it('leave the touched ones to be judged alone', async () => {
    const { areaMm2 } = await missing(panel('M50 50H100V110H50Z'));
    expect(areaMm2).toBeCloseTo((50 + 60 + 50) * 3 + 2 * QUARTER, 1);
  });

  it('meet print round every corner, wherever the outline begins', async () => {
    for (const [x, y] of [
      [50, 50],
      [150, 50],
      [150, 110],
      [50, 110],
    ] as const) {
      const { areaMm2, count } = await missing(panel(corner(x, y)));
      expect(areaMm2).toBeCloseTo(2 * 20 * 3 + QUARTER, 1);
      expect(count).toBe(1);
    }
  });

  it('need none where slanting print goes on across them', async () => {
    expect(await missing(panel('M30 30L40 30L180 170L170 170Z'))).toEqual(NOTHING);
    expect(await missing('<circle cx="100" cy="45" r="20" fill="#a33b4f"/>')).toEqual(NOTHING);
  });

  it('do not hide slanting print that stops at them', async () => {
    const { areaMm2, count } = await missing(panel('M80 50H100L110 60H90Z'));
    expect(areaMm2).toBeCloseTo(20 * 3, 0);
    expect(count).toBe(1);
  });
});

describe('what counts as print', () => {
  it('is not white, which takes away what lies below', async () => {
    const white = panel('M60 40H90V50H60Z', '#fff');
    const { areaMm2 } = await missing(panel('M47 47H153V113H47Z') + white);
    expect(areaMm2).toBeCloseTo(30 * 3, 1);
    expect(await missing(white + panel('M47 47H153V113H47Z'))).toEqual(NOTHING);
    expect(await missing(panel('M50 50H150V110H50Z', '#ffffff'))).toEqual(NOTHING);
  });

  it('is ink on white on ink, though all of it lies on the lowest', async () => {
    const stack =
      panel('M47 47H153V113H47Z') + panel('M60 40H90V55H60Z', '#fff') + panel('M65 50H85V55H75V54H65Z', '#123');
    expect((await missing(stack)).areaMm2).toBeCloseTo(20 * 3, 1);
  });

  it('is white of less than full opacity over ink', async () => {
    const veil = '<path d="M60 40H90V50H60Z" fill="#fff" fill-opacity="0.5"/>';
    expect(await missing(panel('M47 47H153V113H47Z') + veil)).toEqual(NOTHING);
  });

  it('is a stroke with its width, a gradient and a picture', async () => {
    const frame = '<path d="M50 50H150V110H50Z" fill="none" stroke="#123" stroke-width="6"/>';
    expect((await missing(frame)).areaMm2).toBe(0);
    const thin = frame.replace('"6"', '"2"');
    // The corners of a miter line are square; the bleed that is missing begins 1 mm out.
    expect((await missing(thin)).areaMm2).toBeCloseTo(2 * 160 * 3 + 4 * QUARTER - (102 * 62 - 100 * 60), 1);
    const dusk = '<linearGradient id="dusk"><stop stop-color="#123"/></linearGradient>';
    expect((await missing(panel('M50 50H150V110H50Z', 'url(#dusk)'), { more: dusk })).count).toBe(1);
    const photo = (x: number): string =>
      `<image x="${x}" y="47" width="${200 - 2 * x}" height="66" preserveAspectRatio="none" href="data:image/gif;base64,R0lGODlhAQABAAAAACw="/>`;
    expect((await missing(photo(50))).areaMm2).toBeCloseTo(2 * 60 * 3 + 4 * QUARTER, 1);
    expect(await missing(photo(47))).toEqual(NOTHING);
  });

  it('ends where a clip path cuts it', async () => {
    const clip = (d: string): string => `<clipPath id="edge"><path d="${d}"/></clipPath>`;
    const art = `<g clip-path="url(#edge)">${panel('M40 40H160V120H40Z')}</g>`;
    const { areaMm2 } = await missing(art, { more: clip('M50 50H150V110H50Z') });
    expect(areaMm2).toBeCloseTo(2 * 160 * 3 + 4 * QUARTER, 1);
    // The box of this one reaches over the edge, the path itself does not.
    const arrow = await missing(art, { more: clip('M50 50H150V110H50ZM44 44H45V45ZM156 116H155V115Z') });
    expect(arrow.areaMm2).toBeCloseTo(2 * 160 * 3 + 4 * QUARTER, 1);
    expect(await missing(art, { more: clip('M45 45H155V115H45Z') })).toEqual(NOTHING);
  });

  it('is not what an even-odd fill leaves out', async () => {
    const ring = '<path fill-rule="evenodd" d="M47 47H153V113H47ZM40 40H80V60H40Z" fill="#a33b4f"/>';
    // The corner is left out: 30 mm along the top, 10 mm down the left side stay bare and untouched.
    expect((await missing(ring)).areaMm2).toBe(0);
    const filled = ring.replace('evenodd', 'nonzero');
    expect(await missing(filled)).toEqual(NOTHING);
  });
});

describe('the ticket', () => {
  it('can ask for less, for none, and let a pass or a layer end at the edge', async () => {
    const flush = panel('M50 50H150V110H50Z');
    expect((await missing(flush, { checks: { bleedMm: 2 } })).areaMm2).toBeCloseTo(640 + Math.PI * 4, 1);
    expect(await missing(flush, { checks: { bleedMm: 0 } })).toEqual(NOTHING);
    expect(await missing(flush, { checks: { noBleed: ['print'] } })).toEqual(NOTHING);
    expect(await missing(flush, { checks: { noBleed: ['Print'] } })).toEqual(NOTHING);
    expect((await missing(flush, { checks: { noBleed: ['Cut'] } })).count).toBe(1);
  });
});

describe('a drawing that lacks an edge or print', () => {
  it('is not judged', async () => {
    expect(await missing(panel('M50 50H150V110H50Z'), { cut: '<path d="M10 10H40"/>' })).toEqual(NOTHING);
    expect(await missing('')).toEqual(NOTHING);
  });
});

describe('numbers out of all reason', () => {
  it('stop no check and hide no fault', async () => {
    const flush = panel('M50 50H150V110H50Z');
    const art = [
      panel('M60 60L1e30 5L1e300 1e300Z'),
      panel('M60 60L1e155 5L-1e155 1e150Z'),
      '<path d="M60 60H90" fill="none" stroke="#123" stroke-width="1e-30"/>',
      '<g transform="scale(1e200)"><path d="M1 1H2V2Z" fill="#123"/></g>',
      '<g transform="scale(0)"><path d="M1 1H2V2Z" fill="#123"/></g>',
    ];
    for (const one of art) expect((await missing(one + flush)).count).toBeGreaterThan(0);
    const veil =
      '<path d="M60 60L61 61L62 60L63 61" fill="none" stroke="#123" stroke-linecap="round" stroke-linejoin="round" stroke-width="1e30"/>';
    expect(await missing(veil + flush)).toEqual(NOTHING);
    await missing(flush, { cut: `${BLANK}<path d="M0 0H1e300V1e300Z"/>` });
  });
});
