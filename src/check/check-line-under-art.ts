// Do die lines lie on top, where nobody misses them while drawing?
import { indexBoxes } from '../geometry/box-index.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { isToolpath } from '../model/pass.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { fillInk } from './ink.js';
import { inLayer, sayCount } from './layer-words.js';
import { roundValue, sayMm } from './say-value.js';
import { endsOf } from './tool-pieces.js';
import { windingAt } from './winding-at.js';

/** A line with how much of it is covered. */
interface Covered extends Trouble {
  readonly shape: Shape;
  readonly weight: number;
}

/** Pieces are looked at every so often, mm. */
const STEP_MM = 5;
/** Less is let be, mm. */
const LEAST_MM = 1;

/** Areas of art that are painted after the first tool line, with a finder by place. */
function findAreas(facts: CheckFacts): ((x: number, y: number, after: number) => boolean) | null {
  const { artwork, assignment, toolLines, outlineOf } = facts;
  const first = toolLines.reduce((least, { shape }) => Math.min(least, shape.index), Infinity);
  const areas: Shape[] = [];
  for (const { shape: index, pass, part } of assignment.placements) {
    const shape = artwork.shapes[index]!;
    if (index <= first || !shape.draws || part === 'stroke' || isToolpath(assignment.passes[pass]!.role)) continue;
    const isArea = shape.kind === 'image' || (shape.kind !== 'text' && fillInk(shape.paint) !== 'none');
    if (isArea) areas.push(shape);
  }
  if (areas.length === 0) return null;
  const boxes = areas.flatMap(({ drawnBound: { x0, y0, x1, y1 } }) => [x0, y0, x1, y1]);
  const index = indexBoxes(Float64Array.from(boxes));
  return (x, y, after) =>
    index.search(x, y, x, y).some((place) => {
      const shape = areas[place]!;
      if (shape.index <= after) return false;
      const winding = windingAt(outlineOf(shape), x, y);
      return shape.paint.fillRule === 'evenodd' ? winding % 2 !== 0 : winding !== 0;
    });
}

/** Tool lines that art covers, by the order in which the drawing paints. */
export function checkLineUnderArt(facts: CheckFacts): readonly Finding[] {
  const { artwork, toolLines, toolPieces } = facts;
  const { mmPerPx } = artwork.artboard;
  const isCovered = findAreas(facts);
  if (isCovered === null) return [];
  const covered = new Map<number, Covered>();
  for (let piece = 0; piece < toolPieces.count; piece += 1) {
    const { shape } = toolLines[toolPieces.line[piece]!]!;
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = endsOf(toolPieces, piece);
    const lengthMm = Math.hypot(x1 - x0, y1 - y0) * mmPerPx;
    const steps = Math.min(1000, Math.max(1, Math.ceil(lengthMm / STEP_MM)));
    for (let step = 0; step < steps; step += 1) {
      const t = (step + 0.5) / steps;
      const at = [x0 + t * (x1 - x0), y0 + t * (y1 - y0)] as const;
      if (!isCovered(at[0], at[1], shape.index)) continue;
      const known = covered.get(shape.index) ?? { shape, at, weight: 0 };
      covered.set(shape.index, { ...known, weight: known.weight + lengthMm / steps });
    }
  }
  const troubles = [...covered.values()].filter(({ weight }) => weight >= LEAST_MM);
  return gatherTroubles(artwork, 'check/line-under-art', troubles, (list) => {
    const total = list.reduce((sum, { weight }) => sum + weight, 0);
    return {
      message: `${sayCount(list.length, 'line')} of tool passes, ${inLayer(artwork, list[0]!.shape.layer)}, ${list.length === 1 ? 'lies' : 'lie'} under art, over about ${sayMm(total)} mm.`,
      remedy: 'Move the layers of cut and crease lines to the top of the drawing, so that nobody overlooks them.',
      data: { measuredMm: roundValue(total), allowedMm: 0 },
    };
  });
}
