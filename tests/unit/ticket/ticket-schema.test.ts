// The JSON Schema takes and refuses what the reader takes and refuses, as far as a schema can say it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Json } from '../../../src/model/finding.js';
import { checkTicket } from '../../../src/ticket/check-ticket.js';
import { TICKET_SCHEMA } from '../../../src/ticket/ticket-schema.js';
import { validTicket } from '../../properties/ticket-arbitraries.js';

interface Node {
  readonly type?: string | readonly string[];
  readonly enum?: readonly Json[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly maxItems?: number;
  readonly pattern?: string;
  readonly anyOf?: readonly Node[];
  readonly items?: Node;
  readonly properties?: { readonly [key: string]: Node };
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean;
}

const KNOWN = new Set(
  '$schema title description type enum minimum maximum minLength maxLength maxItems items properties required additionalProperties anyOf pattern'.split(
    ' ',
  ),
);

function typeOf(value: unknown, types: readonly string[]): string {
  if (types.includes('integer') && Number.isInteger(value)) return 'integer';
  if (value === null) return 'null';
  return Array.isArray(value) ? 'array' : typeof value;
}

/** The few words of JSON Schema 2020-12 that the schema uses. */
function fits(node: Node, value: unknown): boolean {
  for (const key of Object.keys(node)) if (!KNOWN.has(key)) throw new Error(`the schema says ${key}`);
  if (node.anyOf !== undefined) return node.anyOf.some((one) => fits(one, value));
  if (node.enum !== undefined) return node.enum.includes(value as Json);
  const types = [node.type ?? []].flat();
  if (types.length > 0 && !types.includes(typeOf(value, types))) return false;
  if (typeof value === 'number') return value >= node.minimum! && value <= node.maximum!;
  if (typeof value === 'string') {
    const spelled = node.pattern === undefined || new RegExp(node.pattern).test(value);
    return spelled && value.length >= node.minLength! && value.length <= node.maxLength!;
  }
  if (Array.isArray(value)) return value.length <= node.maxItems! && value.every((item) => fits(node.items!, item));
  if (typeof value !== 'object' || value === null) return true;
  const given = value as { readonly [key: string]: unknown };
  return (
    node.required!.every((key) => Object.hasOwn(given, key)) &&
    Object.keys(given).every((key) => Object.hasOwn(node.properties!, key) && fits(node.properties![key]!, given[key]))
  );
}

const SCHEMA = TICKET_SCHEMA as unknown as Node;

describe('the schema', () => {
  it('is JSON and names its version', () => {
    expect(JSON.parse(JSON.stringify(TICKET_SCHEMA))).toEqual(TICKET_SCHEMA);
    expect(TICKET_SCHEMA.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
  });

  it('closes every object', () => {
    const visit = (node: Node): void => {
      if (node.type === 'object') expect(node.additionalProperties).toBe(false);
      for (const inner of [...Object.values(node.properties ?? {}), ...(node.items ? [node.items] : [])]) visit(inner);
    };
    visit(SCHEMA);
  });

  it('agrees with the reader on tickets, and on tickets with one value changed', () => {
    let taken = 0;
    let refused = 0;
    fc.assert(
      fc.property(
        validTicket,
        fc.nat(),
        fc.jsonValue(),
        fc.integer({ min: -1, max: 2000 }),
        (ticket, at, put, size) => {
          const copy = structuredClone(ticket) as { [key: string]: unknown };
          expect(fits(SCHEMA, copy)).toBe(true);
          expect(checkTicket(copy)).toEqual([]);
          const holders: { [key: string]: unknown }[] = [];
          const visit = (value: unknown): void => {
            if (typeof value !== 'object' || value === null) return;
            holders.push(value as { [key: string]: unknown });
            Object.values(value).forEach(visit);
          };
          visit(copy);
          const holder = holders[at % holders.length]!;
          const keys = [...Object.keys(holder), 'other'];
          const key = keys[at % keys.length]!;
          if (Array.isArray(holder)) holder.push(at % 2 === 0 ? put : size);
          else holder[key] = at % 2 === 0 ? put : size;
          const fitting = fits(SCHEMA, copy);
          if (fitting) taken += 1;
          else refused += 1;
          expect(checkTicket(copy).length === 0, JSON.stringify(copy)).toBe(fitting);
        },
      ),
      { numRuns: 1000, seed: 7 },
    );
    expect(Math.min(taken, refused)).toBeGreaterThan(20);
  });
});
