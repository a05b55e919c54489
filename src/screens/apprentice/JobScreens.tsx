import { useEffect, useState } from 'preact/hooks';
import type { Job } from '../../scenario/public/job.ts';
import type { ScreenContext } from '../App.tsx';
import { isStill } from '../shared/still.ts';
import { useLoaded } from '../shared/useLoaded.ts';
import { usePageTitle } from '../shared/usePageTitle.ts';
import type { JobSummary } from '../shell.ts';
import { goTo } from '../useRoute.ts';
import { pictureSize } from './bench/pictureSize.ts';
import { JobCardPage } from './JobCard.tsx';
import { JobList } from './JobList.tsx';

function useBoard({ desk, board }: ScreenContext): readonly JobSummary[] {
  const jobs = useLoaded(() => (board.isNew ? board.last : desk.jobs()), [desk]);
  if (jobs) board.last = jobs;
  return board.last;
}

export function JobsScreen(props: { readonly context: ScreenContext }) {
  const { settings } = props.context;
  const jobs = useBoard(props.context);
  usePageTitle('Jobs');
  return <JobList {...{ jobs, settings }} onFile={(file) => void takeIn(file, props.context)} />;
}

async function takeIn(file: File, context: ScreenContext): Promise<void> {
  const taken = await context.desk.importFile(file);
  if (!taken.ok) return context.report({ where: file.name, issues: taken.issues, text: null });
  const { id, state } = taken.value;
  goTo(state === 'running' ? { screen: 'bench', id } : { screen: 'debrief', id });
}

export function JobScreen(props: { readonly jobId: string; readonly context: ScreenContext }) {
  const jobs = useBoard(props.context);
  const summary = jobs.find(({ job }) => job.id === props.jobId);
  return summary ? <FoundCard summary={summary} context={props.context} /> : <NoSuchCard />;
}

function FoundCard(props: { readonly summary: JobSummary; readonly context: ScreenContext }) {
  const { context, summary } = props;
  const [busy, setBusy] = useState(false);
  usePageTitle(`Job card: ${summary.job.card.unit}`);
  useBenchSetOut(summary.job, context);
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

/** While the card is read, the bench is made ready for it. */
function useBenchSetOut(job: Job, { desk, settings }: ScreenContext): void {
  const { vocabulary } = settings;
  const still = isStill(settings);
  useEffect(() => desk.setOut(job, pictureSize(), { vocabulary, still }), [desk, job, vocabulary, still]);
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
