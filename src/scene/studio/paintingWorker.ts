import semiBold from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff2?url';
import bold from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff2?url';
import { hasGraphicsProcessor } from '../drawing/graphics.ts';
import { LETTERS } from '../materials.ts';
import type { Pen } from '../pen.ts';
import { type Order, pixelsOf } from './order.ts';
import { paintOrder } from './paintOrder.ts';

/** A set of pictures to paint, and the number under which they are asked for. */
export interface Asked {
  readonly nth: number;
  readonly orders: readonly Order[];
}
export interface Answered {
  readonly nth: number;
  readonly pictures: readonly ImageBitmap[];
}

/** Told once, to begin with. */
export interface Found {
  readonly hasGraphics: boolean;
}

postMessage({ hasGraphics: hasGraphicsProcessor(new OffscreenCanvas(1, 1)) } satisfies Found);

/** Words are painted in the system's letters if ours do not come, ms. */
const PATIENCE_MS = 400;

const lettersReady = Promise.race([fetchLetters(), new Promise((done) => setTimeout(done, PATIENCE_MS))]);

/** A worker has letters of its own. */
async function fetchLetters(): Promise<void> {
  try {
    await Promise.all([fetchLetter(semiBold, '600'), fetchLetter(bold, '700')]);
  } catch (error) {
    console.warn('The letters of the bench did not come:', error);
  }
}

async function fetchLetter(file: string, weight: string): Promise<void> {
  const face = await new FontFace(LETTERS, `url(${file})`, { weight }).load();
  (globalThis as unknown as { readonly fonts: FontFaceSet }).fonts.add(face);
}

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  // Whoever asked is told of a failure as of any other mistake in a worker.
  answer(data).catch((error: unknown) => reportError(error));
});

async function answer({ nth, orders }: Asked): Promise<void> {
  await lettersReady;
  const pictures = orders.map(paint);
  postMessage({ nth, pictures } satisfies Answered, { transfer: pictures });
}

function paint(order: Order): ImageBitmap {
  const { width, height } = pixelsOf(order);
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('A worker of this browser cannot paint.');
  paintOrder(pen as unknown as Pen, order);
  return canvas.transferToImageBitmap();
}
