// The place of a fault in JSON: the same on every engine, and none exactly where JSON.parse finds none.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findJsonFault } from '../../../src/ticket/find-json-fault.js';

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

describe('findJsonFault', () => {
  it.each([
    ['', 0],
    ['  ', 2],
    ['{', 1],
    ['{"a" 1}', 5],
    ['{"a":1,}', 7],
    ['{"a":1 "b":2}', 7],
    ['[1,]', 3],
    ['[1 2]', 3],
    ['[1}', 2],
    ['{]', 1],
    ['{"a":1}}', 7],
    ["{'a':1}", 1],
    ['{a:1}', 1],
    ['{"a":01}', 6],
    ['{"a":"b', 5],
    ['["\\x"]', 1],
    ['["\n"]', 1],
    ['// note\n{}', 0],
    ['[tru]', 1],
    ['[NaN]', 1],
    ['[+1]', 1],
    ['"a" "b"', 4],
  ])('finds the fault of %j at %i', (text, at) => {
    expect(isJson(text)).toBe(false);
    expect(findJsonFault(text)).toBe(at);
  });

  it.each(['{}', '[]', ' {"a":[1,-2.5e+3,true,false,null,"\\u00e9\\n"],"b":{"c":{}}} ', '1', '"x"', '\t\r\n[ ]'])(
    'finds none in %j',
    (text) => {
      expect(findJsonFault(text)).toBe(-1);
    },
  );

  it('agrees with JSON.parse on any JSON with one sign changed', () => {
    const sign = fc.constantFrom(...'{}[]:,"\\ 0x-.etn\n');
    fc.assert(
      fc.property(fc.json(), fc.nat(), sign, fc.boolean(), (json, place, put, cut) => {
        const at = place % (json.length + 1);
        const text = json.slice(0, at) + put + json.slice(at + (cut ? 1 : 0));
        expect(findJsonFault(text) === -1).toBe(isJson(text));
      }),
      { numRuns: 3000 },
    );
  });

  it('stands texts that are long and lists that are deep', () => {
    const long = 3_000_000;
    expect(findJsonFault(`["${'a'.repeat(long)}" x]`)).toBe(long + 4);
    expect(findJsonFault('['.repeat(100_000))).toBe(100_000);
  });
});
