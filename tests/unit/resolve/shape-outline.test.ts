// Outlines of resolved shapes, on the artboard.
import { expect, it } from 'vitest';
import { resolve } from '../../../src/resolve/resolve.js';
import { shapeOutline } from '../../../src/resolve/shape-outline.js';
import { scanText } from './resolve-text.js';

it('reads each shape again and maps it to the artboard; type has no outline', () => {
  const source = scanText(
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="50mm" height="50mm" viewBox="0 0 50 50">
<g transform="translate(10 0)"><path id="a" d="M0 0H3V4"/><polygon points="0 0 1 0 0 1"/><image xlink:href="a.png" width="2" height="1"/><text>a</text></g>
<use xlink:href="#a" x="5"/></svg>`,
  );
  const artwork = resolve(source);
  const toMm = (value: number): number => Number(((value * 25.4) / 96).toFixed(9));
  const seen = artwork.shapes.map((shape) =>
    shapeOutline(source, artwork, shape).map(({ closed, points }) => [closed, ...[...points].map(toMm)]),
  );
  expect(seen).toEqual([
    [[false, 10, 0, 13, 0, 13, 4]],
    [[true, 10, 0, 11, 0, 10, 1]],
    [[true, 10, 0, 12, 0, 12, 1, 10, 1]],
    [],
    [[false, 5, 0, 8, 0, 8, 4]],
  ]);
});

it('an artwork from elsewhere is refused', () => {
  const source = scanText('<svg xmlns="http://www.w3.org/2000/svg" width="5mm" height="5mm"><path d="M0 0H3"/></svg>');
  const artwork = resolve(source);
  const { geometry: _, ...bare } = artwork as typeof artwork & { geometry: unknown };
  expect(() => shapeOutline(source, bare, artwork.shapes[0]!)).toThrow('not resolved here');
});
