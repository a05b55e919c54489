import 'pixi.js/graphics';
import { CanvasBatchAdaptor, type CanvasOptions, CanvasRenderer, Container } from 'pixi.js';
import type { Rect } from '../layout.ts';
import { wholeAround } from '../wholePixels.ts';
import { Changes } from './changes.ts';
import { PlainBatches } from './plainBatches.ts';

/**
 * The plain canvas: needs no graphics processor, knows upright pictures only. A moving needle costs the pixels round the
 * needle, not all of the bench.
 */
export class PlainRenderer extends CanvasRenderer {
  private readonly changes = new Changes();
  /** What the canvas was like when it was last drawn on; another size empties it. */
  private drawnOn = '';

  override async init(options: Partial<CanvasOptions>): Promise<void> {
    await super.init(options);
    this.renderPipes.batch = new PlainBatches(this, new CanvasBatchAdaptor());
  }

  override render(scene: Parameters<CanvasRenderer['render']>[0]): void {
    if (scene instanceof Container) this.renderChanges(scene);
    else super.render(scene);
  }

  private renderChanges(scene: Container): void {
    const canvas = this.canvas as HTMLCanvasElement;
    const on = `${canvas.width}x${canvas.height}@${this.resolution}`;
    if (on !== this.drawnOn) this.changes.forget();
    this.drawnOn = on;
    const places = this.changes.since(scene);
    if (places === null) super.render(scene);
    else for (const place of places) this.within(place, scene);
  }

  /** One place at a time: a browser cuts to one upright box at no cost, and to several px by px. */
  private within({ x, y, w, h }: Rect, scene: Container): void {
    const pen = (this.canvas as HTMLCanvasElement).getContext('2d')!;
    const k = this.resolution;
    const box = wholeAround({ x: x * k, y: y * k, w: w * k, h: h * k });
    pen.save();
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.beginPath();
    pen.rect(box.x, box.y, box.w, box.h);
    pen.clip();
    super.render(scene);
    pen.restore();
  }

  /** Makes no functions from text, so it has nothing to ask of the page's content policy. */
  override _unsafeEvalCheck(): void {}
}
