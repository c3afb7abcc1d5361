// The board: the art at a scale in mm, moved and zoomed by hand, wheel, fingers and keys.
import { isToolpath } from '../model/pass.js';
import { drawPictures, drawPlaces, showsPictures } from './board-pictures.js';
import { type BoardView, centreView, type Extent, fitView, panView, zoomView } from './board-view.js';
import type { Desk } from './drawing-desk.js';
import { findBoardMm, listCopies, listShown, listTies, type PageState, type PartProps } from './page-state.js';
import type { PaintOrder } from './paint-order.js';
import { drawRulers, RULER } from './rulers.js';
import { TRUE_SCALE } from './true-scale.js';
import { h, useEffect, useLayoutEffect, useRef, useState, type VNode } from './view-library.js';

/** How near a line must be to the pointer, px. */
const REACH = 7;

function findRaised({ raised, inspection, strokeKeys, pointed }: PageState): PaintOrder['raised'] {
  const nothing = { layers: [], stroke: -1, shape: pointed, loose: false };
  if (raised === null || inspection === null) return nothing;
  if (raised.kind === 'rest') return { ...nothing, loose: true };
  if (raised.kind === 'stroke') return { ...nothing, stroke: strokeKeys.indexOf(raised.colour) };
  const layers = inspection.layers.flatMap(({ path }, i) =>
    path === raised.path || path.startsWith(`${raised.path}/`) ? [i] : [],
  );
  return { ...nothing, layers };
}

function makeOrder(props: PartProps, view: BoardView, screen: Extent): PaintOrder {
  const { state } = props;
  const drawn = state.manner === 'both' ? 'lines' : 'drawn';
  return {
    view,
    width: screen.width,
    height: screen.height,
    pixelRatio: Math.min(window.devicePixelRatio, 3),
    shown: listShown(state),
    manner: state.manner === 'passes' ? 'passes' : drawn,
    tools: (state.job?.passes ?? []).map(({ role }) => isToolpath(role)),
    ties: listTies(state),
    raised: findRaised(state),
    bare: showsPictures(props),
    copies: listCopies(state),
  };
}

/** The view that shows all that lies on the board, its margin too, clear of the rulers. */
function fitWhole(state: PageState, screen: Extent): BoardView {
  const { width, height } = findBoardMm(state);
  const marginMm = state.job?.sheet === null ? state.job.marginMm : 0;
  const view = fitView(
    { width: width + 2 * marginMm, height: height + 2 * marginMm },
    { width: screen.width - RULER, height: screen.height - RULER },
  );
  const shift = RULER + marginMm * view.scale;
  return { ...view, x: view.x + shift, y: view.y + shift };
}

/** Keys that move the view. */
function moveByKey(view: BoardView, key: string, screen: Extent, whole: BoardView): BoardView | null {
  const step = 60;
  const [x, y] = [screen.width / 2, screen.height / 2];
  switch (key) {
    case 'ArrowLeft':
      return panView(view, step, 0);
    case 'ArrowRight':
      return panView(view, -step, 0);
    case 'ArrowUp':
      return panView(view, 0, step);
    case 'ArrowDown':
      return panView(view, 0, -step);
    case '+':
    case '=':
      return zoomView(view, view.scale * 1.25, x, y);
    case '-':
      return zoomView(view, view.scale / 1.25, x, y);
    case '0':
      return whole;
    case '1':
      return zoomView(view, TRUE_SCALE, x, y);
    default:
      return null;
  }
}

/** Keeps the painted picture under the view until the next one is there. */
function useCanvas(desk: Desk, view: BoardView): { readonly current: HTMLCanvasElement | null } {
  const canvas = useRef<HTMLCanvasElement>(null);
  const painted = useRef<BoardView | null>(null);
  const follow = (): void => {
    const from = painted.current;
    if (canvas.current === null || from === null) return;
    const factor = view.scale / from.scale;
    canvas.current.style.transform = `translate(${view.x - from.x * factor}px, ${view.y - from.y * factor}px) scale(${factor})`;
  };
  useLayoutEffect(follow);
  desk.onPainted = ({ view: from, bitmap, width, height }) => {
    const target = canvas.current;
    if (target === null) return;
    target.width = bitmap.width;
    target.height = bitmap.height;
    target.style.width = `${width}px`;
    target.style.height = `${height}px`;
    target.getContext('bitmaprenderer')?.transferFromImageBitmap(bitmap);
    painted.current = from;
    follow();
  };
  return canvas;
}

