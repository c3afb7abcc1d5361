// Marks stand clear of what is drawn, tell a turned sheet from a straight one, and ask for room where there is none.
import { describe, expect, it } from 'vitest';
import { drawMarks } from '../../../src/mark/draw-marks.js';
import { growArtboard } from '../../../src/mark/grow-artboard.js';
import { planMarks } from '../../../src/mark/plan-marks.js';
import type { Artboard, Artwork } from '../../../src/model/artwork.js';
import type { Assignment } from '../../../src/model/pass.js';
import type { Ticket } from '../../../src/model/ticket.js';

const MM = 25.4 / 96;

const MARKS = {
  wanted: true,
  discDiameterMm: 6,
  crossSizeMm: 6,
  lineWidthMm: 0.25,
  offsetMm: 3,
  cornerLengthMm: 5,
  passes: [],
  label: true,
};

function makeTicket(change: Partial<Ticket>): Ticket {
  return { marks: MARKS, marginMm: 0, userUnitsPerInch: null, ...change } as Ticket;
}

/** A board of some mm with one shape drawn at a box in mm. */
function makeJob(boardMm: readonly [number, number], drawnMm: readonly [number, number, number, number]) {
  const artboard: Artboard = {
    width: boardMm[0] / MM,
    height: boardMm[1] / MM,
    viewBox: [0, 0, boardMm[0], boardMm[1]],
    preserveAspectRatio: 'xMidYMid meet',
    matrix: [1 / MM, 0, 0, 1 / MM, 0, 0],
    statedWidth: `${boardMm[0]}mm`,
    statedHeight: `${boardMm[1]}mm`,
    sizeIsSure: true,
    mmPerPx: MM,
  };
  const [x0, y0, x1, y1] = drawnMm.map((value) => value / MM) as [number, number, number, number];
  const artwork = {
    artboard,
    shapes: [{ drawnBox: { x0, y0, x1, y1 }, drawnBound: { x0, y0, x1, y1 } }],
    marks: -1,
    usesPercent: false,
  } as unknown as Artwork;
  const assignment = {
    passes: [{ order: 1, name: 'print', role: 'print' }],
    placements: [{ shape: 0, pass: 0 }],
  } as unknown as Assignment;
  return { artwork, assignment };
}

describe('planMarks', () => {
  const { artwork, assignment } = makeJob([200, 160], [40, 40, 160, 120]);
  const { plan, findings } = planMarks(artwork, assignment, makeTicket({}));

  it('puts the frame 12 mm outside what is drawn: offset 3, quiet 1.5, disc 6, quiet 1.5', () => {
    expect(findings).toEqual([]);
    expect(plan?.frameMm).toEqual([28, 28, 172, 132]);
  });

  it('keeps every disc and cross clear of what is drawn by the offset', () => {
    for (const [x, y] of [...plan!.discsMm, ...plan!.crossesMm]) {
      const clear = x + 3 <= 37 || x - 3 >= 163 || y + 3 <= 37 || y - 3 >= 123;
      expect(clear, `${x}, ${y}`).toBe(true);
    }
  });

  it('is a set of points that no half turn and no flip maps onto itself', () => {
    const key = (points: readonly (readonly number[])[]): string =>
      points
        .map(([x, y]) => `${x!.toFixed(3)} ${y!.toFixed(3)}`)
        .sort()
        .join(';');
    const own = key(plan!.discsMm);
    const [cx, cy] = [100, 80];
    expect(key(plan!.discsMm.map(([x, y]) => [2 * cx - x, 2 * cy - y]))).not.toBe(own);
    expect(key(plan!.discsMm.map(([x, y]) => [2 * cx - x, y]))).not.toBe(own);
    expect(key(plan!.discsMm.map(([x, y]) => [x, 2 * cy - y]))).not.toBe(own);
  });

  it('asks for the margin that is missing, and has room with it', () => {
    const tight = makeJob([130, 90], [5, 5, 125, 85]);
    const asked = planMarks(tight.artwork, tight.assignment, makeTicket({}));
    expect(asked.plan).toBeNull();
    expect(asked.findings.map((item) => item.code)).toEqual(['mark/no-room']);
    const marginMm = asked.findings[0]!.data.marginMm as number;
    expect(marginMm).toBe(7.5);
    const grown = planMarks(tight.artwork, tight.assignment, makeTicket({ marginMm }));
    expect(grown.findings).toEqual([]);
    expect(grown.plan?.frameMm).toEqual([0.5, 0.5, 144.5, 104.5]);
    const less = planMarks(tight.artwork, tight.assignment, makeTicket({ marginMm: marginMm - 0.5 }));
    expect(less.findings.map((item) => item.code)).toEqual(['mark/no-room']);
  });

  it('leaves marks out only where asked, and says so', () => {
    const without = planMarks(artwork, assignment, makeTicket({ marks: { ...MARKS, wanted: false } }));
    expect(without.plan).toBeNull();
    expect(without.findings.map((item) => item.code)).toEqual(['mark/left-out']);
  });

  it('refuses to grow a board that lengths in percent depend on', () => {
    const percent = { ...artwork, usesPercent: true };
    const refused = planMarks(percent, assignment, makeTicket({ marginMm: 5 }));
    expect(refused.findings.map((item) => item.code)).toEqual(['mark/percent-lengths']);
  });
});

