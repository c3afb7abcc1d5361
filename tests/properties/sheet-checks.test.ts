// Checks of sheet, passes and pictures find what was built in, however the sheet is turned, mirrored and measured.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkArtboardSize } from '../../src/check/check-artboard-size.js';
import { checkBlankOnSheet } from '../../src/check/check-blank-on-sheet.js';
import type { Check } from '../../src/check/check-facts.js';
import { checkGripper } from '../../src/check/check-gripper.js';
import { checkHairline } from '../../src/check/check-hairline.js';
import { checkLineUnderArt } from '../../src/check/check-line-under-art.js';
import { checkMarksClear } from '../../src/check/check-marks-clear.js';
import { checkOffArtboard } from '../../src/check/check-off-artboard.js';
import { checkPassSizes } from '../../src/check/check-pass-sizes.js';
import { checkPictureResolution } from '../../src/check/check-picture-resolution.js';
import { checkSafeMargin } from '../../src/check/check-safe-margin.js';
import { checkSuspiciousSize } from '../../src/check/check-suspicious-size.js';
import { checkToolsOnPrint } from '../../src/check/check-tools-on-print.js';
import { readTicket } from '../../src/index.js';
import type { CheckSettings } from '../../src/model/check-settings.js';
import type { Ticket } from '../../src/model/ticket.js';
import { DEFAULT_TICKET } from '../../src/ticket/default-ticket.js';
import { factsOf } from '../unit/check/carton-facts.js';
import { anyPlacing, drawArt, type Placing, quarterPlacing, type Side, turnSide, turnSize } from './move-art.js';

const LINE = 'fill="none" stroke="#d6336c" stroke-width=".2"';
const INK = 'fill="#345"';

/** A rectangle around a middle. */
const rect = (x: number, y: number, width: number, height: number, more: string = INK): string =>
  `<path d="M${x - width / 2} ${y - height / 2}h${width}v${height}h${-width}Z" ${more}/>`;

const CUT = ['Cut', rect(0, 0, 100, 60, LINE)] as const;

/** Passes of which creasing runs after print. */
const CREASE_LAST = readTicket({
  pinbar: 1,
  passes: [
    { name: 'print', role: 'print' },
    { name: 'creasing', role: 'creasing' },
    { name: 'cutting', role: 'cutting' },
  ],
});

/** A GIF of 100 x 100 pixels, of which nothing but the size is read. */
const GIF = 'data:image/gif;base64,R0lGODlhZABkAAAAAA==';

interface Wanted {
  readonly code: string;
  readonly count?: number;
  readonly value?: number;
}

/** Holds what checks find against what was built in: codes in any order, counts, and measured values to a ten-thousandth. */
async function expectFound(
  checks: readonly Check[],
  drawing: { readonly svg: string; readonly settings?: Partial<CheckSettings>; readonly ticket?: Partial<Ticket> },
  wanted: readonly Wanted[],
): Promise<void> {
  const marks = { ...DEFAULT_TICKET.marks, wanted: false };
  const facts = await factsOf(drawing.svg, drawing.settings, { ticket: { marks, ...drawing.ticket } });
  const found = checks
    .flatMap((check) => check(facts))
    .map(({ code, data }) => ({ code: code.replace('check/', ''), data }))
    .sort((p, q) => (p.code < q.code ? -1 : 1));
  expect(found.map(({ code }) => code)).toEqual(wanted.map(({ code }) => code));
  for (const [place, { count, value }] of wanted.entries()) {
    const { data } = found[place]!;
    if (count !== undefined) expect(data.count).toBe(count);
    if (value === undefined) continue;
    const measured = Number(data.ratio ?? data.measuredMm ?? data.measuredPpi);
    expect(Math.abs(measured - value)).toBeLessThan(data.measuredPpi === undefined ? 0.001 : 0.051);
  }
}

const side: fc.Arbitrary<Side> = fc.constantFrom('top', 'right', 'bottom', 'left');
const mm = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(100 * min), max: Math.round(100 * max) }).map((value) => value / 100);

/** A point off the middle towards a side. */
function towards(to: Side, [width, height]: readonly [number, number], inset: number): readonly [number, number] {
  const [x, y] = [width / 2 - inset, height / 2 - inset];
  return ({ top: [0, -y], bottom: [0, y], left: [-x, 0], right: [x, 0] } as const)[to];
}

const SIZE = [300, 200] as const;

