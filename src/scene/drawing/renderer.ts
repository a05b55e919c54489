import type { CanvasRenderer, Renderer, WebGLRenderer } from 'pixi.js';
import { studio } from '../studio/studio.ts';

const MAX_RESOLUTION = 2;

export type Drawing = 'auto' | 'webgl' | 'canvas';

/** What a picture covers, CSS px. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * Makes the renderer, whose canvas hangs nowhere yet. Only the code of the one that is used is loaded.
 * @throws when the browser offers no way to draw at all
 */
export async function createRenderer(size: Size, drawing: Drawing): Promise<Renderer> {
  const renderer = await firstThatStarts(size, await orderOf(drawing));
  renderer.canvas.style.display = 'block';
  renderer.canvas.setAttribute('aria-hidden', 'true');
  return renderer;
}

/** Fetches the code that will draw here, so that it is there when the bench is opened. */
export async function fetchRenderer(): Promise<void> {
  await ((await orderOf('auto'))[0] === 'webgl' ? import('./webgl.ts') : import('./canvas.ts'));
}

type Kind = 'webgl' | 'canvas';

async function orderOf(drawing: Drawing): Promise<readonly Kind[]> {
  if (drawing !== 'auto') return [drawing];
  return (await studio.hasGraphics()) ? ['webgl', 'canvas'] : ['canvas', 'webgl'];
}

async function firstThatStarts(size: Size, order: readonly Kind[]): Promise<Renderer> {
  const refusals: unknown[] = [];
  for (const kind of order) {
    try {
      return kind === 'webgl' ? await withWebgl(size) : await withCanvas(size);
    } catch (error) {
      refusals.push(error);
    }
  }
  throw new AggregateError(refusals, 'This browser offers no way to draw the bench.');
}

async function withWebgl(size: Size): Promise<WebGLRenderer> {
  const { WebGLRenderer } = await import('./webgl.ts');
  const renderer = new WebGLRenderer();
  await renderer.init(wishes(size));
  // One picture per draw call: choosing among many inside a shader is what costs most where a processor does the
  // drawing, and a bench has too few pictures for their number to matter anywhere else.
  renderer.limits.maxBatchableTextures = 1;
  return renderer;
}

async function withCanvas(size: Size): Promise<CanvasRenderer> {
  const { PlainRenderer } = await import('./canvas.ts');
  const renderer = new PlainRenderer();
  await renderer.init(wishes(size));
  return renderer;
}

function wishes({ width, height }: Size) {
  return {
    width: Math.max(300, width),
    height: Math.max(420, height),
    resolution: Math.min(MAX_RESOLUTION, window.devicePixelRatio || 1),
    autoDensity: true,
    // Everything soft-edged comes painted: smoothing of edges would cost and show nothing.
    antialias: false,
    background: '#0d3c42',
    preserveDrawingBuffer: false,
    // Masks, filters, pointer events and sprite sheets of the library: the bench uses none of them.
    skipExtensionImports: true,
  };
}
