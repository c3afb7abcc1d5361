// Says what became of the source's shapes in files made elsewhere.
import { type Finding, type FindingCode, finding, type Json } from '../model/finding.js';
import type { MeasuredFile } from './compare-boards.js';
import type { DrawnShape } from './list-drawn.js';
import {
  type Copy,
  hasSamePaint,
  type MatchGround,
  type Pairing,
  pointDistance,
  type ShapeMatching,
} from './match-shapes.js';

/** A shape of a file, recognised in the source. Lengths in mm. */
export interface ShapeMatch {
  readonly file: string;
  /** Kind and id, or kind and place in the source's order of painting. */
  readonly shape: string;
  readonly by: 'id' | 'geometry';
  readonly element: string;
  readonly id: string;
  readonly sourceElement: string;
  readonly sourceId: string;
  /** Place in the source's order of painting, from 0. */
  readonly sourceIndex: number;
  /** On sheets of copies: which copy it is of, from 1. */
  readonly copy?: number;
  readonly ground: MatchGround;
  /** How far its middle lies from where it should. */
  readonly dxMm: number;
  readonly dyMm: number;
  /** Its width and height against the source's. */
  readonly scaleX: number;
  readonly scaleY: number;
  /** Greatest distance of a point of its outline (its box, where it is drawn by other segments) from where it should be. */
  readonly deviationMm: number;
  readonly repainted: boolean;
}

const LISTED = 20;
const NAMED = 5;
/** Most findings of one code about one file. */
const KINDS_LISTED = 20;

interface Group {
  readonly code: FindingCode;
  readonly file: string;
  readonly text: (count: string) => string;
  readonly data: { readonly [key: string]: Json };
  readonly shapes: DrawnShape[];
  deviation: number;
}

function nameShape(shape: DrawnShape): string {
  return shape.id === '' ? `a ${shape.kind} without id` : `${shape.kind} "${shape.id}"`;
}

function nameShapes(shapes: readonly DrawnShape[]): string {
  const named = shapes.slice(0, NAMED).map(nameShape).join(', ');
  return shapes.length > NAMED ? `${named} and ${shapes.length - NAMED} more` : named;
}

const REMEDIES: Partial<Record<FindingCode, string>> = {
  'verify/moved': 'Export the file again from the source without moving anything, or say the shift if it is meant.',
  'verify/scaled': 'Export the file again at full size, in the unit of the source.',
  'verify/missing': 'Put the shapes on the file of their pass.',
  'verify/doubled': 'Take one copy out: the machine would run it twice.',
  'verify/added': 'Check that they are meant to be there.',
  'verify/repainted': 'Check that the pass still finds them by their paint.',
};

function sayGroup(group: Group): Finding {
  const { code, shapes } = group;
  const count = shapes.length === 1 ? nameShape(shapes[0]!) : `${shapes.length} shapes (${nameShapes(shapes)})`;
  const first = shapes[0]!;
  const place = { ...(group.file === '' ? {} : { file: group.file }), element: first.kind };
  return finding(code, {
    message: `${group.text(count)}.`,
    remedy: REMEDIES[code] ?? '',
    place: first.id === '' ? place : { ...place, id: first.id },
    data: {
      ...group.data,
      count: shapes.length,
      ...(group.deviation > 0 && Number.isFinite(group.deviation) ? { deviationMm: group.deviation } : {}),
      shapes: shapes.slice(0, LISTED).map((shape) => ({ element: shape.kind, id: shape.id })),
    },
  });
}

interface Reporting {
  readonly source: MeasuredFile;
  readonly files: readonly MeasuredFile[];
  readonly toleranceMm: number;
  readonly shiftMm: readonly [number, number];
  /** Shapes of one copy, where the source stands there several times; else 0. */
  readonly shapesOfCopy: number;
  readonly groups: Map<string, Group>;
  /** How many groups there are per code and file. */
  readonly kinds: Map<string, number>;
}

/** Files a shape under what happened to it; beyond some kinds of happening per file, under the rest. */
function addTo(
  reporting: Reporting,
  key: string,
  group: Omit<Group, 'shapes' | 'deviation'>,
  shape: DrawnShape,
  deviation: number,
): void {
  const { groups, kinds } = reporting;
  const family = `${group.code} ${group.file}`;
  const count = kinds.get(family) ?? 0;
  let name = `${family} ${key}`;
  if (!groups.has(name) && count >= KINDS_LISTED) name = `${family} rest`;
  const known = groups.get(name);
  if (known !== undefined) {
    known.shapes.push(shape);
    known.deviation = Math.max(known.deviation, deviation);
    return;
  }
  kinds.set(family, count + 1);
  const text = (what: string): string => `${group.text(what)} (and others in other ways)`;
  const isRest = count >= KINDS_LISTED;
  groups.set(name, { ...group, ...(isRest ? { text, data: {} } : {}), shapes: [shape], deviation });
}

