import { type Order, type Paint, type Painted, pixelsOf } from './order.ts';
import type { Answered, Asked } from './paintingWorker.ts';

interface Waiting {
  readonly orders: readonly Order[];
  readonly done: (pictures: readonly Painted[] | Promise<readonly Painted[]>) => void;
}

/** Paints beside the page's own work; where a browser's workers cannot, on the spot. One for the whole page. */
class Studio {
  private worker: Worker | null | undefined;
  private readonly waiting = new Map<number, Waiting>();
  private asked = 0;

  /** Has the painter come in before there is something to paint. */
  open(): Worker | null {
    if (this.worker === undefined) this.worker = this.hired();
    return this.worker;
  }

  readonly paint: Paint = (orders) => {
    const worker = this.open();
    if (!worker) return paintHere(orders);
    return new Promise((done) => {
      const nth = this.asked++;
      this.waiting.set(nth, { orders, done });
      worker.postMessage({ nth, orders } satisfies Asked);
    });
  };

  private hired(): Worker | null {
    if (typeof Worker === 'undefined' || typeof OffscreenCanvas === 'undefined') return null;
    const worker = new Worker(new URL('./paintingWorker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data: { nth, pictures } }: MessageEvent<Answered>) => {
      this.waiting.get(nth)?.done(pictures);
      this.waiting.delete(nth);
    };
    worker.onerror = () => this.dismiss(worker);
    return worker;
  }

  /** A worker that fails is not asked again, and what it owed is painted here. */
  private dismiss(worker: Worker): void {
    worker.terminate();
    this.worker = null;
    for (const { orders, done } of this.waiting.values()) done(paintHere(orders));
    this.waiting.clear();
  }
}

export const studio = new Studio();

async function paintHere(orders: readonly Order[]): Promise<readonly Painted[]> {
  const { paintOrder } = await import('./paintOrder.ts');
  return orders.map((order) => {
    const canvas = document.createElement('canvas');
    Object.assign(canvas, pixelsOf(order));
    paintOrder(canvas.getContext('2d')!, order);
    return canvas;
  });
}
