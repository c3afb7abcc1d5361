// What a hand on the page changes in the ticket: layers and lines go to other passes, passes change places.
import type { InspectedLayer, InspectedStroke, Inspection } from '../model/inspection.js';
import { namePass, type Pass, ROLES, type Role } from '../model/pass.js';
import type { PassRequest, Rule, Ticket } from '../model/ticket.js';

/** What is moved: a layer with all in it, all lines of a colour, or what stands in no layer. */
export type Moved =
  | { readonly kind: 'layer'; readonly path: string }
  | { readonly kind: 'stroke'; readonly colour: string }
  | { readonly kind: 'rest' };

/** Where it goes: a pass, or a role whose pass is not there yet. */
export interface Target {
  readonly role: Role;
  /** Name of a pass of the ticket; null for the pass of the role. */
  readonly name: string | null;
}

/** The layer around one of a list; null for an outermost one. */
export function findOuter(layers: readonly InspectedLayer[], index: number): InspectedLayer | null {
  for (let at = index - 1; at >= 0; at -= 1) {
    if (layers[at]!.depth < layers[index]!.depth) return layers[at]!;
  }
  return null;
}

/** The rules that say what the names of the layers suggest, so that one of them can be changed and the others stay. */
export function spellSuggestions({ layers }: Inspection): readonly Rule[] {
  return layers.flatMap((layer, index) => {
    if (layer.suggestion === null || !layer.suggestion.sure) return [];
    const outer = findOuter(layers, index)?.suggestion ?? null;
    if (outer !== null && outer.role === layer.suggestion.role && outer.sure) return [];
    return [{ pass: layer.suggestion.role, layer: layer.path }];
  });
}

/** The word that rules use for a target, and the passes with that target among them. */
function reachPass(ticket: Ticket, target: Target): { readonly word: string; readonly passes: readonly PassRequest[] } {
  const { passes } = ticket;
  if (target.role === 'ignore') return { word: 'ignore', passes };
  const named = passes.find((pass) => (target.name === null ? pass.role === target.role : pass.name === target.name));
  if (named !== undefined) return { word: named.name, passes };
  if (passes.length === 0) return { word: target.role, passes };
  const rank = ROLES.indexOf(target.role);
  const at = passes.findIndex((pass) => ROLES.indexOf(pass.role) > rank);
  const taken = passes.some((pass) => pass.name === namePass(target.role));
  const fresh = { name: taken ? target.role : namePass(target.role), role: target.role };
  const cut = at < 0 ? passes.length : at;
  return { word: fresh.name, passes: [...passes.slice(0, cut), fresh, ...passes.slice(cut)] };
}

function isWithin(path: string | undefined, outer: string): boolean {
  return path !== undefined && (path === outer || path.startsWith(`${outer}/`));
}

function moveStroke(rules: readonly Rule[], stroke: InspectedStroke, word: string): readonly Rule[] {
  const kept = rules.filter(
    (rule) => rule.stroke !== stroke.colour || (rule.layer !== undefined && !stroke.layers.includes(rule.layer)),
  );
  // A rule that looks at layer and line goes before one that looks at the layer alone.
  const added = stroke.layers.map(
    (path): Rule =>
      path === '' ? { pass: word, stroke: stroke.colour } : { pass: word, layer: path, stroke: stroke.colour },
  );
  return [...added, ...kept];
}

/**
 * The ticket that sends something to another pass; all else stays where it was.
 *
 * @param inspection - Of the drawing that the ticket is for.
 */
export function moveTo(ticket: Ticket, inspection: Inspection, moved: Moved, target: Target): Ticket {
  const before = ticket.rules.length > 0 ? ticket.rules : spellSuggestions(inspection);
  const { word, passes } = reachPass(ticket, target);
  if (moved.kind === 'rest') {
    return { ...ticket, passes, rules: [...before.filter((rule) => !rule.rest), { pass: word, rest: true }] };
  }
  if (moved.kind === 'layer') {
    const kept = before.filter((rule) => !isWithin(rule.layer, moved.path));
    return { ...ticket, passes, rules: [{ pass: word, layer: moved.path }, ...kept] };
  }
  const stroke = inspection.strokes.find(({ colour }) => colour === moved.colour);
  if (stroke === undefined) return ticket;
  return { ...ticket, passes, rules: moveStroke(before, stroke, word) };
}

/** The ticket whose pass runs earlier (-1) or later (1). */
export function moveRun(ticket: Ticket, passes: readonly Pass[], index: number, step: -1 | 1): Ticket {
  const requests = passes.map(({ name, role }) => ticket.passes.find((pass) => pass.name === name) ?? { name, role });
  const to = index + step;
  if (to < 0 || to >= requests.length) return ticket;
  const [taken] = requests.splice(index, 1);
  requests.splice(to, 0, taken!);
  return { ...ticket, passes: requests };
}
