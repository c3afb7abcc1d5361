// The shapes of a drawing in paint order.
import type { Artboard, Layer, Paint } from '../model/artwork.js';
import { createClipCache, UNBOUNDED } from './clip-boxes.js';
import type { Drawing, Setting, Viewport } from './drawing.js';
import { canHaveMarkers, TEXT } from './element-codes.js';
import type { LayerTree } from './layers.js';
import { measureShape } from './measure-shape.js';
import { paintWithin } from './paint.js';
import { percentBase } from './read-lengths.js';
import { addShapeRow, createShapeColumns, ResolvedShape, type ShapeColumns } from './resolved-shape.js';
import type { Style } from './style.js';
import { type Frame, type Visited, type Visitor, walkTree } from './walk-tree.js';

interface Making {
  readonly drawing: Drawing;
  readonly layers: readonly Layer[];
  readonly columns: ShapeColumns;
  readonly shapes: ResolvedShape[];
  readonly percentPaints: Map<Viewport, Map<Style, Paint>>;
}

/** The paint, with stroke lengths in percent worked out; shapes painted alike in one viewport share it. */
function settlePaint(making: Making, { style, viewport }: Setting): Paint {
  if (style.strokePercent === null) return style.paint;
  if (viewport.isOuter && style.paint.stroke.kind !== 'none') making.drawing.notes.usesPercent = true;
  let paints = making.percentPaints.get(viewport);
  if (paints === undefined) {
    paints = new Map();
    making.percentPaints.set(viewport, paints);
  }
  let paint = paints.get(style);
  if (paint === undefined) {
    paint = paintWithin(style, percentBase(viewport, 'diagonal'));
    paints.set(style, paint);
  }
  return paint;
}

/** What cannot be measured is said once per layer. */
function noteUnmeasured(making: Making, shape: Visited, families: readonly string[] | null): void {
  const { log } = making.drawing;
  const { style } = shape.setting;
  const path = making.layers[shape.layer]?.path ?? null;
  const subject = path ?? '';
  if (shape.code === TEXT) {
    const { words } = log.note('resolve/live-text', subject, shape.row, path);
    for (const family of families ?? []) words.add(family);
  }
  const { start, mid, end } = style.markers;
  if ((start ?? mid ?? end) !== null && canHaveMarkers(shape.code)) {
    log.note('resolve/marker-unmeasured', subject, shape.row, path);
  }
  if (style.filter !== null) log.note('resolve/filter-unmeasured', subject, shape.row, path);
}

function addShape(making: Making, visited: Visited): void {
  const { drawing, columns, shapes } = making;
  const paint = settlePaint(making, visited.setting);
  const measures = measureShape(drawing, visited, paint);
  if (measures.draws) noteUnmeasured(making, visited, measures.families);
  const index = addShapeRow(columns, visited, paint, measures);
  shapes.push(new ResolvedShape(columns, index));
}

/**
 * Lists the shapes of a drawing: in paint order, uses in place, hidden ones included.
 *
 * @throws PinbarError `limit/references` when clip paths ask for more than may be measured.
 * @unit px on the artboard
 */
export function walkArtwork(drawing: Drawing, artboard: Artboard, tree: LayerTree): readonly ResolvedShape[] {
  const making: Making = {
    drawing,
    layers: tree.layers,
    columns: createShapeColumns(drawing, drawing.source.elements.count),
    shapes: [],
    percentPaints: new Map(),
  };
  const visitor: Visitor = {
    isMeasuring: false,
    clips: createClipCache(),
    layerAt: (row, around) => tree.byRow.get(row) ?? around,
    visit: (shape) => addShape(making, shape),
    enter: (row, style, layer) => {
      if (style.filter === null) return;
      const path = tree.layers[layer]?.path ?? null;
      drawing.log.note('resolve/filter-unmeasured', path ?? '', row, path);
    },
  };
  const style = drawing.styles[0]!;
  const { viewBox } = artboard;
  const viewport: Viewport = {
    width: viewBox?.[2] ?? artboard.width,
    height: viewBox?.[3] ?? artboard.height,
    isOuter: true,
  };
  const root: Frame = {
    at: 1,
    end: drawing.source.elements.count,
    entry: -1,
    size: null,
    matrix: artboard.matrix,
    style,
    viewport,
    lastSetting: null,
    clip: UNBOUNDED,
    clips: null,
    isHidden: style.display === 'none',
    isFaint: style.opacity === 0,
    layer: -1,
    carrier: -1,
  };
  visitor.enter(0, style, -1);
  walkTree(drawing, visitor, root);
  return making.shapes;
}
