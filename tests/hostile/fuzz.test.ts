// CWE-20 and CWE-248: any input at all ends in an answer or in an error of pinbar's own.
// `npm run fuzz` runs it longer, from a new seed, and prints what it finds as a test that can be kept.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FUZZ_READERS, type FuzzReader } from './fuzz-readers.js';

const RUNS = Number(process.env.PINBAR_FUZZ_RUNS ?? 100_000);
const SEED = Number(process.env.PINBAR_FUZZ_SEED ?? 20_260_101);

/** A value as it is written in a program. */
function spell(value: unknown): string {
  if (value instanceof Uint8Array) return `Uint8Array.of(${[...value].join(', ')})`;
  return fc.stringify(value);
}

/** A test that shows the fault again, ready to be put into the tests of the reader. */
function writeTest({ name, call }: FuzzReader, input: unknown, error: unknown): string {
  const said = String(error instanceof Error ? error.message : error).split('\n')[0];
  return [
    `it('the ${name} reader answers what the fuzzer found', () => {`,
    `  // It said: ${said}`,
    `  const input = ${spell(input)};`,
    `  expect(() => ${call}).not.toThrow();`,
    '});',
  ].join('\n');
}

it('has a share for every reader', () => {
  expect(FUZZ_READERS.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
});

it('prints a fault as a test', () => {
  const reader: FuzzReader = { name: 'path', share: 1, input: fc.constant(''), feed: () => {}, call: 'read(input)' };
  const text = writeTest(reader, new Uint8Array([1, 2]), new Error('a\nb'));
  expect(text).toContain('const input = Uint8Array.of(1, 2);');
  expect(text).toContain('expect(() => read(input)).not.toThrow();');
  expect(text).toContain('// It said: a\n');
});

describe('no input makes an untyped error', () => {
  it.each(FUZZ_READERS)(
    '$name',
    (reader) => {
      const numRuns = Math.ceil(RUNS * reader.share);
      let runs = 0;
      const property = fc.property(reader.input, (input) => {
        runs += 1;
        reader.feed(input);
      });
      const result = fc.check(property, { numRuns, seed: SEED });
      const found = result.counterexample?.[0];
      expect(
        result.failed ? writeTest(reader, found, result.errorInstance) : '',
        `seed ${SEED}, path ${result.counterexamplePath}`,
      ).toBe('');
      expect(runs).toBe(numRuns);
    },
    Math.max(60_000, RUNS * 10),
  );
});
