// The worker that paints, so that the page itself never waits for it; the last of several orders wins.
import { findShape } from './find-shape.js';
import { type PaintContent, paintShapes } from './paint-shapes.js';
import type { PaintMessage, PaintNews, PaintOrder } from './protocol.js';

/** The worker's own end, as far as it is used. */
interface WorkerEnd {
  onmessage: ((event: MessageEvent<PaintMessage>) => void) | null;
  postMessage(news: PaintNews, transfer?: readonly Transferable[]): void;
}

function serve(end: WorkerEnd): void {
  const canvas = new OffscreenCanvas(1, 1);
  const surface = canvas.getContext('2d')!;
  let content: PaintContent | null = null;
  let waiting: PaintOrder | null = null;
  const paint = (): void => {
    const order = waiting;
    waiting = null;
    if (order === null || content === null) return;
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
      const shape = content === null ? -1 : findShape(content.outlines, content.sorted, data);
      end.postMessage({ kind: 'pointed', ask: data.ask, shape });
    } else {
      if (waiting === null) setTimeout(paint, 0);
      waiting = data.order;
    }
  };
}

serve(self as unknown as WorkerEnd);
