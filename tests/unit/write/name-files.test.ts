// File names are safe on every file system.
import { describe, expect, it } from 'vitest';
import { nameFiles, safeName, stemOf } from '../../../src/write/name-files.js';

describe('safeName', () => {
  it.each([
    ['carton', 'carton'],
    ['a/b\\c:d', 'a-b-c-d'],
    ['..', 'art'],
    ['', 'art'],
    ['con', '_con'],
    ['COM1.x', '_COM1.x'],
    ['name. ', 'name'],
    ['a\u0000b', 'a-b'],
    ['x\u202egnp', 'x-gnp'],
    ['\ud800', '-'],
  ])('%j becomes %j', (name, safe) => {
    expect(safeName(name)).toBe(safe);
  });

  it('composes accents, so that two spellings of a name make one file', () => {
    expect(safeName('e\u0301')).toBe(safeName('\u00e9'));
  });

  it('bounds the length', () => {
    expect([...safeName('\u{1f4e6}'.repeat(300))].length).toBe(60);
  });
});

describe('stemOf', () => {
  it.each([
    ['carton.svg', 'carton'],
    ['dir/carton.svgz', 'carton'],
    ['C:\\jobs\\carton.SVG', 'carton'],
    ['carton', 'carton'],
  ])('%j gives %j', (name, stem) => {
    expect(stemOf(name)).toBe(stem);
  });
});

describe('nameFiles', () => {
  it('numbers the passes in the order of the runs', () => {
    const passes = [
      { order: 1, name: 'crease', role: 'creasing' },
      { order: 2, name: 'Spot/White', role: 'white' },
    ] as const;
    expect(nameFiles('carton', passes)).toEqual(['carton.1-crease.svg', 'carton.2-Spot-White.svg']);
  });
});
