// A pass with its elements in another order: the bytes of each stay, and what comes out is read again.

import type { Artwork } from '../model/artwork.js';
import { type Finding, finding } from '../model/finding.js';
import type { RoadOptions } from '../model/job.js';
import { type Pass, ROLES } from '../model/pass.js';
import { decodeUtf8, equalBytes } from '../model/platform.js';
import type { Corner, SequenceReport, SequenceRequest, Stayed } from '../model/sequence.js';
import { joinPieces } from '../model/sheet.js';
import { invariant } from '../model/trouble.js';
import { findNesting } from '../sequence/find-nesting.js';
import { type ArrangedGroup, countBroken, listItems, planOrder, type WorkGroup } from '../sequence/plan-order.js';
import { measureTravel, type Spot } from '../sequence/travel.js';
import type { Source } from '../source/source.js';
import { listWork, type WorkList } from './list-work.js';
import { resolveSource, scanBytes } from './read-artwork.js';
import { restartLines } from './restart-lines.js';
import { shapeLengthMm } from './shape-lengths.js';

/** A pass on its way: its name in the job, and its bytes. */
export interface PassBytes {
  readonly name: string;
  readonly pass: Pass;
  readonly bytes: Uint8Array;
  /** How many times as large it is to lie on its sheet; 1 where left out. Lengths are asked and told as they are there. */
  readonly scale?: number;
}

/** A pass put in order. */
export interface SequencedPass {
  readonly bytes: Uint8Array;
  readonly report: SequenceReport;
  readonly findings: readonly Finding[];
}

/** The corner of the artboard that the head starts from, px. */
export function originOf({ artboard }: Artwork, corner: Corner): Spot {
  return {
    x: corner.endsWith('right') ? artboard.width : 0,
    y: corner.startsWith('bottom') ? artboard.height : 0,
  };
}

/** The bytes of a group with its children where they were put. */
function writeGroup(
  source: Source,
  work: WorkList,
  group: WorkGroup,
  arranged: ArrangedGroup,
  out: Uint8Array[],
): void {
  const { start, end, headEnd, tailStart } = source.elements;
  const row = work.groupRows.get(group)!;
  const rowOf = (child: number | WorkGroup): number =>
    typeof child === 'number' ? work.rows[child]! : work.groupRows.get(child)!;
  out.push(source.text.subarray(row === 0 ? 0 : start[row]!, headEnd[row]!));
  let at = headEnd[row]!;
  arranged.from.forEach((index, slot) => {
    const here = rowOf(group.children[slot]!);
    const child = group.children[index]!;
    out.push(source.text.subarray(at, start[here]!));
    if (typeof child === 'number') out.push(source.text.subarray(start[rowOf(child)]!, end[rowOf(child)]!));
    else writeGroup(source, work, child, arranged.children[slot] as ArrangedGroup, out);
    at = end[here]!;
  });
  out.push(source.text.subarray(at, row === 0 ? source.text.length : end[row]!));
  invariant(tailStart[row]! >= at || arranged.from.length === 0, 'a group ends before its children');
}

/** What every drawn element is: its bytes, the start tags around it, and what it draws where. Equal lists: only the order changed. */
function listElements(source: Source, artwork: Artwork): readonly string[] {
  const { start, end, headEnd, parent } = source.elements;
  const chains = new Map<number, string>();
  const chainOf = (row: number): string => {
    if (row < 0) return '';
    let chain = chains.get(row);
    if (chain === undefined) {
      chain = `${chainOf(parent[row]!)}${decodeUtf8(source.text.subarray(start[row]!, headEnd[row]!))}`;
      chains.set(row, chain);
    }
    return chain;
  };
  const paints = new Map<object, string>();
  return artwork.shapes
    .map((shape) => {
      let paint = paints.get(shape.paint);
      if (paint === undefined) {
        paint = JSON.stringify(shape.paint);
        paints.set(shape.paint, paint);
      }
      const { carrier, matrix, fillBox, drawnBox, draws } = shape;
      const bytes = decodeUtf8(source.text.subarray(start[carrier]!, end[carrier]!));
      return `${bytes}\n${chainOf(parent[carrier]!)}\n${JSON.stringify([matrix, fillBox, drawnBox, draws])}${paint}`;
    })
    .sort();
}

/** Whether two files hold the same elements in the same groups, and draw them alike. */
function holdSame(source: Source, artwork: Artwork, bytes: Uint8Array, options: RoadOptions): boolean {
  const again = scanBytes(bytes, options);
  if (!equalBytes(again.text, bytes)) return false;
  const after = resolveSource(again, options, null);
  const [one, other] = [listElements(source, artwork), listElements(again, after)];
  return one.length === other.length && one.every((text, i) => text === other[i]);
}

function noteStayed(stayed: readonly Stayed[], file: string): readonly Finding[] {
  return stayed.map(({ why, count }) =>
    finding('sequence/stayed', {
      message: `${file}: ${count === 1 ? 'an element keeps its place' : `${count} elements keep their places`}, because ${why}.`,
      remedy: 'Nothing has to be done; where the way matters, draw the lines of the tool without fills and effects.',
      place: { file },
      data: { why, count },
    }),
  );
}

function noteStarts(kept: readonly Stayed[], file: string): readonly Finding[] {
  return kept.map(({ why, count }) =>
    finding('sequence/start-kept', {
      message: `${file}: ${count === 1 ? 'a line keeps its start' : `${count} lines keep their starts`}, because ${why}.`,
      remedy: 'Nothing has to be done; where the way matters, draw each as one plain line without dashes and markers.',
      place: { file },
      data: { why, count },
    }),
  );
}

