import type { CanvasRenderer, Renderer, WebGLRenderer } from 'pixi.js';
import { studio } from '../studio/studio.ts';

const MAX_RESOLUTION = 2;

export type Drawing = 'auto' | 'webgl' | 'canvas';

/**
 * Makes the renderer and hangs its canvas into the host. Only the code of the one that is used is loaded.
 * @throws when the browser offers no way to draw at all
 */
export async function createRenderer(host: HTMLElement, drawing: Drawing): Promise<Renderer> {
  const renderer = await firstThatStarts(host, await orderOf(drawing));
  renderer.canvas.style.display = 'block';
  renderer.canvas.setAttribute('aria-hidden', 'true');
  host.appendChild(renderer.canvas);
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

async function firstThatStarts(host: HTMLElement, order: readonly Kind[]): Promise<Renderer> {
  const refusals: unknown[] = [];
  for (const kind of order) {
    try {
      return kind === 'webgl' ? await withWebgl(host) : await withCanvas(host);
    } catch (error) {
      refusals.push(error);
    }
  }
  throw new AggregateError(refusals, 'This browser offers no way to draw the bench.');
}

async function withWebgl(host: HTMLElement): Promise<WebGLRenderer> {
  const { WebGLRenderer } = await import('./webgl.ts');
  const renderer = new WebGLRenderer();
  await renderer.init(wishes(host));
  // One picture per draw call: choosing among many inside a shader is what costs most where a processor does the
  // drawing, and a bench has too few pictures for their number to matter anywhere else.
  renderer.limits.maxBatchableTextures = 1;
  return renderer;
}

async function withCanvas(host: HTMLElement): Promise<CanvasRenderer> {
  const { PlainRenderer } = await import('./canvas.ts');
  const renderer = new PlainRenderer();
  await renderer.init(wishes(host));
  return renderer;
}

function wishes(host: HTMLElement) {
  return {
    width: Math.max(300, host.clientWidth),
    height: Math.max(420, host.clientHeight),
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
