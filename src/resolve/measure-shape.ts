// Boxes of a shape, and whether it draws anything.
import { type Box, EMPTY_BOX, grow, intersect, isEmptyBox, unite } from '../geometry/box.js';
import { IDENTITY, type Matrix } from '../geometry/matrix.js';
import { pathBox } from '../geometry/path-box.js';
import type { PathData } from '../geometry/path-data.js';
import { strokeBox } from '../geometry/stroke-box.js';
import type { Paint, PaintSource } from '../model/artwork.js';
import { isSvgElement, readAttribute } from '../source/read-attribute.js';
import { SLOT } from './attribute-slots.js';
import { UNBOUNDED } from './clip-boxes.js';
import type { Drawing } from './drawing.js';
import { canHaveMarkers, FOREIGN_OBJECT, IMAGE, TEXT } from './element-codes.js';
import { mapPath } from './map-path.js';
import { canEncloseArea, readGeometry } from './shape-geometry.js';
import { anchorBox, readFamilies } from './text-anchor.js';
import type { Visited } from './walk-tree.js';

/** What is measured of a shape, px on the artboard. */
export interface Measures {
  readonly fillBox: Box;
  /** Null where it is worked out when asked for, since it is sure that the stroke draws. */
  readonly exact: ExactBoxes | null;
  readonly drawnBound: Box;
  readonly draws: boolean;
  /** Of live type with any characters; null for everything else. */
  readonly families: readonly string[] | null;
}

/** The boxes that a stroke takes part in. */
export interface ExactBoxes {
  readonly strokeBox: Box;
  readonly drawnBox: Box;
}

/** Whether a paint leaves anything to be seen. */
function isSeen(source: PaintSource, opacity: number): boolean {
  if (source.kind === 'none' || !(opacity > 0)) return false;
  if (source.kind === 'server') return true;
  const colour = source.kind === 'colour' ? source.colour : source.fallback;
  return colour !== null && colour.alpha > 0;
}

function hasArea(box: Box): boolean {
  return box.x1 > box.x0 && box.y1 > box.y0;
}

function isMeasurable(box: Box): boolean {
  return isEmptyBox(box) || (Number.isFinite(box.x0 + box.x1) && Number.isFinite(box.y0 + box.y1));
}

/** The part of a box that clips leave; the box itself where nothing cuts. */
function cut(box: Box, clip: Box): Box {
  return clip === UNBOUNDED || isEmptyBox(box) ? box : intersect(box, clip);
}

/** The box of a path's stroke: outlined in the shape's own units, or in the target frame where it does not scale. */
export function outlineStroke(path: PathData, matrix: Matrix, paint: Paint): Box {
  const stroke = {
    width: paint.strokeWidth,
    linecap: paint.strokeLinecap,
    linejoin: paint.strokeLinejoin,
    miterlimit: paint.strokeMiterlimit,
  };
  if (paint.nonScalingStroke) return strokeBox(mapPath(path, matrix), IDENTITY, stroke);
  return strokeBox(path, matrix, stroke);
}

function measureText(drawing: Drawing, shape: Visited, paint: Paint): Measures {
  const box = anchorBox(drawing, shape.row, shape.setting, shape.matrix);
  const families = readFamilies(drawing, shape.row, shape.setting);
  const isPainted = isSeen(paint.fill, paint.fillOpacity) || isSeen(paint.stroke, paint.strokeOpacity);
  const draws = families !== null && isPainted && !shape.isFaint && !isEmptyBox(shape.clip);
  const drawn = draws ? cut(box, shape.clip) : EMPTY_BOX;
  return { fillBox: box, exact: { strokeBox: box, drawnBox: drawn }, drawnBound: drawn, draws, families };
}

function hasLink(drawing: Drawing, row: number): boolean {
  let attribute = drawing.slots.find(row, SLOT.href);
  if (attribute < 0) attribute = drawing.slots.find(row, SLOT.xlink);
  return attribute >= 0 && readAttribute(drawing.source, attribute).trim() !== '';
}

/** A picture or a foreignObject: what it shows is its rectangle, whatever it is painted with. */
function measureRectangle(drawing: Drawing, shape: Visited): Measures {
  const box = pathBox(readGeometry(drawing, shape.row, shape.code, shape.setting), shape.matrix);
  const isThere = shape.code === FOREIGN_OBJECT || hasLink(drawing, shape.row);
  const drawn = cut(box, shape.clip);
  const draws = isThere && !shape.isFaint && hasArea(drawn);
  const seen = draws ? drawn : EMPTY_BOX;
  return { fillBox: box, exact: { strokeBox: box, drawnBox: seen }, drawnBound: seen, draws, families: null };
}

const NOT_MEASURED: Measures = {
  fillBox: EMPTY_BOX,
  exact: { strokeBox: EMPTY_BOX, drawnBox: EMPTY_BOX },
  drawnBound: EMPTY_BOX,
  draws: false,
  families: null,
};

/** Beyond this a sum of coordinates may stop being a number, px. */
const MEASURABLE = 1e150;

/** How far a stroke can reach from its path, px on the artboard; never less than it does. */
function strokeReach(matrix: Matrix, paint: Paint): number {
  const miter = paint.strokeLinejoin === 'miter' ? Math.max(1, paint.strokeMiterlimit) : 1;
  const cap = paint.strokeLinecap === 'square' ? Math.SQRT2 : 1;
  const scale = paint.nonScalingStroke ? 1 : Math.hypot(matrix[0], matrix[1], matrix[2], matrix[3]);
  return (paint.strokeWidth / 2) * Math.max(miter, cap) * scale;
}

