// What a pass holds as items and groups that can be put in order, and what has to stay.
import { hasFill, suggestRoles } from '../classify/suggest.js';
import type { Outline } from '../geometry/outline.js';
import type { Artwork, Shape } from '../model/artwork.js';
import { isToolpath, ROLES, type Role } from '../model/pass.js';
import type { Stayed, ToolRun, WorkItem } from '../model/sequence.js';
import { shapeOutline } from '../resolve/shape-outline.js';
import type { WorkGroup } from '../sequence/plan-order.js';
import { isSvgElement } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';

/** Items and groups of a pass, each with the row of its element. */
export interface WorkList {
  readonly items: readonly WorkItem[];
  /** By item: the row of its element. */
  readonly rows: readonly number[];
  /** By item: its lines on the artboard. */
  readonly outlines: readonly (readonly Outline[])[];
  /** By item: the shapes in it that the tool runs. */
  readonly shapes: readonly (readonly Shape[])[];
  readonly root: WorkGroup;
  /** Row of each group. */
  readonly groupRows: ReadonlyMap<WorkGroup, number>;
  readonly stayed: readonly Stayed[];
}

interface Lister {
  readonly source: Source;
  readonly artwork: Artwork;
  /** Shapes by carrier. */
  readonly carried: ReadonlyMap<number, readonly Shape[]>;
  readonly effects: ReadonlySet<number>;
  readonly tierOf: (shape: Shape) => number;
  readonly items: WorkItem[];
  readonly rows: number[];
  readonly outlines: (readonly Outline[])[];
  readonly shapes: (readonly Shape[])[];
  readonly groupRows: Map<WorkGroup, number>;
  readonly why: Map<string, number>;
}

/** The runs of a tool along outlines. */
export function listRuns(outlines: readonly Outline[]): readonly ToolRun[] {
  return outlines.flatMap(({ points, closed }) => {
    if (points.length < 4) return [];
    const [x0, y0] = [points[0]!, points[1]!];
    return [{ x0, y0, x1: closed ? x0 : points.at(-2)!, y1: closed ? y0 : points.at(-1)! }];
  });
}

/** The place of a line's role in the default order of the passes: by the name of its layer, else that of the pass. */
function rankLines(artwork: Artwork, role: Role): Lister['tierOf'] {
  const { nearest, layers } = suggestRoles(artwork);
  return (shape) => {
    const named = shape.layer < 0 ? -1 : nearest[shape.layer]!;
    const suggestion = named < 0 ? null : layers[named]!;
    return ROLES.indexOf(suggestion?.sure === true && isToolpath(suggestion.role) ? suggestion.role : role);
  };
}

function isLine(shape: Shape): boolean {
  return shape.kind !== 'text' && shape.kind !== 'image' && shape.kind !== 'foreignObject';
}

/** Why an element with these shapes cannot move, or ''. */
function whyFixed(lister: Lister, row: number, shapes: readonly Shape[]): string {
  if (shapes.some((shape) => hasFill(shape))) return 'it is filled, so what lies over it matters';
  if (!shapes.every(isLine)) return 'it is type or a picture';
  const end = lister.source.elements.next[row]!;
  for (let inner = row; inner < end; inner += 1) {
    if (lister.effects.has(inner)) return 'it fades, masks, filters or blends what it draws';
  }
  return '';
}

function shapesWithin({ carried, source }: Lister, row: number): readonly Shape[] {
  const shapes: Shape[] = [];
  for (let inner = row; inner < source.elements.next[row]!; inner += 1) shapes.push(...(carried.get(inner) ?? []));
  return shapes;
}

function addItem(lister: Lister, row: number, shapes: readonly Shape[]): number {
  const drawn = shapes.filter((shape) => shape.draws && !shape.hidden);
  const lines = drawn.filter(isLine);
  const outlines = lines.flatMap((shape) => shapeOutline(lister.source, lister.artwork, shape));
  const why = drawn.length === 0 ? '' : whyFixed(lister, row, drawn);
  if (why !== '') lister.why.set(why, (lister.why.get(why) ?? 0) + 1);
  const tier = lines.length === 0 ? 0 : Math.min(...lines.map(lister.tierOf));
  lister.items.push({ runs: listRuns(outlines), tier, fixed: why !== '' });
  lister.rows.push(row);
  lister.outlines.push(outlines);
  lister.shapes.push(lines);
  return lister.items.length - 1;
}

function listGroup(lister: Lister, row: number): WorkGroup {
  const { source, artwork } = lister;
  const { next } = source.elements;
  const children: (number | WorkGroup)[] = [];
  for (let child = row + 1; child < next[row]!; child = next[child]!) {
    if (child === artwork.marks) continue;
    const shapes = shapesWithin(lister, child);
    if (shapes.length === 0) continue;
    const opens = isSvgElement(source, child, 'g') && !lister.effects.has(child) && !lister.carried.has(child);
    children.push(opens ? listGroup(lister, child) : addItem(lister, child, shapes));
  }
  const group = { children, fixed: false };
  lister.groupRows.set(group, row);
  return group;
}

/** Items and groups of a pass as it was read. */
export function listWork(source: Source, artwork: Artwork, role: Role): WorkList {
  const carried = new Map<number, Shape[]>();
  for (const shape of artwork.shapes) {
    const list = carried.get(shape.carrier);
    if (list === undefined) carried.set(shape.carrier, [shape]);
    else list.push(shape);
  }
  const lister: Lister = {
    source,
    artwork,
    carried,
    effects: new Set(artwork.effects.map(({ element }) => element)),
    tierOf: rankLines(artwork, role),
    items: [],
    rows: [],
    outlines: [],
    shapes: [],
    groupRows: new Map(),
    why: new Map(),
  };
  const root = listGroup(lister, 0);
  const { items, rows, outlines, shapes, groupRows } = lister;
  return {
    items,
    rows,
    outlines,
    shapes,
    root,
    groupRows,
    stayed: [...lister.why].map(([why, count]) => ({ why, count })),
  };
}
