// Checks a value against a shape and lists every fault at once: nothing but this file knows how the checking is done.
import * as v from 'valibot';
import { type Field, type Fields, MOST_ITEMS } from './field.js';
import { nearestWord } from './nearest-word.js';

/** One thing wrong with a ticket or a shop profile. */
export interface ShapeFault {
  /** Path of the key, for instance `rules[2].stroke`. */
  readonly path: string;
  readonly message: string;
  readonly remedy: string;
}

/** What a document may hold. */
export interface Shape {
  /** What it is called in messages: `ticket`, `profile`. */
  readonly noun: string;
  readonly fields: Fields;
  readonly required: readonly string[];
  /** What to say of a key that is not known, where there is more to say than which are. */
  readonly explainKey?: (keys: readonly unknown[], path: string) => ShapeFault | null;
}

type Schema = v.GenericSchema<unknown, unknown>;

/** An object as JSON has it: no list, no instance of a class. */
function isPlainObject(value: unknown): value is { readonly [key: string]: unknown } {
  if (typeof value !== 'object' || value === null) return false;
  const above: unknown = Object.getPrototypeOf(value);
  return above === null || Object.getPrototypeOf(above) === null;
}

/** Keys that are not known are left to `listUnknownKeys`, since a strict object tells only the first of them. */
function buildObject(fields: Fields, required: readonly string[]): Schema {
  const entries = Object.fromEntries(
    Object.entries(fields).map(([key, field]) => {
      const schema = buildField(field);
      return [key, required.includes(key) ? schema : v.optional(schema)];
    }),
  );
  return v.pipe(v.custom<object>(isPlainObject), v.object(entries)) as Schema;
}

function buildField(field: Field): Schema {
  switch (field.type) {
    case 'text':
      return (
        field.pattern === undefined
          ? v.pipe(v.string(), v.minLength(1), v.maxLength(field.longest))
          : v.pipe(v.string(), v.regex(new RegExp(field.pattern.source)))
      ) as Schema;
    case 'either':
      return v.union([buildField(field.one), buildField(field.other)]) as Schema;
    case 'flag':
      return v.boolean() as Schema;
    case 'number': {
      const number = v.pipe(v.number(), v.finite(), v.minValue(field.least), v.maxValue(field.most));
      const exact = field.whole ? v.pipe(number, v.integer()) : number;
      return (field.orNull ? v.nullable(exact) : exact) as Schema;
    }
    case 'word':
      return v.picklist(field.words) as Schema;
    case 'texts':
      return v.pipe(
        v.array(v.pipe(v.string(), v.minLength(1), v.maxLength(field.longest))),
        v.maxLength(MOST_ITEMS),
      ) as Schema;
    case 'object':
      return buildObject(field.fields, field.required);
    default:
      return v.pipe(v.array(buildObject(field.fields, field.required)), v.maxLength(MOST_ITEMS)) as Schema;
  }
}

/** The field that a path leads to; null for the document itself. */
function followPath(keys: readonly unknown[], shape: Shape): Field | null {
  let { fields } = shape;
  let field: Field | null = null;
  for (const key of keys) {
    if (typeof key === 'number') continue;
    field = fields[String(key)]!;
    if (field.type === 'object' || field.type === 'objects') fields = field.fields;
  }
  return field;
}

function allowedBy(field: Field): string {
  switch (field.type) {
    case 'text':
      return field.pattern?.says ?? `a text of 1 to ${field.longest} characters`;
    case 'either':
      return `${allowedBy(field.one)}, or ${allowedBy(field.other)}`;
    case 'flag':
      return 'true or false';
    case 'number':
      return `a ${field.whole ? 'whole ' : ''}number from ${field.least} to ${field.most}${field.orNull ? ', or null' : ''}`;
    case 'word':
      return field.words.join(', ');
    case 'texts':
      return `a list of at most ${MOST_ITEMS} texts`;
    case 'object':
      return 'an object';
    default:
      return `a list of at most ${MOST_ITEMS} objects`;
  }
}

function printPath(keys: readonly unknown[]): string {
  return keys.map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i === 0 ? '' : '.'}${String(key)}`)).join('');
}

function spell(value: unknown): string {
  try {
    return JSON.stringify(value) ?? String(value);
  } catch {
    return Array.isArray(value) ? 'a list that JSON cannot say' : `a value (${typeof value}) that JSON cannot say`;
  }
}

function shorten(value: unknown): string {
  const spelled = spell(value);
  return spelled.length > 60 ? `${spelled.slice(0, 57)}...` : spelled;
}

function describeIssue(issue: v.BaseIssue<unknown>, shape: Shape): ShapeFault {
  const { noun } = shape;
  const keys = (issue.path ?? []).map((item) => item.key);
  const path = printPath(keys);
  const field = followPath(keys, shape);
  if (field === null) return { path, message: `The ${noun} is not an object.`, remedy: 'Write { "pinbar": 1, ... }.' };
  const value = issue.input;
  if (value === undefined)
    return { path, message: `The ${noun} lacks ${path}.`, remedy: `Allowed is ${allowedBy(field)}.` };
  const near = field.type === 'word' && typeof value === 'string' ? nearestWord(value, field.words.map(String)) : null;
  return {
    path,
    message: `${path} is ${shorten(value)}; allowed is ${allowedBy(field)}.`,
    remedy: near === null ? `Mend the ${noun} and run again.` : `Did you mean "${near}"?`,
  };
}

/** Most known keys that a message lists. */
const MOST_LISTED = 20;

function describeUnknown(keys: readonly unknown[], fields: Fields, shape: Shape): ShapeFault {
  const path = printPath(keys);
  const key = String(keys.at(-1));
  const explained = shape.explainKey?.(keys, path) ?? null;
  if (explained !== null) return explained;
  const known = Object.keys(fields);
  const near = nearestWord(key, known);
  const allowed = known.length > MOST_LISTED ? 'the codes of warnings and notes' : known.join(', ');
  return {
    path,
    message: `The ${shape.noun} holds an unknown key: ${path}.`,
    remedy: near === null ? `Allowed are: ${allowed}.` : `Did you mean "${near}"?`,
  };
}

/** Every key that has no meaning where it stands. */
function listUnknownKeys(
  value: unknown,
  fields: Fields,
  above: readonly unknown[],
  shape: Shape,
): readonly ShapeFault[] {
  if (!isPlainObject(value)) return [];
  return Object.keys(value).flatMap((key): readonly ShapeFault[] => {
    const keys = [...above, key];
    if (!Object.hasOwn(fields, key)) return [describeUnknown(keys, fields, shape)];
    const field = fields[key]!;
    const inner = value[key];
    if (field.type === 'object') return listUnknownKeys(inner, field.fields, keys, shape);
    if (field.type !== 'objects' || !Array.isArray(inner)) return [];
    return inner.slice(0, MOST_ITEMS).flatMap((item, i) => listUnknownKeys(item, field.fields, [...keys, i], shape));
  });
}

/** Every fault of a value against a shape; empty where it has none. */
export function checkShape(value: unknown, shape: Shape): readonly ShapeFault[] {
  const result = v.safeParse(buildObject(shape.fields, shape.required), value);
  const wrong = result.success ? [] : result.issues.map((issue) => describeIssue(issue, shape));
  return [...listUnknownKeys(value, shape.fields, [], shape), ...wrong];
}
