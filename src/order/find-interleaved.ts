// Passes whose shapes lie over and under each other, so that no order of whole sheets looks like the drawing.
import type { Artwork } from '../model/artwork.js';
import { type Finding, finding } from '../model/finding.js';
import { type Assignment, isToolpath, type Pass } from '../model/pass.js';
import { describeShapes, joinWords } from './describe-shapes.js';
import { closeGraph, findWay, listCircles, orderSheets, type PassGraph } from './pass-graph.js';
import { countBefore, type SheetStack } from './sheet-items.js';

/** Which sheets could have to lie under which, by when they paint first and last. */
function guessGraph({ sheets }: SheetStack): PassGraph {
  return sheets.map((lower, a) =>
    sheets.map((upper, b) => a !== b && lower.times.length > 0 && lower.times[0]! < (upper.times.at(-1) ?? -1)),
  );
}

function hasAnyOver(stack: SheetStack, upper: number, lower: number): boolean {
  const { sheets } = stack;
  const from = countBefore(sheets[upper]!, sheets[lower]!.times[0]!);
  // What is painted last is likeliest to lie over something.
  for (let item = sheets[upper]!.times.length - 1; item >= from; item -= 1) {
    if (stack.liesOver(upper, item, lower, 0)) return true;
  }
  return false;
}

/** Which sheets have to lie under which; asked only where that could make a circle. */
function drawGraph(stack: SheetStack): PassGraph {
  const guess = guessGraph(stack);
  const reach = closeGraph(guess);
  return guess.map((row, a) => row.map((isLikely, b) => isLikely && reach[b]![a]! && hasAnyOver(stack, b, a)));
}

/** Shapes of a sheet that lie over another one. */
function listOver(stack: SheetStack, upper: number, lower: number): readonly number[] {
  const { placements } = stack.sheets[upper]!;
  const shapes = new Set<number>();
  for (let item = 0; item < placements.length; item += 1) {
    if (stack.liesOver(upper, item, lower, 0)) shapes.add(placements[item]!.shape);
  }
  return [...shapes];
}

interface Crossing {
  /** The pass whose shapes are named, and that which they lie over although it belongs above. */
  readonly upper: number;
  readonly lower: number;
  readonly shapes: readonly number[];
  /** From `upper` up to `lower`. */
  readonly way: readonly number[];
}

function listCrossings(stack: SheetStack, edges: PassGraph, circle: readonly number[]): readonly Crossing[] {
  const over = new Map<string, readonly number[]>();
  for (const upper of circle) {
    for (const lower of circle) if (edges[lower]![upper]) over.set(`${upper} ${lower}`, listOver(stack, upper, lower));
  }
  const shapesOver = (upper: number, lower: number): readonly number[] => over.get(`${upper} ${lower}`) ?? [];
  const order = orderSheets(circle, (upper, lower) => shapesOver(upper, lower).length);
  return order.flatMap((upper, place) =>
    order.slice(place + 1).flatMap((lower) => {
      const shapes = shapesOver(upper, lower);
      return shapes.length === 0 ? [] : [{ upper, lower, shapes, way: findWay(edges, upper, lower) }];
    }),
  );
}

/** `cut lies over other shapes of print`, or the longer way round. */
function tellWay(passes: readonly Pass[], way: readonly number[]): string {
  const name = (at: number): string => passes[way[at]!]!.name;
  const steps = way.slice(1).map((_, at) => `${name(at + 1)} over ${at === 0 ? 'other shapes of ' : ''}${name(at)}`);
  return joinWords(steps);
}

function sayCrossing(artwork: Artwork, passes: readonly Pass[], crossing: Crossing, isExact: boolean): Finding {
  const { shapes, way } = crossing;
  const [upper, lower] = [passes[crossing.upper]!, passes[crossing.lower]!];
  const told = describeShapes(artwork, shapes);
  const lie = shapes.length === 1 ? 'lies' : 'lie';
  const hasType = shapes.some((index) => artwork.shapes[index]!.kind === 'text');
  const doubt = `${hasType ? ' How far live type reaches is estimated.' : ''}${isExact ? '' : ' Some were compared by their boxes alone.'}`;
  const where = `${told.words} of ${upper.name} ${lie} over shapes of ${lower.name}, and ${tellWay(passes, way)}`;
  const data = { ...told.data, passes: [upper.name, lower.name], circle: way.map((at) => passes[at]!.name) };
  if (way.every((at) => isToolpath(passes[at]!.role))) {
    return finding('order/lines-interleaved', {
      message: `${where}: laid over each other, the sheets show crossings of lines otherwise than the drawing. What the tools leave is the same.${doubt}`,
      data,
    });
  }
  return finding('order/interleaved', {
    message: `${where}: laid over each other in whatever order, whole sheets do not look like the drawing.${doubt}`,
    remedy: `If these shapes are to stay on top, give them a pass of their own that runs after ${lower.name}; if not, draw them below the shapes of ${lower.name}.`,
    data,
  });
}

/**
 * Finds the passes that no order of whole sheets can lay over each other as the drawing has them: print over cut over print.
 *
 * @returns One finding per pair of passes, naming the fewer shapes: those that lie over a sheet that belongs above theirs.
 */
export function findInterleaved(artwork: Artwork, assignment: Assignment, stack: SheetStack): readonly Finding[] {
  const { passes } = assignment;
  const edges = drawGraph(stack);
  return listCircles(edges).flatMap((circle) =>
    listCrossings(stack, edges, circle).map((crossing) => sayCrossing(artwork, passes, crossing, stack.isExact())),
  );
}
