import { hasGraphicsProcessor } from '../drawing/graphics.ts';
import { type Order, type Paint, type Painted, pixelsOf } from './order.ts';
import type { Answered, Asked, Found } from './paintingWorker.ts';

interface Waiting {
  readonly orders: readonly Order[];
  readonly done: (pictures: readonly Painted[] | Promise<readonly Painted[]>) => void;
}

/** Paints beside the page's own work; where a browser's workers cannot, on the spot. One for the whole page. */
class Studio {
  private worker: Worker | null | undefined;
  private readonly waiting = new Map<number, Waiting>();
  private asked = 0;
  private tellGraphics: (has: boolean) => void = () => {};
  private graphics: Promise<boolean> | null = null;

  /** Has the painter come in before there is something to paint. */
  open(): Worker | null {
    if (this.worker === undefined) this.worker = this.hired();
    return this.worker;
  }

  /** Whether a graphics processor draws here; the painter finds out, for asking takes a while. */
  hasGraphics(): Promise<boolean> {
    if (!this.open()) this.graphics ??= Promise.resolve(askHere());
    return this.graphics!;
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
    this.graphics = new Promise((tell) => {
      this.tellGraphics = tell;
    });
    worker.onmessage = ({ data }: MessageEvent<Found | Answered>) => {
      if ('hasGraphics' in data) return this.tellGraphics(data.hasGraphics);
      this.waiting.get(data.nth)?.done(data.pictures);
      this.waiting.delete(data.nth);
    };
    worker.onerror = () => this.dismiss(worker);
    return worker;
  }

  /** A worker that fails is not asked again, and what it owed is painted here. */
  private dismiss(worker: Worker): void {
    worker.terminate();
    this.worker = null;
    this.tellGraphics(askHere());
    for (const { orders, done } of this.waiting.values()) done(paintHere(orders));
    this.waiting.clear();
  }
}

export const studio = new Studio();

function askHere(): boolean {
  return hasGraphicsProcessor(document.createElement('canvas'));
}

async function paintHere(orders: readonly Order[]): Promise<readonly Painted[]> {
  const { paintOrder } = await import('./paintOrder.ts');
  return orders.map((order) => {
    const canvas = document.createElement('canvas');
    Object.assign(canvas, pixelsOf(order));
    paintOrder(canvas.getContext('2d')!, order);
    return canvas;
  });
}
