// Which pass claims a shape, or why none does.
import type { Artwork, Shape } from '../model/artwork.js';
import { isToolpath, type Reason } from '../model/pass.js';
import type { PassRequest, Ticket } from '../model/ticket.js';
import { type ColourReader, type CompiledRule, compileRules, findPass } from './compile-rules.js';
import { hasFill, hasStroke, type LayerSuggestions } from './suggest.js';

/** What the rules say of a shape. */
export type Claim =
  | {
      readonly kind: 'taken';
      readonly pass: PassRequest;
      readonly reason: Reason;
      readonly byName: boolean;
      /** Whether the fill goes along: the rule names the shape, or looks at its fill. */
      readonly wholeAsked: boolean;
    }
  | { readonly kind: 'parted'; readonly line: PassRequest; readonly ground: PassRequest; readonly reason: Reason }
  | { readonly kind: 'twice'; readonly passes: readonly string[]; readonly rules: readonly string[] }
  | { readonly kind: 'name-against-paint'; readonly passes: readonly string[]; readonly rules: readonly string[] }
  | { readonly kind: 'unsure'; readonly layer: number }
  | { readonly kind: 'nobody' };

/** Asks about one shape after the other. */
export type Claimer = (shape: Shape) => Claim;

function distinct(rules: readonly CompiledRule[]): readonly string[] {
  return [...new Set(rules.map((rule) => rule.pass.name))];
}

interface Holding {
  readonly rule: CompiledRule;
  readonly distance: number;
}

/** The nearest rules that look at names; at one distance those that look at paint too go first. */
function pickByName(holding: readonly Holding[]): readonly CompiledRule[] {
  const named = holding.filter(({ rule }) => rule.hasName);
  const least = Math.min(...named.map(({ distance }) => distance));
  const nearest = named.filter(({ distance }) => distance === least).map(({ rule }) => rule);
  const combined = nearest.filter((rule) => rule.hasPaint);
  return combined.length > 0 ? combined : nearest;
}

function take(rule: CompiledRule): Claim {
  const { pass, reason } = rule;
  const wholeAsked = rule.byFill || (rule.hasName && !rule.hasPaint);
  return { kind: 'taken', pass, reason, byName: rule.hasName, wholeAsked };
}

function clash(kind: 'twice' | 'name-against-paint', rules: readonly CompiledRule[]): Claim {
  return { kind, passes: distinct(rules), rules: [...new Set(rules.map((rule) => rule.text))] };
}

/** A stroke rule and a fill rule of two passes part the paint of a shape where the ticket allows it. */
function partByRules(rules: readonly CompiledRule[], ticket: Ticket): Claim | null {
  if (!ticket.partPaint) return null;
  const line = rules.find((rule) => rule.byStroke && isToolpath(rule.pass.role));
  const ground = rules.find((rule) => rule.byFill && !isToolpath(rule.pass.role));
  if (line === undefined || ground === undefined || distinct(rules).length !== 2) return null;
  return { kind: 'parted', line: line.pass, ground: ground.pass, reason: line.reason };
}

/** Decides between the rules that a shape fits; `rest` is what takes it where there is none. */
function decide(holding: readonly Holding[], rest: CompiledRule | undefined, ticket: Ticket): Claim {
  const byName = pickByName(holding);
  const byPaint = holding.filter(({ rule }) => !rule.hasName).map(({ rule }) => rule);
  const combined = byName.some((rule) => rule.hasPaint);
  if (distinct(byName).length > 1) return clash('twice', byName);
  if (combined || (byName.length > 0 && byPaint.length === 0)) return take(byName[0]!);
  if (distinct(byPaint).length > 1) return partByRules(byPaint, ticket) ?? clash('twice', byPaint);
  if (byName.length > 0 && byName[0]!.pass.name !== byPaint[0]!.pass.name) {
    return clash('name-against-paint', [byName[0]!, byPaint[0]!]);
  }
  const rule = byName[0] ?? byPaint[0] ?? rest;
  return rule === undefined ? { kind: 'nobody' } : take(rule);
}