function ratio(here: number, there: number, tolerance: number): number {
  return Math.abs(here - there) <= 2 * tolerance || there <= tolerance ? 1 : here / there;
}

/** Which copy a shape of the source is of, from 1; 0 where there are none. */
const copyOf = ({ shapesOfCopy }: Reporting, index: number): number =>
  shapesOfCopy === 0 ? 0 : Math.floor(index / shapesOfCopy) + 1;

/** A copy in words and as data; nothing where there are none. */
function tellCopy(copy: number): { readonly where: string; readonly inCopy: { readonly copy?: number } } {
  return copy === 0 ? { where: '', inCopy: {} } : { where: ` in copy ${copy}`, inCopy: { copy } };
}

/** Measures one pairing. */
function measurePairing(reporting: Reporting, pairing: Pairing): ShapeMatch {
  const { source, files, shiftMm, toleranceMm } = reporting;
  const original: Copy = { file: -1, list: source.drawn, shape: source.drawn.shapes[pairing.source]! };
  const { copy } = pairing;
  const [a, b] = [original.shape.box, copy.shape.box];
  const middle = (low: number, high: number): number => (low + high) / 2;
  const of = copyOf(reporting, pairing.source);
  const sourceIndex = of === 0 ? pairing.source : pairing.source % reporting.shapesOfCopy;
  return {
    file: files[copy.file]!.summary.name,
    shape: copy.shape.id === '' ? `${copy.shape.kind} ${sourceIndex + 1}` : nameShape(copy.shape),
    by: pairing.ground === 'id' ? 'id' : 'geometry',
    element: copy.shape.kind,
    id: copy.shape.id,
    sourceElement: original.shape.kind,
    sourceId: original.shape.id,
    sourceIndex,
    ...(of === 0 ? {} : { copy: of }),
    ground: pairing.ground,
    dxMm: middle(b.x0, b.x1) - middle(a.x0, a.x1) - shiftMm[0] + 0,
    dyMm: middle(b.y0, b.y1) - middle(a.y0, a.y1) - shiftMm[1] + 0,
    scaleX: ratio(b.x1 - b.x0, a.x1 - a.x0, toleranceMm),
    scaleY: ratio(b.y1 - b.y0, a.y1 - a.y0, toleranceMm),
    deviationMm: pointDistance(original, copy, ...shiftMm),
    repainted: !hasSamePaint(original.shape, copy.shape),
  };
}

function sayMm(value: number): string {
  return `${Number(value.toFixed(4)) + 0}`;
}

/** Reports a shape that does not lie where it should. */
function reportPlace(reporting: Reporting, match: ShapeMatch, copy: Copy): void {
  const { toleranceMm } = reporting;
  const allowed = match.ground === 'box' ? 4 * toleranceMm : toleranceMm;
  if (match.deviationMm <= allowed) return;
  const { file, dxMm, dyMm, scaleX, scaleY, deviationMm, copy: of = 0 } = match;
  const { where, inCopy } = tellCopy(of);
  if (scaleX !== 1 || scaleY !== 1) {
    const key = `${of} ${scaleX.toFixed(4)} ${scaleY.toFixed(4)}`;
    const by = `${sayMm(100 * scaleX)} % in width and ${sayMm(100 * scaleY)} % in height`;
    const text = (what: string): string => `${file}: ${what}${where} drawn at ${by} of the source`;
    addTo(
      reporting,
      key,
      { code: 'verify/scaled', file, text, data: { scaleX, scaleY, ...inCopy } },
      copy.shape,
      deviationMm,
    );
    return;
  }
  const isAltered = Math.max(Math.abs(dxMm), Math.abs(dyMm)) <= toleranceMm;
  const key = `${of} ${isAltered ? 'altered' : `${dxMm.toFixed(3)} ${dyMm.toFixed(3)}`}`;
  const by = isAltered
    ? `turned, mirrored or bent in place, by up to ${sayMm(deviationMm)} mm`
    : `moved by ${sayMm(dxMm)}, ${sayMm(dyMm)} mm`;
  const text = (what: string): string => `${file}: ${what}${where} ${by} against the source`;
  const data = { dxMm: Number(dxMm.toFixed(6)) + 0, dyMm: Number(dyMm.toFixed(6)) + 0, ...inCopy };
  addTo(reporting, key, { code: 'verify/moved', file, text, data }, copy.shape, deviationMm);
}

