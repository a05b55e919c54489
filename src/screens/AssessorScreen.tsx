import type { ScreenContext } from './App.tsx';
import { readAssessorRoute } from './assessor/route.ts';
import { useLoaded } from './shared/useLoaded.ts';

/** The assessor's desk; its code comes only when somebody goes there. */
export function AssessorScreen({
  rest,
  context,
}: {
  readonly rest: string;
  readonly context: ScreenContext;
}) {
  const { desk, settings } = context;
  const screens = useLoaded(() => import('./assessor/AssessorScreens.tsx'), []);
  const assessor = useLoaded(() => desk.assessor(), [desk]);
  if (!screens || !assessor) return <p class="loading">Laying out the desk…</p>;
  return <screens.AssessorScreens desk={assessor} route={readAssessorRoute(rest)} settings={settings} />;
}
