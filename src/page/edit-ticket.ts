// What a hand on the page changes in the ticket: layers and lines go to other passes, passes change places.

import type { InspectedLayer, InspectedStroke, Inspection } from '../model/inspection.js';
import { namePass, type Pass, ROLES, type Role } from '../model/pass.js';
import type { PassRequest, Rule, Ticket } from '../model/ticket.js';
import { compileLayer, NO_LAYER, spellLayer } from '../road/name-layers.js';

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
    return [{ pass: layer.suggestion.role, layer: spellLayer(layer.path) }];
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

/** Index of what stands in no layer. */
const LOOSE = -1;

/** Index of a layer and of those in it. */
function listWithin(layers: readonly InspectedLayer[], index: number): ReadonlySet<number> {
  const within = new Set([index]);
  if (index === LOOSE) return within;
  for (let at = index + 1; at < layers.length && layers[at]!.depth > layers[index]!.depth; at += 1) within.add(at);
  return within;
}

/** The word of a rule for one layer and no other. */
function spellAt(layers: readonly InspectedLayer[], index: number): string {
  return index === LOOSE ? NO_LAYER : spellLayer(layers[index]!.path);
}

function keepOutside(rule: Rule, layers: readonly InspectedLayer[], within: ReadonlySet<number>): readonly Rule[] {
  const { layer } = rule;
  if (layer === undefined) return [rule];
  const named = layers.flatMap((one, index) => (compileLayer(layer)(one) ? [index] : []));
  if (layer === NO_LAYER) named.push(LOOSE);
  if (!named.some((index) => within.has(index))) return [rule];
  return named.filter((index) => !within.has(index)).map((index) => ({ ...rule, layer: spellAt(layers, index) }));
}

/** A colour key is written in small letters, with two digits for each part. */
function isColour(spelled: string, key: string): boolean {
  const small = spelled.trim().toLowerCase();
  const [, short] = /^#([0-9a-f]{3})$/.exec(small) ?? [];
  return (short === undefined ? small : `#${short.replace(/./g, '$&$&')}`) === key;
}

/** Whether there is anything in the layers that a rule by paint could take; where that is not known, there may be. */
function mayTake(rule: Rule, { strokes, layers }: Inspection, within: ReadonlySet<number>): boolean {
  const { stroke } = rule;
  const found = stroke === undefined ? undefined : strokes.find(({ colour }) => isColour(stroke, colour));
  if (found === undefined || rule.colourTolerance !== undefined) return stroke === undefined || strokes.length > 0;
  return found.layers.some((path) =>
    within.has(path === '' ? LOOSE : layers.findIndex((layer) => layer.path === path)),
  );
}

function looksAtPaintAlone({ layer, id, class: word, rest }: Rule): boolean {
  return layer === undefined && id === undefined && word === undefined && rest !== true;
}

function moveLayer(rules: readonly Rule[], inspection: Inspection, index: number, word: string): readonly Rule[] {
  const { layers } = inspection;
  const within = listWithin(layers, index);
  const layer = spellAt(layers, index);
  const kept = rules.flatMap((rule) => keepOutside(rule, layers, within));
  // A rule by paint would contradict one by name: within the layer the same paint goes along.
  const paints = rules.filter(
    (rule) => looksAtPaintAlone(rule) && rule.pass !== word && mayTake(rule, inspection, within),
  );
  return [{ pass: word, layer }, ...paints.map((rule) => ({ ...rule, pass: word, layer })), ...kept];
}

function moveStroke(
  rules: readonly Rule[],
  inspection: Inspection,
  stroke: InspectedStroke,
  word: string,
): readonly Rule[] {
  const { layers } = inspection;
  // Every line of the colour gets a rule anew.
  const kept = rules.filter(
    (rule) => rule.stroke === undefined || rule.colourTolerance !== undefined || !isColour(rule.stroke, stroke.colour),
  );
  const added = stroke.layers.map(
    (path): Rule => ({
      pass: word,
      layer: spellAt(layers, path === '' ? LOOSE : layers.findIndex((layer) => layer.path === path)),
      stroke: stroke.colour,
    }),
  );
  // A rule that looks at layer and line goes before one that looks at the layer alone.
  return [...added, ...kept];
}

/**
 * The ticket that sends something to another pass; all else stays where it was.
 *
 * Layers are named by their whole path, so that those of the same name are told apart.
 *
 * @param inspection - Of the drawing that the ticket is for.
 */
export function moveTo(ticket: Ticket, inspection: Inspection, moved: Moved, target: Target): Ticket {
  const before = ticket.rules.length > 0 ? ticket.rules : spellSuggestions(inspection);
  const { word, passes } = reachPass(ticket, target);
  if (moved.kind === 'stroke') {
    const stroke = inspection.strokes.find(({ colour }) => colour === moved.colour);
    return stroke === undefined ? ticket : { ...ticket, passes, rules: moveStroke(before, inspection, stroke, word) };
  }
  const index = moved.kind === 'rest' ? LOOSE : inspection.layers.findIndex(({ path }) => path === moved.path);
  if (moved.kind === 'layer' && index < 0) return ticket;
  return { ...ticket, passes, rules: moveLayer(before, inspection, index, word) };
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
