import type { Plugin } from 'vite';

/** Modules of the drawing library that register something when imported which the bench has no use for. */
const NEEDLESS = /pixi\.js\/lib\/(index|rendering\/init|spritesheet\/init|.*\/textureFrom)\.mjs$/;

/** Modules the library's used parts import for things the bench never asks of them: SVG, particles, masks by picture. */
const LEFT_OUT =
  /pixi\.js\/lib\/(scene\/graphics\/shared\/svg\/(SVGParser|parseSVGPath)|.*\/ParticleBuffer|unsafe-eval\/particle\/\w+|filters\/mask\/MaskFilter)\.mjs$/;

/** Colours by name; the bench writes its colours in figures. */
const COLOUR_NAMES = /@pixi\/colord\/plugins\/names\.mjs$/;

/**
 * Leaves out what the drawing library brings along by itself: renderers, loaders and formats that would make the bench
 * a quarter heavier. What the bench needs of it is named in src/scene/drawing; what is left out says so when called.
 */
export function lean(): Plugin {
  return {
    name: 'lean',
    apply: 'build',
    transform: {
      filter: { id: [NEEDLESS, LEFT_OUT, COLOUR_NAMES] },
      handler: (code, id) => ({ code: leaner(code, id), map: null, moduleSideEffects: false }),
    },
  };
}

function leaner(code: string, id: string): string {
  if (COLOUR_NAMES.test(id)) return 'export default function noNames() {}';
  return LEFT_OUT.test(id) ? emptied(code) : code;
}

function emptied(code: string): string {
  const exported = /^export \{([^}]*)\};$/m.exec(code)?.[1]?.split(',') ?? [];
  const names = exported.map((each) => each.trim()).filter(Boolean);
  if (names.length === 0 || names.some((name) => name.includes(' ')))
    throw new Error(`Expected plain names after "export", but came: ${exported.join() || 'nothing'}.`);
  return names
    .map((name) => `export function ${name}() { throw new Error('${name} is left out of this build.'); }`)
    .join('\n');
}
