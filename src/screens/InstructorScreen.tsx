import type { ScreenContext } from './App.tsx';
import { readInstructorRoute } from './instructor/route.ts';
import { useLoaded } from './shared/useLoaded.ts';

/** The instructor's desk; its code comes only when somebody goes there. */
export function InstructorScreen({
  rest,
  context,
}: {
  readonly rest: string;
  readonly context: ScreenContext;
}) {
  const { desk, settings } = context;
  const screens = useLoaded(() => import('./instructor/InstructorScreens.tsx'), []);
  const instructor = useLoaded(() => desk.instructor(), [desk]);
  if (!screens || !instructor) return <p class="loading">Laying out the desk…</p>;
  return (
    <screens.InstructorScreens desk={instructor} route={readInstructorRoute(rest)} settings={settings} />
  );
}
