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

  it('lets no name run into that of the next scale', () => {
    const tools = ['crease', 'perforate', 'reverse-partial-cut', 'cut'] as const;
    const roles = ['creasing', 'perforating', 'reverse-partial-cutting', 'cutting'] as const;
    const passes = [{ name: 'print', role: 'print' }, ...tools.map((name, i) => ({ name, role: roles[i]! }))] as const;
    const made = drawRegisterTarget({ passes, widthMm: 297, heightMm: 420 }).svg;
    const path = /id="Pass-1"[^>]*><path d="([^"]*)"/.exec(made)![1]!;
    const points = [...path.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
    // The names of the upright scales at the upper left stand above y = 112, each 16 mm from the next, from x = 23.5.
    const names = points.filter(([x, y]) => x < 23.5 + 64 && y > 102 && y < 112.1).map(([x]) => x - 23.5);
    expect(names.length).toBeGreaterThan(60);
    for (const x of names) expect(((x % 16) + 16) % 16).toBeLessThan(14.01);
    expect(new Set(names.map((x) => Math.floor(x / 16))).size).toBe(4);
  });

  it('takes a print for the figures, whatever white lies under it', () => {
    const passes = [
      { name: 'white', role: 'white' },
      { name: 'ink', role: 'print' },
      { name: 'cut', role: 'cutting' },
    ] as const;
    expect(drawRegisterTarget({ ...request, passes }).ticket.passes).toEqual(passes.slice(1));
    const bare = passes.filter(({ role }) => role !== 'print');
    expect(drawRegisterTarget({ ...request, passes: bare }).ticket.passes).toEqual(bare);
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
