import type { Plugin } from 'vite';

const HINT = '//# allFunctionsCalledOnLoad\n';

/** What every visit runs: the page itself and the picture of the bench. */
const ALWAYS = /\/pixi\.js\/|\/src\/scene\//;

/**
 * Asks the browser to make the script of every visit ready whole, while it comes and beside the page's own work.
 * Browsers that know the line do so; to the others it is a comment.
 * @see https://explainers-by-googlers.github.io/explicit-javascript-compile-hints-file-based/
 */
export function readyWhole(): Plugin {
  return {
    name: 'ready-whole',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      // After the bundler's own additions: the line counts at the top of the file only.
      order: 'post',
      handler(_, bundle) {
        for (const piece of Object.values(bundle)) {
          if (piece.type !== 'chunk') continue;
          const always = piece.name === 'core' || piece.moduleIds.some((id) => ALWAYS.test(id));
          if (always) piece.code = HINT + piece.code;
        }
      },
    },
  };
}
