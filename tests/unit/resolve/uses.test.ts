// What uses draw is counted as it will be drawn.
import { describe, expect, it } from 'vitest';
import { resolveText } from './resolve-text.js';

const R = '<rect id="r" width="1" height="1"/>';

function count(body: string, references: number): number {
  const file = `<svg xmlns="http://www.w3.org/2000/svg" width="5mm" height="5mm">${body}</svg>`;
  return resolveText(file, { limits: { references } }).shapes.length;
}

describe('the count of copies', () => {
  it.each([
    [
      'leaves out shapes in definitions of what is drawn',
      `<g id="a">${R}<defs><rect width="1" height="1"/><rect width="1" height="1"/></defs></g><use href="#a"/>`,
      1,
      2,
    ],
    [
      'leaves out uses in definitions of what is drawn',
      `${R}<g id="a"><rect width="1" height="1"/><defs><use href="#r"/></defs></g><use href="#a"/>`,
      1,
      3,
    ],
    ['leaves out uses in definitions', `${R}<defs><use href="#r"/><use href="#r"/></defs><use href="#r"/>`, 1, 2],
    ['counts the content of a symbol', `<symbol id="s">${R}${R}</symbol><use href="#s"/>`, 2, 2],
  ])('%s', (_, body, copies, shapes) => {
    expect(count(body, copies)).toBe(shapes);
    expect(() => count(body, copies - 1)).toThrowError(expect.objectContaining({ code: 'limit/references' }));
  });

  it('counts groups and uses that draw nothing, four for every shape that is allowed', () => {
    const doubling = (links: number): string =>
      `<g id="u0"/>${Array.from({ length: links }, (_, i) => `<g id="u${i + 1}">${`<use href="#u${i}"/>`.repeat(2)}</g>`).join('')}`;
    // One group and two uses on every step: 1 + 4, 5 + 8 ... elements are walked by the uses within.
    expect(count(doubling(3), 100)).toBe(0);
    expect(() => count(doubling(3), 5)).toThrowError(expect.objectContaining({ code: 'limit/references' }));
    expect(() => count(doubling(60), 1_000_000)).toThrowError(expect.objectContaining({ code: 'limit/references' }));
  });

  it('says bound, place and what to do', () => {
    try {
      count(`${R}<use href="#r"/>\n<use href="#r"/>`, 1);
      expect.unreachable();
    } catch (error) {
      const [item] = (error as { findings: readonly { message: string; remedy: string; place: object }[] }).findings;
      expect(item!.message).toContain('1 are allowed');
      expect(item!.place).toMatchObject({ line: 2, element: 'use' });
      expect(item!.remedy).toContain('references');
    }
  });
});
