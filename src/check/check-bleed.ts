// Does print reach far enough beyond the blank's edge, wherever it touches that edge?

import { type Box, grow, isEmptyBox } from '../geometry/box.js';
import { type BoxIndex, indexBoxList } from '../geometry/box-index.js';
import { fromGrid, type Grid, type GridLine, type Region } from '../geometry/region.js';
import { endsOf } from '../geometry/segment.js';
import type { Shape } from '../model/artwork.js';
import { type Finding, type FindingText, finding } from '../model/finding.js';
import { type Placement, placementsByPass } from '../model/pass.js';
import { sayCount } from '../model/say-count.js';
import { blankBox, blankRings } from './blank-region.js';
import { findMissingBleed } from './bleed-band.js';
import type { CheckFacts } from './check-facts.js';
import { clearDistance } from './clear-distance.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { inLayer, sayNumber } from './layer-words.js';
import { type DrawnShape, leaveOutCovered } from './leave-out-covered.js';
import { measureDrawn, sayUnlooked, type Unlooked } from './measure-print.js';
import { GRID_PER_MM, gridFor, type Touch, touchesOf } from './printed-region.js';
import { indexSegments, type SegmentIndex, segmentsOf } from './segment-index.js';
import { createShapeRegions } from './shape-region.js';

/** A stretch of edge without its bleed. */
interface Bare extends Trouble {
  readonly areaMm2: number;
  /** How far print reaches beyond the edge at its shortest. */
  readonly reachMm: number;
}

/** The edge that everything is held against. */
interface Edge {
  readonly grid: Grid;
  readonly blank: readonly GridLine[];
  /** The blank's own outline, grid units. */
  readonly segments: SegmentIndex;
  readonly bleed: number;
  readonly touch: number;
}

function readEdge(facts: CheckFacts): Edge | null {
  const box = blankBox(facts);
  if (isEmptyBox(box)) return null;
  const grid = gridFor(facts, box);
  const blank = blankRings(facts, grid);
  const { bleedMm, touchMm } = facts.ticket.checks;
  const bleed = bleedMm * GRID_PER_MM;
  return {
    grid,
    blank,
    segments: indexSegments(segmentsOf(blank, true), 2 * bleed),
    bleed,
    touch: touchMm * GRID_PER_MM,
  };
}

function toUnits({ x, y, scale }: Grid, box: Box): Box {
  return {
    x0: (box.x0 - x) * scale,
    y0: (box.y0 - y) * scale,
    x1: (box.x1 - x) * scale,
    y1: (box.y1 - y) * scale,
  };
}

/** What is drawn of a pass and reaches into the strip along the edge, in paint order. */
function listNearEdge(facts: CheckFacts, edge: Edge, placements: readonly Placement[]): readonly DrawnShape[] {
  const { grid, segments } = edge;
  const reach = edge.bleed + 2 * edge.touch;
  const near = placements
    .map(({ shape, part }) => ({ shape: facts.artwork.shapes[shape]!, part }))
    .filter(({ shape }) => shape.draws && !isEmptyBox(shape.drawnBound))
    .filter(({ shape }) => segments.meets(grow(toUnits(grid, shape.drawnBound), reach)));
  return leaveOutCovered(facts, near);
}

/** The middle of the longest side of a part: a point that turns with the drawing. */
function middleOf(part: Region): readonly [number, number] {
  let longest = -1;
  let middle: readonly [number, number] = [0, 0];
  const ring = part[0]!;
  for (const [at, point] of ring.entries()) {
    const next = ring[(at + 1) % ring.length]!;
    const length = Math.hypot(next.x - point.x, next.y - point.y);
    if (length > longest * (1 + 1e-9)) {
      longest = length;
      middle = [(point.x + next.x) / 2, (point.y + next.y) / 2];
    }
  }
  return middle;
}

/** How near a part comes to the edge, grid units. */
function reachOf(part: Region, { segments, bleed }: Edge): number {
  const sides = { ends: segmentsOf(part, true) };
  let least = bleed;
  for (let side = 0; 4 * side < sides.ends.length; side += 1) {
    const own = endsOf(sides, side);
    const [x0, y0, x1, y1] = own;
    const box = { x0: Math.min(x0, x1), y0: Math.min(y0, y1), x1: Math.max(x0, x1), y1: Math.max(y0, y1) };
    for (const place of segments.near(grow(box, least))) {
      least = Math.min(least, clearDistance(own, endsOf(segments, place)).distance);
    }
  }
  return least;
}

