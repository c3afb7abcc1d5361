// What is said of measured marks: the fit to take, the verdict, the sheet that lies otherwise.
import { describe, expect, it } from 'vitest';
import type { PointMm } from '../../../src/model/marks.js';
import type { MarkReading } from '../../../src/model/register.js';
import { judgeMarks } from '../../../src/register/judge-marks.js';

const MARKS: readonly (readonly [string, PointMm])[] = [
  ['top-left', [20, 20]],
  ['top-right', [680, 20]],
  ['bottom-left', [20, 480]],
  ['bottom-right', [680, 480]],
  ['odd', [240, 480]],
];

function read(map: (point: PointMm) => PointMm, marks = MARKS): readonly MarkReading[] {
  return marks.map(([name, drawnMm]) => ({ name, drawnMm, measuredMm: map(drawnMm) }));
}

/** As a rule reads it: to a hundredth. */
function byRule([x, y]: PointMm): PointMm {
  return [Math.round(x * 100) / 100, Math.round(y * 100) / 100];
}

describe('the fit to take', () => {
  const swollen = read(([x, y]) => byRule([1.0025 * x + 0.2, 1.001 * y]));

  it('is the simplest within the tolerance', () => {
    const shifted = read(([x, y]) => byRule([x + 0.4, y - 0.1]));
    expect(judgeMarks(shifted, 0.2)).toMatchObject({ chosen: 'shift', verdict: 'correctable', findings: [] });
    expect(judgeMarks(swollen, 0.05)).toMatchObject({ chosen: 'affine', verdict: 'correctable' });
    expect(judgeMarks(swollen, 1)).toMatchObject({ chosen: 'shift', verdict: 'correctable' });
  });

  it('is a richer one only where it is clearly better', () => {
    const shifted = read(([x, y]) => [x + 0.4, y - 0.1]);
    expect(judgeMarks(shifted, null)).toMatchObject({ chosen: 'shift', verdict: 'unknown' });
    expect(judgeMarks(swollen, null).chosen).toBe('affine');
  });

  it('is not one that nothing is left to judge by', () => {
    const three = judgeMarks(swollen.slice(0, 3), 0.05);
    expect(three.chosen).not.toBe('affine');
    expect(three.findings.map(({ code }) => code)).toContain('register/no-residual');
  });
});

describe('the verdict', () => {
  it('is the shop’s tolerance against what the marks are out by', () => {
    const out = read(([x, y]) => [x + 0.15, y]);
    expect(judgeMarks(out, 0.2).verdict).toBe('within');
    expect(judgeMarks(out, 0.151)).toMatchObject({ verdict: 'within', outByMm: expect.closeTo(0.15, 9) });
    expect(judgeMarks(out, 0.149).verdict).toBe('correctable');
    const bent = read(([x, y]) => [x + (x < 300 === y < 100 ? 0.4 : -0.4), y]);
    expect(judgeMarks(bent, 0.1)).toMatchObject({ verdict: 'beyond' });
  });
});

describe('a mark', () => {
  it('that fits worse than the others is named, whichever it is', () => {
    const wobble = [0.01, -0.02, 0.015, -0.005, 0.01];
    for (const [i, [name]] of MARKS.entries()) {
      const readings = read(([x, y]) => [x + 0.3, y]).map((reading, j) => ({
        ...reading,
        measuredMm: [reading.measuredMm[0] + wobble[j]! + (i === j ? 0.8 : 0), reading.measuredMm[1]] as const,
      }));
      const found = judgeMarks(readings, 5).findings;
      expect(found.map(({ code, data }) => [code, data.name])).toEqual([['register/outlier', name]]);
    }
  });
});

describe('a sheet', () => {
  const half = ([x, y]: PointMm): PointMm => [700 - x, 500 - y];
  const names = (findings: ReturnType<typeof judgeMarks>['findings']): readonly string[] =>
    findings.map(({ code }) => code);

  it('that lies as drawn has nothing said of it', () => {
    expect(
      names(
        judgeMarks(
          read(([x, y]) => [x + 3, y - 2]),
          null,
        ).findings,
      ),
    ).toEqual([]);
  });

  it('that is turned is told by the names, right or put where the sheet says', () => {
    expect(judgeMarks(read(half), null).findings).toMatchObject([{ code: 'register/turned', data: { angleDeg: 180 } }]);
    const quarter = judgeMarks(
      read(([x, y]) => [500 - y, x]),
      null,
    ).findings;
    expect(quarter).toMatchObject([{ code: 'register/turned', data: { angleDeg: 90 } }]);
    // Named by where they lie, as somebody does who does not see that the sheet is turned.
    const places = ['bottom-right', 'bottom-left', 'top-right', 'top-left', 'odd'];
    const named = MARKS.map(([name, drawnMm], i): MarkReading => {
      const at = MARKS.find(([other]) => other === places[i])![1];
      return { name, drawnMm, measuredMm: half(at) };
    });
    expect(judgeMarks(named, null).findings).toMatchObject([
      { code: 'register/names-mixed', data: { lies: 'turned by 180 degrees' } },
    ]);
  });

  it('of which two marks are measured is told to be turned, or its names to be mixed up', () => {
    const two = judgeMarks(read(half, [MARKS[0]!, MARKS[3]!]), 0.2).findings;
    expect(two[0]).toMatchObject({ code: 'register/turned', data: { angleDeg: 180 } });
    expect(two[0]!.message).toContain('or the names of its two marks are mixed up');
    const three = judgeMarks(read(half, MARKS.slice(0, 3)), 0.2).findings;
    expect(three[0]!.message).toBe('The measured sheet lies turned by 180 degrees.');
    expect(
      names(
        judgeMarks(
          read(([x, y]) => [x + 1, y], MARKS.slice(0, 2)),
          null,
        ).findings,
      ),
    ).toEqual(['register/no-residual']);
  });

  it('that is flipped is told, and no fit mirrors it', () => {
    const report = judgeMarks(
      read(([x, y]) => [700 - x, y]),
      null,
    );
    expect(names(report.findings)).toEqual(['register/flipped']);
    for (const { kind, matrix } of report.fits) {
      if (kind !== 'affine') expect(matrix[0] * matrix[3] - matrix[1] * matrix[2]).toBeGreaterThan(0);
    }
  });

  it('whose two marks are swapped is told which', () => {
    const swapped = read((point) => point).map((reading, i, all) => ({
      ...reading,
      measuredMm: all[i === 0 ? 1 : i === 1 ? 0 : i]!.drawnMm,
    }));
    expect(judgeMarks(swapped, null).findings).toMatchObject([
      { code: 'register/names-mixed', data: { lies: 'as drawn', marks: ['top-right', 'top-left'] } },
    ]);
  });
});
