// Which elements of the source a sheet keeps, and how.
import type { Artwork } from '../model/artwork.js';
import { type Finding, finding } from '../model/finding.js';
import type { Pass } from '../model/pass.js';
import { firstAtLeast } from '../source/first-at-least.js';
import { placeOf } from '../source/locate.js';
import { type Source, SVG_NAMESPACE } from '../source/source.js';
import { NEVER_DRAWN_NAMES } from './svg-names.js';

/** Not on the sheet. */
export const DROPPED = 0;
/** Start and end tag only, around what is kept inside. */
export const CHAIN = 1;
/** With all it holds, drawn where it stands (or never drawn by its nature). */
export const WHOLE = 2;
/** With all it holds, but not drawn here: something kept refers to it. */
export const DEFINITION = 3;

/** What does not depend on the pass, worked out once per job. */
export interface Grounds {
  readonly source: Source;
  readonly artwork: Artwork;
  /** 1 for rows that never draw where they stand. */
  readonly neverDrawn: Uint8Array;
  /** 1 for rows that stand for a drawn shape. */
  readonly carriers: Uint8Array;
  /** Rows that refer to others, ascending. */
  readonly referring: Int32Array;
  readonly styleRows: readonly number[];
  /** 1 for rows that no sheet may hold. */
  readonly removed: Uint8Array;
}

/** The kept rows of one pass. */
export interface Selection {
  /** One of the four above per row. Rows inside a WHOLE or DEFINITION row carry no meaning of their own. */
  readonly duty: Uint8Array;
  readonly findings: readonly Finding[];
}

/** Works out what every pass's selection needs. */
export function layGrounds(source: Source, artwork: Artwork, removed: Uint8Array): Grounds {
  const { elements } = source;
  const undrawn = elements.names.map((name) => name.namespace === SVG_NAMESPACE && NEVER_DRAWN_NAMES.has(name.local));
  const isStyle = elements.names.map((name) => name.namespace === SVG_NAMESPACE && name.local === 'style');
  const neverDrawn = new Uint8Array(elements.count);
  const styleRows: number[] = [];
  for (let row = 0; row < elements.count; row += 1) {
    const parent = elements.parent[row]!;
    if (undrawn[elements.name[row]!] || (parent >= 0 && neverDrawn[parent] === 1)) neverDrawn[row] = 1;
    if (isStyle[elements.name[row]!] && removed[row] === 0) styleRows.push(row);
  }
  const carriers = new Uint8Array(elements.count);
  for (const shape of artwork.shapes) if (shape.draws) carriers[shape.carrier] = 1;
  const referring = Int32Array.from(artwork.references.keys()).sort();
  return { source, artwork, neverDrawn, carriers, referring, styleRows, removed };
}

interface Selecting {
  readonly grounds: Grounds;
  readonly duty: Uint8Array;
  /** Targets of references still to be looked at. */
  readonly pending: number[];
  readonly divided: number[];
}

/** Queues what the rows from `first` to before `end` refer to. */
function queueReferences(selecting: Selecting, first: number, end: number): void {
  const { artwork, referring } = selecting.grounds;
  for (let i = firstAtLeast(referring, first); i < referring.length && referring[i]! < end; i += 1) {
    for (const id of artwork.references.get(referring[i]!) ?? []) {
      const target = artwork.ids.get(id);
      if (target !== undefined) selecting.pending.push(target);
    }
  }
}

function isCovered(selecting: Selecting, row: number): boolean {
  const { parent } = selecting.grounds.source.elements;
  for (let at = row; at >= 0; at = parent[at]!) if (selecting.duty[at]! >= WHOLE) return true;
  return false;
}

/** Keeps a row with all it holds, and the tags around it. */
function keep(selecting: Selecting, row: number, duty: number): void {
  const { parent, next } = selecting.grounds.source.elements;
  selecting.duty[row] = duty;
  queueReferences(selecting, row, next[row]!);
  for (let at = parent[row]!; at >= 0 && selecting.duty[at] === DROPPED; at = parent[at]!) {
    selecting.duty[at] = CHAIN;
    queueReferences(selecting, at, at + 1);
  }
}

/** How many shapes of the drawing stand inside a row, and how many of them this pass draws. */
function countCarriers(selecting: Selecting, row: number): { readonly all: number; readonly here: number } {
  const { source, carriers } = selecting.grounds;
  let all = 0;
  let here = 0;
  for (let at = row; at < source.elements.next[row]!; at += 1) {
    if (carriers[at] === 0) continue;
    all += 1;
    if (selecting.duty[at] === WHOLE) here += 1;
  }
  return { all, here };
}

/** Brings along what something kept refers to. */
function keepTarget(selecting: Selecting, target: number): void {
  const { neverDrawn, removed } = selecting.grounds;
  if (removed[target] === 1 || isCovered(selecting, target)) return;
  const { all, here } = countCarriers(selecting, target);
  if (neverDrawn[target] === 1 || (here > 0 && here === all)) keep(selecting, target, WHOLE);
  else if (here === 0) keep(selecting, target, DEFINITION);
  else selecting.divided.push(target);
}

/**
 * Chooses the rows of one pass: its shapes, the groups around them, all style sheets, and what these refer to, transitively.
 *
 * @param carriers - Rows that the pass draws.
 */
export function selectRows(grounds: Grounds, pass: Pass, carriers: Iterable<number>): Selection {
  const selecting: Selecting = {
    grounds,
    duty: new Uint8Array(grounds.source.elements.count),
    pending: [],
    divided: [],
  };
  selecting.duty[0] = CHAIN;
  queueReferences(selecting, 0, 1);
  for (const row of carriers) if (grounds.removed[row] === 0) keep(selecting, row, WHOLE);
  for (const row of grounds.styleRows) if (!isCovered(selecting, row)) keep(selecting, row, WHOLE);
  if (grounds.artwork.marks >= 0) keep(selecting, grounds.artwork.marks, WHOLE);
  for (let target = selecting.pending.pop(); target !== undefined; target = selecting.pending.pop()) {
    keepTarget(selecting, target);
  }
  return { duty: selecting.duty, findings: selecting.divided.map((row) => sayDivided(grounds.source, pass, row)) };
}

function sayDivided(source: Source, pass: Pass, row: number): Finding {
  const place = placeOf(source, row);
  return finding('split/definition-divided', {
    message: `Pass "${pass.name}" draws only part of the ${place.element} "${place.id}" (line ${place.line}), but something it draws refers to the whole of it.`,
    remedy: 'Move the referenced element into the definitions of the file, or draw the copies without a reference.',
    place,
    data: { pass: pass.name },
  });
}