/** The topmost shape that prints where a part begins, or null. */
function shapeAt(touches: readonly Touch[], boxes: BoxIndex, part: Region, edge: Edge): Shape | null {
  const [x, y] = middleOf(part);
  const reach = edge.bleed + edge.touch;
  const places = boxes.search(x - reach, y - reach, x + reach, y + reach);
  const top = places.reduce((most, place) => (touches[place]!.ink === 'ink' ? Math.max(most, place) : most), -1);
  return top < 0 ? null : touches[top]!.shape;
}

/** What lacks its bleed, or why that was not looked at. */
function bareStretches(facts: CheckFacts, edge: Edge, placements: readonly Placement[]): readonly Bare[] | Unlooked {
  const near = listNearEdge(facts, edge, placements);
  const why = measureDrawn(facts, near);
  if (why !== null) return why;
  const regions = createShapeRegions(facts, edge.grid);
  const touches = near.flatMap((drawn) => touchesOf(regions, drawn, 'by-colour'));
  const parts = findMissingBleed(edge.blank, touches, edge);
  if (parts === null) return 'pieces';
  if (parts.length === 0) return [];
  const boxes = touches.map(({ shape }) => toUnits(edge.grid, shape.drawnBound));
  const index = indexBoxList(boxes);
  return parts.map(({ region: part, area }) => {
    const [x, y] = middleOf(part);
    const areaMm2 = area / (GRID_PER_MM * GRID_PER_MM);
    return {
      shape: shapeAt(touches, index, part, edge),
      at: fromGrid(edge.grid, { x, y }),
      weight: areaMm2,
      areaMm2,
      reachMm: reachOf(part, edge) / GRID_PER_MM,
    };
  });
}

/** Whether the ticket says that a pass or a layer needs no bleed. */
function needsNone(facts: CheckFacts, pass: string, layer: number): boolean {
  const names = facts.ticket.checks.noBleed;
  return names.includes(pass) || (layer >= 0 && names.includes(facts.artwork.layers[layer]!.path));
}

function sayBare(facts: CheckFacts, pass: string, stretches: readonly Bare[]): FindingText {
  const { bleedMm } = facts.ticket.checks;
  const { artwork } = facts;
  const areaMm2 = stretches.reduce((sum, stretch) => sum + stretch.areaMm2, 0);
  const reachMm = Math.min(...stretches.map((stretch) => stretch.reachMm));
  const round = (value: number): number => Math.round(value * 1000) / 1000 + 0;
  return {
    message: `The print of pass "${pass}" ${inLayer(artwork, stretches[0]!.shape?.layer ?? -1)} touches the blank's edge and reaches ${sayNumber(reachMm)} mm beyond it where ${sayNumber(bleedMm)} mm are asked for: ${sayNumber(areaMm2, 1)} mm2 of bleed are bare at ${sayCount(stretches.length, 'place')}.`,
    remedy: `Draw the art ${sayNumber(bleedMm)} mm over the edge, or end it well inside; where the board may show at the edge, name the pass or the layer under "noBleed".`,
    data: {
      pass,
      measuredMm: round(reachMm),
      allowedMm: bleedMm,
      areaMm2: round(areaMm2),
      areasMm2: stretches.slice(0, 20).map((stretch) => round(stretch.areaMm2)),
    },
  };
}

function reportUnlooked(pass: string, why: Unlooked): Finding {
  return finding('check/bleed-unchecked', {
    message: `The print of pass "${pass}" ${sayUnlooked(why, 'near the edge of the blank')}; its bleed was not looked at.`,
    remedy:
      'Look at the bleed by eye, or simplify what is drawn along the edge: traced pictures and hatchings can be a picture there.',
    data: { pass, why },
  });
}

/**
 * Print of each print pass against the blank grown by `bleedMm`, along the edges that it reaches within `touchMm` of.
 *
 * Passes and layers named in `noBleed` may show the board at the edge. Live type and what filters and masks do is not judged.
 */
export function checkBleed(facts: CheckFacts): readonly Finding[] {
  const { artwork, assignment, ticket } = facts;
  if (!assignment.passes.some(({ role }) => role === 'print') || !(ticket.checks.bleedMm > 0)) return [];
  const edge = readEdge(facts);
  if (edge === null) return [];
  return placementsByPass(assignment).flatMap((placements, index) => {
    const { name, role } = assignment.passes[index]!;
    if (role !== 'print' || needsNone(facts, name, -1)) return [];
    const found = bareStretches(facts, edge, placements);
    if (typeof found === 'string') return [reportUnlooked(name, found)];
    const bare = found.filter(({ shape }) => !needsNone(facts, name, shape?.layer ?? -1));
    return gatherTroubles(artwork, 'check/bleed-short', bare, (list) => sayBare(facts, name, list));
  });
}
