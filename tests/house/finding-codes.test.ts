// Every finding code is used, and has a sample that provokes it.
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { FINDING_KINDS } from '../../src/model/finding.js';
import { listFiles, parse, readFiles, walk } from './tree.js';

/** Codes that still wait for a sample. This list only gets shorter: a code that has a sample may not stand here. */
const WAITING: readonly string[] = [];

const codes = Object.keys(FINDING_KINDS);

function listSpoken(): ReadonlySet<string> {
  const files = readFiles(/^src\/(?!model\/(?:finding|check-kinds)\.ts).*\.ts$/);
  const texts = files.flatMap((file) => [...walk(parse(file))]).filter(ts.isStringLiteralLike);
  return new Set(texts.map(({ text }) => text));
}

/** Codes with a sidecar: tests/findings/room/code.json, or code.variant.json. */
function listSampled(): ReadonlySet<string> {
  const sidecars = listFiles().filter((path) => /^tests\/findings\/.*\.json$/.test(path));
  return new Set(sidecars.map((path) => path.replace(/^tests\/findings\/([^.]+)\..*$/, '$1')));
}

describe('finding codes', () => {
  it('are all used', () => {
    const spoken = listSpoken();
    expect(codes.filter((code) => !spoken.has(code))).toEqual([]);
  });

  it('all have a sample, but for those that wait for one', () => {
    const sampled = listSampled();
    expect(codes.filter((code) => !sampled.has(code)).sort()).toEqual([...WAITING].sort());
  });

  it('are in plain trade words', () => {
    const docs = Object.values(FINDING_KINDS).map(({ doc }) => doc);
    expect(docs.filter((doc) => !/^[A-Z].*\.$/.test(doc))).toEqual([]);
    expect(codes.filter((code) => !/^(?:[a-z]+\/)?[a-z]+(?:-[a-z]+)*$/.test(code))).toEqual([]);
  });
});
