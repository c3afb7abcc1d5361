// The worker that paints, so that the page itself never waits for it; the last of several orders wins.
import { invert } from '../geometry/matrix.js';
import { findShape } from './find-shape.js';
import type { PaintMessage, PaintNews } from './paint-news.js';
import type { PaintOrder } from './paint-order.js';
import { type PaintContent, paintShapes } from './paint-shapes.js';

/** The worker's own end, as far as it is used. */
interface WorkerEnd {
  onmessage: ((event: MessageEvent<PaintMessage>) => void) | null;
  postMessage(news: PaintNews, transfer?: readonly Transferable[]): void;
}

/** The shape under a point of the board, on whichever copy it is. */
function findOnCopies(
  { outlines, sorted }: PaintContent,
  copies: PaintOrder['copies'],
  point: { readonly xMm: number; readonly yMm: number; readonly withinMm: number },
): number {
  for (const copy of copies) {
    const back = invert(copy);
    if (back === null) continue;
    const [a, b, c, d, e, f] = back;
    const xMm = a * point.xMm + c * point.yMm + e;
    const yMm = b * point.xMm + d * point.yMm + f;
    const shape = findShape(outlines, sorted, { xMm, yMm, withinMm: point.withinMm });
    if (shape >= 0) return shape;
  }
  return -1;
}

function serve(end: WorkerEnd): void {
  const canvas = new OffscreenCanvas(1, 1);
  const surface = canvas.getContext('2d')!;
  let content: PaintContent | null = null;
  let waiting: PaintOrder | null = null;
  let copies: PaintOrder['copies'] = [];
  const paint = (): void => {
    const order = waiting;
    waiting = null;
    if (order === null || content === null) return;
    copies = order.copies;
    canvas.width = Math.max(1, Math.round(order.width * order.pixelRatio));
    canvas.height = Math.max(1, Math.round(order.height * order.pixelRatio));
    paintShapes(surface, content, order);
    const bitmap = canvas.transferToImageBitmap();
    end.postMessage({ kind: 'painted', view: order.view, bitmap, width: order.width, height: order.height }, [bitmap]);
  };
  end.onmessage = ({ data }) => {
    if (data.kind === 'outlines') content = { outlines: data.outlines, sorted: null };
    else if (data.kind === 'sorted') content = content === null ? null : { ...content, sorted: data.sorted };
    else if (data.kind === 'point') {
      const shape = content === null ? -1 : findOnCopies(content, copies, data);
      end.postMessage({ kind: 'pointed', ask: data.ask, shape });
    } else {
      if (waiting === null) setTimeout(paint, 0);
      waiting = data.order;
    }
  };
}

serve(self as unknown as WorkerEnd);
