// Each sheet alone looks like the drawing whose other passes are hidden in the browser, to the pixel.
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { JobResult } from '../../../src/index.js';
import { describeWith } from '../../house/witnesses.js';
import { openBrowser } from '../browser/ask-browser.js';
import { chooseDrawings, type Drawing, PICTURE_SETS, readText } from './picture-sets.js';
import { createPictureTally, leave, type PictureTally, printPictureTally } from './picture-tally.js';
import { splitUnmarked } from './split-unmarked.js';

/** Longer side of a picture, px. */
const SIDE = 500;
/** Of every set at most so many by default; all chosen ones with ORACLES set. */
const MOST: Readonly<Record<string, number>> = {
  samples: 10,
  openmoji: 100,
  openclipart: 60,
  librsvg: 40,
  effects: 240,
};
/** What must at least come out equal. */
const LEAST: Readonly<Record<string, number>> = { samples: 3, openmoji: 80, openclipart: 30, librsvg: 15, effects: 24 };
/** Files in which the hidden drawing differs, and why. */
const KNOWN: Readonly<Record<string, string>> = {
  'filters-tile-01-b.svg': 'a filter floods a group although all in it is hidden: told by resolve/filter-unmeasured',
};

/** Shapes that are not displayed take up no room; those that are only invisible still belong to the box of a group. */
type Way = 'display' | 'visibility';

/** Of 255, where the box of a group is kept: the browser cuts its layers at other pixels and rounds there. */
const TOLERANCE = 2;
/** Findings that say that a sheet differs where the box of a group is kept. */
const TOLD: readonly string[] = ['order/effect-divided', 'order/filter-region'];

interface Hidden {
  /** Row, property, value. */
  readonly hidden: readonly (readonly [number, string, string])[];
  readonly kept: readonly number[];
}

/** What hides everything that a pass does not draw, by row. */
function hideOthers({ artwork, assignment }: JobResult, pass: number, way: Way): Hidden {
  const kept = new Map<number, string>();
  for (const placement of assignment.placements) {
    if (placement.pass === pass) kept.set(artwork.shapes[placement.shape]!.carrier, placement.part);
  }
  const hidden = artwork.shapes.flatMap(({ carrier }): Hidden['hidden'] => {
    const part = kept.get(carrier);
    if (part === undefined) return [[carrier, way, way === 'display' ? 'none' : 'hidden']];
    if (part === 'whole') return [];
    return [[carrier, part === 'fill' ? 'stroke' : 'fill', 'none']];
  });
  return { hidden, kept: [...kept.keys()] };
}

/** Why a drawing cannot be hidden in part; '' where it can. */
function findObstacle({ artwork, findings }: JobResult): string {
  const drawn = new Set(artwork.shapes.map(({ carrier }) => carrier));
  const ids = [...artwork.references.values()].flat();
  if (ids.some((id) => drawn.has(artwork.ids.get(id) ?? -1))) return 'a drawn shape is also a definition';
  if (artwork.shapes.some(({ carrier, element }) => carrier === element && artwork.hiders.has(element)))
    return 'hidden shapes';
  const taken = findings.find(
    ({ code }) => /^split\/.*(?:removed|left-out)$/.test(code) && code !== 'split/foreign-left-out',
  );
  return taken === undefined ? '' : `${taken.code}`;
}

let opened: Awaited<ReturnType<typeof openBrowser>>;

interface Compared {
  readonly differing: number;
  readonly blocks: number;
  readonly inked: number;
}

async function compareWay(
  tally: PictureTally,
  drawing: Drawing,
  job: JobResult,
  [way, sheets]: [Way, readonly string[]],
) {
  const { width, height } = job.artwork.artboard;
  const scale = SIDE / Math.max(width, height);
  const size = { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
  const passes = sheets.map((sheet, pass) => ({ sheet, ...hideOthers(job, pass, way) }));
  const asked = JSON.stringify({ source: readText(drawing.bytes), ...size, tolerance: TOLERANCE, passes });
  tally.passes += sheets.length;
  tally.pixels += sheets.length * size.width * size.height;
  return await opened.page.evaluate<readonly Compared[]>(`comparePasses(${asked})`);
}

async function compare(tally: PictureTally, drawing: Drawing): Promise<void> {
  tally.files += 1;
  if (drawing.name in KNOWN) return leave(tally, KNOWN[drawing.name]!);
  const unmarked = await splitUnmarked(drawing);
  if ('refused' in unmarked) return leave(tally, unmarked.refused);
  const { job, sheets, told } = unmarked;
  const obstacle = findObstacle(job);
  if (obstacle !== '') return leave(tally, obstacle);
  const results = await compareWay(tally, drawing, job, ['display', sheets]);
  const differing = results.map((result) => result.differing);
  if (differing.some((count) => count > 0)) {
    tally.broken.push(`${drawing.name}: ${differing.join(', ')} pixels differ`);
    return;
  }
  if (results.every(({ inked }) => inked === 0)) return leave(tally, 'the browser draws nothing');
  if (!drawing.name.startsWith('effects-')) {
    tally.equal += 1;
    return;
  }
  const boxed = await compareWay(tally, drawing, job, ['visibility', sheets]);
  const isTold = told.some((code) => TOLD.includes(code));
  const blocks = boxed.map((result) => result.blocks);
  if (blocks.every((count) => count === 0)) tally.equal += 1;
  else if (isTold) tally.told += 1;
  else tally.broken.push(`${drawing.name}: with boxes kept, ${blocks.join(', ')} blocks differ`);
}

describeWith('chromium', 'a browser in which the other passes are hidden', () => {
  beforeAll(async () => {
    opened = await openBrowser();
    await opened.page.addScriptTag({ path: join(import.meta.dirname, 'in-page-passes.js') });
  });
  afterAll(() => opened.browser.close());

  for (const set of PICTURE_SETS.filter(({ name }) => name in MOST)) {
    describeWith(set.witness ?? 'chromium', `looking at sheets of ${set.name}`, () => {
      it('sees what each sheet shows', { timeout: 600_000 }, async () => {
        const tally = createPictureTally();
        const most = process.env.ORACLES === undefined ? MOST[set.name]! : Number.POSITIVE_INFINITY;
        for (const drawing of chooseDrawings(set).slice(0, most)) await compare(tally, drawing);
        if (process.env.ORACLES !== undefined) process.stdout.write(printPictureTally(set.name, tally));
        expect(tally.broken).toEqual([]);
        expect(tally.equal, 'equal').toBeGreaterThanOrEqual(LEAST[set.name]!);
      });
    });
  }
});
