// Extents of strokes: held against the ink of a browser at 8 px to the unit, and against the stroke boxes that its transforms use.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { resolve } from '../../../src/resolve/resolve.js';
import { readSource } from '../../../src/source/read-source.js';
import { describeWith } from '../../house/witnesses.js';
import { openBrowser } from './ask-browser.js';
import { closedFormBox } from './closed-form-box.js';
import { BOARD, generateStrokes, MAGNIFIED, type Stroke, writeStroke } from './generate-strokes.js';

/** Pixels to the unit. */
const PER_UNIT = 8;
/** The pixel that an edge falls into has ink, and antialiasing may reach half of the next. */
const INK_TOLERANCE = 1.5 / PER_UNIT;
/** Of straight strokes, units: single precision, of the size of the board. */
const STRAIGHT_TOLERANCE = 1e-6 * BOARD;
/** Of bent ones, units: the browser outlines curves in steps. */
const BENT_TOLERANCE = 1e-3;
/** Share of the radius by which cubics may miss an arc. */
const ARC_TOLERANCE = 1e-3;

/** Strokes whose box the browser gets wrong, with the reason; `edge` is the side, `sampled` what four million samples give. */
const FAULTS: ReadonlyMap<number, { readonly why: string; readonly edge: number; readonly sampled: number }> = new Map([
  [77, { why: 'The browser steps over the sharp bend of the last curve.', edge: 1, sampled: 87.41124005 }],
]);

/** Of each stroke: ink in px on the board, and the stroke box of the magnified path in its own user units. */
interface StrokeAnswers {
  readonly browser: string;
  readonly ink: readonly (readonly number[])[];
  readonly boxes: readonly (readonly number[])[];
}

const STROKES = generateStrokes();
const RECORD = join(import.meta.dirname, 'recorded/strokes.json');

async function askStrokes(): Promise<StrokeAnswers> {
  const { browser, page } = await openBrowser();
  try {
    const texts = STROKES.map((stroke) => writeStroke(stroke, PER_UNIT));
    const elements = STROKES.map(({ magnified }) => magnified);
    const ink = await page.evaluate<number[][]>(`askInk(${JSON.stringify(texts)}, ${BOARD * PER_UNIT})`);
    const boxes = await page.evaluate<number[][]>(`askStrokeBoxes(${JSON.stringify(elements)})`);
    return { browser: browser.version(), ink, boxes };
  } finally {
    await browser.close();
  }
}

function measureStroke(stroke: Stroke, box: 'drawnBox' | 'strokeBox'): readonly number[] {
  const { shapes } = resolve(readSource(encodeUtf8(writeStroke(stroke, 1))), { userUnitsPerInch: 96 });
  const { x0, y0, x1, y1 } = shapes[0]![box];
  return [x0, y0, x1, y1];
}

function farthest(theirs: readonly number[], ours: readonly number[]): number {
  return Math.max(...theirs.map((side, place) => Math.abs(side - ours[place]!)));
}

function allowedOf(stroke: Stroke): number {
  if (stroke.isStraight) return STRAIGHT_TOLERANCE;
  const data = /d="([^"]*)"/.exec(stroke.element)![1]!;
  return BENT_TOLERANCE + ARC_TOLERANCE * closedFormBox(data)!.radius;
}

function judgeStrokes(answers: StrokeAnswers): void {
  const inks = STROKES.map((stroke, at) => {
    const ink = answers.ink[at]!;
    expect(Math.min(...ink), `ink of ${at} at the rim`).toBeGreaterThan(0);
    expect(Math.max(...ink), `ink of ${at} at the rim`).toBeLessThan(BOARD * PER_UNIT);
    const theirs = ink.map((side) => side / PER_UNIT);
    return { at, theirs, ours: measureStroke(stroke, 'drawnBox') };
  });
  expect(inks.filter(({ theirs, ours }) => farthest(theirs, ours) > INK_TOLERANCE)).toEqual([]);
  const boxes = STROKES.map((stroke, at) => {
    const theirs = answers.boxes[at]!.map((side) => side / MAGNIFIED);
    const ours = measureStroke({ ...stroke, transform: '' }, 'strokeBox');
    return { at, theirs, ours, isWrong: farthest(theirs, ours) > allowedOf(stroke) };
  });
  expect(boxes.filter(({ at, isWrong }) => isWrong && !FAULTS.has(at))).toEqual([]);
  for (const [at, { edge, sampled }] of FAULTS) expect(boxes[at]!.ours[edge]).toBeCloseTo(sampled, 7);
}

describeWith('chromium', 'the strokes of a browser', () => {
  it('reach as far as ours', { timeout: 120_000 }, async () => {
    const answers = await askStrokes();
    if (process.env.ORACLES === 'record') writeFileSync(RECORD, `${JSON.stringify(answers)}\n`);
    judgeStrokes(answers);
  });
});

describe('recorded strokes of a browser', () => {
  it('reach as far as ours', () => {
    expect(STROKES.length).toBe(160);
    expect(existsSync(RECORD), 'npm run oracles -- --record').toBe(true);
    judgeStrokes(JSON.parse(readFileSync(RECORD, 'utf8')) as StrokeAnswers);
  });
});
