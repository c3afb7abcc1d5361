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
};
/** What must at least come out equal. */
const LEAST: Readonly<Record<string, number>> = { samples: 3, openmoji: 80, openclipart: 30, librsvg: 15 };
/** Files in which the hidden drawing differs, and why. */
const KNOWN: Readonly<Record<string, string>> = {
  'filters-tile-01-b.svg': 'a filter floods a group although all in it is hidden: told by resolve/filter-unmeasured',
};

type Hidden = readonly (readonly [number, string, string])[];

/** What hides everything that a pass does not draw, by row. */
function hideOthers({ artwork, assignment }: JobResult, pass: number): Hidden {
  const kept = new Map<number, string>();
  for (const placement of assignment.placements) {
    if (placement.pass === pass) kept.set(artwork.shapes[placement.shape]!.carrier, placement.part);
  }
  return artwork.shapes.flatMap(({ carrier }): Hidden => {
    const part = kept.get(carrier);
    if (part === undefined) return [[carrier, 'display', 'none']];
    if (part === 'whole') return [];
    return [[carrier, part === 'fill' ? 'stroke' : 'fill', 'none']];
  });
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

async function compare(tally: PictureTally, drawing: Drawing): Promise<void> {
  tally.files += 1;
  if (drawing.name in KNOWN) return leave(tally, KNOWN[drawing.name]!);
  const unmarked = await splitUnmarked(drawing);
  if ('refused' in unmarked) return leave(tally, unmarked.refused);
  const { job, sheets } = unmarked;
  const obstacle = findObstacle(job);
  if (obstacle !== '') return leave(tally, obstacle);
  const { width, height } = job.artwork.artboard;
  const scale = SIDE / Math.max(width, height);
  const size = { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
  const passes = sheets.map((sheet, pass) => ({ sheet, hidden: hideOthers(job, pass) }));
  const asked = JSON.stringify({ source: readText(drawing.bytes), ...size, passes });
  const results = await opened.page.evaluate<readonly { differing: number; inked: number }[]>(
    `comparePasses(${asked})`,
  );
  tally.passes += sheets.length;
  tally.pixels += sheets.length * size.width * size.height;
  const inked = results.reduce((sum, result) => sum + result.inked, 0);
  const differing = results.map((result) => result.differing);
  if (differing.some((count) => count > 0)) tally.broken.push(`${drawing.name}: ${differing.join(', ')} pixels differ`);
  else if (inked === 0) leave(tally, 'the browser draws nothing');
  else tally.equal += 1;
}

describeWith('chromium', 'a browser in which the other passes are hidden', () => {
  beforeAll(async () => {
    opened = await openBrowser();
    await opened.page.addScriptTag({ path: join(import.meta.dirname, 'in-page-passes.js') });
  });
  afterAll(() => opened.browser.close());

  // A group with a blend or a mask stays a layer of its own for the browser when all in it is hidden, and so has other edges.
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
