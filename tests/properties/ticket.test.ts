// Tickets: written and read again they are the same; whatever is read, nothing but a PinbarError is thrown.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PinbarError } from '../../src/model/trouble.js';
import { parseTake } from '../../src/ticket/parse-take.js';
import { readTicket } from '../../src/ticket/read-ticket.js';
import { writeTicket } from '../../src/ticket/write-ticket.js';
import { validTicket } from './ticket-arbitraries.js';

/** Whether it was taken; throws what is no PinbarError. */
function isTaken(run: () => unknown): boolean {
  try {
    run();
    return true;
  } catch (error) {
    if (!(error instanceof PinbarError)) throw error;
    for (const item of error.findings) {
      expect(item.message).not.toBe('');
      expect(item.remedy).not.toBe('');
    }
    return false;
  }
}

const KEYS = ['passes', 'rules', 'marks', 'severities', 'hidden', 'pinbar', '__proto__', 'toString'];

describe('readTicket', () => {
  it('reads what writeTicket writes to the same ticket', () => {
    fc.assert(
      fc.property(validTicket, (json) => {
        const ticket = readTicket(json);
        const written = writeTicket(ticket);
        expect(readTicket(written)).toEqual(ticket);
        expect(readTicket(JSON.stringify(written))).toEqual(ticket);
        expect(writeTicket(readTicket(written))).toEqual(written);
      }),
    );
  });

  it('throws nothing but a PinbarError, whatever the text', () => {
    fc.assert(fc.property(fc.oneof(fc.string(), fc.json()), (text) => void isTaken(() => readTicket(text))));
  });

  it('throws nothing but a PinbarError, whatever the value', () => {
    const value = fc.oneof(
      fc.anything({ withBigInt: true, withDate: true, withMap: true, withNullPrototype: true, withSparseArray: true }),
      fc.dictionary(fc.constantFrom(...KEYS), fc.anything({ withBigInt: true, withNullPrototype: true })),
      fc.dictionary(fc.constantFrom('rules', 'passes'), fc.array(fc.dictionary(fc.string(), fc.anything()))),
    );
    fc.assert(
      fc.property(value, (any) => void isTaken(() => readTicket(any))),
      { numRuns: 400 },
    );
  });
});

describe('parseTake', () => {
  it('throws nothing but a PinbarError, whatever the text', () => {
    const piece = fc.constantFrom(
      'cutting',
      '=',
      ':',
      ',',
      '"',
      "'",
      '(',
      ')',
      'layer',
      'dashed',
      'width',
      '0.3mm',
      ' ',
    );
    const text = fc.oneof(
      fc.string(),
      fc.array(piece).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(text, (take) => void isTaken(() => parseTake(take))),
      { numRuns: 2000 },
    );
  });

  it('gives back any layer name that stands in quotes', () => {
    const name = fc.string({ minLength: 1, unit: 'grapheme' }).filter((text) => !text.includes('"'));
    fc.assert(
      fc.property(name, (layer) => {
        expect(parseTake(`cutting=layer:"${layer}",stroke:#f00`)).toEqual({ pass: 'cutting', layer, stroke: '#f00' });
      }),
    );
  });
});
