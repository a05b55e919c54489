import { render } from 'preact';
import { App } from '../../src/screens/App.tsx';
import { FIRST_SETTINGS, type Settings } from '../../src/screens/shell.ts';
import { handMadeDesk } from './desk.ts';

/** `?settings=JSON`, `?bad` and `?real` choose what is shown; see desk.ts for the hand-made data. */
const asked = new URLSearchParams(location.search);
const settings: Settings = { ...FIRST_SETTINGS, ...JSON.parse(asked.get('settings') ?? '{}') };
const problems = asked.has('bad')
  ? [
      {
        where: 'stored attempt a-17',
        issues: [
          { path: 'entries[3].action.bar', sentence: 'A bar number from 0 to 22 was expected; 40 came.' },
        ],
        text: '{}',
      },
    ]
  : [];

const desk = asked.has('real') ? (await import('./realDesk.ts')).realDesk() : handMadeDesk();
render(
  <App desk={desk} settings={settings} board={await desk.jobs()} problems={problems} />,
  document.getElementById('app') as HTMLElement,
);
