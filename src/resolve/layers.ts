// The layers of a drawing: which groups a designer would call so, and what they are called.
import type { Layer } from '../model/artwork.js';
import type { Source } from '../source/source.js';
import { GROUP, isContainerCode, isShapeCode, LINK, NOTHING, SVG, SWITCH, SYMBOL, USE } from './element-codes.js';
import type { FindingLog } from './finding-log.js';
import { type GroupNaming, isMachineName, plainNameOf, readNaming } from './layer-names.js';
import type { Style } from './style.js';
import { type ConditionGrounds, chooseChild } from './switch-choice.js';

/** What layers are told by. */
export interface LayerGrounds extends ConditionGrounds {
  readonly source: Source;
  /** Computed style by row. */
  readonly styles: readonly Style[];
  /** Row of the group of marks, or -1. */
  readonly marks: number;
  readonly log: FindingLog;
}

/** The layers in document order. */
export interface LayerTree {
  readonly layers: readonly Layer[];
  /** Index of the layer that a row is, by row. */
  readonly byRow: ReadonlyMap<number, number>;
}

interface Survey extends LayerGrounds {
  /** How many shapes and uses stand before a row, those in definitions left out. */
  readonly drawnBefore: Uint32Array;
  readonly namings: Map<number, GroupNaming>;
  /** Whether the file itself marks any group as a layer. */
  readonly hasMarks: boolean;
  readonly layers: Layer[];
  readonly byRow: Map<number, number>;
  /** Paths in use, with the number to try next for another of the same name. */
  readonly paths: Map<string, number>;
}

function countDrawn(grounds: LayerGrounds): Uint32Array {
  const { count, next, name } = grounds.source.elements;
  const before = new Uint32Array(count + 1);
  let drawn = 0;
  let undrawnUntil = 0;
  for (let row = 0; row < count; row += 1) {
    const code = grounds.codes[name[row]!]!;
    if (row >= undrawnUntil && (code === NOTHING || code === SYMBOL || row === grounds.marks))
      undrawnUntil = next[row]!;
    if (row >= undrawnUntil && (isShapeCode(code) || code === USE)) drawn += 1;
    before[row + 1] = drawn;
  }
  return before;
}

function draws(survey: Survey, row: number): boolean {
  return survey.drawnBefore[survey.source.elements.next[row]!]! > survey.drawnBefore[row]!;
}

function namingOf(survey: Survey, row: number): GroupNaming {
  let naming = survey.namings.get(row);
  if (naming === undefined) {
    naming = readNaming(survey.source, row);
    survey.namings.set(row, naming);
  }
  return naming;
}

function hasHumanName(survey: Survey, row: number): boolean {
  const { name } = namingOf(survey, row);
  return name !== '' && !isMachineName(name);
}

/** The containers that stand in a container; a switch counts as what it draws. */
function listContainers(survey: Survey, row: number): readonly number[] {
  const { next, name } = survey.source.elements;
  const found: number[] = [];
  for (let child = row + 1; child < next[row]!; child = next[child]!) {
    let at = child;
    while (at >= 0 && survey.codes[name[at]!] === SWITCH) at = chooseChild(survey, at);
    if (at >= 0 && at !== survey.marks && isContainerCode(survey.codes[name[at]!]!)) found.push(at);
  }
  return found;
}

function holdsLooseShapes(survey: Survey, row: number): boolean {
  const { next, name } = survey.source.elements;
  for (let child = row + 1; child < next[row]!; child = next[child]!) {
    const code = survey.codes[name[child]!]!;
    if (isShapeCode(code) || code === USE) return true;
  }
  return false;
}

/**
 * Whether the only group of a level is a wrapper around the layers and none itself.
 *
 * One with a name of its own is a wrapper only where at least two groups, some of them named, and nothing else stand in it: a
 * name that stands alone is better kept.
 */
function isWrapper(survey: Survey, row: number): boolean {
  if (namingOf(survey, row).isMarked) return false;
  const groups = listContainers(survey, row).filter((group) => draws(survey, group));
  if (groups.length === 0) return false;
  if (survey.hasMarks || !hasHumanName(survey, row)) return true;
  if (holdsLooseShapes(survey, row)) return false;
  if (groups.length === 1) return isWrapper(survey, groups[0]!);
  return groups.some((group) => hasHumanName(survey, group));
}

