// Every word that the source room says of a broken file: what, where, what to do, and what was measured.
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/model/finding.js';
import { PinbarError } from '../../../src/model/trouble.js';
import { readSource } from '../../../src/source/read-source.js';
import words from './words.json' with { type: 'json' };

interface Said {
  readonly input: string;
  /** Of the last finding; null where nothing was said. */
  readonly said: Pick<Finding, 'code' | 'severity' | 'message' | 'remedy' | 'place' | 'data'> | null;
  readonly thrown: boolean;
}

/** The bytes that an input stands for: gzipped and cut or spoilt, in UTF-16, or as it is. */
function toBytes(input: string): Uint8Array {
  if (!input.startsWith('GZIP ')) {
    return new Uint8Array(
      input.startsWith('UTF16 ') ? Buffer.from(`\ufeff${input.slice(6)}`, 'utf16le') : Buffer.from(input),
    );
  }
  const packed = new Uint8Array(gzipSync('<svg xmlns="http://www.w3.org/2000/svg"/>'));
  const length = Number(input.slice(5));
  if (Number.isFinite(length)) return packed.slice(0, length);
  packed[packed.length - 6]! ^= 1;
  return packed;
}

function listen(input: string): Said {
  const [, option, allowed, rest] = /^LIMIT (\w+) (\d+) (.*)$/s.exec(input) ?? [];
  const limits = option === undefined ? {} : { [option]: Number(allowed) };
  let findings: readonly Finding[] = [];
  let thrown = false;
  try {
    findings = readSource(toBytes(rest ?? input), { limits }).findings;
  } catch (error) {
    if (!(error instanceof PinbarError)) throw error;
    findings = error.findings;
    thrown = true;
  }
  const last = findings.at(-1);
  if (last === undefined) return { input, said: null, thrown };
  const { code, severity, message, remedy, place, data } = last;
  return { input, said: { code, severity, message, remedy, place, data }, thrown };
}

describe('the words of the source room', () => {
  it.each(words as readonly Said[])('about $input', (entry) => {
    expect(listen(entry.input)).toEqual(entry);
  });

  it('are about many codes', () => {
    const codes = new Set(words.map(({ said }) => said?.code));
    expect(codes.size).toBeGreaterThan(12);
  });
});
