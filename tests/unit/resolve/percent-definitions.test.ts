// Definitions in user space that depend on the artboard.
import { describe, expect, it } from 'vitest';
import { resolveBody } from './resolve-text.js';

describe('a definition depends on the artboard', () => {
  it.each([
    ['<linearGradient gradientUnits="userSpaceOnUse"/>', true],
    ['<linearGradient gradientUnits="userSpaceOnUse" x2="9"/>', false],
    ['<linearGradient gradientUnits="userSpaceOnUse" x1="5%" x2="9"/>', true],
    ['<linearGradient gradientUnits="objectBoundingBox" x1="5%"/>', false],
    ['<linearGradient x1="5%" x2="100%"/>', false],
    [
      '<linearGradient id="b" gradientUnits="userSpaceOnUse" x2="9"/><linearGradient gradientUnits="userSpaceOnUse" href="#b"/>',
      false,
    ],
    ['<radialGradient gradientUnits="userSpaceOnUse" cx="1" cy="2"/>', true],
    ['<radialGradient gradientUnits="userSpaceOnUse" cx="1" cy="2" r="3"/>', false],
    ['<pattern patternUnits="userSpaceOnUse" width="50%" height="5"/>', true],
    ['<pattern patternUnits="userSpaceOnUse" width="5" height="5"/>', false],
    ['<mask maskUnits="userSpaceOnUse" x="0" y="0" width="5"/>', true],
    ['<filter filterUnits="userSpaceOnUse" x="0" y="0" width="5" height="5"/>', false],
  ])('%s: %s', (body, expected) => {
    expect(resolveBody(body).usesPercent).toBe(expected);
  });
});
