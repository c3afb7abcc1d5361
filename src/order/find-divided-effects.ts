// Opacity, masks, filters and blend modes over what more than one pass draws: each sheet gets them by itself.
import type { Artwork, EffectKind, GroupEffect } from '../model/artwork.js';
import { type Finding, finding, type Place } from '../model/finding.js';
import type { Assignment } from '../model/pass.js';
import { describeShapes, joinWords } from './describe-shapes.js';
import { countBefore, type SheetStack } from './sheet-items.js';

/** Items of one sheet that an effect takes in: from `first` to before `end`. */
interface Stretch {
  readonly sheet: number;
  readonly first: number;
  readonly end: number;
}

/** First shape whose carrier is not before a row: carriers ascend in paint order. */
export function firstShapeFrom({ shapes }: Artwork, row: number): number {
  let low = 0;
  let high = shapes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (shapes[middle]!.carrier < row) low = middle + 1;
    else high = middle;
  }
  return low;
}

function listStretches(stack: SheetStack, from: number, to: number): readonly Stretch[] {
  return stack.sheets
    .map((items, sheet) => ({ sheet, first: countBefore(items, from), end: countBefore(items, to) }))
    .filter(({ first, end }) => end > first);
}

/** Whether something an effect takes in lies over something of another sheet that is painted from `since` on. */
function crossesSheets(stack: SheetStack, stretches: readonly Stretch[], since: number): readonly number[] {
  const met = new Set<number>();
  for (const { sheet, first, end } of stretches) {
    for (let lower = 0; lower < stack.sheets.length; lower += 1) {
      if (lower === sheet) continue;
      for (let item = end - 1; item >= first; item -= 1) {
        if (!stack.liesOver(sheet, item, lower, since)) continue;
        met.add(sheet).add(lower);
        break;
      }
    }
  }
  return [...met].sort((a, b) => a - b);
}

/** Passes among which an effect is not the same on sheets of their own. */
function listConcerned(stack: SheetStack, effect: GroupEffect, from: number, to: number): readonly number[] {
  const stretches = listStretches(stack, from, to);
  // What a filter draws reaches beyond the shapes it is made of.
  if (effect.kinds.includes('filter') && stretches.length > 1) return stretches.map(({ sheet }) => sheet);
  // A blend mode looks at all that is painted before.
  return crossesSheets(stack, stretches, effect.kinds.includes('blend') ? 0 : from);
}

const WORDS: Readonly<Record<EffectKind, string>> = {
  opacity: 'opacity',
  mask: 'mask',
  filter: 'filter',
  blend: 'blend mode',
};

/**
 * Finds effects on groups, copies and parted shapes that come out otherwise when each sheet has them by itself.
 *
 * An opacity or a mask makes a difference where shapes of two passes lie over each other within the group, a blend mode where
 * they lie over anything of another pass, a filter wherever the group is divided.
 */
export function findDividedEffects(
  artwork: Artwork,
  assignment: Assignment,
  stack: SheetStack,
  placeOf: (row: number) => Place,
): readonly Finding[] {
  return artwork.effects.flatMap((effect) => {
    const first = firstShapeFrom(artwork, effect.element);
    const end = firstShapeFrom(artwork, effect.end);
    const concerned = listConcerned(stack, effect, 2 * first, 2 * end);
    if (concerned.length === 0) return [];
    const names = concerned.map((sheet) => assignment.passes[sheet]!.name);
    const place = placeOf(effect.element);
    const kinds = joinWords(effect.kinds.map((kind) => WORDS[kind]));
    const told = describeShapes(
      artwork,
      Array.from({ length: end - first }, (_, at) => first + at),
    );
    return [
      finding('order/effect-divided', {
        message: `The ${place.element} on line ${place.line} has ${kinds === 'opacity' ? 'an opacity' : `a ${kinds}`} over shapes of ${joinWords(names)} at once; on sheets of their own they look otherwise where they lie over each other.`,
        remedy:
          'Draw what each pass takes as a group of its own with its own effect, or keep all of it in one pass. Where only the path of a tool is concerned, nothing needs doing.',
        place,
        data: { ...told.data, passes: names, effects: effect.kinds },
      }),
    ];
  });
}
