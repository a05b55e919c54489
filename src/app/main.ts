import { h, render } from 'preact';
import { warmScene } from '../scene/warm.ts';
import { App } from '../screens/App.tsx';
import type { StoredProblem } from '../screens/shell.ts';
import { openBrowserStore } from '../store/browserStore.ts';
import { browserJournal, makeAllGood } from '../store/journal.ts';
import { createDesk } from './desk.ts';
import { fetchLibrary } from './library.ts';
import { keepOffline } from './offline.ts';
import { loadSettings } from './settings.ts';
import { clear, rememberVisit, takeOver } from './standingBoard.ts';

async function start(): Promise<void> {
  // What will draw a bench comes meanwhile; the board stands in the page and waits for nothing.
  warmScene();
  const [library, store] = await Promise.all([fetchLibrary(), openBrowserStore()]);
  const settings = loadSettings();
  const journal = browserJournal(localStorage);
  await makeAllGood(journal, store);
  const root = document.getElementById('app');
  if (!root) throw new Error('index.html has no #app element.');

  let problems: readonly StoredProblem[] = library.problems;
  const tell = (sentence: string) => {
    problems = [...problems, { where: 'This attempt', issues: [{ path: '', sentence }], text: null }];
    render(app(), root);
  };
  const desk = createDesk({ library, store, journal, onTrouble: tell });
  const board = await desk.jobs();
  const app = () => h(App, { desk, settings, board, problems });
  takeOver(root, app(), board, library.scenarios.size);
  rememberVisit(localStorage);
}

// From a task of its own: a browser notes where each request comes from, and asked at the foot of the script it would
// read all of the script once more to say which line that is.
Promise.resolve()
  .then(start)
  .catch((error: unknown) => {
    const root = document.getElementById('app');
    if (root) {
      clear(root);
      root.textContent = `Slot & Riser could not start here: ${String(error)}. A private window or very old browser may keep it from storing attempts.`;
    }
  });
void keepOffline();
