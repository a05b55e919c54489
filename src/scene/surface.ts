import { ImageSource, Sprite, Texture } from 'pixi.js';
import type { Rect } from './layout.ts';
import type { Pen } from './pen.ts';
import { wholeAround } from './wholePixels.ts';

/**
 * Paints a picture once and hands it to the renderer as a texture. Gradients, soft shadows and fine lines are cheap
 * here and cost nothing per frame, whichever renderer runs.
 * @param width  CSS px, > 0
 * @param height CSS px, > 0
 * @param resolution device px per CSS px
 */
export function painted(
  width: number,
  height: number,
  resolution: number,
  draw: (pen: Pen) => void,
): Texture {
  const resource = document.createElement('canvas');
  resource.width = Math.max(1, Math.ceil(width * resolution));
  resource.height = Math.max(1, Math.ceil(height * resolution));
  const pen = resource.getContext('2d')!;
  pen.scale(resolution, resolution);
  draw(pen);
  // Not a source that owns its canvas: that one would size the canvas anew, and empty it, on a rounding of 1e-13.
  return new Texture({ source: new ImageSource({ resource, resolution, scaleMode: 'linear' }) });
}

/**
 * A still picture that covers one part of the bench and no more: empty pixels cost as much as painted ones. It lies on
 * whole px, where a renderer copies it instead of blending each px from four.
 * @param draw paints in px of the bench
 */
export function still(box: Rect, resolution: number, draw: (pen: Pen) => void): Sprite {
  const { x, y, w, h } = wholeAround(box);
  const sprite = new Sprite(
    painted(w, h, resolution, (pen) => {
      pen.translate(-x, -y);
      draw(pen);
    }),
  );
  sprite.position.set(x, y);
  return sprite;
}
