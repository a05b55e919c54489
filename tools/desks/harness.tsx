import '../../src/screens/shared/base.css';
import { render } from 'preact';
import { createAssessorDesk } from '../../src/app/assessor/desk.ts';
import { readLibrary } from '../../src/app/library.ts';
import { mountReplay } from '../../src/app/surround.ts';
import { AssessorScreens } from '../../src/screens/assessor/AssessorScreens.tsx';
import { readAssessorRoute } from '../../src/screens/assessor/route.ts';
import { openBrowserStore } from '../../src/store/browserStore.ts';
import { FILES } from '../library/files.ts';
import { fill } from './fill.ts';

const library = readLibrary(FILES);
const store = await openBrowserStore();
await fill(store, library);
const desk = createAssessorDesk({ library, store, mountReplay });
const settings = { vocabulary: 'british', motion: 'system' } as const;
const root = document.getElementById('app') as HTMLElement;

function draw(): void {
  const rest = location.hash.replace(/^#\/assessor/, '');
  render(<AssessorScreens desk={desk} route={readAssessorRoute(rest)} settings={settings} />, root);
}
addEventListener('hashchange', draw);
draw();
Object.assign(globalThis, { store, desk });
