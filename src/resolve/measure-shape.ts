// Boxes of a shape, and whether it draws anything.
import { type Box, EMPTY_BOX, intersect, isEmptyBox, unite } from '../geometry/box.js';
import { IDENTITY, type Matrix } from '../geometry/matrix.js';
import { pathBox } from '../geometry/path-box.js';
import type { PathData } from '../geometry/path-data.js';
import { strokeBox } from '../geometry/stroke-box.js';
import type { Paint, PaintSource } from '../model/artwork.js';
import { readAttribute } from '../source/read-attribute.js';
import { SLOT } from './attribute-slots.js';
import { UNBOUNDED } from './clip-boxes.js';
import type { Drawing } from './drawing.js';
import { FOREIGN_OBJECT, IMAGE, LINE, TEXT } from './element-codes.js';
import { mapPath } from './map-path.js';
import { canEncloseArea, readGeometry } from './shape-geometry.js';
import { anchorBox, readFamilies } from './text-anchor.js';
import type { Visited } from './walk-tree.js';

/** What is measured of a shape, px on the artboard. */
export interface Measures {
  readonly fillBox: Box;
  readonly strokeBox: Box;
  readonly drawnBox: Box;
  readonly draws: boolean;
  /** Of live type with any characters; null for everything else. */
  readonly families: readonly string[] | null;
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
  return { fillBox: box, strokeBox: box, drawnBox: draws ? cut(box, shape.clip) : EMPTY_BOX, draws, families };
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
  return { fillBox: box, strokeBox: box, drawnBox: draws ? drawn : EMPTY_BOX, draws, families: null };
}

const NOT_MEASURED: Measures = {
  ...{ fillBox: EMPTY_BOX, strokeBox: EMPTY_BOX, drawnBox: EMPTY_BOX },
  ...{ draws: false, families: null },
};

/**
 * Measures a shape.
 *
 * A fill is seen where its geometry can cover an area, a stroke where its outline does; both only within clips.
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
  const fillSeen = code !== LINE && isSeen(paint.fill, paint.fillOpacity) && hasArea(fillBox) && canEncloseArea(path);
  const isStroked = paint.stroke.kind !== 'none' && paint.strokeWidth > 0 && path.opCount > 0;
  const stroked = isStroked ? outlineStroke(path, matrix, paint) : EMPTY_BOX;
  if (!isMeasurable(fillBox) || !isMeasurable(stroked)) {
    drawing.log.note('resolve/length-invalid', 'coordinates beyond measure', row);
    return NOT_MEASURED;
  }
  const strokeSeen = isStroked && isSeen(paint.stroke, paint.strokeOpacity) && hasArea(stroked);
  const whole = isStroked ? unite(fillBox, stroked) : fillBox;
  const seen = fillSeen ? (strokeSeen ? whole : fillBox) : strokeSeen ? stroked : EMPTY_BOX;
  const drawn = cut(seen, shape.clip);
  const draws = !shape.isFaint && hasArea(drawn);
  return { fillBox, strokeBox: whole, drawnBox: draws ? drawn : EMPTY_BOX, draws, families: null };
}
