// Lines joined into chains where exactly two of them end.
import { describe, expect, it } from 'vitest';
import { chainLines } from '../../../src/geometry/chain-runs.js';

const line = (x0: number, y0: number, x1: number, y1: number) => ({ x0, y0, x1, y1 });

describe('chains of lines', () => {
  it('close where four lines make a square, whichever way they are drawn', () => {
    const lines = [line(0, 0, 10, 0), line(10, 10, 10, 0), line(10, 10, 0, 10), line(0, 0, 0, 10)];
    const [chain, ...others] = chainLines(lines, 0.1);
    expect(others).toEqual([]);
    expect(chain!.closed).toBe(true);
    expect(chain!.links).toEqual([
      { line: 0, reversed: false },
      { line: 1, reversed: true },
      { line: 2, reversed: false },
      { line: 3, reversed: true },
    ]);
  });

  it('start at a free end', () => {
    const [chain] = chainLines([line(5, 0, 9, 0), line(5, 0, 0, 0)], 0.1);
    expect(chain).toEqual({
      closed: false,
      links: [
        { line: 1, reversed: true },
        { line: 0, reversed: false },
      ],
    });
  });

  it('end where three lines meet', () => {
    const chains = chainLines([line(0, 0, 5, 0), line(5, 0, 9, 0), line(5, 0, 5, 5)], 0.1);
    expect(chains.map(({ links }) => links.length)).toEqual([1, 1, 1]);
  });

  it('join ends within the tolerance, across the borders of its grid, and no farther', () => {
    expect(chainLines([line(0, 0, 0.99, 0), line(1.05, 0, 2, 0)], 0.1)).toHaveLength(1);
    expect(chainLines([line(0, 0, 0.9, 0), line(1.05, 0, 2, 0)], 0.1)).toHaveLength(2);
  });

  it('close a line that ends where it starts', () => {
    expect(chainLines([line(3, 3, 3, 3)], 0.1)).toEqual([{ closed: true, links: [{ line: 0, reversed: false }] }]);
  });

  it('close two lines that share both ends', () => {
    const [chain, ...others] = chainLines([line(0, 0, 4, 0), line(0, 0, 4, 0)], 0.1);
    expect(others).toEqual([]);
    expect(chain!.closed).toBe(true);
    expect(chain!.links).toHaveLength(2);
  });
});
