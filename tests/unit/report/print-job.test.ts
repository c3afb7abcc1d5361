// Copies of the source in the text of a comparison.
import { describe, expect, it } from 'vitest';
import { printComparison } from '../../../src/report/print-job.js';

function turnOf(degrees: number): string {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const text = printComparison({
    inRegister: true,
    files: [],
    matches: [],
    greatestDeviationMm: 0,
    greatestDeviationAt: '',
    findings: [],
    copies: {
      from: 'found',
      list: [{ matrixMm: [cos, sin, -sin, cos, 10, 20], shapes: 4, greatestDeviationMm: 0 }],
    },
  });
  return /turned (\S+) degrees/.exec(text)![1]!;
}

describe('the turn of a copy', () => {
  it.each([
    [0, '0'],
    [90, '90'],
    [180, '180'],
    [-180, '180'],
    [270, '270'],
    [-0.02, '-0.02'],
    [-0.004, '0'],
    [89.98, '89.98'],
  ])('%d is told as %s, as the option says it', (degrees, said) => {
    expect(turnOf(degrees)).toBe(said);
  });
});
