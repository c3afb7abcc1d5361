// Shapes meet where they do, not where the boxes around them do.
import { describe, expect, it } from 'vitest';
import { shapesMeet } from '../../../src/check/shapes-meet.js';
import { carton, factsOf } from './carton-facts.js';

/** Whether two shapes of a drawing in mm meet, either way round. */
async function meet(p: string, q: string): Promise<boolean> {
  const facts = await factsOf(carton(p + q, '<path d="M1 1H2"/>'));
  const [first, second] = facts.artwork.shapes;
  const found = shapesMeet(facts, first!, second!);
  expect(shapesMeet(facts, second!, first!)).toBe(found);
  return found;
}

const line = (d: string, width: number): string =>
  `<path d="${d}" fill="none" stroke="#123" stroke-width="${width}" stroke-linecap="butt"/>`;

describe('shapesMeet', () => {
  it('tells slanting shapes apart whose boxes overlap', async () => {
    expect(await meet('<path d="M10 10L60 60L10 60Z"/>', '<path d="M15 10L65 10L65 60Z"/>')).toBe(false);
    expect(await meet('<path d="M10 10L60 60L10 60Z"/>', '<path d="M9 10L65 10L65 66Z"/>')).toBe(true);
  });

  it('holds what lies within a fill, and not what lies in its hole', async () => {
    const ring = (rule: string): string =>
      `<path d="M10 10H90V90H10ZM30 30H70V70H30Z" fill-rule="${rule}" fill="#345"/>`;
    const dot = '<circle cx="50" cy="50" r="5"/>';
    expect(await meet(ring('nonzero'), dot)).toBe(true);
    expect(await meet(ring('evenodd'), dot)).toBe(false);
    expect(await meet(line('M10 10H90V90H10Z', 1), dot)).toBe(false);
    expect(await meet('<rect x="10" y="10" width="80" height="80"/>', dot)).toBe(true);
    // Whichever of its runs it is that lies within.
    const box = '<rect x="40" y="10" width="50" height="80"/>';
    expect(await meet(box, line('M20 20V60M60 20V60', 1))).toBe(true);
    expect(await meet(box, line('M20 20V60M30 20V60', 1))).toBe(false);
  });

  it('counts the width of strokes in', async () => {
    // Slanting lines side by side, 3-4-5: 5 mm apart.
    const [p, q] = ['M20 20L60 50', 'M17 24L57 54'];
    expect(await meet(line(p, 4.9), line(q, 4.9))).toBe(false);
    expect(await meet(line(p, 4.9), line(q, 5.2))).toBe(true);
  });
});
