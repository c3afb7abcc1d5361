// The blank in words: how many, how large, and its panels as a tree of folds.
import { sayCount } from '../model/say-count.js';
import type { Solid, SolidPanel } from '../model/solid.js';

/** Panels that are listed at most. */
const MOST_LISTED = 40;

function sayLength(mm: number): string {
  return String(Math.round(mm * 100) / 100);
}

/** One line about all blanks: `1 blank, 12 panels; 208.5 x 196 mm, 236.4 cm2, 42 % of the rectangle around is waste`. */
export function summariseSolid(solid: Solid): string {
  const [, , width, height] = solid.extentMm;
  const waste = Math.round(solid.wasteShare * 100);
  const counts = `${sayCount(solid.blanks.length, 'blank')}, ${sayCount(solid.panels.length, 'panel')}`;
  const pieces =
    solid.loosePieces === 0
      ? ''
      : `, ${sayCount(solid.loosePieces, 'piece')} that ${solid.loosePieces === 1 ? 'falls' : 'fall'} out`;
  return `${counts}${pieces}; ${sayLength(width)} x ${sayLength(height)} mm, ${sayLength(solid.areaMm2 / 100)} cm² of board, ${waste} % waste around`;
}

function sayPanel(panel: SolidPanel): string {
  const size = `${sayLength(panel.lengthMm)} x ${sayLength(panel.widthMm)} mm`;
  const fold =
    panel.hinge === null ? '' : `, ${panel.hinge.kind} of ${sayLength(panel.hinge.lengthMm)} mm to ${panel.parent + 1}`;
  return `panel ${panel.index + 1}: ${size}${fold}`;
}

/** The panels, each under the one that holds it; `depth` says how far in. Panels are counted from 1, as in the proof. */
export function listPanels(solid: Solid): readonly { readonly depth: number; readonly words: string }[] {
  const children = new Map<number, SolidPanel[]>();
  for (const panel of solid.panels) {
    const list = children.get(panel.parent);
    if (list === undefined) children.set(panel.parent, [panel]);
    else list.push(panel);
  }
  const lines: { depth: number; words: string }[] = [];
  const open = [...(children.get(-1) ?? [])].reverse();
  while (open.length > 0 && lines.length < MOST_LISTED) {
    const panel = open.pop()!;
    lines.push({ depth: panel.depth, words: sayPanel(panel) });
    open.push(...[...(children.get(panel.index) ?? [])].reverse());
  }
  const more = solid.panels.length - lines.length;
  if (more > 0) lines.push({ depth: 0, words: `and ${sayCount(more, 'panel')} more` });
  return lines;
}
