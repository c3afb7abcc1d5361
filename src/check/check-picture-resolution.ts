// Have pictures enough pixels for the size they are placed at, and not far too many?

import { scalesOf } from '../geometry/scales.js';
import { MM_PER_INCH } from '../geometry/units.js';
import type { Shape } from '../model/artwork.js';
import type { PictureFacts } from '../model/drawn-facts.js';
import type { Finding, FindingCode, FindingText } from '../model/finding.js';
import { isToolpath } from '../model/pass.js';
import { sayCount } from '../model/say-count.js';
import { isAbove, isBelow } from './beyond-bound.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { inLayer, sayNumber } from './layer-words.js';

/** A picture and how fine it comes out. */
interface Placed extends Trouble {
  readonly shape: Shape;
  /** In the direction in which it is drawn out most. */
  readonly ppi: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A picture that cannot be judged. */
interface Unread extends Trouble {
  readonly shape: Shape;
  readonly why: string;
}

/**
 * Pixels to the inch on the artboard, in the direction in which there are fewest; null where the picture is drawn out to nothing.
 *
 * @source SVG 2, section 8.7: one scale for both axes unless the picture is stretched
 */
export function pictureResolution(
  picture: Omit<PictureFacts, 'size'>,
  pixels: { readonly widthPx: number; readonly heightPx: number },
  placed: { readonly matrix: Shape['matrix']; readonly mmPerPx: number },
): number | null {
  let x = picture.width / pixels.widthPx;
  let y = picture.height / pixels.heightPx;
  if (picture.fit !== 'none') {
    x = picture.fit === 'meet' ? Math.min(x, y) : Math.max(x, y);
    y = x;
  }
  const [a, b, c, d] = placed.matrix;
  const [greatest] = scalesOf([a * x, b * x, c * y, d * y, 0, 0]);
  const mmPerPixel = greatest * placed.mmPerPx;
  return mmPerPixel > 0 ? MM_PER_INCH / mmPerPixel : null;
}

function middleOf({ drawnBox }: Shape): readonly [number, number] {
  return [(drawnBox.x0 + drawnBox.x1) / 2, (drawnBox.y0 + drawnBox.y1) / 2];
}

/** Pictures of all passes that cover areas, each once. */
function listPictures({ artwork, assignment }: CheckFacts): readonly Shape[] {
  const indices = assignment.placements
    .filter(({ pass }) => !isToolpath(assignment.passes[pass]!.role))
    .map(({ shape }) => shape);
  return [...new Set(indices)]
    .map((index) => artwork.shapes[index]!)
    .filter((shape) => shape.kind === 'image' && shape.draws);
}

function sayPlaced(
  facts: CheckFacts,
  list: readonly Placed[],
  allowed: number,
  words: { readonly verdict: string; readonly remedy: string },
): FindingText {
  const [worst] = list;
  const many = list.length > 1;
  return {
    message: `${sayCount(list.length, 'picture')} ${inLayer(facts.artwork, worst!.shape.layer)} ${many ? 'come' : 'comes'} out at ${many ? 'down to ' : ''}${sayNumber(worst!.ppi, 0)} pixels to the inch (${worst!.widthPx} x ${worst!.heightPx} pixels), ${words.verdict} ${allowed}.`,
    remedy: words.remedy,
    data: { measuredPpi: Math.round(worst!.ppi * 10) / 10, allowedPpi: allowed },
  };
}

const COARSE =
  'Place a picture with more pixels, or place it smaller; enlarging it in an editor adds pixels, not detail.';

function judge(facts: CheckFacts, placed: readonly Placed[]): readonly Finding[] {
  const { leastPpi, minimumPpi, mostPpi } = facts.ticket.checks;
  const report = (code: FindingCode, list: readonly Placed[], allowed: number, verdict: string, remedy: string) =>
    gatherTroubles(facts.artwork, code, list, (some) => sayPlaced(facts, some, allowed, { verdict, remedy }));
  const tooCoarse = placed.filter(({ ppi }) => isBelow(ppi, leastPpi));
  const coarse = placed.filter(({ ppi }) => !isBelow(ppi, leastPpi) && isBelow(ppi, minimumPpi));
  const oversized = placed.filter(({ ppi }) => isAbove(ppi, mostPpi)).map((item) => ({ ...item, weight: item.ppi }));
  return [
    ...report('check/picture-too-coarse', tooCoarse, leastPpi, 'and single pixels will show: the least is', COARSE),
    ...report('check/picture-coarse', coarse, minimumPpi, 'fewer than the', COARSE),
    ...report(
      'check/picture-oversized',
      oversized,
      mostPpi,
      'where print shows no more than',
      'Nothing to do for the print; a smaller picture makes a smaller file, and one that was enlarged in an editor may be softer than its count says.',
    ),
  ];
}

/**
 * Pixels to the inch of each picture against `leastPpi`, `minimumPpi` and `mostPpi`.
 *
 * Pictures in patterns and filters are not looked at.
 */
export function checkPictureResolution(facts: CheckFacts): readonly Finding[] {
  const { artwork } = facts;
  const { mmPerPx } = artwork.artboard;
  const placed: Placed[] = [];
  const unread: Unread[] = [];
  for (const shape of listPictures(facts)) {
    const picture = facts.pictureOf(shape);
    const { size } = picture;
    const at = middleOf(shape);
    if (size.kind === 'drawing') continue;
    if (size.kind !== 'pixels') {
      const why =
        size.kind === 'linked' ? `"${size.address.slice(0, 80)}" is a file of its own that was not read` : size.why;
      unread.push({ shape, at, why });
      continue;
    }
    const ppi = pictureResolution(picture, size, { matrix: shape.matrix, mmPerPx });
    if (ppi !== null) placed.push({ shape, at, weight: -ppi, ppi, widthPx: size.widthPx, heightPx: size.heightPx });
  }
  const silent = gatherTroubles(artwork, 'check/picture-unread', unread, (list) => ({
    message: `The pixels of ${sayCount(list.length, 'picture')} ${inLayer(artwork, list[0]!.shape.layer)} cannot be counted: ${list[0]!.why}.`,
    remedy: 'Embed the picture as PNG, JPEG, GIF or WebP, then its resolution is judged.',
  }));
  return [...judge(facts, placed), ...silent];
}
