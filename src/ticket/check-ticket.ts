// Checks a value against the shape of a ticket and lists every fault at once.
import * as v from 'valibot';
import { nearestWord } from './nearest-word.js';
import { type Field, type Fields, TICKET_FIELDS } from './ticket-shape.js';

/** One thing wrong with a ticket. */
export interface TicketFault {
  /** Path of the key, for instance `rules[2].stroke`. */
  readonly path: string;
  readonly message: string;
  readonly remedy: string;
}

type Schema = v.GenericSchema<unknown, unknown>;

function buildObject(fields: Fields, required: readonly string[]): Schema {
  const entries = Object.fromEntries(
    Object.entries(fields).map(([key, field]) => {
      const schema = buildField(field);
      return [key, required.includes(key) ? schema : v.optional(schema)];
    }),
  );
  return v.strictObject(entries) as Schema;
}

function buildField(field: Field): Schema {
  switch (field.type) {
    case 'text':
      return v.pipe(v.string(), v.minLength(1), v.maxLength(field.longest)) as Schema;
    case 'flag':
      return v.boolean() as Schema;
    case 'number': {
      const number = v.pipe(v.number(), v.finite(), v.minValue(field.least), v.maxValue(field.most));
      return (field.orNull ? v.nullable(number) : number) as Schema;
    }
    case 'word':
      return v.picklist(field.words) as Schema;
    case 'texts':
      return v.array(v.pipe(v.string(), v.minLength(1), v.maxLength(field.longest))) as Schema;
    case 'object':
      return buildObject(field.fields, field.required);
    default:
      return v.pipe(v.array(buildObject(field.fields, field.required)), v.maxLength(1000)) as Schema;
  }
}

/** The field and its siblings that a path leads to. */
function followPath(keys: readonly unknown[]): { readonly field: Field | null; readonly siblings: readonly string[] } {
  let fields: Fields = TICKET_FIELDS;
  let field: Field | null = null;
  for (const key of keys) {
    if (typeof key === 'number') continue;
    field = Object.hasOwn(fields, String(key)) ? fields[String(key)]! : null;
    if (field === null) return { field, siblings: Object.keys(fields) };
    if (field.type === 'object' || field.type === 'objects') fields = field.fields;
  }
  return { field, siblings: Object.keys(fields) };
}

function allowedBy(field: Field): string {
  switch (field.type) {
    case 'text':
      return `a text of 1 to ${field.longest} characters`;
    case 'flag':
      return 'true or false';
    case 'number':
      return `a number from ${field.least} to ${field.most}${field.orNull ? ', or null' : ''}`;
    case 'word':
      return field.words.join(', ');
    case 'texts':
      return 'a list of texts';
    case 'object':
      return 'an object';
    default:
      return 'a list of objects';
  }
}

function printPath(keys: readonly unknown[]): string {
  return keys.map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i === 0 ? '' : '.'}${String(key)}`)).join('');
}

function shorten(value: unknown): string {
  const spelled = JSON.stringify(value) ?? String(value);
  return spelled.length > 60 ? `${spelled.slice(0, 57)}...` : spelled;
}

function describeIssue(issue: v.BaseIssue<unknown>): TicketFault {
  const keys = (issue.path ?? []).map((item) => item.key);
  const path = printPath(keys);
  const { field, siblings } = followPath(keys);
  if (keys.length === 0)
    return { path, message: 'The ticket is not an object.', remedy: 'Write { "pinbar": 1, ... }.' };
  if (field === null) {
    const key = String(keys.at(-1));
    const near = nearestWord(key, siblings);
    const known = siblings.length > 20 ? 'see the manual' : siblings.join(', ');
    return {
      path,
      message: `The ticket holds an unknown key: ${path}.`,
      remedy: near === null ? `Allowed are: ${known}.` : `Did you mean "${near}"?`,
    };
  }
  const value = issue.input;
  if (value === undefined)
    return { path, message: `The ticket lacks ${path}.`, remedy: `Allowed is ${allowedBy(field)}.` };
  const near = field.type === 'word' && typeof value === 'string' ? nearestWord(value, field.words) : null;
  return {
    path,
    message: `${path} is ${shorten(value)}; allowed is ${allowedBy(field)}.`,
    remedy: near === null ? 'Mend the ticket and run again.' : `Did you mean "${near}"?`,
  };
}

/** Every fault of a value that should be a ticket; empty where it is one. */
export function checkTicket(value: unknown): readonly TicketFault[] {
  const result = v.safeParse(buildObject(TICKET_FIELDS, ['pinbar']), value);
  return result.success ? [] : result.issues.map(describeIssue);
}
