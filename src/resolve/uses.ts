// What every use draws, which of them run in circles, and how many shapes come of it all: counted, not expanded.
import { PinbarError } from '../model/trouble.js';
import { firstAtLeast } from '../source/first-at-least.js';
import { placeOf } from '../source/locate.js';
import { readAttribute } from '../source/read-attribute.js';
import type { Limits, Source } from '../source/source.js';
import { type AttributeSlots, SLOT } from './attribute-slots.js';
import { isShapeCode, NOTHING, SYMBOL, TEXT_PART, USE } from './element-codes.js';
import { findCircles } from './use-circles.js';

/** Where the uses of a file lead. */
export interface UsePlan {
  /** Row that a use draws, by the use's row; absent where it draws nothing. */
  readonly targets: ReadonlyMap<number, number>;
  /** Uses that would draw themselves. */
  readonly circular: readonly number[];
}

/** What the plan is made from. */
export interface UseGrounds {
  readonly source: Source;
  readonly slots: AttributeSlots;
  readonly codes: Uint8Array;
  readonly ids: ReadonlyMap<string, number>;
}

/** The id that an `href` (or `xlink:href`) names within the file, or null. */
export function readReferenceId(grounds: Omit<UseGrounds, 'ids'>, row: number): string | null {
  let attribute = grounds.slots.find(row, SLOT.href);
  if (attribute < 0) attribute = grounds.slots.find(row, SLOT.xlink);
  if (attribute < 0) return null;
  const text = readAttribute(grounds.source, attribute).trim();
  return text.startsWith('#') && text.length > 1 ? text.slice(1) : null;
}

/** For each row the innermost element around or at it that is never drawn where it stands, or -1. */
function listNeverDrawn(grounds: UseGrounds): Int32Array {
  const { count, parent, name } = grounds.source.elements;
  const inner = new Int32Array(count).fill(-1);
  for (let row = 1; row < count; row += 1) {
    const code = grounds.codes[name[row]!]!;
    inner[row] = code === NOTHING || code === SYMBOL ? row : inner[parent[row]!]!;
  }
  return inner;
}

interface Counts {
  readonly shapes: Map<number, number>;
  /** Everything that is walked, groups and uses as well: they cost as much, also where nothing is drawn in the end. */
  readonly weight: Map<number, number>;
  readonly depth: Map<number, number>;
}

function depthOf(grounds: UseGrounds, row: number): number {
  const { parent } = grounds.source.elements;
  let depth = 0;
  for (let at = row; at > 0; at = parent[at]!) depth += 1;
  return depth;
}

/** How many elements may be walked for every shape that uses may draw. */
const WEIGHT_PER_SHAPE = 4;

/** Shapes, weight and depth of what a target draws, when those of the uses in it are known. */
function countTarget(
  grounds: UseGrounds,
  inner: Int32Array,
  target: number,
  drawn: { readonly uses: readonly number[]; readonly targets: ReadonlyMap<number, number>; readonly counts: Counts },
): void {
  const { next, name } = grounds.source.elements;
  let shapes = 0;
  let weight = 0;
  for (let row = target; row < next[target]!; row += 1) {
    if (inner[row]! > target) continue;
    weight += 1;
    if (isShapeCode(grounds.codes[name[row]!]!)) shapes += 1;
  }
  const base = depthOf(grounds, target);
  let depth = 0;
  for (const use of drawn.uses) {
    const inside = drawn.targets.get(use);
    if (inside === undefined) continue;
    shapes += drawn.counts.shapes.get(inside) ?? 0;
    weight += drawn.counts.weight.get(inside) ?? 0;
    depth = Math.max(depth, depthOf(grounds, use) - base + 1 + (drawn.counts.depth.get(inside) ?? 0));
  }
  drawn.counts.shapes.set(target, shapes);
  drawn.counts.weight.set(target, weight);
  drawn.counts.depth.set(target, depth);
}

function refuse(
  grounds: UseGrounds,
  use: number,
  drawn: { readonly shapes: number; readonly weight: number },
  limits: Limits,
): never {
  const place = placeOf(grounds.source, use);
  const isWide = drawn.shapes > limits.references;
  const copies = isWide ? drawn.shapes : drawn.weight;
  const what = isWide ? 'shapes' : 'groups and uses';
  const allowed = isWide ? limits.references : limits.references * WEIGHT_PER_SHAPE;
  throw new PinbarError('limit/references', {
    message: `The uses of the file draw ${copies > 1e15 ? 'far too many' : copies} copies of ${what} up to line ${place.line}; ${allowed} are allowed.`,
    remedy: 'Draw fewer copies, or raise the limit "references" if the file is trusted.',
    place,
    data: { copies: Math.min(copies, 1e15), allowed },
  });
}

function refuseDepth(grounds: UseGrounds, use: number, limits: Limits): never {
  const place = placeOf(grounds.source, use);
  throw new PinbarError('limit/depth', {
    message: `The use at line ${place.line} draws elements nested deeper than allowed (${2 * limits.depth} with those inside uses).`,
    remedy: 'Draw the copies without uses inside uses, or raise the limit "depth" if the file is trusted.',
    place,
    data: { allowed: 2 * limits.depth },
  });
}

function listTargets(grounds: UseGrounds): Map<number, number> {
  const { count, name } = grounds.source.elements;
  const targets = new Map<number, number>();
  for (let row = 0; row < count; row += 1) {
    if (grounds.codes[name[row]!] !== USE) continue;
    const id = readReferenceId(grounds, row);
    const target = id === null ? undefined : grounds.ids.get(id);
    if (target === undefined) continue;
    const code = grounds.codes[name[target]!]!;
    if (code !== NOTHING && code !== TEXT_PART) targets.set(row, target);
  }
  return targets;
}

/**
 * Follows all uses, cuts the circles, and counts what is drawn.
 *
 * @throws PinbarError `limit/references` when the uses draw more shapes than allowed, `limit/depth` when they nest too deep.
 */
export function planUses(grounds: UseGrounds, limits: Limits): UsePlan {
  const targets = listTargets(grounds);
  if (targets.size === 0) return { targets, circular: [] };
  const { next } = grounds.source.elements;
  const inner = listNeverDrawn(grounds);
  const uses = [...targets.keys()];
  const usesIn = (target: number): readonly number[] => {
    const found: number[] = [];
    for (let i = firstAtLeast(uses, target); i < uses.length && uses[i]! < next[target]!; i += 1) {
      if (inner[uses[i]!]! <= target) found.push(uses[i]!);
    }
    return found;
  };
  const { order, circular } = findCircles([...new Set(targets.values())], usesIn, targets);
  for (const use of circular) targets.delete(use);
  const counts: Counts = { shapes: new Map(), weight: new Map(), depth: new Map() };
  for (const target of order) countTarget(grounds, inner, target, { uses: usesIn(target), targets, counts });
  const drawn = { shapes: 0, weight: 0 };
  const mostWeight = limits.references * WEIGHT_PER_SHAPE;
  for (const [use, target] of targets) {
    if (inner[use] !== -1) continue;
    drawn.shapes += counts.shapes.get(target)!;
    drawn.weight += counts.weight.get(target)!;
    if (drawn.shapes > limits.references || drawn.weight > mostWeight) refuse(grounds, use, drawn, limits);
    if (depthOf(grounds, use) + counts.depth.get(target)! > 2 * limits.depth) refuseDepth(grounds, use, limits);
  }
  return { targets, circular };
}
