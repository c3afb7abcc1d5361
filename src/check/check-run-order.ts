// Are holes and slits cut before the blank is cut loose?

import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { sayCount } from '../model/say-count.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { inLayer } from './layer-words.js';

/** A line within a blank that is cut after the blank's outline. */
interface Late extends Trouble {
  readonly shape: Shape;
}

/** Holes and slits that the drawing puts after the outline of their blank: by then it may shift. `cutOrder` can say that the machine sorts, and `sequence` puts them in order. */
export function checkRunOrder({ artwork, faces, toolLines, ticket }: CheckFacts): readonly Finding[] {
  if (faces === null || ticket.checks.cutOrder === 'sorted' || ticket.sequence !== undefined) return [];
  const late: Late[] = [];
  for (const { outerLines, innerLines } of faces.blanks) {
    const outer = new Set(outerLines);
    const loose = outerLines.reduce((last, line) => Math.max(last, line), -1);
    for (const line of innerLines) {
      if (line <= loose || outer.has(line)) continue;
      const { shape, outline } = toolLines[line]!;
      late.push({ shape, at: [outline.points[0]!, outline.points[1]!] });
    }
  }
  return gatherTroubles(artwork, 'check/cut-order', late, (list) => ({
    message: `${sayCount(list.length, 'hole or slit', 'holes and slits')} ${inLayer(artwork, list[0]!.shape.layer)} ${list.length === 1 ? 'comes' : 'come'} after the outline of the blank: cut in this order the blank lies loose by then.`,
    remedy:
      'Put the outline last in its layer; where the machine sorts the cuts itself, say "cutOrder": "sorted" under checks in the ticket.',
    data: {},
  }));
}
