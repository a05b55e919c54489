import '../../src/screens/shared/base.css';
import { render } from 'preact';
import { createAssessorDesk } from '../../src/app/assessor/desk.ts';
import { checkLibrary } from '../../src/app/checkLibrary.ts';
import { createInstructorDesk } from '../../src/app/instructor/desk.ts';
import { libraryOf } from '../../src/app/library.ts';
import { mountReplay } from '../../src/app/surround.ts';
import { AssessorScreens } from '../../src/screens/assessor/AssessorScreens.tsx';
import { readAssessorRoute } from '../../src/screens/assessor/route.ts';
import { InstructorScreens } from '../../src/screens/instructor/InstructorScreens.tsx';
import { readInstructorRoute } from '../../src/screens/instructor/route.ts';
import { openBrowserStore } from '../../src/store/browserStore.ts';
import { FILES } from '../library/files.ts';
import { fill } from './fill.ts';

const library = libraryOf(checkLibrary(FILES));
const store = await openBrowserStore();
if (!location.hash.startsWith('#/instructor')) await fill(store, library);
const desk = createAssessorDesk({ library, store, mountReplay });
const instructor = createInstructorDesk({ library, store });
const settings = { vocabulary: 'british', motion: 'system' } as const;
const root = document.getElementById('app') as HTMLElement;

function draw(): void {
  const [, which, rest = ''] = /^#\/(instructor|assessor)(.*)$/.exec(location.hash) ?? [];
  if (which === 'instructor') {
    render(
      <InstructorScreens desk={instructor} route={readInstructorRoute(rest)} settings={settings} />,
      root,
    );
    return;
  }
  render(<AssessorScreens desk={desk} route={readAssessorRoute(rest)} settings={settings} />, root);
}
addEventListener('hashchange', draw);
draw();
Object.assign(globalThis, { store, desk });
