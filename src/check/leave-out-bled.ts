// Leaves out the rings of the blank that one printed area reaches far enough beyond all round.
import { type Box, containsBox, grow } from '../geometry/box.js';
import { indexBoxList } from '../geometry/box-index.js';
import { type GridLine, regionBox } from '../geometry/region.js';
import type { Ply } from './printed-region.js';

/** Corners of a printed area at most, and printed areas that are looked at for a ring at most. */
const MOST_CORNERS = 64;
const MOST_LOOKS = 8;
/** What rounding may take from the bleed, grid units. */
const OFF = 2;

/** Whether all points of a ring lie to the right of all lines of an area that runs clockwise as seen, and as far from them as asked. */
function holdsRing(area: GridLine, ring: GridLine, distance: number): boolean {
  let before = area.at(-1)!;
  for (const at of area) {
    const [dx, dy] = [at.x - before.x, at.y - before.y];
    const least = distance * Math.hypot(dx, dy);
    for (const { x, y } of ring) if (dx * (y - before.y) - dy * (x - before.x) < least) return false;
    before = at;
  }
  return true;
}

/**
 * The rings around which print may fall short.
 *
 * @param plies - In paint order.
 */
export function leaveOutBled(rings: readonly GridLine[], plies: readonly Ply[], bleed: number): readonly GridLine[] {
  const boxes = plies.map(({ region }) => regionBox(region));
  const index = indexBoxList(boxes);
  const isCovered = (ring: GridLine): boolean => {
    const around: Box = grow(regionBox([ring]), bleed - OFF);
    // From the topmost down: white takes away what lies below it.
    const near = [...index.search(around.x0, around.y0, around.x1, around.y1)].sort((a, b) => b - a);
    for (const place of near.slice(0, MOST_LOOKS)) {
      const { ink, region } = plies[place]!;
      if (ink === 'white') return false;
      if (region.length > 1 || region[0]!.length > MOST_CORNERS || !containsBox(boxes[place]!, around)) continue;
      if (holdsRing(region[0]!, ring, bleed - OFF)) return true;
    }
    return false;
  };
  return rings.filter((ring) => !isCovered(ring));
}