function noteBroken(broken: number, file: string): readonly Finding[] {
  if (broken === 0) return [];
  return [
    finding('sequence/order-kept', {
      message: `${file}: ${broken === 1 ? '1 line still comes' : `${broken} lines still come`} after a line that they should come before: groups are kept whole, and what may not move stands between.`,
      remedy: 'Draw creases and cuts, and inner and outer outlines, in groups of their own or all in one.',
      place: { file },
      data: { count: broken },
    }),
  ];
}

function countMoved(before: readonly number[], after: readonly number[]): number {
  return after.filter((item, place) => before[place] !== item).length;
}

/** A pass put in order once, with what it was read as. */
interface Ordered extends SequencedPass {
  readonly source: Source;
  readonly artwork: Artwork;
  readonly work: WorkList;
  readonly origin: Spot;
  /** Items in the order in which they are run now. */
  readonly order: readonly number[];
}

/** Only the order of elements changes. The result is read again; where it does not hold the same, or is no better, the pass stays. */
function orderPass(pass: PassBytes, request: SequenceRequest, options: RoadOptions): Ordered {
  const source = scanBytes(pass.bytes, options);
  const artwork = resolveSource(source, options, null);
  const work = listWork(source, artwork, pass.pass.role);
  const origin = originOf(artwork, request.origin);
  const cutting = ROLES.indexOf('cutting');
  const cuts = work.outlines.map((outlines, item) => (work.items[item]!.tier === cutting ? outlines : []));
  const task = { items: work.items, root: work.root, before: findNesting(cuts), origin };
  const before = listItems(work.root);
  const arranged = planOrder(task);
  const after = listItems(arranged);
  const travelOf = (order: readonly number[]) =>
    measureTravel(
      order.flatMap((item) => work.items[item]!.runs),
      origin,
    );
  const [first, then] = [travelOf(before), travelOf(after)];
  const [brokenBefore, brokenAfter] = [countBroken(task, before), countBroken(task, after)];
  const better = brokenAfter < brokenBefore || (brokenAfter === brokenBefore && then.travel < first.travel);
  const pieces: Uint8Array[] = [];
  if (better) writeGroup(source, work, work.root, arranged, pieces);
  const bytes = better ? joinPieces(pieces) : pass.bytes;
  const kept = better && !artwork.structural && holdSame(source, artwork, bytes, options);
  const stayed = [...work.stayed];
  if (better && !kept) stayed.push({ why: 'style rules look at neighbours', count: before.length });
  const scale = pass.scale ?? 1;
  const mm = artwork.artboard.mmPerPx * scale;
  return {
    ...{ source, artwork, work, origin, order: kept ? after : before },
    bytes: kept ? bytes : pass.bytes,
    report: {
      pass: pass.pass.name,
      role: pass.pass.role,
      file: pass.name,
      lineMm: shapeLengthMm(source, artwork, work.shapes.flat()) * scale,
      travelBeforeMm: first.travel * mm,
      travelAfterMm: (kept ? then : first).travel * mm,
      liftsBefore: first.lifts,
      liftsAfter: (kept ? then : first).lifts,
      moved: kept ? countMoved(before, after) : 0,
      restarted: 0,
      stayed,
    },
    findings: [...noteStayed(stayed, pass.name), ...noteBroken(kept ? brokenAfter : brokenBefore, pass.name)],
  };
}

/** Rounds of new starts and a new order: the second seldom gains, a third never did. */
const ROUNDS = 2;
/** A round that gains less than this is not taken, mm. */
const LEAST_GAIN_MM = 0.01;

/** Other starts for the lines of a pass in order, and a new order for these; the pass itself where that is no shorter. */
function restartPass(pass: PassBytes, ordered: Ordered, request: SequenceRequest, options: RoadOptions): SequencedPass {
  const { origin } = ordered;
  /** By place in the file as it now is: the place in the file as it was. */
  let places: readonly number[] = ordered.order;
  let best: SequencedPass = ordered;
  const restarted = new Set<number>();
  let kept: readonly Stayed[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const source = scanBytes(best.bytes, options);
    const artwork = resolveSource(source, options, null);
    const work = listWork(source, artwork, pass.pass.role);
    const order = listItems(work.root);
    const { bytes, items, kept: keptNow } = restartLines(source, artwork, work, { order, origin }, options);
    if (round === 0) kept = keptNow;
    if (items.length === 0) break;
    const again = orderPass({ ...pass, bytes }, request, options);
    if (!(again.report.travelAfterMm < best.report.travelAfterMm - LEAST_GAIN_MM)) break;
    for (const item of items) restarted.add(places[item]!);
    const before = places;
    places = again.order.map((item) => before[item]!);
    const { travelAfterMm, liftsAfter } = again.report;
    const moved = places.filter((from, place) => from !== place).length;
    best = {
      ...best,
      bytes: again.bytes,
      report: { ...best.report, travelAfterMm, liftsAfter, moved, restarted: restarted.size },
    };
  }
  return { ...best, findings: [...best.findings, ...noteStarts(kept, pass.name)] };
}

/**
 * A pass with its elements in order: creases before cuts, inner outlines before outer ones, and a short way between them.
 *
 * Only the order of elements changes, unless the request lets lines be written from another start. What comes out is read again;
 * where it does not hold the same lines, or is no better, the pass stays.
 *
 * @throws PinbarError as reading does.
 */
export function sequencePass(pass: PassBytes, request: SequenceRequest, options: RoadOptions): SequencedPass {
  const ordered = orderPass(pass, request, options);
  if (!request.restartContours) return ordered;
  if (!ordered.artwork.structural) return restartPass(pass, ordered, request, options);
  const kept = [{ why: 'style rules look at neighbours', count: ordered.order.length }];
  return { ...ordered, findings: [...ordered.findings, ...noteStarts(kept, pass.name)] };
}
