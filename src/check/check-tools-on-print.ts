// Which tools run over a printed face?
import { intersect, isEmptyBox } from '../geometry/box.js';
import { measureExtent } from '../model/drawn-extent.js';
import type { Finding } from '../model/finding.js';
import { placementsByPass, type Role } from '../model/pass.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { isCoating, listSetups } from './pass-setup.js';

/** What a tool that presses on print does to it (common practice, no source). Tools that cut through are left out: they come last anyhow. */
const RISKS: Readonly<Partial<Record<Role, string>>> = {
  creasing: 'ink and varnish can crack along the crease, and the tool can scuff them',
  embossing: 'ink and varnish can crack where the board is stretched',
  debossing: 'ink and varnish can crack where the board is stretched, and the tool can scuff them',
};

/** Tools that press on a face that carries print by then. A note: the shop may order it so. */
export function checkToolsOnPrint(facts: CheckFacts): readonly Finding[] {
  const { artwork, assignment } = facts;
  const setups = listSetups(facts);
  const byPass = placementsByPass(assignment);
  return setups.flatMap((tool, at) => {
    const risk = RISKS[tool.pass.role];
    if (risk === undefined) return [];
    const before = setups.slice(0, at).filter(({ pass, side }) => isCoating(pass.role) && side === tool.side);
    const printed = measureExtent(
      artwork.shapes,
      before.flatMap(({ index }) => byPass[index]!),
    );
    const touched: Trouble[] = byPass[tool.index]!.map(({ shape }) => artwork.shapes[shape]!)
      .filter((shape) => !isEmptyBox(intersect(shape.drawnBound, printed)))
      .map((shape) => ({ shape, at: [shape.fillBox.x0, shape.fillBox.y0] }));
    const names = before.map(({ pass }) => pass.name).join(', ');
    return gatherTroubles(artwork, 'check/tool-on-print', touched, () => ({
      message: `Pass ${tool.pass.order}, ${tool.pass.name}, presses on a face that ${names} printed before: ${risk}.`,
      remedy: `If the shop does not order it so, put ${tool.pass.name} before ${names} in the passes of the ticket.`,
      data: { pass: tool.pass.name, after: before.map(({ pass }) => pass.name) },
    }));
  });
}
