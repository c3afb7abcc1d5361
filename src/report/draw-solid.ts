// The blank as a picture: its panels, numbered, with the folds between them.
import type { Solid, SolidPanel } from '../model/solid.js';

/** Panels that are drawn at most: more would not be told apart, and would make the picture large. */
const MOST_DRAWN = 400;
/** From the panel that holds all others outwards. */
const TINTS = ['#dfe6ee', '#edf1f5', '#f6f8fa'];

function n(value: number): string {
  return String(Math.round(value * 1000) / 1000 + 0);
}

function drawOutline({ outlineMm }: Pick<SolidPanel, 'outlineMm'>): string {
  return outlineMm.map((loop) => `M${loop.map(([x, y]) => `${n(x)} ${n(y)}`).join('L')}Z`).join('');
}

/**
 * The blank in mm from the artboard's top left.
 *
 * @param scale - Page units per mm, so that lines and numbers have the size of the page.
 */
export function drawSolid(solid: Solid, scale: number): string {
  const line = 1.2 / scale;
  const panels = solid.panels.slice(0, MOST_DRAWN);
  const faces = panels.map((panel) => {
    const tint = TINTS[Math.min(panel.depth, TINTS.length - 1)]!;
    return `<path d="${drawOutline(panel)}" fill="${tint}" fill-rule="evenodd"/>`;
  });
  const folds = panels
    .flatMap(({ hinge }) => hinge?.piecesMm ?? [])
    .map(([x0, y0, x1, y1]) => `M${n(x0)} ${n(y0)}L${n(x1)} ${n(y1)}`);
  const rims = solid.blanks.slice(0, MOST_DRAWN).map(drawOutline);
  const numbers = panels.map((panel) => {
    const size = Math.min(15 / scale, panel.widthMm * 0.7);
    return `<text x="${n(panel.xMm)}" y="${n(panel.yMm + size * 0.35)}" font-size="${n(size)}" text-anchor="middle">${panel.index + 1}</text>`;
  });
  return [
    ...faces,
    `<path d="${folds.join('')}" fill="none" stroke="#41576b" stroke-width="${n(line)}" stroke-dasharray="${n(5 * line)} ${n(3 * line)}"/>`,
    `<path d="${rims.join('')}" fill="none" stroke="#222" stroke-width="${n(line)}"/>`,
    `<g fill="#222">${numbers.join('')}</g>`,
  ].join('');
}
