import { useEffect } from 'preact/hooks';
import type { ScreenContext } from '../App.tsx';
import { IssueList } from '../Problems.tsx';
import { Notice } from '../shared/Notice.tsx';
import { isStill } from '../shared/still.ts';
import { useLoaded } from '../shared/useLoaded.ts';
import { usePageTitle } from '../shared/usePageTitle.ts';
import type { OpenBench } from '../shell.ts';
import { goTo } from '../useRoute.ts';
import { BenchPage } from './bench/BenchPage.tsx';

/** Fetches a running attempt and puts it on the bench. */
export function BenchScreen(props: { readonly attemptId: string; readonly context: ScreenContext }) {
  const { desk } = props.context;
  const opened = useLoaded(() => desk.bench(props.attemptId), [desk, props.attemptId]);
  if (!opened) return <p class="loading">Setting up the bench…</p>;
  if (opened.ok) return <Opened bench={opened.value} attemptId={props.attemptId} context={props.context} />;
  return (
    <main class="gone">
      <h1>This attempt cannot be put on the bench</h1>
      <Notice kind="problem">
        <IssueList issues={opened.issues} />
      </Notice>
      <a class="button button-main" href="#/jobs">
        To the list of jobs
      </a>
    </main>
  );
}

interface OpenedProps {
  readonly bench: OpenBench;
  readonly attemptId: string;
  readonly context: ScreenContext;
}

function Opened({ bench, attemptId, context }: OpenedProps) {
  const { settings, changeSettings } = context;
  usePageTitle(`At the bench: ${bench.job.card.unit}`);
  useEffect(() => () => bench.close(), [bench]);
  useEffect(() => bench.setMuted(settings.muted), [bench, settings.muted]);
  return (
    <BenchPage
      job={bench.job}
      port={bench.port}
      written={bench.written}
      verdicts={bench.verdicts}
      remedies={bench.remedies}
      mountScene={bench.mountScene}
      captions={bench.captions}
      overhear={bench.overhear}
      vocabulary={settings.vocabulary}
      still={isStill(settings)}
      muted={settings.muted}
      onMuted={(muted) => changeSettings({ ...settings, muted })}
      wordsOpen={settings.wordsPanel === 'open'}
      onWordsOpen={(open) => changeSettings({ ...settings, wordsPanel: open ? 'open' : 'closed' })}
      guide={settings.guide}
      onGuide={(guide) => changeSettings({ ...settings, guide })}
      onSettings={context.openSettings}
      onLeave={() => goTo({ screen: 'jobs' })}
      onFinished={() => {
        // A second guided job is done with less help than the first.
        if (bench.job.mode === 'guided' && settings.guide === 'full')
          changeSettings({ ...settings, guide: 'short' });
        goTo({ screen: 'debrief', id: attemptId });
      }}
    />
  );
}
