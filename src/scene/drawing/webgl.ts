import 'pixi.js/unsafe-eval';
import 'pixi.js/graphics';
import 'pixi.js/mesh';

/** WebGL, without making functions from text, which the page's content policy forbids. */
export { WebGLRenderer } from 'pixi.js';
