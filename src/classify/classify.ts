// Which shape belongs to which pass, by which rule, and what nobody claims.
import type { Artwork, Shape } from '../model/artwork.js';
import { type Finding, finding } from '../model/finding.js';
import {
  type Assignment,
  type Exclusion,
  isToolpath,
  namePass,
  type Part,
  type Pass,
  type Placement,
  type Reason,
  ROLES,
} from '../model/pass.js';
import type { PassRequest, Ticket } from '../model/ticket.js';
import { type Claim, type Claimer, createClaimer, hasPrintFill } from './claim.js';
import type { ColourReader, CompiledRule } from './compile-rules.js';
import { listEmptyPasses, listUnusedRules, refuseEmpty } from './describe-rules.js';
import {
  answerUnclaimed,
  createTroubleLog,
  keepNames,
  quoteLayer,
  type Trouble,
  type TroubleLog,
} from './describe-trouble.js';
import { type LayerSuggestions, suggestLayers } from './suggest.js';

/** What `classify` decides. */
export interface Classification {
  readonly assignment: Assignment;
  readonly findings: readonly Finding[];
}

/** A placement before the passes have numbers. */
interface Draft {
  readonly shape: number;
  readonly pass: PassRequest;
  readonly part: Part;
  readonly reason: Reason;
}

interface Work {
  readonly artwork: Artwork;
  readonly ticket: Ticket;
  readonly suggestions: LayerSuggestions;
  readonly claim: Claimer;
  readonly rules: readonly CompiledRule[];
  readonly log: TroubleLog;
  readonly drafts: Draft[];
  readonly exclusions: Exclusion[];
  readonly shown: Set<number>;
  readonly used: Set<number>;
}

function exclude(work: Work, shape: Shape, cause: Exclusion['cause']): void {
  work.exclusions.push({ shape: shape.index, cause });
}

/** What to say of a shape that no pass takes. */
function sayOpen(work: Work, shape: Shape, claim: Exclude<Claim, { readonly kind: 'taken' | 'parted' }>): Trouble {
  const { artwork, suggestions } = work;
  switch (claim.kind) {
    case 'twice':
      return {
        detail: `are claimed by the passes ${claim.passes.join(' and ')} (${claim.rules.join('; ')}).`,
        remedy: 'Let one rule say more, for instance layer and stroke together, or take one of the rules out.',
        data: { passes: claim.passes },
      };
    case 'name-against-paint':
      return {
        detail: `go to ${claim.passes[0]} by name and to ${claim.passes[1]} by paint (${claim.rules.join('; ')}).`,
        remedy: 'Let one rule look at both, for instance --take PASS=layer:NAME,stroke:COLOUR.',
        data: { passes: claim.passes },
      };
    case 'unsure': {
      const suggestion = suggestions.layers[claim.layer]!;
      return {
        detail: `may be for ${suggestion.role}: ${suggestion.reason}.`,
        remedy: `If that is right, say --take ${suggestion.role}=${quoteLayer(artwork, claim.layer)}.${keepNames(artwork, claim.layer, suggestions)}`,
        data: { role: suggestion.role },
      };
    }
    case 'nobody': {
      const doubt = shape.layer < 0 ? '' : suggestions.doubts[shape.layer]!;
      const why = doubt === '' ? 'no layer name around them says what they are for' : doubt;
      return {
        detail: work.rules.length > 0 ? 'are taken by no rule.' : `are claimed by nobody: ${why}.`,
        remedy: `${answerUnclaimed(artwork, shape.layer, suggestions)}${work.rules.length > 0 ? '' : keepNames(artwork, shape.layer, suggestions)}`,
      };
    }
  }
}

const OPEN_CODES = {
  twice: 'classify/claimed-twice',
  'name-against-paint': 'classify/name-against-paint',
  unsure: 'classify/name-unsure',
  nobody: 'classify/unclaimed',
} as const;

/** The print pass of the job, for the fill of a shape whose stroke goes to a tool. */
function findPrint(work: Work): PassRequest | null {
  const { ticket, rules } = work;
  return (
    ticket.passes.find((pass) => pass.role === 'print') ??
    rules.find((rule) => rule.pass.role === 'print')?.pass ??
    (rules.length === 0 ? { name: namePass('print'), role: 'print' } : null)
  );
}

