// Clip paths cannot make a file slow without bound.
import { expect, it } from 'vitest';
import { resolveText, xywh } from './resolve-text.js';

const parts = new Array(50).fill('<rect width="1" height="1"/>').join('');

function file(clip: string, body: string): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="5mm" height="5mm"><clipPath id="c" ${clip}>${parts}</clipPath>${body}</svg>`;
}

const turned = (count: number): string =>
  new Array(count).fill('<rect width="9" height="9" transform="rotate(30)" clip-path="url(#c)"/>').join('');

it('estimates a clip path in turned frames once much was measured', () => {
  const artwork = resolveText(file('', turned(60)), { limits: { references: 10 } });
  const first = xywh(artwork.shapes[0]!.drawnBox);
  const last = xywh(artwork.shapes.at(-1)!.drawnBox);
  for (let i = 0; i < 4; i += 1) expect(last[i]).toBeCloseTo(first[i]!, 9);
});

it('refuses a file whose groups are measured again and again', () => {
  let nested = '<rect width="9" height="9"/>'.repeat(60);
  for (let i = 0; i < 12; i += 1) nested = `<g style="transform: scale(1); transform-box: fill-box">${nested}</g>`;
  const text = file('', nested);
  expect(resolveText(text).shapes).toHaveLength(60);
  expect(() => resolveText(text, { limits: { references: 1 } })).toThrowError(
    expect.objectContaining({ code: 'limit/references' }),
  );
});
