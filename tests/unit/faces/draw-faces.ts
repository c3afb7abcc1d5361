// Faces of path data in mm, for tests.

import { buildFaces, type FaceOptions } from '../../../src/faces/build-faces.js';
import type { FaceLine } from '../../../src/faces/edge-table.js';
import { flattenPath } from '../../../src/geometry/flatten-path.js';
import { type Matrix, multiply } from '../../../src/geometry/matrix.js';
import { FLATTEN_PX } from '../../../src/geometry/outline.js';
import { MM_PER_PX, PX_PER_MM } from '../../../src/geometry/units.js';
import type { Faces, LineKind } from '../../../src/model/faces.js';
import { readPath } from '../geometry/read-path.js';

/** A kind and path data in mm. */
export type Drawn = readonly [LineKind, string];

/** Lines of path data in mm, moved by a matrix in mm. */
export function drawLines(drawn: readonly Drawn[], matrix: Matrix = [1, 0, 0, 1, 0, 0]): readonly FaceLine[] {
  const toPx = multiply([PX_PER_MM, 0, 0, PX_PER_MM, 0, 0], matrix);
  return drawn.flatMap(([kind, d], shape) =>
    flattenPath(readPath(d), toPx, FLATTEN_PX).map((outline) => ({ outline, kind, shape: { index: shape } })),
  );
}

/** Options of the builder with the tolerances that tests use. */
export const OPTIONS: FaceOptions = { mmPerPx: MM_PER_PX, snapMm: 0.05, gapMm: 1, creaseReachMm: 2 };

/** The faces of path data in mm. */
export function drawFaces(drawn: readonly Drawn[], matrix?: Matrix): Faces {
  return buildFaces(drawLines(drawn, matrix), OPTIONS);
}

/** An invented sleeve: four walls 60, 40, 60, 40 wide and 80 high, a glue flap 12, and a lid 38 on the first wall. */
export const SLEEVE: readonly Drawn[] = [
  ['cut', 'M12 0V-38H72V0H212V80H12L0 75V5L12 0'],
  ['crease', 'M12 0V80M72 0V80M112 0V80M172 0V80'],
  ['crease', 'M12 0H72'],
];