describe('growArtboard', () => {
  const { artwork } = makeJob([200, 160], [40, 40, 160, 120]);

  it('changes nothing where nothing is asked', () => {
    expect(growArtboard(artwork.artboard, 0, false)).toEqual({ width: null, height: null, viewBox: null });
  });

  it('grows in the unit of the file, and the viewBox by the same length', () => {
    expect(growArtboard(artwork.artboard, 10, false)).toEqual({
      width: '220mm',
      height: '180mm',
      viewBox: '-10 -10 220 180',
    });
    const inches = {
      ...artwork.artboard,
      statedWidth: '8in',
      statedHeight: '4in',
      width: 768,
      height: 384,
      viewBox: null,
      matrix: [1, 0, 0, 1, 0, 0] as const,
    };
    expect(growArtboard(inches, 25.4, false)).toEqual({ width: '10in', height: '6in', viewBox: '-96 -96 960 576' });
  });

  it('restates a size without a unit in mm', () => {
    const plain = {
      ...artwork.artboard,
      statedWidth: '720',
      statedHeight: '360',
      width: 720,
      height: 360,
      viewBox: null,
      matrix: [1, 0, 0, 1, 0, 0] as const,
      mmPerPx: 25.4 / 72,
    };
    expect(growArtboard(plain, 0, true)).toEqual({ width: '254mm', height: '127mm', viewBox: '0 0 720 360' });
  });
});

describe('drawMarks', () => {
  const { artwork, assignment } = makeJob([200, 160], [40, 40, 160, 120]);
  const plan = planMarks(artwork, assignment, makeTicket({})).plan!;
  const draw = (role: 'cutting' | 'print'): string =>
    drawMarks(plan, MARKS, { pass: { order: 3, name: 'cut', role }, colour: '#c2185b', label: '3 CUT' });

  it('gives a toolpath pass open lines alone: no fill, no closed path, no label', () => {
    const group = draw('cutting');
    expect(group).not.toMatch(/[zZ]"/);
    expect(group).not.toContain('data-mark="label"');
    expect([...group.matchAll(/(?<![-\w])fill:([^!]*)/g)].map((match) => match[1])).toEqual(['none', 'none', 'none']);
    expect(group).toContain('stroke:#c2185b!important');
  });

  it('gives a surface pass full discs and its name', () => {
    const group = draw('print');
    expect(group).toContain('data-mark="label"');
    expect(group).toMatch(/data-mark="disc" d="[^"]*Z"/);
  });
});
