import '@fontsource-variable/atkinson-hyperlegible-next';
import { h, render } from 'preact';
import { App } from '../screens/App.tsx';
import type { StoredProblem } from '../screens/shell.ts';
import { openBrowserStore } from '../store/browserStore.ts';
import { createDesk } from './desk.ts';
import { readLibrary } from './library.ts';
import { keepOffline } from './offline.ts';
import { loadSettings } from './settings.ts';

async function start(): Promise<void> {
  const library = readLibrary();
  const store = await openBrowserStore();
  const troubles: StoredProblem[] = [...library.problems];
  const desk = createDesk({ library, store, onTrouble: (sentence) => tell(sentence) });
  const settings = loadSettings();
  const root = document.getElementById('app');
  if (!root) throw new Error('index.html has no #app element.');

  const draw = () => render(h(App, { desk, settings, problems: troubles }), root);
  const tell = (sentence: string) => {
    troubles.push({ where: 'This attempt', issues: [{ path: '', sentence }], text: null });
    window.dispatchEvent(new CustomEvent('trouble', { detail: troubles.at(-1) }));
  };
  draw();
}

start().catch((error: unknown) => {
  const root = document.getElementById('app');
  if (root) {
    root.textContent = `Slot & Riser could not start here: ${String(error)}. A private window or very old browser may keep it from storing attempts.`;
  }
});
void keepOffline();
