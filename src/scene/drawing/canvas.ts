import 'pixi.js/graphics';
import { CanvasRenderer } from 'pixi.js';

/** The plain canvas: needs no graphics processor, knows upright pictures only. */
export class PlainRenderer extends CanvasRenderer {
  /** Makes no functions from text, so it has nothing to ask of the page's content policy. */
  override _unsafeEvalCheck(): void {}
}
