import type { ScreenContext } from '../App.tsx';
import { IssueList } from '../Problems.tsx';
import { Notice } from '../shared/Notice.tsx';
import { saveText } from '../shared/saveText.ts';
import { useLoaded } from '../shared/useLoaded.ts';
import { usePageTitle } from '../shared/usePageTitle.ts';

/** Fetches a finished attempt; the debrief's own code comes only now, it is not needed at the bench. */
export function DebriefScreen(props: { readonly attemptId: string; readonly context: ScreenContext }) {
  const { context, attemptId } = props;
  const page = useLoaded(() => import('./debrief/Debrief.tsx'), []);
  const data = useLoaded(() => context.desk.debrief(attemptId), [context.desk, attemptId]);
  usePageTitle('Debrief');
  if (!page || !data) return <p class="loading">Putting the marks together…</p>;
  if (data.ok) {
    return (
      <page.Debrief
        data={data.value}
        vocabulary={context.settings.vocabulary}
        askEvidence={() => context.desk.evidence(attemptId)}
        onExport={() => void save(attemptId, context)}
      />
    );
  }
  return (
    <main class="gone">
      <h1>No debrief for this attempt</h1>
      <Notice kind="problem">
        <IssueList issues={data.issues} />
      </Notice>
      <a class="button button-main" href="#/jobs">
        To the list of jobs
      </a>
    </main>
  );
}

async function save(attemptId: string, context: ScreenContext): Promise<void> {
  const file = await context.desk.exportAttempt(attemptId);
  if (file.ok) saveText(file.value.name, file.value.text);
  else context.report({ where: 'This attempt', issues: file.issues, text: null });
}