/** Whether a stroke is sure to draw, so that its outline need not be known for it: nothing cuts it, and it has a length. */
function isSureStroke(shape: Visited, fillBox: Box, reach: number): boolean {
  if (shape.clip !== UNBOUNDED || shape.isFaint || !(reach > 0) || !(reach < MEASURABLE)) return false;
  const [a, b, c, d] = shape.matrix;
  const hasLength = a * d !== b * c && (fillBox.x1 > fillBox.x0 || fillBox.y1 > fillBox.y0);
  const low = Math.min(fillBox.x0, fillBox.y0);
  const high = Math.max(fillBox.x1, fillBox.y1);
  return hasLength && low > -MEASURABLE && high < MEASURABLE;
}

/** The boxes with the stroke, worked out now. */
function measureStroke(path: PathData, shape: Visited, paint: Paint, seen: Seen): ExactBoxes {
  const fillBox = pathBox(path, shape.matrix);
  const stroked = outlineStroke(path, shape.matrix, paint);
  const whole = unite(fillBox, stroked);
  const drawn = seen.fill ? (seen.stroke ? whole : fillBox) : seen.stroke ? stroked : EMPTY_BOX;
  return { strokeBox: whole, drawnBox: cut(drawn, shape.clip) };
}

interface Seen {
  readonly fill: boolean;
  readonly stroke: boolean;
}

function look(paint: Paint, fillBox: Box, path: PathData): Seen {
  const fill = isSeen(paint.fill, paint.fillOpacity) && hasArea(fillBox) && canEncloseArea(path);
  return { fill, stroke: isSeen(paint.stroke, paint.strokeOpacity) };
}

/** Boxes of a shape that was measured without its stroke. */
export function measureLater(drawing: Drawing, shape: Visited, paint: Paint): ExactBoxes {
  const path = readGeometry(drawing, shape.row, shape.code, shape.setting);
  const seen = look(paint, pathBox(path, shape.matrix), path);
  return measureStroke(path, shape, paint, seen);
}

/**
 * Measures a shape.
 *
 * A fill is seen where its geometry can cover an area, a stroke where its outline does; both only within clips. The outline
 * of a stroke that is sure to be seen is left for later: `exact` is null then.
 *
 * @source SVG 2, section 8.10
 */
export function measureShape(drawing: Drawing, shape: Visited, paint: Paint): Measures {
  const { row, code, setting, matrix } = shape;
  if (code === TEXT) return measureText(drawing, shape, paint);
  if (code === IMAGE || code === FOREIGN_OBJECT) return measureRectangle(drawing, shape);
  const path = readGeometry(drawing, row, code, setting);
  if (path.errorAt >= 0) drawing.log.note('resolve/path-broken', String(row), row);
  const fillBox = pathBox(path, matrix);
  const seen = look(paint, fillBox, path);
  const isStroked = paint.stroke.kind !== 'none' && paint.strokeWidth > 0 && path.opCount > 0;
  const reach = isStroked ? strokeReach(matrix, paint) : 0;
  if (isStroked && seen.stroke && isSureStroke(shape, fillBox, reach)) {
    return { fillBox, exact: null, drawnBound: grow(fillBox, reach), draws: true, families: null };
  }
  return measureNow(drawing, shape, paint, { path, fillBox, seen, isStroked });
}

/** Whether a line has a marker that is in the file. @source SVG 2, section 13.7 */
function hasMarkers({ source, ids }: Drawing, { code, setting }: Visited): boolean {
  const { start, mid, end } = setting.style.markers;
  if ((start ?? mid ?? end) === null || !canHaveMarkers(code)) return false;
  return [start, mid, end].some((id) => {
    const row = id === null ? undefined : ids.get(id);
    return row !== undefined && isSvgElement(source, row, 'marker');
  });
}

/** Measures a shape whose stroke cannot wait, or that has none. */
function measureNow(
  drawing: Drawing,
  shape: Visited,
  paint: Paint,
  known: { readonly path: PathData; readonly fillBox: Box; readonly seen: Seen; readonly isStroked: boolean },
): Measures {
  const { path, fillBox, seen, isStroked } = known;
  const stroked = isStroked ? outlineStroke(path, shape.matrix, paint) : EMPTY_BOX;
  if (!isMeasurable(fillBox) || !isMeasurable(stroked)) {
    drawing.log.note('resolve/length-invalid', 'coordinates beyond measure', shape.row);
    return NOT_MEASURED;
  }
  const strokeSeen = isStroked && seen.stroke && hasArea(stroked);
  const whole = isStroked ? unite(fillBox, stroked) : fillBox;
  const all = seen.fill ? (strokeSeen ? whole : fillBox) : strokeSeen ? stroked : EMPTY_BOX;
  const drawn = cut(all, shape.clip);
  // Markers are drawn whatever the line itself is painted with.
  const isMarked = !hasArea(drawn) && path.opCount > 0 && hasMarkers(drawing, shape) && !isEmptyBox(shape.clip);
  const draws = !shape.isFaint && (hasArea(drawn) || isMarked);
  const drawnBox = !draws ? EMPTY_BOX : isMarked ? cut(fillBox, shape.clip) : drawn;
  return { fillBox, exact: { strokeBox: whole, drawnBox }, drawnBound: drawnBox, draws, families: null };
}
