import { createHash } from 'node:crypto';
import { type Plugin, runnerImport } from 'vite';
import { libraryAtBuild } from '../library/plugin.ts';

const HOST = '<div id="app"></div>';

/**
 * All that happens before the script comes. The board that stands in the page is everybody's first one: whoever goes
 * straight to another screen, or has kept something in this browser, is spared a look at it. Cards are links and need
 * nothing; of buttons the last one pressed is kept for src/app/standingBoard.ts.
 */
const BEFORE = `try{if((location.hash||'#/jobs')!=='#/jobs'||localStorage.length)document.documentElement.dataset.board='down'}catch{}
addEventListener('click',e=>{pressed=e.target.closest('button')})
var pressed`;

/**
 * Writes the board, as a new learner meets it, into the page itself: it can be read, and a card taken from it, while
 * the script that does everything else is still on its way.
 */
export function board(): Plugin {
  return {
    name: 'board',
    transformIndexHtml: {
      order: 'post',
      async handler(html) {
        if (!html.includes(HOST)) throw new Error(`Expected ${HOST} in index.html, but it is not there.`);
        const { module } = await runnerImport<typeof import('../../src/app/firstBoard.ts')>(
          './src/app/firstBoard.ts',
          { configFile: false, logLevel: 'error', plugins: [withoutStyles] },
        );
        const standing = module.firstBoard(libraryAtBuild());
        return html
          .replace(HOST, () => `<div id="app">${standing}</div>`)
          .replace('<title>', `<script>${BEFORE}</script>\n    <title>`)
          .replace("script-src 'self'", `script-src 'self' '${digestOf(BEFORE)}'`);
      },
    },
  };
}

/** Only the words are wanted; the page has the styles already. */
const withoutStyles: Plugin = {
  name: 'without-styles',
  enforce: 'pre',
  resolveId: (id) => (id.endsWith('.css') ? '\0no-style' : null),
  load: (id) => (id === '\0no-style' ? '' : null),
};

/** How a page's content policy names the one script that may stand in the page. */
function digestOf(script: string): string {
  return `sha256-${createHash('sha256').update(script).digest('base64')}`;
}