/** Whether two copies share one shape's paint: the fill on one, the stroke on the other. */
function isParted(original: DrawnShape, copies: readonly Copy[]): boolean {
  if (copies.length !== 2) return false;
  const [a, b] = [copies[0]!.shape, copies[1]!.shape];
  const shows = (fill: DrawnShape, stroke: DrawnShape): boolean =>
    fill.fill === original.fill &&
    fill.stroke === 'none' &&
    stroke.fill === 'none' &&
    stroke.stroke === original.stroke;
  return shows(a, b) || shows(b, a);
}

function sayPaint({ fill, stroke }: DrawnShape): string {
  return `fill ${fill} and stroke ${stroke}`;
}

function reportRepainted(reporting: Reporting, file: string, original: DrawnShape, copy: Copy): void {
  const here = sayPaint(copy.shape);
  const there = sayPaint(original);
  const by = here === there ? 'by another style sheet' : `with ${here}, in the source with ${there}`;
  const text = (what: string): string => `${file}: ${what} painted ${by}`;
  addTo(reporting, by, { code: 'verify/repainted', file, text, data: {} }, copy.shape, 0);
}

/** Reports what is in the files more than once, and what is painted otherwise. */
function reportCopies(reporting: Reporting, pairings: readonly Pairing[]): void {
  const bySource = new Map<number, Copy[]>();
  for (const { source, copy } of pairings) {
    const list = bySource.get(source);
    if (list === undefined) bySource.set(source, [copy]);
    else list.push(copy);
  }
  for (const [source, copies] of bySource) {
    const original = reporting.source.drawn.shapes[source]!;
    const nameOf = (copy: Copy): string => reporting.files[copy.file]!.summary.name;
    if (isParted(original, copies)) continue;
    if (copies.length > 1) {
      const where = [...new Set(copies.map(nameOf))].join(' and ');
      const { where: place, inCopy } = tellCopy(copyOf(reporting, source));
      const text = (what: string): string =>
        `${where}: ${what}${place} drawn ${copies.length} times, in the source once`;
      const data = { times: copies.length, ...inCopy };
      addTo(
        reporting,
        `${where}${place} ${copies.length}`,
        { code: 'verify/doubled', file: nameOf(copies.at(-1)!), text, data },
        original,
        0,
      );
    }
    for (const copy of copies) {
      if (!hasSamePaint(original, copy.shape)) reportRepainted(reporting, nameOf(copy), original, copy);
    }
  }
}

/** Findings and measurements about all shapes. */
export function reportMatches(
  matching: ShapeMatching,
  source: MeasuredFile,
  files: readonly MeasuredFile[],
  options: {
    readonly toleranceMm: number;
    readonly shiftMm: readonly [number, number];
    readonly shapesOfCopy: number;
  },
): {
  readonly findings: readonly Finding[];
  readonly matches: readonly ShapeMatch[];
  readonly greatestDeviationMm: number;
  readonly greatestDeviationAt: string;
} {
  const reporting: Reporting = { source, files, ...options, groups: new Map(), kinds: new Map() };
  let greatestDeviationMm = 0;
  let greatestDeviationAt = '';
  const matches = matching.pairings.map((pairing) => {
    const match = measurePairing(reporting, pairing);
    reportPlace(reporting, match, pairing.copy);
    if (match.deviationMm > greatestDeviationMm || greatestDeviationAt === '') {
      greatestDeviationMm = match.deviationMm;
      const { where } = tellCopy(match.copy ?? 0);
      greatestDeviationAt = `${nameShape(pairing.copy.shape)}${where} in ${match.file}`;
    }
    return match;
  });
  reportCopies(reporting, matching.pairings);
  for (const index of matching.missing) {
    const { where, inCopy: data } = tellCopy(copyOf(reporting, index));
    const text = (what: string): string => `${what} of the source drawn in none of the files${where}`;
    addTo(reporting, where, { code: 'verify/missing', file: '', text, data }, source.drawn.shapes[index]!, 0);
  }
  for (const copy of matching.added) {
    const file = files[copy.file]!.summary.name;
    const text = (what: string): string => `${file}: ${what} drawn, which the source does not have`;
    addTo(reporting, '', { code: 'verify/added', file, text, data: {} }, copy.shape, 0);
  }
  return { findings: [...reporting.groups.values()].map(sayGroup), matches, greatestDeviationMm, greatestDeviationAt };
}
