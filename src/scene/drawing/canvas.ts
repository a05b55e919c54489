import 'pixi.js/graphics';
import { CanvasBatchAdaptor, type CanvasOptions, CanvasRenderer } from 'pixi.js';
import { PlainBatches } from './plainBatches.ts';

/** The plain canvas: needs no graphics processor, knows upright pictures only. */
export class PlainRenderer extends CanvasRenderer {
  override async init(options: Partial<CanvasOptions>): Promise<void> {
    await super.init(options);
    this.renderPipes.batch = new PlainBatches(this, new CanvasBatchAdaptor());
  }

  /** Makes no functions from text, so it has nothing to ask of the page's content policy. */
  override _unsafeEvalCheck(): void {}
}
