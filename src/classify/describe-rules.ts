// What there is to say of the rules and passes themselves, whatever became of the shapes.
import type { Artwork, Shape } from '../model/artwork.js';
import { type Finding, finding } from '../model/finding.js';
import type { Pass } from '../model/pass.js';
import type { Ticket } from '../model/ticket.js';
import type { Claimer } from './claim.js';
import { type CompiledRule, fitsRule } from './compile-rules.js';

/** What is known of the rules once every shape was asked for. */
export interface RuleFacts {
  readonly artwork: Artwork;
  readonly rules: readonly CompiledRule[];
  readonly claim: Claimer;
  /** Positions of the rules that decided for a shape. */
  readonly used: ReadonlySet<number>;
}

/** Whether a shape that a rule fits goes to another pass without a question. */
function isOverruled(rule: CompiledRule, shape: Shape, claim: Claimer): boolean {
  const made = claim(shape);
  return made.kind === 'taken' && made.pass.name !== rule.pass.name;
}

/** Rules that take no shape: nothing fits them, or nearer rules take all that does. */
export function listUnusedRules(facts: RuleFacts): readonly Finding[] {
  const { artwork, rules, claim, used } = facts;
  return rules
    .filter((rule) => !rule.isRest && !used.has(rule.index))
    .flatMap((rule) => {
      const fitting = artwork.shapes.filter((shape) => fitsRule(rule, shape));
      if (fitting.some((shape) => !isOverruled(rule, shape, claim))) return [];
      const count = fitting.length;
      const found =
        count === 0
          ? `Nothing in the file fits ${rule.text}.`
          : `${count} shape${count === 1 ? ' fits' : 's fit'} ${rule.text}, but nearer rules take ${count === 1 ? 'it' : 'them all'}.`;
      const remedy =
        count === 0
          ? 'Compare it with what pinbar inspect lists: a layer may have another name, a stroke another colour.'
          : 'Take the rule out, or let it name the layer that the shapes stand in.';
      return [finding('classify/rule-unused', { message: found, remedy, data: { rule: rule.index, count } })];
    });
}

/** Passes that the ticket declares and no shape goes to. */
export function listEmptyPasses(ticket: Ticket, passes: readonly Pass[]): readonly Finding[] {
  return ticket.passes
    .filter((request) => request.role !== 'ignore' && !passes.some((pass) => pass.name === request.name))
    .map((request) =>
      finding('classify/pass-empty', {
        message: `No shape goes to the pass "${request.name}"; it gets no file.`,
        remedy: 'Take the pass out of the ticket, or mend the rules that should feed it.',
        data: { pass: request.name },
      }),
    );
}

/** Artwork of which nothing goes to any pass; where something is asked, the question says so already. */
export function refuseEmpty(artwork: Artwork, passes: readonly Pass[], asked: readonly Finding[]): readonly Finding[] {
  if (passes.length > 0 || asked.some((item) => item.severity === 'error')) return [];
  const count = artwork.shapes.length;
  const found = count === 0 ? 'Nothing is drawn' : `None of the ${count} shapes goes to a pass`;
  return [
    finding('classify/no-sheet', {
      message: `${found}: there is no file to write.`,
      remedy:
        count === 0
          ? 'Look whether this is the right file, and whether it was saved whole.'
          : 'Look which shapes are hidden, ignored by a rule, or have neither paint nor size.',
      data: { count },
    }),
  ];
}
