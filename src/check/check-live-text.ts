// Is there live type left in a pass that covers areas, and in which fonts?

import { scalesOf } from '../geometry/scales.js';
import { MM_PER_PX, PX_PER_UNIT } from '../geometry/units.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { isToolpath } from '../model/pass.js';
import { sayCount } from '../model/say-count.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { inLayer, sayNumber } from './layer-words.js';

/** A live text. */
interface Live extends Trouble {
  readonly shape: Shape;
  readonly families: readonly string[];
  /** Size on the artboard, points. */
  readonly sizePt: number;
}

/** Words of CSS that name no font but leave the choice to the machine. */
const GENERIC = /^(?:serif|sans-serif|monospace|cursive|fantasy|system-ui|ui-[a-z-]+|math|emoji|fangsong|)$/i;

/** The first family that a list asks for. */
function firstFamily(list: string): string {
  return (list.split(',')[0] ?? '').trim().replace(/^(["'])(.*)\1$/, '$2');
}

function listFonts(texts: readonly Live[]): readonly string[] {
  return [...new Set(texts.flatMap(({ families }) => families.map(firstFamily)))].sort();
}

function sayFonts(fonts: readonly string[]): string {
  const named = fonts.slice(0, 8).map((font) => (font === '' ? 'no font named' : `"${font}"`));
  return named.join(', ') + (fonts.length > 8 ? ` and ${fonts.length - 8} more` : '');
}

/** Live type of the passes that cover areas; type in a pass of lines is a matter of the lines. */
export function checkLiveText(facts: CheckFacts): readonly Finding[] {
  const { artwork, assignment } = facts;
  const texts = new Map<number, Live>();
  for (const { shape: index, pass } of assignment.placements) {
    const shape = artwork.shapes[index]!;
    if (shape.kind !== 'text' || !shape.draws || isToolpath(assignment.passes[pass]!.role)) continue;
    const { families, fontSize } = facts.textOf(shape);
    const sizeMm = fontSize * scalesOf(shape.matrix)[1] * artwork.artboard.mmPerPx;
    const sizePt = sizeMm / MM_PER_PX / PX_PER_UNIT.pt;
    texts.set(index, { shape, at: [shape.fillBox.x0, shape.fillBox.y0], weight: -sizePt, families, sizePt });
  }
  return gatherTroubles(artwork, 'check/live-text', [...texts.values()], (list) => {
    const fonts = listFonts(list);
    const smallest = list[0]!.sizePt;
    const unsure = fonts.some((font) => GENERIC.test(font));
    return {
      message: `${sayCount(list.length, 'live text')} ${inLayer(artwork, list[0]!.shape.layer)} ${list.length === 1 ? 'needs' : 'need'} ${sayFonts(fonts)} at the machine; the smallest type is ${sayNumber(smallest, 1)} pt.`,
      remedy: unsure
        ? 'Turn the type into outlines: where no font is named, each program takes its own.'
        : 'Turn the type into outlines, or see to it that the machine has these very fonts.',
      data: { fonts, smallestPt: Math.round(smallest * 100) / 100 },
    };
  });
}
