// Which tools run over a printed face?
import { isEmptyBox } from '../geometry/box.js';
import { indexBoxList } from '../geometry/box-index.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { type Placement, placementsByPass, type Role } from '../model/pass.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { isCoating, listSetups } from './pass-setup.js';
import { shapesMeet } from './shapes-meet.js';

/** What a tool that presses on print does to it (common practice, no source). Tools that cut through are left out: they come last anyhow. */
const RISKS: Readonly<Partial<Record<Role, string>>> = {
  creasing: 'ink and varnish can crack along the crease, and the tool can scuff them',
  embossing: 'ink and varnish can crack where the board is stretched',
  debossing: 'ink and varnish can crack where the board is stretched, and the tool can scuff them',
};

/** Whether a shape meets any of those that were placed. */
function findPrinted(facts: CheckFacts, placements: readonly Placement[]): (shape: Shape) => boolean {
  const shapes = [...new Set(placements.map(({ shape }) => shape))]
    .map((index) => facts.artwork.shapes[index]!)
    .filter(({ draws, drawnBound }) => draws && !isEmptyBox(drawnBound));
  const index = indexBoxList(shapes.map(({ drawnBound }) => drawnBound));
  return (shape) => {
    const { x0, y0, x1, y1 } = shape.drawnBound;
    return index.search(x0, y0, x1, y1).some((place) => shapesMeet(facts, shape, shapes[place]!));
  };
}

/** Tools that press on a face that carries print by then. A note: the shop may order it so. */
export function checkToolsOnPrint(facts: CheckFacts): readonly Finding[] {
  const { artwork, assignment } = facts;
  const setups = listSetups(facts);
  const byPass = placementsByPass(assignment);
  return setups.flatMap((tool, at) => {
    const risk = RISKS[tool.pass.role];
    if (risk === undefined) return [];
    const before = setups.slice(0, at).filter(({ pass, side }) => isCoating(pass.role) && side === tool.side);
    const printed = findPrinted(
      facts,
      before.flatMap(({ index }) => byPass[index]!),
    );
    const touched: Trouble[] = byPass[tool.index]!.map(({ shape }) => artwork.shapes[shape]!)
      .filter((shape) => printed(shape))
      .map((shape) => ({ shape, at: [shape.fillBox.x0, shape.fillBox.y0] }));
    const names = before.map(({ pass }) => pass.name).join(', ');
    return gatherTroubles(artwork, 'check/tool-on-print', touched, () => ({
      message: `Pass ${tool.pass.order}, ${tool.pass.name}, presses on a face that ${names} printed before: ${risk}.`,
      remedy: `If the shop does not order it so, put ${tool.pass.name} before ${names} in the passes of the ticket.`,
      data: { pass: tool.pass.name, after: before.map(({ pass }) => pass.name) },
    }));
  });
}
