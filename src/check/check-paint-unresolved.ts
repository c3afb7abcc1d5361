// Do gradients and patterns give the paint that is asked of them?

import type { PaintSource, Shape } from '../model/artwork.js';
import type { ServerFacts } from '../model/drawn-facts.js';
import type { Finding } from '../model/finding.js';
import { sayCount } from '../model/say-count.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { inLayer } from './layer-words.js';

/** A shape whose paint does not come out. */
interface Unpainted extends Trouble {
  readonly shape: Shape;
  readonly target: string;
  readonly why: Exclude<ServerFacts, 'paints'>;
  readonly hasFallback: boolean;
}

const WHY: Readonly<Record<Unpainted['why'], string>> = {
  'not-there': 'is not in the file',
  'no-stops': 'has no colour stops',
  'no-content': 'has nothing in it',
  'no-size': 'has no size',
  circle: 'refers back to itself',
};

function judgeSource(facts: CheckFacts, shape: Shape, source: PaintSource): Unpainted | null {
  if (source.kind !== 'server' && source.kind !== 'missing') return null;
  const why = source.kind === 'missing' ? 'not-there' : facts.serverOf(source.id);
  if (why === 'paints') return null;
  const { fillBox } = shape;
  const at = [(fillBox.x0 + fillBox.x1) / 2, (fillBox.y0 + fillBox.y1) / 2] as const;
  return { shape, at, target: source.id, why, hasFallback: source.fallback !== null && source.kind === 'missing' };
}

/** Fills and strokes of all shapes that are wanted, those among them that draw nothing for this very reason. */
export function checkPaintUnresolved(facts: CheckFacts): readonly Finding[] {
  const { artwork, assignment } = facts;
  const unwanted = new Set<number>();
  for (const { shape, cause } of assignment.exclusions) {
    if (cause === 'ignored' || cause === 'hidden') unwanted.add(shape);
  }
  const troubles = artwork.shapes.flatMap((shape) => {
    if (shape.paint.fill.kind === 'colour' && shape.paint.stroke.kind === 'none') return [];
    if (shape.hidden || unwanted.has(shape.index) || shape.kind === 'image') return [];
    const { fill, stroke, strokeWidth } = shape.paint;
    const sources = strokeWidth > 0 ? [fill, stroke] : [fill];
    return sources.map((source) => judgeSource(facts, shape, source)).filter((trouble) => trouble !== null);
  });
  return gatherTroubles(artwork, 'check/paint-unresolved', troubles, (list) => {
    const [first] = list;
    const shapes = new Set(list.map(({ shape }) => shape)).size;
    const targets = [...new Set(list.map(({ target }) => target))];
    const others = targets.length > 1 ? ` (and ${targets.length - 1} more)` : '';
    const outcome = list.every(({ hasFallback }) => hasFallback) ? 'the colour written as a stand-in' : 'nothing';
    return {
      message: `${sayCount(shapes, 'shape')} ${inLayer(artwork, first!.shape.layer)} ${shapes === 1 ? 'is' : 'are'} painted with "#${first!.target.slice(0, 80)}"${others}, which ${WHY[first!.why]}: ${outcome} is printed there.`,
      remedy: 'Bring the gradient or pattern back, or paint the shapes with a plain colour.',
      data: { targets: targets.slice(0, 20), why: first!.why },
    };
  });
}
