import { useState } from 'preact/hooks';
import type { ScreenContext } from '../App.tsx';
import { PickFile } from '../shared/PickFile.tsx';
import { useLoaded } from '../shared/useLoaded.ts';
import { usePageTitle } from '../shared/usePageTitle.ts';
import type { JobSummary } from '../shell.ts';
import { goTo } from '../useRoute.ts';
import { JobCardPage } from './JobCard.tsx';
import { JobList } from './JobList.tsx';

function useBoard({ desk, lastBoard }: ScreenContext): readonly JobSummary[] | null {
  const jobs = useLoaded(() => desk.jobs(), [desk]);
  if (jobs) lastBoard.current = jobs;
  return jobs;
}

export function JobsScreen(props: { readonly context: ScreenContext }) {
  const { settings } = props.context;
  const jobs = useBoard(props.context);
  usePageTitle('Jobs');
  if (!jobs) return <p class="loading">Looking at the board…</p>;
  return (
    <>
      <JobList jobs={jobs} settings={settings} />
      <footer class="board-foot">
        <PickFile onPick={(file) => void takeIn(file, props.context)}>Open an attempt from a file</PickFile>
      </footer>
    </>
  );
}

async function takeIn(file: File, context: ScreenContext): Promise<void> {
  const taken = await context.desk.importFile(file);
  if (!taken.ok) return context.report({ where: file.name, issues: taken.issues, text: null });
  const { id, state } = taken.value;
  goTo(state === 'running' ? { screen: 'bench', id } : { screen: 'debrief', id });
}

export function JobScreen(props: { readonly jobId: string; readonly context: ScreenContext }) {
  const jobs = useBoard(props.context) ?? props.context.lastBoard.current;
  if (!jobs) return <p class="loading">Fetching the card…</p>;
  const summary = jobs.find(({ job }) => job.id === props.jobId);
  return summary ? <FoundCard summary={summary} context={props.context} /> : <NoSuchCard />;
}

function FoundCard(props: { readonly summary: JobSummary; readonly context: ScreenContext }) {
  const { context, summary } = props;
  const [busy, setBusy] = useState(false);
  usePageTitle(`Job card: ${summary.job.card.unit}`);
  const begin = async () => {
    setBusy(true);
    const begun = await context.desk.begin(summary.job.id, context.settings.learner.trim());
    setBusy(false);
    if (begun.ok) goTo({ screen: 'bench', id: begun.value });
    else context.report({ where: summary.job.card.unit, issues: begun.issues, text: null });
  };
  return (
    <JobCardPage
      summary={summary}
      settings={context.settings}
      busy={busy}
      onLearner={(learner) => context.changeSettings({ ...context.settings, learner })}
      onBegin={() => void begin()}
    />
  );
}

function NoSuchCard() {
  usePageTitle('No such job');
  return (
    <main class="gone">
      <h1>No such job card</h1>
      <p>The address names a job that is not on this board.</p>
      <a class="button button-main" href="#/jobs">
        To the list of jobs
      </a>
    </main>
  );
}
