// Rulers in mm along the top and the left of the board.
import { type BoardView, type Extent, listTicks } from './board-view.js';
import { h, type VNode } from './view-library.js';

/** Breadth of a ruler, px. */
export const RULER = 22;

function drawRuler(along: 'x' | 'y', view: BoardView, length: number): VNode {
  const ticks = listTicks(view.scale, along === 'x' ? view.x : view.y, length);
  const isAcross = along === 'x';
  const lines = ticks.map(({ at, long }) => {
    const size = long ? 9 : 4;
    return isAcross ? `M${at.toFixed(1)} ${RULER}v-${size}` : `M${RULER} ${at.toFixed(1)}h-${size}`;
  });
  const labels = ticks
    .filter(({ long }) => long)
    .map(({ at, mm }) =>
      isAcross
        ? h('text', { key: mm, x: at + 3, y: 10 }, mm)
        : h('text', { key: mm, x: 0, y: 0, transform: `translate(10 ${(at - 3).toFixed(1)}) rotate(-90)` }, mm),
    );
  return h(
    'svg',
    {
      class: `ruler ruler-${along}`,
      width: isAcross ? length : RULER,
      height: isAcross ? RULER : length,
      'aria-hidden': 'true',
    },
    h('path', { d: lines.join('') }),
    labels,
  );
}

/** Both rulers. */
export function drawRulers(view: BoardView, screen: Extent): readonly VNode[] {
  return [drawRuler('x', view, screen.width), drawRuler('y', view, screen.height)];
}
