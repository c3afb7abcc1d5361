// Is what the tools get made of lines?

import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { isToolpath, type Placement } from '../model/pass.js';
import { sayCount } from '../model/say-count.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { fillInk } from './ink.js';
import { inLayer } from './layer-words.js';

/** A shape, and what it is besides a line. */
interface Extra extends Trouble {
  readonly shape: Shape;
  readonly reasons: readonly string[];
}

function centre({ fillBox: { x0, y0, x1, y1 } }: Shape): readonly [number, number] {
  return [(x0 + x1) / 2, (y0 + y1) / 2];
}

const NO_LINES: Readonly<Partial<Record<Shape['kind'], string>>> = {
  image: 'picture',
  text: 'live text',
  foreignObject: 'foreign object',
};

function coversArea({ outlineOf }: CheckFacts, shape: Shape): boolean {
  const { x0, y0, x1, y1 } = shape.fillBox;
  return x1 > x0 && y1 > y0 && outlineOf(shape).some(({ points }) => points.length >= 6);
}

/** What makes a shape more than a line. */
function listReasons(facts: CheckFacts, shape: Shape, part: Placement['part']): readonly string[] {
  const { fill, stroke, strokeOpacity } = shape.paint;
  const reasons: string[] = [];
  const isFilled = part !== 'stroke' && fillInk(shape.paint) !== 'none' && coversArea(facts, shape);
  if (isFilled) reasons.push(fill.kind === 'colour' ? 'filled' : 'filled with a gradient or pattern');
  if (part !== 'fill' && stroke.kind === 'server') reasons.push('stroked with a gradient or pattern');
  const { opacity, filter, mask } = facts.effectsOf(shape);
  const alpha = stroke.kind === 'colour' ? stroke.colour.alpha : 1;
  if (opacity * strokeOpacity * alpha < 1) reasons.push('see-through');
  if (filter) reasons.push('under a filter');
  if (mask) reasons.push('under a mask');
  return reasons;
}

/** Counts of reasons in a sentence, the most frequent first. */
function countReasons(list: readonly Extra[]): { readonly words: string; readonly counts: Record<string, number> } {
  const counts: Record<string, number> = {};
  for (const reason of list.flatMap(({ reasons }) => reasons)) counts[reason] = (counts[reason] ?? 0) + 1;
  const sorted = Object.entries(counts).sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1));
  return { words: sorted.map(([reason, count]) => `${count} ${reason}`).join(', '), counts };
}

/** Pictures, live text, fills, gradients, filters, masks and see-through lines in tool passes. */
export function checkNotALine(facts: CheckFacts): readonly Finding[] {
  const { artwork, assignment } = facts;
  const none: Extra[] = [];
  const painted: Extra[] = [];
  for (const { shape: index, pass, part } of assignment.placements) {
    const shape = artwork.shapes[index]!;
    if (!isToolpath(assignment.passes[pass]!.role) || !shape.draws) continue;
    const kind = NO_LINES[shape.kind];
    if (kind !== undefined) {
      none.push({ shape, at: centre(shape), reasons: [kind] });
      continue;
    }
    const reasons = listReasons(facts, shape, part);
    if (reasons.length > 0) painted.push({ shape, at: centre(shape), weight: reasons.length, reasons });
  }
  return [
    ...gatherTroubles(artwork, 'check/no-line', none, (list) => {
      const { words, counts } = countReasons(list);
      return {
        message: `A tool pass holds what no tool can follow, ${inLayer(artwork, list[0]!.shape.layer)}: ${words}.`,
        remedy: 'Turn it into outlines, move it to a printed layer, or leave it out by a rule of the ticket.',
        data: { reasons: counts },
      };
    }),
    ...gatherTroubles(artwork, 'check/line-painted', painted, (list) => {
      const { words, counts } = countReasons(list);
      return {
        message: `${sayCount(list.length, 'shape')} of a tool pass, ${inLayer(artwork, list[0]!.shape.layer)}, ${list.length === 1 ? 'is' : 'are'} more than a line: ${words}.`,
        remedy:
          'Give tool lines a plain opaque stroke and no fill: the tool follows the outline, whatever the paint shows.',
        data: { reasons: counts },
      };
    }),
  ];
}
