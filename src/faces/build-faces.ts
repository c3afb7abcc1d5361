// What cut and crease lines enclose: blanks, their panels, what holds them, and what falls out.
import { type Box, EMPTY_BOX, unite } from '../geometry/box.js';
import { boundPoints } from '../geometry/outline.js';
import type { Blank, Faces, Gap, Island, Panel, Region } from '../model/faces.js';
import { type Bridge, bridgeGaps } from './bridge-gaps.js';
import { describeEnds } from './describe-ends.js';
import { addLine, createEdgeTable, type EdgeTable, type FaceLine } from './edge-table.js';
import type { Ground } from './ground.js';
import { describeHinge, type Fold, growTree, listFolds } from './grow-tree.js';
import { listOddFolds } from './list-odd-folds.js';
import { listParcels, type Parcel } from './list-parcels.js';
import { faceHalves } from './merge-slivers.js';
import { loopPoints, nestLoops } from './nest-loops.js';
import { describeRegion } from './region.js';
import { sortParcels } from './sort-parcels.js';
import { splitEdges } from './split-edges.js';
import { traceLoops } from './trace-loops.js';

/** How sloppy lines may be. */
export interface FaceOptions {
  /** Of the artboard. */
  readonly mmPerPx: number;
  /** Ends nearer to a line than this lie on it. */
  readonly snapMm: number;
  /** Ends of cut lines nearer to each other than this are taken as joined. */
  readonly gapMm: number;
  /** A crease that stops this short of a line folds up to it. */
  readonly creaseReachMm: number;
}

/** Nearer points are one: above what flattening may leave between two drawings of a curve. @unit mm */
const WELD_MM = 0.01;

/** Thinner faces are no board. @unit mm */
const SLIVER_MM = 0.03;

function arrange(table: EdgeTable, mmPerPx: number, shapeOf: readonly number[]): Ground {
  const loops = traceLoops(table);
  const nesting = nestLoops(table, loops);
  return { table, loops, nesting, halves: faceHalves(table, loops, nesting, SLIVER_MM / mmPerPx), mmPerPx, shapeOf };
}

/** Panels and blanks as they are numbered. */
interface Numbering {
  readonly panels: Panel[];
  readonly blanks: Blank[];
  /** Panel of each face, or -1. */
  readonly panelOf: Int32Array;
  /** Folds that are part of a tree. */
  readonly used: Uint8Array;
}

function faceRegion(ground: Ground, face: number): Region {
  const { table, loops, nesting, mmPerPx } = ground;
  const holes = nesting.holes[face]!.map((loop) => loopPoints(table, loops, loop));
  return describeRegion(nesting.outlines[face]!, holes, mmPerPx);
}

function addBlank(
  numbering: Numbering,
  ground: Ground,
  parcel: Parcel,
  folding: { readonly folds: readonly Fold[]; readonly byFace: readonly (readonly number[])[] },
): void {
  const { panels, blanks, panelOf, used } = numbering;
  const regions = new Map<number, Region>();
  let root = -1;
  for (const face of parcel.faces) {
    const region = faceRegion(ground, face);
    regions.set(face, region);
    if (root < 0 || region.areaMm2 > regions.get(root)!.areaMm2) root = face;
  }
  const joints = growTree(root, folding.folds, folding.byFace, used);
  const first = panels.length;
  for (let at = 0; at < joints.length; at += 1) panelOf[joints[at]!.face] = first + at;
  for (let at = 0; at < joints.length; at += 1) {
    const joint = joints[at]!;
    const fold = joint.fold < 0 ? null : folding.folds[joint.fold]!;
    // Written out: copies of objects cost a carton little, and a sheet of many thousand blanks half of its time.
    const { outer, holes, areaMm2, lengthMm, widthMm, x, y } = regions.get(joint.face)!;
    panels.push({
      outer,
      holes,
      areaMm2,
      lengthMm,
      widthMm,
      x,
      y,
      index: first + at,
      blank: blanks.length,
      parent: joint.parent < 0 ? -1 : panelOf[joint.parent]!,
      depth: joint.depth,
      hinge: fold === null ? null : describeHinge(fold, panelOf, ground.mmPerPx),
    });
  }
  const { outer, holes, areaMm2, lengthMm, widthMm, x, y } = describeRegion(parcel.outer, parcel.holes, ground.mmPerPx);
  blanks.push({
    outer,
    holes,
    areaMm2,
    lengthMm,
    widthMm,
    x,
    y,
    index: blanks.length,
    panels: joints.map((_, at) => first + at),
    root: first,
    outerLines: parcel.outerLines,
    innerLines: parcel.innerLines,
  });
}