function partPaint(work: Work, shape: Shape, claim: Claim & { readonly kind: 'taken' }): void {
  const print = work.ticket.partPaint ? findPrint(work) : null;
  if (print === null) {
    exclude(work, shape, 'open');
    work.log.add(shape, 'classify/fill-and-stroke', claim, () => ({
      detail: `go to ${claim.pass.name} by their stroke, but have a fill for print too.`,
      remedy: work.ticket.partPaint
        ? 'No pass prints: add a rule for print, for instance --take print=rest.'
        : 'Say --part-paint to put the fill into print and the stroke into the die pass, or draw them as two shapes.',
      data: { pass: claim.pass.name },
    }));
    return;
  }
  work.drafts.push({ shape: shape.index, pass: print, part: 'fill', reason: claim.reason });
  work.drafts.push({ shape: shape.index, pass: claim.pass, part: 'stroke', reason: claim.reason });
}

/** Places a shape that is to be drawn. */
function place(work: Work, shape: Shape, claim: Claim): void {
  if (claim.kind === 'parted') {
    work.drafts.push({ shape: shape.index, pass: claim.ground, part: 'fill', reason: claim.reason });
    work.drafts.push({ shape: shape.index, pass: claim.line, part: 'stroke', reason: claim.reason });
    work.used.add(claim.reason.rule);
    return;
  }
  if (claim.kind !== 'taken') {
    exclude(work, shape, 'open');
    work.log.add(shape, OPEN_CODES[claim.kind], claim, () => sayOpen(work, shape, claim));
    return;
  }
  work.used.add(claim.reason.rule);
  if (claim.pass.role === 'ignore') {
    exclude(work, shape, 'ignored');
    work.log.add(shape, 'classify/ignored', claim, () => ({
      detail: `are left out as asked (${claim.reason.text}).`,
      remedy: '',
    }));
  } else if (hasPrintFill(claim, shape)) {
    partPaint(work, shape, claim);
  } else {
    work.drafts.push({ shape: shape.index, pass: claim.pass, part: 'whole', reason: claim.reason });
  }
}

/** Whether a hidden shape is more than a leftover: a tool would follow it, or a rule names its layer. */
function isAskedFor(claim: Claim, suggestions: LayerSuggestions): boolean {
  switch (claim.kind) {
    case 'nobody':
      return false;
    case 'unsure':
      return isToolpath(suggestions.layers[claim.layer]!.role);
    case 'taken':
      return isToolpath(claim.pass.role) || (claim.byName && claim.reason.rule >= 0);
    default:
      return true;
  }
}

function treatHidden(work: Work, shape: Shape, claim: Claim): void {
  const { hidden } = work.ticket;
  if (claim.kind === 'taken' && claim.pass.role === 'ignore') {
    place(work, shape, claim);
    return;
  }
  if (hidden === 'include') {
    work.shown.add(shape.carrier);
    place(work, shape, claim);
    return;
  }
  const asks = hidden === 'stop' || (hidden === 'ask' && isAskedFor(claim, work.suggestions));
  exclude(work, shape, asks ? 'open' : 'hidden');
  if (claim.kind === 'taken' || claim.kind === 'parted') work.used.add(claim.reason.rule);
  const pass = claim.kind === 'taken' ? ` and would go to ${claim.pass.name}` : '';
  work.log.add(shape, asks ? 'layer/hidden-asked' : 'layer/hidden-skipped', claim, () => ({
    detail: asks ? `are hidden${pass}.` : 'are hidden and left out.',
    remedy: asks
      ? 'Say --hidden include if they are wanted, or --hidden skip if not.'
      : 'Say --hidden include if they are wanted.',
  }));
}

