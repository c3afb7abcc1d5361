// Ends of lines that meet no other line.

import { createGroups, findLeader, joinGroups } from '../geometry/union-find.js';
import type { LooseEnd } from '../model/faces.js';
import { listEnds } from './bridge-gaps.js';
import { CREASE, CUT, edgeLength, isCut, kindOf, PERFORATION } from './edge-table.js';
import type { Ground } from './ground.js';

/**
 * Loose ends, each with the panel in which it lies.
 *
 * @param panelOf - Panel of each face, or -1.
 */
export function describeEnds(ground: Ground, panelOf: Int32Array): readonly LooseEnd[] {
  const { table, nesting, halves, mmPerPx, shapeOf } = ground;
  const cuts = createGroups(table.nodes.x.length);
  const folds = createGroups(table.nodes.x.length);
  for (let edge = 0; edge < table.a.length; edge += 1) {
    joinGroups(isCut(table, edge) ? cuts : folds, table.a[edge]!, table.b[edge]!);
  }
  const chainOf = (edge: number): number => findLeader(isCut(table, edge) ? cuts : folds, table.a[edge]!);
  const lengths = [new Map<number, number>(), new Map<number, number>()] as const;
  const lengthsOf = (edge: number): Map<number, number> => lengths[isCut(table, edge) ? 0 : 1];
  for (let edge = 0; edge < table.a.length; edge += 1) {
    const chain = chainOf(edge);
    lengthsOf(edge).set(chain, (lengthsOf(edge).get(chain) ?? 0) + edgeLength(table, edge));
  }
  return listEnds(table, CUT | CREASE | PERFORATION).map(({ edge, x, y, dx, dy }) => {
    const face = nesting.find(x, y);
    const chain = chainOf(edge);
    return {
      ...{ x, y, dx, dy },
      shape: shapeOf[table.lines[edge]!]!,
      kind: kindOf(table.kinds[edge]!),
      panel: face >= 0 && halves.stands[face] === 1 ? panelOf[face]! : -1,
      chain,
      chainMm: lengthsOf(edge).get(chain)! * mmPerPx,
    };
  });
}
