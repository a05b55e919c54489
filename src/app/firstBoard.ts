import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { App } from '../screens/App.tsx';
import { type Desk, FIRST_SETTINGS } from '../screens/shell.ts';
import { boardOf } from './desk.ts';
import { type CheckedLibrary, libraryOf } from './library.ts';

/** The board as a browser shows it that has kept nothing yet, as HTML; the build writes it into the page. */
export function firstBoard(checked: CheckedLibrary): string {
  const library = libraryOf(checked);
  const board = boardOf(library);
  return renderToString(
    h(App, { desk: NOBODY, settings: FIRST_SETTINGS, board, problems: library.problems }),
  );
}

/** Nothing is asked of a desk before somebody presses something. */
const NOBODY = new Proxy({} as Desk, {
  get: (_, asked) => {
    throw new Error(`The first board asked the desk for ${String(asked)}.`);
  },
});