/** A copy made by use stands in one sheet as a whole: all it draws must go one way. */
function refuseDivided(work: Work): void {
  const { artwork } = work;
  const ways = new Map<number, Set<string>>();
  const note = (shape: Shape, way: string): void => {
    if (shape.carrier === shape.element) return;
    const known = ways.get(shape.carrier) ?? new Set();
    ways.set(shape.carrier, known.add(way));
  };
  for (const draft of work.drafts) note(artwork.shapes[draft.shape]!, draft.pass.name);
  // What is hidden inside a copy stays hidden in every sheet, and does not divide it.
  for (const { shape, cause } of work.exclusions) if (cause === 'ignored') note(artwork.shapes[shape]!, cause);
  const divided = new Set([...ways].filter(([, passes]) => passes.size > 1).map(([carrier]) => carrier));
  if (divided.size === 0) return;
  const isDivided = (draft: Draft): boolean => divided.has(artwork.shapes[draft.shape]!.carrier);
  const kept = work.drafts.filter((draft) => !isDivided(draft));
  const open = new Set(work.drafts.filter(isDivided).map((draft) => draft.shape));
  for (const index of open) {
    const shape = artwork.shapes[index]!;
    exclude(work, shape, 'open');
    const passes = [...ways.get(shape.carrier)!].sort();
    work.log.add(shape, 'classify/use-divided', ways.get(shape.carrier)!, () => ({
      detail: `are drawn by a copy (use) that goes to ${passes.join(' and ')}; a copy stands in one pass only.`,
      remedy: 'Turn the copy into shapes of its own, or send all of it to one pass.',
      data: { passes },
    }));
  }
  work.drafts.length = 0;
  work.drafts.push(...kept);
}

/** Passes that have shapes, in the order asked for, else in the order of the roles. */
function orderPasses(work: Work): readonly Pass[] {
  const used = new Map<string, PassRequest>();
  for (const { pass } of work.drafts) used.set(pass.name, pass);
  const rank = (pass: PassRequest): number => {
    const declared = work.ticket.passes.findIndex((request) => request.name === pass.name);
    return declared >= 0 ? declared : work.ticket.passes.length + ROLES.indexOf(pass.role);
  };
  const sorted = [...used.values()].sort((a, b) => rank(a) - rank(b));
  return sorted.map((pass, i) => ({ order: i + 1, name: pass.name, role: pass.role }));
}

function numberPlacements(drafts: readonly Draft[], passes: readonly Pass[]): readonly Placement[] {
  const numbers = new Map(passes.map((pass, i) => [pass.name, i]));
  return drafts
    .map(({ shape, pass, part, reason }) => ({ shape, pass: numbers.get(pass.name)!, part, reason }))
    .sort((a, b) => a.shape - b.shape || a.pass - b.pass);
}

/**
 * Sends every shape to its passes.
 *
 * @param readColour - Reads the colours that rules spell.
 * @returns Every shape in `placements` or `exclusions`, and findings, one per kind and layer.
 * @throws PinbarError `ticket/wrong` for a rule whose colour cannot be read.
 */
export function classify(artwork: Artwork, ticket: Ticket, readColour: ColourReader): Classification {
  const suggestions = suggestLayers(artwork);
  const { claim, rules } = createClaimer(artwork, ticket, { suggestions, readColour });
  const log = createTroubleLog(artwork);
  const work: Work = {
    artwork,
    ticket,
    suggestions,
    claim,
    rules,
    log,
    drafts: [],
    exclusions: [],
    shown: new Set(),
    used: new Set(),
  };
  let nothing = 0;
  for (const shape of artwork.shapes) {
    if (!shape.draws) {
      exclude(work, shape, 'draws-nothing');
      nothing += 1;
    } else if (shape.hidden) treatHidden(work, shape, claim(shape));
    else place(work, shape, claim(shape));
  }
  refuseDivided(work);
  const passes = orderPasses(work);
  const findings = [...log.list(), ...listUnusedRules(work), ...listEmptyPasses(ticket, passes)];
  if (nothing > 0) {
    const message = `${nothing} shape${nothing === 1 ? '' : 's'} draw${nothing === 1 ? 's' : ''} nothing (no paint, no size) and ${nothing === 1 ? 'is' : 'are'} in no pass.`;
    findings.push(finding('classify/draws-nothing', { message, data: { count: nothing } }));
  }
  findings.push(...refuseEmpty(artwork, passes, findings));
  const placements = numberPlacements(work.drafts, passes);
  const exclusions = work.exclusions.sort((a, b) => a.shape - b.shape);
  return { assignment: { passes, placements, exclusions, shownElements: [...work.shown] }, findings };
}
