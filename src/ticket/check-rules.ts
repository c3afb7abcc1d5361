// What the shape of a ticket cannot say: rules name passes that exist and can hold, passes have names of their own.
import { namePass, ROLES } from '../model/pass.js';
import type { PassRequest, Rule } from '../model/ticket.js';
import type { TicketFault } from './check-ticket.js';
import { nearestWord } from './nearest-word.js';

const CONDITIONS = ['layer', 'stroke', 'fill', 'widthMm', 'dashed', 'class', 'id', 'element'] as const;

/** What a pass may register to besides another pass. */
const REGISTER_WORDS = ['edge', 'pins', 'printed-marks'];

/** A rule or pass together with its place in the ticket. */
export interface Placed<T> {
  readonly at: number;
  readonly item: T;
}

function checkPassWord(rule: Rule, path: string, names: readonly string[]): readonly TicketFault[] {
  const known = [...names, ...ROLES];
  if (known.includes(rule.pass)) return [];
  const near = nearestWord(rule.pass, known);
  return [
    {
      path: `${path}.pass`,
      message: `${path}.pass is "${rule.pass}", which is neither a pass of the ticket nor a role.`,
      remedy: near === null ? `Roles are: ${ROLES.join(', ')}.` : `Did you mean "${near}"?`,
    },
  ];
}

function checkConditions(rule: Rule, path: string): readonly TicketFault[] {
  const given = CONDITIONS.filter((key) => rule[key] !== undefined);
  if (rule.rest === true && given.length > 0) {
    return [
      {
        path: `${path}.rest`,
        message: `${path} takes the rest and looks at ${given.join(', ')} too.`,
        remedy: 'Rest stands alone: take it out of the rule, or take the other conditions out.',
      },
    ];
  }
  if (rule.rest === true || given.length > 0) return [];
  return [
    {
      path,
      message: `${path} says no condition, so it would take nothing.`,
      remedy: `Add one of: ${CONDITIONS.join(', ')}, rest.`,
    },
  ];
}

/** Faults of one rule beyond its shape; `names` are the passes that the ticket declares. */
function checkRule(rule: Rule, path: string, names: readonly string[]): readonly TicketFault[] {
  const faults = [...checkPassWord(rule, path, names), ...checkConditions(rule, path)];
  if (rule.colourTolerance !== undefined && rule.stroke === undefined && rule.fill === undefined) {
    faults.push({
      path: `${path}.colourTolerance`,
      message: `${path} has a tolerance for colours, but looks at no colour.`,
      remedy: 'Add stroke or fill, or take the tolerance out.',
    });
  }
  return faults;
}

function checkRests(rules: readonly Placed<Rule>[]): readonly TicketFault[] {
  const rests = rules.filter(({ item }) => item.rest === true);
  return rests.slice(1).map(({ at }) => ({
    path: `rules[${at}].rest`,
    message: `rules[${at}] takes the rest, which rules[${rests[0]!.at}] takes already.`,
    remedy: 'Leave one of them.',
  }));
}

/** Faults of the passes that something is asked for, such as `marks`: such a pass may also be one that a role makes. */
export function checkPassNames(
  key: string,
  marked: readonly Placed<string>[],
  names: readonly string[],
): readonly TicketFault[] {
  const known = [...new Set([...names, ...ROLES.map(namePass), ...ROLES])];
  return marked
    .filter(({ item }) => !known.includes(item))
    .map(({ at, item }) => {
      const near = nearestWord(item, known);
      return {
        path: `${key}[${at}]`,
        message: `${key}[${at}] is "${item}", but no pass can have that name.`,
        remedy:
          near === null
            ? `Passes without a name of their own are: ${ROLES.map(namePass).join(', ')}.`
            : `Did you mean "${near}"?`,
      };
    });
}

/** Faults of passes that are asked for ties twice. */
export function checkTwice(tied: readonly Placed<string>[]): readonly TicketFault[] {
  const names = tied.map(({ item }) => item);
  return tied
    .filter(({ item }, i) => names.indexOf(item) !== i)
    .map(({ at, item }) => ({
      path: `ties[${at}].pass`,
      message: `ties[${at}].pass is "${item}", which gets ties already.`,
      remedy: 'Leave one of them.',
    }));
}

/** Faults of what the passes register to: an edge, printed marks, or a pass that the ticket declares. */
function checkRegisters(passes: readonly Placed<PassRequest>[], names: readonly string[]): readonly TicketFault[] {
  const known = [...REGISTER_WORDS, ...names];
  return passes.flatMap(({ at, item }) => {
    const to = item.registersTo;
    if (typeof to !== 'string' || known.includes(to)) return [];
    const near = nearestWord(to, known);
    const path = `passes[${at}].registersTo`;
    return [
      {
        path,
        message: `${path} is "${to}", which is neither a pass of the ticket nor one of: ${REGISTER_WORDS.join(', ')}.`,
        remedy: near === null ? `Allowed are: ${known.join(', ')}.` : `Did you mean "${near}"?`,
      },
    ];
  });
}

/** Every fault of rules and passes that are right in shape. */
export function checkRules(
  rules: readonly Placed<Rule>[],
  passes: readonly Placed<PassRequest>[],
): readonly TicketFault[] {
  const names = passes.map(({ item }) => item.name);
  const twice = passes.filter(({ item }, i) => names.indexOf(item.name) !== i);
  return [
    ...twice.map(({ at, item }) => ({
      path: `passes[${at}].name`,
      message: `Two passes are called "${item.name}".`,
      remedy: 'Give each a name of its own.',
    })),
    ...rules.flatMap(({ at, item }) => checkRule(item, `rules[${at}]`, names)),
    ...checkRests(rules),
    ...checkRegisters(passes, names),
  ];
}