/** By the nearest layer whose name suggests a role. */
function claimByNames(artwork: Artwork, ticket: Ticket, suggestions: LayerSuggestions): Claimer {
  const claims = artwork.layers.map((layer): Claim => {
    const at = suggestions.nearest[layer.index]!;
    const suggestion = at < 0 ? null : suggestions.layers[at]!;
    if (suggestion === null || suggestion === undefined) return { kind: 'nobody' };
    if (!suggestion.sure) return { kind: 'unsure', layer: at };
    const pass = findPass(suggestion.role, ticket.passes);
    const reason = { rule: -1, text: `layer "${artwork.layers[at]!.path}": ${suggestion.reason}` };
    return { kind: 'taken', pass, reason, byName: true, wholeAsked: true };
  });
  shareReasons(claims, suggestions);
  return (shape) => (shape.layer < 0 ? { kind: 'nobody' } : claims[shape.layer]!);
}

/** Layers inside one that names the role share its claim. */
function shareReasons(claims: Claim[], suggestions: LayerSuggestions): void {
  claims.forEach((_, i) => {
    const at = suggestions.nearest[i]!;
    if (at >= 0) claims[i] = claims[at]!;
  });
}

/** What is known of shapes alike in layer, paint and kind. */
interface Likeness {
  /** Rules that layer, paint and kind fit. */
  readonly possible: readonly Holding[];
  /** The claim where no possible rule looks closer, else null. */
  readonly claim: Claim | null;
  /** Claims by which of the closer looks hold. */
  readonly closer: Map<string, Claim>;
}

/** Looks at a shape itself, where rules ask for its id, class or line width. */
function lookCloser(likeness: Likeness, shape: Shape, make: (holding: readonly Holding[]) => Claim): Claim {
  let key = '';
  for (const { rule } of likeness.possible) key += rule.fitsShape === null || rule.fitsShape(shape) ? '1' : '0';
  let claim = likeness.closer.get(key);
  if (claim === undefined) {
    claim = make(likeness.possible.filter((_, i) => key[i] === '1'));
    likeness.closer.set(key, claim);
  }
  return claim;
}

const KINDS = ['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon', 'text', 'image', 'foreignObject'];

/** Claims by rules, worked out once for all shapes alike: drawings have many shapes and few paints. */
function claimByRules(rules: readonly CompiledRule[], ticket: Ticket): Claimer {
  const rest = rules.find((rule) => rule.isRest);
  const make = (holding: readonly Holding[]): Claim => decide(holding, rest, ticket);
  const known = new Map<object, Map<number, Likeness>>();
  const look = (shape: Shape): Likeness => {
    const possible = rules
      .map((rule) => ({ rule, distance: rule.distances[shape.layer + 1]! }))
      .filter(({ rule, distance }) => !rule.isRest && distance >= 0 && rule.fitsPaint(shape));
    const isClose = possible.some(({ rule }) => rule.fitsShape !== null);
    return { possible, claim: isClose ? null : make(possible), closer: new Map() };
  };
  return (shape) => {
    let alike = known.get(shape.paint);
    if (alike === undefined) {
      alike = new Map();
      known.set(shape.paint, alike);
    }
    const key = (shape.layer + 1) * KINDS.length + KINDS.indexOf(shape.kind);
    let likeness = alike.get(key);
    if (likeness === undefined) {
      likeness = look(shape);
      alike.set(key, likeness);
    }
    return likeness.claim ?? lookCloser(likeness, shape, make);
  };
}

/** Whether a fill would be lost, or cut, where a stroke sends a shape to a tool. */
export function hasPrintFill(claim: Claim, shape: Shape): boolean {
  if (claim.kind !== 'taken' || claim.wholeAsked || !isToolpath(claim.pass.role)) return false;
  return hasFill(shape) && hasStroke(shape);
}

/** The claimer of a job: the ticket's rules where it has any, else the layers' names. */
export function createClaimer(
  artwork: Artwork,
  ticket: Ticket,
  context: { readonly suggestions: LayerSuggestions; readonly readColour: ColourReader },
): { readonly claim: Claimer; readonly rules: readonly CompiledRule[] } {
  const rules = compileRules(artwork, ticket, context.readColour);
  const claim = rules.length === 0 ? claimByNames(artwork, ticket, context.suggestions) : claimByRules(rules, ticket);
  return { claim, rules };
}
