// What the source room says of a file: the last finding, returned or thrown.
import { gzipSync } from 'node:zlib';
import type { Finding } from '../../../src/model/finding.js';
import { PinbarError } from '../../../src/model/trouble.js';
import { readSource } from '../../../src/source/read-source.js';

/** An input and what was said of it. */
export interface Said {
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

/** Reads an input and listens; `LIMIT name number` before it sets a limit. */
export function listen(input: string): Said {
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
