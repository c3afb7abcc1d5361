// Object bounding boxes of elements, for clip paths and transforms that refer to them.
import { type Box, EMPTY_BOX, unite } from '../geometry/box.js';
import { IDENTITY } from '../geometry/matrix.js';
import { pathBox } from '../geometry/path-box.js';
import { createClipCache, UNBOUNDED } from './clip-boxes.js';
import { countMeasured } from './count-measured.js';
import type { Drawing, Setting, Viewport } from './drawing.js';
import { FOREIGN_OBJECT, IMAGE, isShapeCode, TEXT } from './element-codes.js';
import { outlineStroke } from './measure-shape.js';
import { paintWithin } from './paint.js';
import { percentBase } from './read-lengths.js';
import { readGeometry } from './shape-geometry.js';
import type { Style } from './style.js';
import { anchorBox } from './text-anchor.js';
import { enterContainer, type Frame, type Visited, type Visitor, walkTree } from './walk-tree.js';

/** Boxes of rows by what they are styled with. */
type ByStyle = Map<Style, Map<number, Box>>;

/** Measures objects, each once per viewport and style. */
export type ObjectMeasurer = (drawing: Drawing, row: number, setting: Setting, extent: Extent) => Box;

/** Geometry alone, or with the strokes. */
export type Extent = 'fill' | 'stroke';

type Measured = Pick<Visited, 'row' | 'code' | 'setting' | 'matrix'>;

function shapeBox(drawing: Drawing, shape: Measured, extent: Extent): Box {
  const { row, code, setting, matrix } = shape;
  countMeasured(drawing, row);
  if (code === TEXT) return anchorBox(drawing, row, setting, matrix);
  const path = readGeometry(drawing, row, code, setting);
  const box = pathBox(path, matrix);
  const { style, viewport } = setting;
  if (extent === 'fill' || style.paint.stroke.kind === 'none' || code === IMAGE || code === FOREIGN_OBJECT) return box;
  const paint = style.strokePercent === null ? style.paint : paintWithin(style, percentBase(viewport, 'diagonal'));
  return unite(box, outlineStroke(path, matrix, paint));
}

function measure(drawing: Drawing, row: number, setting: Setting, extent: Extent): Box {
  const code = drawing.codes[drawing.source.elements.name[row]!]!;
  if (isShapeCode(code)) return shapeBox(drawing, { row, code, setting, matrix: IDENTITY }, extent);
  let box: Box = EMPTY_BOX;
  const visitor: Visitor = {
    isMeasuring: true,
    clips: createClipCache(),
    layerAt: () => -1,
    enter: () => {},
    visit: (shape) => {
      box = unite(box, shapeBox(drawing, shape, extent));
    },
  };
  const frame: Frame = {
    at: row + 1,
    end: drawing.source.elements.next[row]!,
    entry: -1,
    size: null,
    matrix: IDENTITY,
    style: setting.style,
    viewport: setting.viewport,
    lastSetting: null,
    clip: UNBOUNDED,
    clips: null,
    isHidden: false,
    isFaint: false,
    layer: -1,
    carrier: -1,
  };
  const content = enterContainer(drawing, visitor, row, frame, null);
  if (content !== null) walkTree(drawing, visitor, content);
  return box;
}

/** What is remembered under a key, made where it is not there yet. */
function entryOf<Key, Value>(map: Map<Key, Value>, key: Key, make: () => Value): Value {
  let value = map.get(key);
  if (value === undefined) {
    value = make();
    map.set(key, value);
  }
  return value;
}

/**
 * A measurer that remembers by viewport and style: what a use hands down can change a size or a stroke. An element that asks
 * for its own box while that is being measured gets the empty one.
 */
export function createObjectMeasurer(): ObjectMeasurer {
  const known = { fill: new Map<Viewport, ByStyle>(), stroke: new Map<Viewport, ByStyle>() };
  return (drawing, row, setting, extent) => {
    const byStyle = entryOf<Viewport, ByStyle>(known[extent], setting.viewport, () => new Map());
    const boxes = entryOf<Style, Map<number, Box>>(byStyle, setting.style, () => new Map());
    let box = boxes.get(row);
    if (box === undefined) {
      boxes.set(row, EMPTY_BOX);
      box = measure(drawing, row, setting, extent);
      boxes.set(row, box);
    }
    return box;
  };
}
