// Which drawings no order of whole sheets can look like.
import { describe, expect, it } from 'vitest';
import { judgeBody, tellOrder } from './order-text.js';

const print = (id: string, x: number, y: number, size = 20): string =>
  `<rect id="${id}" x="${x}" y="${y}" width="${size}" height="${size}" fill="#ccc"/>`;
const line = (id: string, stroke: string, d: string): string =>
  `<path id="${id}" d="${d}" fill="none" stroke="${stroke}" stroke-width="2"/>`;
const cut = (id: string, d: string): string => line(id, '#f00', d);

describe('passes that keep to themselves', () => {
  it.each([
    ['print, then cut', print('a', 0, 0) + cut('c', 'M0 10H20')],
    [
      'one over the other in turns, apart from each other',
      print('a', 0, 0) + cut('b', 'M0 10H20') + print('c', 40, 0) + cut('d', 'M40 10H60'),
    ],
    [
      'in turns, always the same on top',
      cut('a', 'M0 10H20') + print('b', 0, 0) + cut('c', 'M40 10H60') + print('d', 40, 0),
    ],
    ['print inside a cut frame', print('a', 0, 0, 80) + cut('b', 'M0 0H80V80H0Z') + print('c', 30, 30)],
    ['print that only touches the band of a line', print('a', 0, 0, 80) + cut('b', 'M10 10V70') + print('c', 11, 20)],
    [
      'print in the hole of a ring',
      print('a', 0, 0, 80) +
        cut('b', 'M2 10H7') +
        `<path id="c" fill="#ccc" fill-rule="evenodd" d="M0 0H80V80H0ZM0 5H9V15H0Z"/>`,
    ],
    [
      'a clipped part that does not reach',
      `<clipPath id="k"><rect width="50" height="90"/></clipPath>${print('a', 0, 0, 80)}${cut('b', 'M60 0V80')}<g clip-path="url(#k)">${print('c', 0, 0, 80)}</g>`,
    ],
    [
      'nothing that is not drawn',
      `${print('a', 0, 0)}${cut('b', 'M0 10H20')}<rect id="c" width="20" height="20" fill="none"/>`,
    ],
  ])('%s', (_, body) => {
    expect(tellOrder(body)).toEqual([]);
  });
});

describe('passes that lie over and under each other', () => {
  it.each([
    [
      'print over cut over print',
      print('a', 0, 0) + cut('b', 'M0 10H20') + print('c', 10, 0),
      ['interleaved c: print,cut'],
    ],
    [
      'the fewer shapes are named',
      cut('a', 'M0 10H90') + print('b', 0, 0) + cut('c', 'M0 12H90') + cut('d', 'M0 14H90'),
      ['interleaved b: print,cut'],
    ],
    [
      'print inside a shape of parted paint, which is no trouble',
      `${print('a', 0, 0, 80)}<rect id="b" width="80" height="80" fill="#eee" stroke="#f00"/>${print('c', 30, 30)}`,
      [],
    ],
    [
      'lines of two tools',
      cut('a', 'M0 10H50') + line('b', '#00f', 'M10 0V50') + cut('c', 'M0 20H50'),
      ['lines-interleaved b: crease,cut'],
    ],
    [
      'three passes in a circle',
      print('a', 0, 0) + cut('b', 'M10 10H50') + line('c', '#0f0', 'M40 0V50') + print('d', 30, 30),
      ['interleaved d: print,varnish'],
    ],
    [
      'a copy',
      `<defs>${print('a', 0, 0)}</defs><use href="#a"/>${cut('b', 'M0 10H20')}<use href="#a" x="10"/>`,
      ['interleaved a: print,cut'],
    ],
    [
      'live type',
      `${print('a', 0, 0, 80) + cut('b', 'M0 40H80')}<text id="c" x="10" y="42" font-size="10">Fig tea</text>`,
      ['interleaved c: print,cut'],
    ],
    [
      'parted paint',
      `<path id="a" d="M0 0H40V40H0Z" fill="#ccc" stroke="#f00"/><path id="b" d="M20 0H60V40H20Z" fill="#ccc" stroke="#f00"/>`,
      ['interleaved b: print,cut'],
    ],
  ])('%s', (_, body, told) => {
    expect(tellOrder(body, { partPaint: true })).toEqual(told);
  });

  it('says which, and what to do', () => {
    const [found] = judgeBody(print('ground', 0, 0) + cut('slit', 'M0 10H20') + print('logo', 10, 0));
    expect(found).toMatchObject({
      severity: 'warning',
      message:
        '1 shape (logo) of print lies over shapes of cut, and cut over other shapes of print: laid over each other in whatever order, whole sheets do not look like the drawing.',
      data: { count: 1, shapes: [2], ids: ['logo'], passes: ['print', 'cut'], circle: ['print', 'cut'] },
    });
    expect(found!.remedy).toContain('runs after cut');
  });

  it('counts what it does not list', () => {
    const many = Array.from({ length: 1100 }, (_, i) => print(`p${i}`, 10, i % 5)).join('');
    const lines = Array.from({ length: 1200 }, (_, i) => cut(`c${i}`, `M0 ${(i % 10) + 5.3}H30`)).join('');
    const [found] = judgeBody(print('ground', 0, 0, 80) + lines + many);
    expect(found!.data.count).toBe(1100);
    expect(found!.data.ids).toHaveLength(20);
    expect(found!.data.shapes).toHaveLength(1000);
    expect(found!.message).not.toContain('boxes');
  });

  it('says where boxes alone decided', () => {
    const frames = Array.from({ length: 800 }, (_, i) => cut(`c${i}`, `M0 0H99V99H${i / 1000}Z`)).join('');
    const inside = Array.from({ length: 800 }, (_, i) => print(`p${i}`, 40, 40)).join('');
    const [found] = judgeBody(print('ground', 0, 0, 80) + frames + inside + frames + inside);
    expect(found!.message).toContain('Some were compared by their boxes alone.');
  });
});