describe('a quarter turn of the sheet, its gripper with it', () => {
  const run = async (
    values: fc.Arbitrary<readonly [Side, number]>,
    property: (to: Side, value: number, how: Placing) => Promise<void>,
  ): Promise<void> =>
    fc.assert(
      fc.asyncProperty(values, quarterPlacing, ([to, value], how) => property(to, value, how)),
      { numRuns: 40 },
    );

  it('leaves what reaches into the gripper, and by how much', async () => {
    await run(fc.tuple(side, mm(-6, 9.5)), async (to, by, how) => {
      // A square of 10 mm whose outer edge lies deep in a gripper of 12 mm, or clear of it where the value is below zero.
      const [x, y] = towards(to, SIZE, 12 - by + 5);
      const settings = { gripperMm: 12, gripperSide: turnSide(to, how), artboardIs: 'sheet' } as const;
      const svg = drawArt([['Print', rect(x, y, 10, 10)], CUT], turnSize(SIZE, how), how);
      const wanted = by > 0.01 ? [{ code: 'art-in-gripper', count: 1, value: by }] : [];
      // At the tolerance itself the last digits of the turn decide.
      if (Math.abs(by - 0.01) < 0.001) return;
      await expectFound([checkGripper], { svg, settings }, wanted);
    });
  });

  it('leaves what reaches into the side margins', async () => {
    await run(fc.tuple(side, mm(0.02, 4)), async (to, by, how) => {
      const [x, y] = towards(to, SIZE, 5 - by + 5);
      const svg = drawArt([['Print', rect(x, y, 10, 10)], CUT], turnSize(SIZE, how), how);
      const wanted = [{ code: 'art-in-gripper', count: 1, value: by }];
      await expectFound([checkGripper], { svg, settings: { sideMarginMm: 5, artboardIs: 'sheet' } }, wanted);
    });
  });

  it('leaves how far a line reaches over the edge', async () => {
    await run(fc.tuple(side, mm(-5, 20)), async (to, by, how) => {
      const [x, y] = towards(to, SIZE, 15 - by);
      const svg = drawArt([['Cut', rect(x, y, 30, 30, LINE)]], turnSize(SIZE, how), how);
      const wanted = by > 0.011 ? [{ code: 'blank-off-sheet', count: 1, value: by }] : [];
      if (Math.abs(by - 0.01) < 0.001) return;
      await expectFound([checkBlankOnSheet], { svg }, wanted);
    });
  });

  it('leaves how far art lies off the artboard', async () => {
    await run(fc.tuple(side, mm(-5, 90)), async (to, by, how) => {
      const [x, y] = towards(to, SIZE, -by - 5);
      const svg = drawArt([['Print', rect(0, 0, 50, 50) + rect(x, y, 10, 10)], CUT], turnSize(SIZE, how), how);
      if (Math.abs(by) < 0.01) return;
      await expectFound([checkOffArtboard], { svg }, by > 0 ? [{ code: 'off-artboard', count: 1, value: by }] : []);
    });
  });

  it('leaves whether the artboard fits the material', async () => {
    await run(fc.tuple(side, mm(-4, 4)), async (to, by, how) => {
      // Gripper and a margin take 20 mm of the side they lie along, margins 10 mm of the other.
      const gripperSide = turnSide(to, how);
      const upright = to === 'top' || to === 'bottom';
      const material = [SIZE[0] + (upright ? 10 : 20) - by, SIZE[1] + (upright ? 20 : 10)] as const;
      const [materialWidthMm, materialHeightMm] = turnSize(material, how);
      const settings = { materialWidthMm, materialHeightMm, gripperMm: 15, sideMarginMm: 5, gripperSide } as const;
      const svg = drawArt([CUT], turnSize(SIZE, how), how);
      if (Math.abs(by - 0.05) < 0.01) return;
      const wanted = by > 0.05 ? [{ code: 'artboard-too-large' }] : [];
      await expectFound([checkArtboardSize], { svg, settings }, wanted);
    });
  });

  it('leaves the ratio of a size that units were mixed up in', async () => {
    await run(fc.tuple(side, fc.constantFrom(0.75, 10, 25.4, 1)), async (_, factor, how) => {
      const [width, height] = turnSize(SIZE, how);
      const settings = { artboardWidthMm: width / factor, artboardHeightMm: height / factor };
      const svg = drawArt([CUT], [width, height], how);
      const wanted = factor === 1 ? [] : [{ code: 'size-suspicious', value: factor }];
      await expectFound([checkSuspiciousSize], { svg, settings }, wanted);
    });
  });

  it('leaves that a sheet set up as the artboard is as large as it', async () => {
    await run(fc.tuple(side, fc.constant(0)), async (_, __, how) => {
      const svg = drawArt([['Print', rect(0, 0, 50, 50)], CUT], turnSize(SIZE, how), how);
      await expectFound([checkPassSizes, checkSuspiciousSize, checkArtboardSize], { svg }, []);
    });
  });
});

