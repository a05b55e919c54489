import { type ComponentChild, hydrate, render } from 'preact';
import { readRoute } from '../screens/route.ts';
import type { JobSummary } from '../screens/shell.ts';

/** What the script in the page itself leaves behind: see tools/board. */
interface Early {
  /** The last button that was pressed. */
  pressed?: HTMLElement | null;
}

const BEEN = 'slot-and-riser/been';

/**
 * Puts the app in the place of the board that came with the page. Where that board is still what has to be shown it
 * stays as it is and comes to life; a button that was pressed on it meanwhile does its work now.
 * @param jobs of the library, which hang on the standing board
 */
export function takeOver(
  root: HTMLElement,
  app: ComponentChild,
  board: readonly JobSummary[],
  jobs: number,
): void {
  const stays = stands() && readRoute(location.hash).screen === 'jobs' && isUntouched(board, jobs);
  if (stays) {
    hydrate(app, root);
    (globalThis as Early).pressed?.click();
  } else {
    clear(root);
    render(app, root);
  }
}

/** Takes the standing board away. */
export function clear(root: HTMLElement): void {
  root.textContent = '';
  delete document.documentElement.dataset.board;
}

/** From the first step off the board on, a visit begins with what this browser has kept, not with a new learner's board. */
export function rememberVisit(storage: Storage): void {
  const remember = () => {
    try {
      storage.setItem(BEEN, 'yes');
    } catch {
      // Then the next visit begins with the standing board for a moment.
    }
  };
  if (readRoute(location.hash).screen === 'jobs') addEventListener('hashchange', remember, { once: true });
  else remember();
}

const stands = () => document.documentElement.dataset.board === undefined;

function isUntouched(board: readonly JobSummary[], jobs: number): boolean {
  return board.length === jobs && board.every(({ attempts }) => attempts.length === 0);
}
