// What clip paths let through of a shape, as outlines.
import { flattenPath } from '../geometry/flatten-path.js';
import { type Matrix, multiply } from '../geometry/matrix.js';
import { FLATTEN_PX } from '../geometry/outline.js';
import type { Artwork, Shape } from '../model/artwork.js';
import type { ClipPart } from '../model/drawn-facts.js';
import { type Clipped, clipFrame } from './clip-boxes.js';
import type { Drawing, Setting } from './drawing.js';
import { isShapeCode, TEXT, USE } from './element-codes.js';
import { applyTransform } from './own-transform.js';
import { isResolved } from './resolve.js';
import { isResolvedShape } from './resolved-shape.js';
import { readGeometry, readRectangle } from './shape-geometry.js';
import type { Style } from './style.js';
import type { ClipChain } from './walk-tree.js';

/** A clip path as the union of its parts; null where it cannot be told, as with type in it. */
type Clip = readonly ClipPart[] | null;

interface Around {
  readonly frame: Matrix;
  readonly setting: Setting;
  /** Style of the use around, or null. */
  readonly style: Style | null;
}

/** The parts that one child of a clip path gives; null where it holds type. */
function childParts(drawing: Drawing, row: number, around: Around): Clip {
  const code = drawing.codes[drawing.source.elements.name[row]!]!;
  if (code !== USE && !isShapeCode(code)) return [];
  const style = around.style === null ? drawing.styles[row]! : drawing.cascade.computeStyle(row, around.style);
  if (style.display === 'none' || (code !== USE && style.visibility !== 'visible')) return [];
  if (code === TEXT) return null;
  const setting: Setting = { style, viewport: around.setting.viewport };
  const frame = applyTransform(drawing, row, setting, around.frame);
  if (code !== USE) {
    const outlines = flattenPath(readGeometry(drawing, row, code, setting), frame, FLATTEN_PX);
    return [{ outlines, rule: style.clipRule }];
  }
  const target = around.style === null ? drawing.targets.get(row) : undefined;
  if (target === undefined) return [];
  const { x, y } = readRectangle(drawing, row, setting);
  return childParts(drawing, target, { frame: multiply(frame, [1, 0, 0, 1, x, y]), setting, style });
}

function readClip(drawing: Drawing, clip: number, clipped: Clipped): Clip {
  const frame = clipFrame(drawing, clip, clipped);
  if (frame === null) return [];
  const { next } = drawing.source.elements;
  const parts: ClipPart[] = [];
  for (let child = clip + 1; child < next[clip]!; child = next[child]!) {
    const some = childParts(drawing, child, { frame, setting: clipped.setting, style: null });
    if (some === null) return null;
    parts.push(...some);
  }
  return parts;
}

/** The clip path that clips an element, and the one on that, and so on. */
function listClips(drawing: Drawing, clipped: Clipped): readonly (readonly ClipPart[])[] {
  const clips: (readonly ClipPart[])[] = [];
  const seen = new Set<number>();
  for (let id = clipped.setting.style.clipPath; id !== null; ) {
    const clip = drawing.ids.get(id);
    if (clip === undefined || seen.has(clip)) break;
    seen.add(clip);
    const parts = readClip(drawing, clip, clipped);
    if (parts !== null) clips.push(parts);
    id = drawing.styles[clip]!.clipPath;
  }
  return clips;
}

/** Points of clip paths that are read for one drawing; clips beyond that count as letting everything through. */
const MOST_POINTS = 4_000_000;

function countPoints(clips: readonly (readonly ClipPart[])[]): number {
  let count = 1;
  for (const clip of clips)
    for (const { outlines } of clip) for (const { points } of outlines) count += points.length / 2;
  return count;
}

/** Reads the clip paths of shapes; those of a group are read once for all its shapes. */
export type ClipReader = (shape: Shape) => readonly (readonly ClipPart[])[];

/**
 * A reader of the clip paths around shapes. What a clip path lets through is the union of its parts, and a shape shows what all of
 * its clip paths let through. A clip path with type in it, and one on a child of a clip path, count as letting everything through.
 *
 * @param artwork - Made by `resolve`; shapes that were taken out of it since have no clips.
 * @unit px on the artboard
 * @source CSS Masking 1, section 6
 */
export function createClipReader(artwork: Artwork): ClipReader {
  const known = new Map<ClipChain, readonly (readonly ClipPart[])[]>();
  let room = MOST_POINTS;
  return (shape) => {
    if (!isResolved(artwork) || !isResolvedShape(shape)) return [];
    const clips: (readonly ClipPart[])[] = [];
    for (let link = shape.clips; link !== null; link = link.around) {
      let own = known.get(link);
      if (own === undefined) {
        own = room > 0 ? listClips(artwork.geometry, link.clipped) : [];
        room -= countPoints(own);
        known.set(link, own);
      }
      clips.push(...own);
    }
    return clips;
  };
}
