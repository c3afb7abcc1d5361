// Faces as plain data in mm.
import type { Blank, Faces, Hinge, Panel, Region } from '../model/faces.js';
import type { Solid, SolidArea, SolidBlank, SolidHinge, SolidPanel } from '../model/solid.js';

/** To a thousandth of a millimetre: finer than curves are flattened. */
function round(mm: number): number {
  return Math.round(mm * 1000) / 1000 + 0;
}

function listPoints(loop: Float64Array, mmPerPx: number): readonly (readonly [number, number])[] {
  const points: (readonly [number, number])[] = [];
  for (let at = 0; at < loop.length; at += 2) points.push([round(loop[at]! * mmPerPx), round(loop[at + 1]! * mmPerPx)]);
  return points;
}

function describeArea(region: Region, mmPerPx: number): SolidArea {
  return {
    lengthMm: round(region.lengthMm),
    widthMm: round(region.widthMm),
    areaMm2: round(region.areaMm2),
    xMm: round(region.x * mmPerPx),
    yMm: round(region.y * mmPerPx),
    outlineMm: [region.outer, ...region.holes].map((loop) => listPoints(loop, mmPerPx)),
  };
}

function describeHinge(hinge: Hinge, mmPerPx: number): SolidHinge {
  return {
    kind: hinge.kind,
    lengthMm: round(hinge.lengthMm),
    piecesMm: hinge.pieces.map(({ x0, y0, x1, y1 }) => [
      round(x0 * mmPerPx),
      round(y0 * mmPerPx),
      round(x1 * mmPerPx),
      round(y1 * mmPerPx),
    ]),
  };
}

function describePanel(panel: Panel, mmPerPx: number): SolidPanel {
  const { index, blank, parent, depth, hinge } = panel;
  return {
    index,
    blank,
    parent,
    depth,
    ...describeArea(panel, mmPerPx),
    hinge: hinge === null ? null : describeHinge(hinge, mmPerPx),
  };
}

function describeBlank(blank: Blank, mmPerPx: number): SolidBlank {
  return { index: blank.index, panels: blank.panels, ...describeArea(blank, mmPerPx) };
}

/**
 * The faces as data; null where the lines enclose no blank.
 *
 * @param loosePieces - How many pieces fall out.
 */
export function describeSolid(faces: Faces | null, mmPerPx: number, loosePieces: number): Solid | null {
  if (faces === null || faces.extentMm === null) return null;
  const [x, y, width, height] = faces.extentMm;
  return {
    blanks: faces.blanks.map((blank) => describeBlank(blank, mmPerPx)),
    panels: faces.panels.map((panel) => describePanel(panel, mmPerPx)),
    rings: faces.rings.map((ring) => ({ panels: ring.panels, ...describeHinge(ring, mmPerPx) })),
    loosePieces,
    extentMm: [round(x), round(y), round(width), round(height)],
    areaMm2: round(faces.areaMm2),
    wasteShare: Math.round(faces.wasteShare * 1e4) / 1e4 + 0,
  };
}
