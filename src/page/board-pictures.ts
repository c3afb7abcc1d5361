// What lies on the board: the paper, the art as pictures, and the numbers of what was found.
import { placeBadges } from '../report/place-badges.js';
import type { BoardView, Extent } from './board-view.js';
import { findBoardMm, listCopies, listShown, type PartProps } from './page-state.js';
import { h, type VNode } from './view-library.js';

/** Larger art is painted from its lines instead, since a browser reads a picture on the page's own thread; bytes. */
const LARGEST_PICTURES = 2_000_000;
/** Art of few shapes is large by the pictures in it, which cost little. */
const LARGEST_OF_FEW = 8_000_000;
const FEW_SHAPES = 500;
/** Numbers shown at once. */
const MOST_PLACES = 150;

/** Whether the art is shown as pictures of the files themselves. */
export function showsPictures({ state }: PartProps): boolean {
  const { job, file, inspection } = state;
  const most = (inspection?.shapes ?? 0) <= FEW_SHAPES ? LARGEST_OF_FEW : LARGEST_PICTURES;
  const made = job?.files.filter(({ pass }) => pass >= 0) ?? [];
  // Copies that were not made are painted: the drawing alone is no sheet of them.
  if (made.length === 0 && job !== null && job.sheet !== null) return false;
  if (made.length === 0) return state.artAddress !== null && (file?.bytes ?? 0) <= most;
  return made.reduce((sum, { byteLength }) => sum + byteLength, 0) <= most;
}

interface Placed {
  readonly left: string;
  readonly top: string;
  readonly width: string;
  readonly height: string;
}

function placeArt({ state }: PartProps, view: BoardView, marginMm: number): Placed {
  const { width: widthMm, height: heightMm } = findBoardMm(state);
  return {
    left: `${view.x - marginMm * view.scale}px`,
    top: `${view.y - marginMm * view.scale}px`,
    width: `${(widthMm + 2 * marginMm) * view.scale}px`,
    height: `${(heightMm + 2 * marginMm) * view.scale}px`,
  };
}

/** The paper and the pictures on it, each an image: nothing in it runs, and nothing is loaded. */
export function drawPictures(props: PartProps, view: BoardView): VNode {
  const { state } = props;
  const marginMm = state.job?.sheet === null ? state.job.marginMm : 0;
  const placed = placeArt(props, view, marginMm);
  const paper = h('div', { class: 'paper', style: placed });
  if (state.manner === 'passes' || !showsPictures(props)) return h('div', { class: 'pictures' }, paper);
  const made = state.job?.files.filter(({ pass }) => pass >= 0) ?? [];
  const fade = state.manner === 'both' ? 0.5 : 1;
  if (made.length === 0) {
    const whole = placeArt(props, view, 0);
    const art = h('img', {
      src: state.artAddress,
      alt: '',
      draggable: false,
      style: { ...whole, opacity: String(fade) },
    });
    return h('div', { class: 'pictures' }, paper, art);
  }
  const shown = listShown(state);
  const pictures = made
    .filter(({ pass }) => shown[pass]! > 0)
    .map(({ pass }) =>
      h('img', {
        key: state.addresses[pass],
        src: state.addresses[pass],
        alt: '',
        draggable: false,
        style: { ...placed, opacity: String(fade * (shown[pass] === 2 ? 0.3 : 1)) },
      }),
    );
  return h('div', { class: 'pictures' }, paper, pictures);
}

/** The numbers of the findings beside their places, none over another. */
export function drawPlaces({ state, say, acts }: PartProps, view: BoardView, screen: Extent): VNode | null {
  if (!state.showsPlaces || state.job === null) return null;
  // On a sheet of copies, on the first.
  const [a, b, c, d, e, f] = listCopies(state)[0]!;
  const severities = new Map(state.job.findings.map(({ number, finding }) => [number, finding.severity]));
  const spots = state.job.findings.flatMap(({ number, spots: own }) =>
    own.map(([xMm, yMm]) => {
      const x = a * xMm + c * yMm + e;
      const y = b * xMm + d * yMm + f;
      return { number, at: [view.x + x * view.scale, view.y + y * view.scale] as const };
    }),
  );
  const seen = spots
    .filter(({ at: [x, y] }) => x > -30 && y > -30 && x < screen.width + 30 && y < screen.height + 30)
    .slice(0, MOST_PLACES);
  const placed = placeBadges(seen, 26, 22);
  const lines = placed.map(({ at, centre, number }) =>
    h('path', {
      class: `pointer pointer-${severities.get(number)}`,
      d: `M${centre[0].toFixed(1)} ${centre[1].toFixed(1)}L${at[0].toFixed(1)} ${at[1].toFixed(1)}m-3 0a3 3 0 1 0 6 0a3 3 0 1 0 -6 0`,
    }),
  );
  const badges = placed.map(({ number, centre }, i) =>
    h(
      'button',
      {
        key: `${number} ${i}`,
        type: 'button',
        tabIndex: -1,
        class: `badge badge-${severities.get(number)} board-badge${state.chosenFinding === number ? ' badge-chosen' : ''}`,
        style: { left: `${centre[0]}px`, top: `${centre[1]}px` },
        'aria-label': say('goThere', number),
        onClick: () => {
          acts.set({ chosenFinding: number });
          document.getElementById(`found-${number}`)?.scrollIntoView({ block: 'center' });
        },
      },
      number,
    ),
  );
  return h(
    'div',
    { class: 'places', 'aria-hidden': 'true' },
    h('svg', { class: 'pointers', width: screen.width, height: screen.height }, lines),
    badges,
  );
}