/** The element whose groups are the outermost layers. */
function findTop(survey: Survey): number {
  let top = 0;
  for (;;) {
    const groups = listContainers(survey, top).filter((group) => draws(survey, group));
    if (groups.length !== 1 || !isWrapper(survey, groups[0]!)) return top;
    top = groups[0]!;
  }
}

function isLayer(survey: Survey, row: number, isOutermost: boolean): boolean {
  const naming = namingOf(survey, row);
  if (naming.isMarked) return true;
  const code = survey.codes[survey.source.elements.name[row]!]!;
  const isNamed = naming.name !== '';
  if (isOutermost) return code === GROUP ? isNamed || draws(survey, row) : hasHumanName(survey, row);
  return !survey.hasMarks && code !== LINK && hasHumanName(survey, row) && draws(survey, row);
}

/** A path that no layer has yet. */
function takePath(survey: Survey, path: string): string {
  let free = path;
  let number = survey.paths.get(path) ?? 2;
  for (; survey.paths.has(free); number += 1) free = `${path} (${number})`;
  survey.paths.set(path, number);
  survey.paths.set(free, survey.paths.get(free) ?? 2);
  return free;
}

function isHidden(survey: Survey, row: number, until: number): boolean {
  const { parent } = survey.source.elements;
  if (survey.styles[row]!.visibility !== 'visible') return true;
  for (let at = row; at >= 0 && at !== until; at = parent[at]!) if (survey.styles[at]!.display === 'none') return true;
  return false;
}

function addLayer(survey: Survey, row: number, parent: number, position: number): number {
  const naming = namingOf(survey, row);
  const around = parent < 0 ? null : survey.layers[parent]!;
  const isNamed = naming.name !== '';
  const name = isNamed ? naming.name : `${plainNameOf(survey.source, row)} ${position}`;
  const own = name.replaceAll('/', '\\/');
  const wanted = around === null ? own : `${around.path}/${own}`;
  const path = takePath(survey, wanted);
  const index = survey.layers.length;
  const hidden = isHidden(survey, row, around?.element ?? -1) || naming.isSwitchedOff || (around?.hidden ?? false);
  survey.layers.push({
    index,
    element: row,
    parent,
    name,
    nameSource: isNamed ? naming.nameSource : 'position',
    path,
    hidden,
    locked: naming.isLocked || (around?.locked ?? false),
    printable: naming.isPrintable && (around?.printable ?? true),
  });
  survey.byRow.set(row, index);
  if (path !== wanted) survey.log.note('layer/same-name', wanted, row, path);
  if (!naming.isPrintable) survey.log.note('layer/not-printed', path, row, path);
  return index;
}

function addLevel(survey: Survey, container: number, parent: number, isOutermost: boolean): void {
  let position = 0;
  for (const row of listContainers(survey, container)) {
    position += 1;
    if (isLayer(survey, row, isOutermost)) {
      addLevel(survey, row, addLayer(survey, row, parent, position), false);
    } else {
      const code = survey.codes[survey.source.elements.name[row]!]!;
      addLevel(survey, row, parent, isOutermost && (code === SVG || code === LINK));
    }
  }
}

function anyMarked(grounds: LayerGrounds): boolean {
  const { names, attributes, count, name } = grounds.source.elements;
  if (!attributes.names.some(({ local }) => local === 'groupmode' || local === 'layer')) return false;
  const isGroup = names.map((_, index) => grounds.codes[index] === GROUP);
  for (let row = 0; row < count; row += 1) {
    if (isGroup[name[row]!] === true && readNaming(grounds.source, row).isMarked) return true;
  }
  return false;
}

/**
 * Lists the layers in document order.
 *
 * Every outermost group is one; a single wrapper around them is seen through. A group inside is one where the file marks it, or,
 * in a file without such marks, where it has a name that a person gave.
 *
 * @throws Never.
 */
export function listLayers(grounds: LayerGrounds): LayerTree {
  const survey: Survey = {
    ...grounds,
    drawnBefore: countDrawn(grounds),
    namings: new Map(),
    hasMarks: anyMarked(grounds),
    layers: [],
    byRow: new Map(),
    paths: new Map(),
  };
  addLevel(survey, findTop(survey), -1, true);
  return { layers: survey.layers, byRow: survey.byRow };
}
