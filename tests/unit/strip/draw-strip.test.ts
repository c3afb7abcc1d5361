// What a strip draws: closed where the offset is tried, held by ties where a cut would free a piece.
import { describe, expect, it } from 'vitest';
import { describeStrip, printStrip } from '../../../src/strip/describe-strip.js';
import { drawTestStrip } from '../../../src/strip/draw-strip.js';
import type { StripRequest } from '../../../src/strip/strip-request.js';

const request: StripRequest = {
  role: 'cutting',
  setting: 'pressure',
  from: 40,
  to: 60,
  steps: 3,
  widthMm: 210,
  heightMm: 297,
};

function pathOf(svg: string, layer: string): string {
  return new RegExp(`id="${layer}"[^>]*><path d="([^"]*)"`).exec(svg)![1]!;
}

describe('drawTestStrip', () => {
  it('leaves a tie of 0.5 mm in the circle of a cut: both ends on the circle of 5 mm, 0.5 apart', () => {
    const path = pathOf(drawTestStrip(request).svg, 'Step-1');
    const [, x0, y0, x1, y1] = /M([\d.]+) ([\d.]+)A5 5 0 1 1 ([\d.]+) ([\d.]+)/.exec(path)!.map(Number);
    const [cx, cy] = [24 + 19, 42 + 33];
    expect(Math.hypot(x0! - cx, y0! - cy)).toBeCloseTo(5, 3);
    expect(Math.hypot(x1! - cx, y1! - cy)).toBeCloseTo(5, 3);
    expect(x1! - x0!).toBeCloseTo(0.5, 9);
    expect(path).not.toContain('Z');
  });

  it.each([
    ['cutting', 'offset'],
    ['creasing', 'pressure'],
    ['perforating', 'speed'],
  ] as const)('closes square and circle where nothing needs a tie: %s, %s', (role, setting) => {
    const path = pathOf(drawTestStrip({ ...request, role, setting }).svg, 'Step-2');
    expect(path.match(/Z/g)).toHaveLength(2);
    // From the lowest point by the highest back to it, two half circles.
    expect(path).toMatch(/M97 80A5 5 0 0 1 97 70A5 5 0 0 1 97 80Z/);
  });

  it('draws as many short lines as the number of the step', () => {
    const { svg } = drawTestStrip({ ...request, steps: 7 });
    const tally = (layer: string) => pathOf(svg, layer).match(/M([\d.]+) [\d.]+L\1 (?:56|100|144)(?![\d.])/g)?.length;
    expect([1, 2, 3, 4, 5, 6, 7].map((number) => tally(`Step-${number}`))).toEqual([1, 2, 3, 4, 5, 6, 7]);
  });
});

describe('describeStrip', () => {
  const { steps } = drawTestStrip(request);
  const record = describeStrip(request, steps, ['legend.svg', 'a.svg', 'b.svg', 'c.svg']);

  it('says pressures in N too: 1 gf is 0.00980665 N (3rd CGPM, 1901)', () => {
    expect(record.steps.map(({ value, newton, file }) => [value, newton, file])).toEqual([
      [40, 0.392, 'a.svg'],
      [50, 0.49, 'b.svg'],
      [60, 0.588, 'c.svg'],
    ]);
    expect(describeStrip({ ...request, setting: 'speed' }, steps, ['l', 'a', 'b', 'c']).steps[0]!.newton).toBeNull();
  });

  it('warns of blades where there is one', () => {
    expect(printStrip(record)).toContain('a blade stays sharp when the machine is off');
    expect(printStrip({ ...record, tool: 'creasing' })).not.toContain('blade');
  });
});