describe('any turn', () => {
  const run = async (
    values: fc.Arbitrary<number>,
    property: (value: number, how: Placing) => Promise<void>,
    numRuns: number = 40,
  ): Promise<void> => fc.assert(fc.asyncProperty(values, anyPlacing, property), { numRuns });

  /** An artboard that holds it however it is turned. */
  const board = [300, 300] as const;

  it('leaves the pixels to the inch of a picture', async () => {
    await run(mm(40, 600), async (ppi, how) => {
      const size = (100 * 25.4) / ppi;
      const picture = `<image x="${-size / 2}" y="${-size / 2}" width="${size}" height="${size}" href="${GIF}"/>`;
      const svg = drawArt([['Print', picture], CUT], board, how);
      const code = ppi < 100 ? 'picture-too-coarse' : ppi < 200 ? 'picture-coarse' : 'picture-oversized';
      const fits = ppi >= 200 && ppi <= 450;
      await expectFound(
        [checkPictureResolution],
        { svg, settings: { mostPpi: 450 } },
        fits ? [] : [{ code, value: ppi }],
      );
    });
  });

  it('leaves a picture that has just the pixels it needs', async () => {
    await run(fc.constantFrom(200, 450), async (ppi, how) => {
      const size = (100 * 25.4) / ppi;
      const picture = `<image x="10" y="-7" width="${size}" height="${size}" href="${GIF}"/>`;
      const svg = drawArt([['Print', picture], CUT], board, how);
      await expectFound([checkPictureResolution], { svg, settings: { mostPpi: 450 } }, []);
    });
  });

  it('leaves the width of a line, and one that is just wide enough', async () => {
    await run(mm(0.01, 0.2), async (width, how) => {
      const line = `<path d="M-20 0L20 8" fill="none" stroke="#123" stroke-width="${width}"/>`;
      const svg = drawArt([['Print', line], CUT], board, how);
      const wanted = width < 0.1 ? [{ code: 'hairline', count: 1, value: width }] : [];
      await expectFound([checkHairline], { svg, settings: { hairlineMm: 0.1 } }, wanted);
    });
  });

  it('leaves the clear distance of small art, and one that is just kept', async () => {
    await run(mm(0.1, 5), async (distance, how) => {
      const svg = drawArt([['Print', rect(50 - distance - 4, 5, 8, 8)], CUT], board, how);
      const wanted = distance < 3 ? [{ code: 'near-edge', count: 1, value: distance }] : [];
      await expectFound([checkSafeMargin], { svg }, wanted);
    });
  });

  it('leaves which marks are covered, and which stand in a blank', async () => {
    await run(fc.integer({ min: 0, max: 3 }), async (which, how) => {
      const [inBlank, isCovered] = [(which & 1) === 1, (which & 2) === 2];
      const [x, y] = inBlank ? [-20, 0] : [40, 40];
      const mark = `<circle cx="${x}" cy="${y}" r="3" ${INK}/>`;
      // A long copy 7 mm beside it: turned, the box around the copy covers the mark, the copy does not.
      const copies = rect(x, y + 14, 120, 8) + (isCovered ? rect(x, y, 8, 8) : '');
      const svg = drawArt([['Marks', mark], ['Print', copies], CUT], board, how);
      const wanted = [
        ...(isCovered ? [{ code: 'marks-covered', count: 1 }] : []),
        ...(inBlank ? [{ code: 'marks-in-blank', count: 1 }] : []),
      ];
      await expectFound([checkMarksClear], { svg, settings: { markLayers: ['Marks'] } }, wanted);
    });
  });

  it('leaves over how much of a line art lies', async () => {
    await run(mm(1, 60), async (size, how) => {
      const line = `<path d="M-70 3H70" ${LINE}/>`;
      const svg = drawArt(
        [
          ['Cut', line],
          ['Print', rect(5, 0, size, 20)],
        ],
        board,
        how,
      );
      await expectFound([checkLineUnderArt], { svg }, [{ code: 'line-under-art', count: 1, value: size }]);
    });
  });

  it('leaves which creases run over print', async () => {
    await run(mm(1, 30), async (gap, how) => {
      const ticket = { passes: CREASE_LAST.passes };
      // Print beside a crease: turned, the boxes around both meet, they do not.
      const crease = `<path d="M0 -30V30" ${LINE}/>`;
      const svg = drawArt([['Print', rect(gap + 5, 0, 10, 50)], ['Crease', crease], CUT], board, how);
      await expectFound([checkToolsOnPrint], { svg, ticket }, []);
      const across = drawArt([['Print', rect(0, 0, 2 * gap, 50)], ['Crease', crease], CUT], board, how);
      await expectFound([checkToolsOnPrint], { svg: across, ticket }, [{ code: 'tool-on-print', count: 1 }]);
    });
  });
});
