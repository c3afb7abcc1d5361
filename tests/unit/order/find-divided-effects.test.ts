// Effects over what more than one pass draws.
import { describe, expect, it } from 'vitest';
import { tellOrder } from './order-text.js';

const ART = '<rect id="a" width="20" height="20" fill="#ccc"/>';
const LINE = '<path id="b" d="M0 10H40" fill="none" stroke="#f00"/>';
const DEFINITIONS =
  '<mask id="m"><rect width="99" height="99" fill="#fff"/></mask><filter id="f"><feGaussianBlur stdDeviation="2"/></filter>';

describe('an effect over two passes', () => {
  it.each([
    ['opacity', `<g opacity=".5">${ART}${LINE}</g>`],
    ['opacity by style', `<g style="opacity:50%">${ART}${LINE}</g>`],
    ['mask', `<g mask="url(#m)">${ART}${LINE}</g>`],
    ['filter', `<g filter="url(#f)">${ART}${LINE}</g>`],
    ['filter function', `<g style="filter:blur(2px)">${ART}${LINE}</g>`],
    [
      'filter, without anything over each other',
      `<g filter="url(#f)">${ART}<path id="b" d="M50 0V9" fill="none" stroke="#f00"/></g>`,
    ],
    ['blend mode', `<g style="mix-blend-mode:multiply">${ART}${LINE}</g>`],
    ['a group around', `<g opacity=".5"><g>${ART}</g><g>${LINE}</g></g>`],
  ])('is told: %s', (_, body) => {
    expect(tellOrder(DEFINITIONS + body)).toEqual(['effect-divided a,b: print,cut']);
  });

  it('is told of a blend mode that looks at another pass', () => {
    expect(tellOrder(`${LINE}<g style="mix-blend-mode:multiply">${ART}</g>`)).toEqual(['effect-divided a: print,cut']);
  });

  it('is told of one shape whose paint is parted', () => {
    const body = '<rect id="a" width="20" height="20" fill="#ccc" stroke="#f00" opacity=".5"/>';
    expect(tellOrder(body, { partPaint: true })).toEqual(['effect-divided a: print,cut']);
  });

  it.each([
    ['over shapes that keep apart', `<g opacity=".5">${ART}<path id="b" d="M50 0V9" fill="none" stroke="#f00"/></g>`],
    ['over one pass', `${LINE}<g opacity=".5">${ART}${ART}</g>`],
    ['on a shape by itself', `<rect width="20" height="20" fill="#ccc" opacity=".5"/>${LINE}`],
    [
      'that changes nothing',
      `<g opacity="1" mask="none" filter="none" style="mix-blend-mode:normal">${ART}${LINE}</g>`,
    ],
    ['that names nothing in the file', `<g mask="url(#gone)">${ART}${LINE}</g>`.replace('mask="url(#gone)"', '')],
    ['that blends before the other pass is painted', `<g style="mix-blend-mode:multiply">${ART}</g>${LINE}`],
  ])('is not told: %s', (_, body) => {
    expect(tellOrder(DEFINITIONS + body)).toEqual([]);
  });
});
