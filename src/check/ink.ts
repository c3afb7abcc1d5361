// What a paint puts on the board: ink, white that covers what is below, or nothing.
import type { Paint, PaintSource, Shape } from '../model/artwork.js';
import type { Part } from '../model/pass.js';

/** `ink` is printed, `white` is opaque and lets the board show, `none` changes nothing. */
export type Ink = 'ink' | 'white' | 'none';

/** Least opacity at which white hides what is below. */
const OPAQUE = 0.999;

function inkOf(source: PaintSource, opacity: number): Ink {
  if (source.kind === 'none' || !(opacity > 0)) return 'none';
  if (source.kind === 'server') return 'ink';
  const colour = source.kind === 'colour' ? source.colour : source.fallback;
  if (colour === null || !(colour.alpha > 0)) return 'none';
  if (colour.rgb.some((channel) => channel < 255)) return 'ink';
  return colour.alpha * opacity >= OPAQUE ? 'white' : 'none';
}

/** What the fill of a paint does to the board. */
export function fillInk(paint: Paint): Ink {
  return inkOf(paint.fill, paint.fillOpacity);
}

/** What the stroke of a paint does to the board. */
export function strokeInk(paint: Paint): Ink {
  return paint.strokeWidth > 0 ? inkOf(paint.stroke, paint.strokeOpacity) : 'none';
}

/** Whether a part of a shape prints anything; pictures do whatever they are painted with. */
export function prints(shape: Shape, part: Part): boolean {
  if (!shape.draws) return false;
  if (shape.kind === 'image' || shape.kind === 'foreignObject') return true;
  return (part !== 'stroke' && fillInk(shape.paint) === 'ink') || (part !== 'fill' && strokeInk(shape.paint) === 'ink');
}
