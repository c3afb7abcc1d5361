// The scales of a register target read what a pass is out by: the principle of the vernier, worked by hand.
import { describe, expect, it } from 'vitest';
import { drawRegisterTarget, type TargetRequest } from '../../../src/strip/draw-register-target.js';

const request: TargetRequest = {
  passes: [
    { name: 'crease', role: 'creasing' },
    { name: 'print', role: 'print' },
    { name: 'cut', role: 'cutting' },
  ],
  widthMm: 210,
  heightMm: 297,
};

/** Upright and level lines of a layer, as [x, y of the upper end] and [x of the left end, y]; the heading aside, whose letters are as high. */
function ticksOf(svg: string, layer: string): { readonly upright: number[][]; readonly level: number[][] } {
  const path = new RegExp(`id="${layer}"[^>]*><path d="([^"]*)"`).exec(svg)![1]!;
  const lines = [...path.matchAll(/M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)(?=M|$)/g)]
    .map((match) => match.slice(1).map(Number))
    .filter(([, y]) => y! > 30);
  const isFour = (length: number) => Math.abs(length - 4) < 1e-6;
  return {
    upright: lines.filter(([x0, y0, x1, y1]) => x0 === x1 && isFour(y1! - y0!)).map(([x, y]) => [x!, y!]),
    level: lines.filter(([x0, y0, x1, y1]) => y0 === y1 && isFour(x1! - x0!)).map(([x, y]) => [x!, y!]),
  };
}

const { svg, ticket } = drawRegisterTarget(request);

describe('drawRegisterTarget', () => {
  it('gives each tool pass four scales of 17 lines, two across and two down', () => {
    for (const layer of ['Pass-1', 'Pass-3']) {
      const { upright, level } = ticksOf(svg, layer);
      expect([upright.length, level.length]).toEqual([34, 34]);
    }
    const print = ticksOf(svg, 'Pass-2');
    expect([print.upright.length, print.level.length]).toEqual([68, 68]);
  });

  it.each([-0.8, -0.3, 0, 0.1, 0.5])('meets at the line that reads %f mm, and there alone', (shift) => {
    const printed = ticksOf(svg, 'Pass-2').upright;
    const tool = ticksOf(svg, 'Pass-1').upright;
    // The first scale of the crease: a printed line ends half a mm above where its fellow begins.
    const [top] = tool[0]!.slice(1);
    const own = tool.filter(([, y]) => y === top).map(([x]) => x!);
    const fellows = printed.filter(([, y]) => Math.abs(y! + 4.5 - top!) < 1e-6).map(([x]) => x!);
    expect([own.length, fellows.length]).toEqual([17, 17]);
    const meeting = own.flatMap((x, i) => (Math.abs(x + shift - fellows[i]!) < 0.01 ? [i - 8] : []));
    expect(meeting).toEqual([Math.round(shift * 10)]);
  });

  it('declares the passes as they were given', () => {
    expect(ticket.passes).toEqual(request.passes);
  });

  it('refuses what shows nothing, and a sheet that is too small', () => {
    const refused = (change: Partial<TargetRequest>) => () => drawRegisterTarget({ ...request, ...change });
    expect(refused({ passes: request.passes.slice(1, 2) })).toThrow('needs a pass of either kind');
    expect(refused({ passes: [request.passes[0]!] })).toThrow('needs a pass of either kind');
    expect(refused({ widthMm: 159 })).toThrow('need a sheet of');
    expect(refused({ widthMm: 160 })).not.toThrow();
    expect(refused({ heightMm: 211 })).toThrow('need a sheet of');
  });
});