/** Positions of the folds of each face. */
function foldsByFace(folds: readonly Fold[], count: number): readonly (readonly number[])[] {
  const lists: number[][] = Array.from({ length: count }, () => []);
  for (let place = 0; place < folds.length; place += 1) {
    const { faces } = folds[place]!;
    lists[faces[0]]!.push(place);
    lists[faces[1]]!.push(place);
  }
  return lists;
}

function describeGap({ mmPerPx, shapeOf }: Ground, bridge: Bridge): Gap {
  const { from, to, gap } = bridge;
  return {
    ...{ x0: from.x, y0: from.y, x1: to.x, y1: to.y },
    gapMm: gap * mmPerPx,
    shapes: [shapeOf[from.line]!, shapeOf[to.line]!],
    turn: Math.acos(Math.min(1, Math.max(-1, -(from.dx * to.dx + from.dy * to.dy)))),
  };
}

/** Extent and waste of all blanks. */
function summarise(blanks: readonly Blank[], mmPerPx: number): Pick<Faces, 'extentMm' | 'areaMm2' | 'wasteShare'> {
  let extent: Box = EMPTY_BOX;
  let areaMm2 = 0;
  for (const blank of blanks) {
    const [x0, y0, x1, y1] = boundPoints(blank.outer);
    extent = unite(extent, { x0, y0, x1, y1 });
    areaMm2 += blank.areaMm2;
  }
  if (blanks.length === 0) return { extentMm: null, areaMm2: 0, wasteShare: 0 };
  const [width, height] = [(extent.x1 - extent.x0) * mmPerPx, (extent.y1 - extent.y0) * mmPerPx];
  const extentMm = [extent.x0 * mmPerPx, extent.y0 * mmPerPx, width, height] as const;
  return { extentMm, areaMm2, wasteShare: Math.max(0, 1 - areaMm2 / (width * height)) };
}

/**
 * Blanks, panels and what holds them, from cut and crease lines.
 *
 * Lines are parted where they cross, touch or lie on each other; ends that miss their neighbour by little are led to it.
 *
 * @throws Never. Lines with coordinates beyond all cartons are left out.
 * @accuracy Points stay where they are drawn, unless two lie within 0.01 mm: then the first stands for both. On which side of a line
 * a point lies is exact.
 */
export function buildFaces(lines: readonly FaceLine[], options: FaceOptions): Faces {
  const { mmPerPx, snapMm, gapMm, creaseReachMm } = options;
  const table = createEdgeTable(WELD_MM / mmPerPx);
  for (let position = 0; position < lines.length; position += 1) addLine(table, lines[position]!, position);
  splitEdges(table);
  const reach = { snap: snapMm / mmPerPx, gap: gapMm / mmPerPx, crease: creaseReachMm / mmPerPx };
  const before = table.a.length;
  const bridges = bridgeGaps(table, reach);
  if (table.a.length > before) splitEdges(table);
  const ground = arrange(
    table,
    mmPerPx,
    lines.map(({ shape }) => shape.index),
  );
  const parcels = listParcels(ground);
  const uses = sortParcels(parcels);
  const folds = listFolds(ground);
  const folding = { folds, byFace: foldsByFace(folds, ground.halves.stands.length) };
  const numbering: Numbering = {
    panels: [],
    blanks: [],
    panelOf: new Int32Array(ground.halves.stands.length).fill(-1),
    used: new Uint8Array(folds.length),
  };
  const islands: Island[] = [];
  const islandFaces = new Set<number>();
  for (const [place, parcel] of parcels.entries()) {
    if (uses[place] === 'blank') addBlank(numbering, ground, parcel, folding);
    if (uses[place] === 'island') {
      for (const face of parcel.faces) islandFaces.add(face);
      const { shape, outerLines: lines } = parcel;
      islands.push({ ...describeRegion(parcel.outer, parcel.holes, mmPerPx), shape, lines });
    }
  }
  const { panels, blanks, panelOf, used } = numbering;
  const isRing = (fold: Fold, place: number): boolean => used[place] === 0 && panelOf[fold.faces[0]]! >= 0;
  return {
    panels,
    blanks,
    islands,
    rings: folds.filter(isRing).map((fold) => describeHinge(fold, panelOf, mmPerPx)),
    gaps: bridges.filter((bridge) => bridge.gap > reach.snap).map((bridge) => describeGap(ground, bridge)),
    looseEnds: describeEnds(ground, panelOf),
    ...listOddFolds(ground, panelOf, islandFaces),
    ...summarise(blanks, mmPerPx),
  };
}
