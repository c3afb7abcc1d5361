// The JSON Schemas of a ticket and of a shop profile, for editors and pipelines.
import type { Json } from '../model/finding.js';
import { type Field, type Fields, MOST_ITEMS } from './field.js';
import { PROFILE_FIELDS, PROFILE_REQUIRED } from './profile-shape.js';
import { TICKET_FIELDS } from './ticket-shape.js';

type Schema = { readonly [key: string]: Json };

function describeObject(fields: Fields, required: readonly string[]): Schema {
  return {
    type: 'object',
    properties: Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, describeField(field)])),
    required,
    additionalProperties: false,
  };
}

function describeField(field: Field): Schema {
  const description = field.doc;
  switch (field.type) {
    case 'text':
      return {
        description,
        type: 'string',
        minLength: 1,
        maxLength: field.longest,
        ...(field.pattern === undefined ? {} : { pattern: field.pattern.source }),
      };
    case 'either':
      return { description, anyOf: [describeField(field.one), describeField(field.other)] };
    case 'flag':
      return { description, type: 'boolean' };
    case 'number':
      return {
        description,
        type: field.whole ? 'integer' : field.orNull ? ['number', 'null'] : 'number',
        minimum: field.least,
        maximum: field.most,
      };
    case 'word':
      return { description, enum: field.words };
    case 'texts':
      return {
        description,
        type: 'array',
        maxItems: MOST_ITEMS,
        items: { type: 'string', minLength: 1, maxLength: field.longest },
      };
    case 'object':
      return { description, ...describeObject(field.fields, field.required) };
    default:
      return { description, type: 'array', maxItems: MOST_ITEMS, items: describeObject(field.fields, field.required) };
  }
}

/** JSON Schema (2020-12) of a ticket, version 1. */
export const TICKET_SCHEMA: Schema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'pinbar ticket',
  ...describeObject(TICKET_FIELDS, ['pinbar']),
};

/** JSON Schema (2020-12) of a shop profile, version 1. */
export const PROFILE_SCHEMA: Schema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'pinbar shop profile',
  ...describeObject(PROFILE_FIELDS, PROFILE_REQUIRED),
};
