// Sheets laid over each other look like the drawing, in the pictures of a renderer that shares nothing with pinbar.
import { afterAll, describe, expect, it } from 'vitest';
import { describeWith } from '../../house/witnesses.js';
import { type RenderResult, startRenderer } from './ask-renderer.js';
import { chooseDrawings, type Drawing, PICTURE_SETS, type PictureSet, readText } from './picture-sets.js';
import { createPictureTally, leave, type PictureTally, printPictureTally } from './picture-tally.js';
import { splitUnmarked } from './split-unmarked.js';

/** 96 and 300 pixels to the inch; large drawings less, so that a picture has at most so many pixels. */
const ZOOMS: readonly number[] = [1, 3.125];
const MOST_PIXELS = 400_000;

/**
 * Of 255. A renderer keeps 8 bits a channel: each paint that lets something through rounds by up to half a step, and each sheet is
 * rounded once more. Where all is opaque the difference is none.
 */
const TOLERANCE = 2;

/** What the renderer draws as a picture of its own, placed by what it holds: its edges can fall to the other side by a pixel. */
const LAYERED = /clip-path|mask|filter|opacity|blend/;

/** Files in which the difference is not that of the sheets, and why. */
const KNOWN: Readonly<Record<string, string>> = {
  'filters-tile-01-b.svg': 'a filter floods a group that holds nothing: told by resolve/filter-unmeasured',
  'text-tref-02-b.svg': 'type taken from elements that the sheets may not hold: told by split/foreign-left-out',
  'text-tref-03-b.svg': 'type taken from elements that the sheets may not hold: told by split/foreign-left-out',
};

const renderer = startRenderer();
afterAll(() => renderer.stop());

function tellDifference(name: string, results: readonly RenderResult[]): string {
  const said = results.map(({ zoom, differing, blocks, inked, at }) => {
    return `${differing} of ${inked} pixels (${blocks} blocks) at zoom ${zoom.toFixed(2)}, first ${at}`;
  });
  return `${name}: ${said.join('; ')}`;
}

function judge(tally: PictureTally, drawing: Drawing, results: readonly RenderResult[], isTold: boolean): void {
  const isEqual = results.every(({ differing }) => differing === 0);
  if (isEqual) tally[isTold ? 'toldEqual' : 'equal'] += 1;
  else if (isTold) tally.told += 1;
  else if (results.every(({ blocks }) => blocks === 0) && LAYERED.test(readText(drawing.bytes))) tally.grains += 1;
  else tally.broken.push(tellDifference(drawing.name, results));
}

async function lay(tally: PictureTally, drawing: Drawing): Promise<void> {
  tally.files += 1;
  const unmarked = await splitUnmarked(drawing);
  if ('refused' in unmarked) return leave(tally, unmarked.refused);
  if (drawing.name in KNOWN) return leave(tally, KNOWN[drawing.name]!);
  const { sheets, told } = unmarked;
  const source = readText(drawing.bytes);
  // Such a picture is taken out with split/outside-reference-removed; the renderer guesses its kind.
  if (source.includes('"data:;base64,')) return leave(tally, 'an embedded picture does not say its kind');
  const answer = await renderer.ask({ source, sheets, zooms: ZOOMS, mostPixels: MOST_PIXELS, tolerance: TOLERANCE });
  if ('refused' in answer) return leave(tally, `renderer: ${answer.refused}`);
  const { results } = answer;
  if (results.some(({ oddSize }) => oddSize !== undefined)) {
    // Without width, height and viewBox the renderer takes the size of what is drawn.
    if (/<svg[^>]*\s(?:viewBox|width|height)=/.test(source)) tally.broken.push(`${drawing.name}: sizes differ`);
    return leave(tally, 'renderer: the size is that of what is drawn');
  }
  tally.passes += sheets.length;
  tally.pixels += results.reduce((sum, { size }) => sum + size[0] * size[1], 0);
  return judge(tally, drawing, results, told.length > 0);
}

/** What must at least come out equal, so that a comparison of nothing is none. */
const LEAST: Readonly<Record<string, number>> = {
  samples: 2,
  openmoji: 90,
  openclipart: 40,
  librsvg: 35,
  effects: 8,
};

function describeSet(set: PictureSet): void {
  it('look like the drawing', { timeout: 900_000 }, async () => {
    const tally = createPictureTally();
    for (const drawing of chooseDrawings(set)) await lay(tally, drawing);
    if (process.env.ORACLES !== undefined) process.stdout.write(printPictureTally(set.name, tally));
    expect(tally.broken).toEqual([]);
    expect(tally.equal, 'equal').toBeGreaterThanOrEqual(LEAST[set.name]!);
    // A finding that mostly cries wolf is none.
    expect(tally.toldEqual, 'told, but equal').toBeLessThanOrEqual(Math.max(3, tally.files / 8));
  });
}

for (const set of PICTURE_SETS) {
  const describeSome = set.witness === null ? describe : describeWith.bind(null, set.witness);
  describeSome(`sheets of ${set.name}, laid over each other`, () => describeSet(set));
}