/** Fingers and mouse. */
function useHand(props: PartProps, change: (make: (view: BoardView) => BoardView) => void): Record<string, unknown> {
  const fingers = useRef(new Map<number, { readonly x: number; readonly y: number }>());
  const placeOf = (event: PointerEvent): { readonly x: number; readonly y: number } => {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const letGo = (event: PointerEvent): void => {
    fingers.current.delete(event.pointerId);
  };
  return {
    onPointerDown: (event: PointerEvent) => {
      if ((event.target as HTMLElement).closest('button') !== null) return;
      (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
      fingers.current.set(event.pointerId, placeOf(event));
    },
    onPointerMove: (event: PointerEvent) => {
      const to = placeOf(event);
      const from = fingers.current.get(event.pointerId);
      if (from === undefined) {
        change((view) => {
          props.acts.pointAt((to.x - view.x) / view.scale, (to.y - view.y) / view.scale, REACH / view.scale);
          return view;
        });
        return;
      }
      const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1];
      fingers.current.set(event.pointerId, to);
      if (other === undefined) change((view) => panView(view, to.x - from.x, to.y - from.y));
      else {
        const before = Math.hypot(from.x - other.x, from.y - other.y);
        const factor = Math.hypot(to.x - other.x, to.y - other.y) / Math.max(before, 1);
        change((view) => zoomView(view, view.scale * factor, other.x, other.y));
      }
    },
    onPointerUp: letGo,
    onPointerCancel: letGo,
    onPointerLeave: () => props.acts.pointAt(Number.NaN, Number.NaN, 0),
    onWheel: (event: WheelEvent) => {
      event.preventDefault();
      const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
      const factor = Math.exp(-event.deltaY * (event.deltaMode === 1 ? 0.05 : 0.0015));
      change((view) => zoomView(view, view.scale * factor, event.clientX - box.left, event.clientY - box.top));
    },
  };
}

/** Size of the board on the screen. */
function useScreen(): readonly [{ readonly current: HTMLElement | null }, Extent] {
  const frame = useRef<HTMLElement>(null);
  const [screen, setScreen] = useState<Extent>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const watch = new ResizeObserver(() => {
      const { clientWidth, clientHeight } = frame.current!;
      setScreen({ width: clientWidth, height: clientHeight });
    });
    watch.observe(frame.current!);
    return () => watch.disconnect();
  }, []);
  return [frame, screen];
}

/** The board with its rulers, and the buttons that move the view. */
export function Board(props: PartProps & { readonly desk: Desk }): VNode {
  const { state, say, desk } = props;
  const artMm = findBoardMm(state);
  const [frame, screen] = useScreen();
  const [chosen, setView] = useState<BoardView | null>(null);
  const whole = fitWhole(state, screen);
  const view = chosen ?? whole;
  const change = (make: (view: BoardView) => BoardView): void => setView((now) => make(now ?? whole));
  const canvas = useCanvas(desk, view);
  useEffect(() => setView(null), [state.inspection, artMm.width, artMm.height]);
  useEffect(() => {
    const { jump } = state;
    if (jump === null) return;
    const [a, b, c, d, e, f] = listCopies(state)[0]!;
    const [x, y] = [a * jump.xMm + c * jump.yMm + e, b * jump.xMm + d * jump.yMm + f];
    change((now) => centreView(now, screen, x, y));
  }, [state.jump]);
  useEffect(() => {
    if (screen.width > 0) desk.paint(makeOrder(props, view, screen));
  });
  const zoom = (factor: number): void =>
    change((now) => zoomView(now, now.scale * factor, screen.width / 2, screen.height / 2));
  return h(
    'div',
    { class: 'board-frame' },
    h(
      'div',
      {
        ref: frame,
        class: 'board',
        tabIndex: 0,
        role: 'group',
        'aria-label': `${say('board')}. ${say('boardKeys')}`,
        ...useHand(props, change),
        onKeyDown: (event: KeyboardEvent) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return;
          const next = moveByKey(view, event.key, screen, whole);
          if (next === null) return;
          event.preventDefault();
          setView(next);
        },
      },
      drawPictures(props, view),
      h('canvas', { ref: canvas, class: 'paint', 'aria-hidden': 'true' }),
      drawPlaces(props, view, screen),
      drawRulers(view, screen),
    ),
    drawFoot(props, view, {
      zoom,
      whole: () => setView(null),
      trueSize: () => change((now) => zoomView(now, TRUE_SCALE, screen.width / 2, screen.height / 2)),
    }),
  );
}

function drawFoot(
  { say }: PartProps,
  view: BoardView,
  on: { readonly zoom: (factor: number) => void; readonly whole: () => void; readonly trueSize: () => void },
): VNode {
  const percent = (100 * view.scale) / TRUE_SCALE;
  const button = (words: string, onClick: () => void): VNode => h('button', { type: 'button', onClick }, words);
  return h(
    'div',
    { class: 'board-foot' },
    button(say('whole'), on.whole),
    button(say('trueSize'), on.trueSize),
    button(say('farther'), () => on.zoom(0.8)),
    button(say('nearer'), () => on.zoom(1.25)),
    h('output', { class: 'scale' }, `${percent < 10 ? percent.toFixed(1) : percent.toFixed(0)} %`),
  );
}
