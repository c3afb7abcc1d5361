// The area of the board that a pass prints: white art hides what lies below it.
import type { Box } from '../geometry/box.js';
import { indexBoxList } from '../geometry/box-index.js';
import { type Grid, NO_REGION, type Region, regionBox, subtractRegion, uniteRegions } from '../geometry/region.js';
import type { Shape } from '../model/artwork.js';
import type { Part } from '../model/pass.js';
import type { CheckFacts } from './check-facts.js';
import { fillInk, type Ink, strokeInk } from './ink.js';
import type { ShapeRegions } from './shape-region.js';

/** One coat over the board: where it prints, and where it hides what was there before. */
interface Coat {
  readonly ink: Region;
  readonly hides: Region;
}

/** What one shape puts on the board, in the order it is painted. */
export interface Touch {
  readonly shape: Shape;
  readonly ink: Exclude<Ink, 'none'>;
  readonly region: Region;
}

/** The area of a touch, whatever shape made it. */
export type Ply = Pick<Touch, 'ink' | 'region'>;

/** Touches that are looked at below each on average, at most. */
const MOST_LOOKS = 60;

/** Whether all that a pass covers counts as printed, whatever its colour: a white pass prints white. */
export type ColourUse = 'by-colour' | 'all';

/** What a part of a shape puts on the board: its fill, then its stroke. */
export function touchesOf(
  regions: ShapeRegions,
  drawn: { readonly shape: Shape; readonly part: Part },
  use: ColourUse,
): readonly Touch[] {
  const { shape, part } = drawn;
  if (!shape.draws || shape.kind === 'text') return [];
  if (shape.kind === 'image' || shape.kind === 'foreignObject') {
    return [{ shape, ink: 'ink', region: regions.fill(shape) }];
  }
  const settle = (ink: Ink): Ink => (use === 'all' && ink === 'white' ? 'ink' : ink);
  const touches: Touch[] = [];
  const fill = part === 'stroke' ? 'none' : settle(fillInk(shape.paint));
  if (fill !== 'none') touches.push({ shape, ink: fill, region: regions.fill(shape) });
  const stroke = part === 'fill' ? 'none' : settle(strokeInk(shape.paint));
  if (stroke !== 'none') touches.push({ shape, ink: stroke, region: regions.stroke(shape) });
  return touches.filter(({ region }) => region.length > 0);
}

/**
 * How deep each touch lies in the stack of ink and white: one deeper than what it covers of the other kind, as deep as what it
 * covers of its own. Touches of one depth lie beside each other or are of one kind, so that each kind can be united at once.
 *
 * @returns Null where too many touches lie over each other to look at all of them.
 */
function stackDepths(touches: readonly Ply[]): Uint32Array | null {
  const boxes = touches.map(({ region }) => regionBox(region));
  const index = indexBoxList(boxes);
  const depths = new Uint32Array(touches.length);
  let looks = MOST_LOOKS * touches.length;
  for (const [at, { x0, y0, x1, y1 }] of boxes.entries()) {
    const found = index.search(x0, y0, x1, y1);
    looks -= found.length;
    if (looks < 0) return null;
    let depth = 0;
    for (const below of found) {
      if (below >= at) continue;
      const deeper = touches[below]!.ink === touches[at]!.ink ? 0 : 1;
      depth = Math.max(depth, depths[below]! + deeper);
    }
    depths[at] = depth;
  }
  return depths;
}

function makeCoat(ink: Touch['ink'], touches: readonly Ply[]): Coat {
  const region = uniteRegions(touches.map((touch) => touch.region));
  return ink === 'ink' ? { ink: region, hides: NO_REGION } : { ink: NO_REGION, hides: region };
}

/** Coats in the order they are painted: as few as may be. */
function layCoats(touches: readonly Ply[]): readonly Coat[] {
  if (touches.every(({ ink }) => ink === 'ink')) return [makeCoat('ink', touches)];
  const depths = stackDepths(touches);
  const coats: Coat[] = [];
  if (depths === null) {
    for (let from = 0; from < touches.length; ) {
      const { ink } = touches[from]!;
      let to = from + 1;
      while (to < touches.length && touches[to]!.ink === ink) to += 1;
      coats.push(makeCoat(ink, touches.slice(from, to)));
      from = to;
    }
    return coats;
  }
  const groups = new Map<number, Ply[]>();
  for (const [at, touch] of touches.entries()) {
    const key = 2 * depths[at]! + (touch.ink === 'ink' ? 0 : 1);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [touch]);
    else group.push(touch);
  }
  for (const key of [...groups.keys()].sort((x, y) => x - y))
    coats.push(makeCoat(key % 2 === 0 ? 'ink' : 'white', groups.get(key)!));
  return coats;
}

/** Two coats as one, the second over the first. */
function overlay(first: Coat, second: Coat): Coat {
  return {
    ink: uniteRegions([subtractRegion(first.ink, second.hides), second.ink]),
    hides: uniteRegions([first.hides, second.hides]),
  };
}

/** The area that is printed in the end. Pairs of coats are laid over each other, so that no region is gone over once per shape. */
export function printedRegion(touches: readonly Ply[]): Region {
  let coats = layCoats(touches);
  while (coats.length > 1) {
    const paired: Coat[] = [];
    for (let at = 0; at < coats.length; at += 2) {
      const second = coats[at + 1];
      paired.push(second === undefined ? coats[at]! : overlay(coats[at]!, second));
    }
    coats = paired;
  }
  return coats[0]?.ink ?? NO_REGION;
}

/** A grid of 0.1 micrometres with its origin at a box's top left, so that far art costs no digits. */
export function gridFor(facts: CheckFacts, box: Box): Grid {
  return { x: box.x0, y: box.y0, scale: facts.artwork.artboard.mmPerPx * GRID_PER_MM };
}

/** Grid units to the millimetre. */
export const GRID_PER_MM = 10_000;
