import { Button } from '../../shared/Button.tsx';
import { clock } from '../../shared/time.ts';
import { modeMeaning, modeWords } from '../../shared/words.ts';
import type { BenchPageProps } from './BenchPage.tsx';
import { useClock } from './useBench.ts';

export interface BenchBarProps extends BenchPageProps {
  readonly onPause: () => void;
  readonly onKeys: () => void;
}

/** The strip above the bench: which job, how supervised, how long, and the few things that are not bench work. */
export function BenchBar(props: BenchBarProps) {
  const { job } = props;
  return (
    <header class="bench-bar">
      <div class="bench-job">
        <h1>{job.card.unit}</h1>
        <span class={`mode mode-${job.mode}`} title={modeMeaning(job.mode)}>
          {modeWords(job.mode)}
        </span>
        <BenchClock {...props} />
      </div>
      <div class="bench-bar-acts">
        <Button
          kind="quiet"
          pressed={props.muted}
          label={props.muted ? 'Sound off; switch it on' : 'Sound on; switch it off'}
          onPress={() => props.onMuted(!props.muted)}
        >
          {props.muted ? 'Sound off' : 'Sound on'}
        </Button>
        <Button kind="quiet" onPress={props.onKeys}>
          Keys
        </Button>
        <Button kind="quiet" onPress={props.onSettings}>
          Settings
        </Button>
        {job.mode === 'assessed' ? null : (
          <Button kind="quiet" onPress={props.onPause}>
            Pause
          </Button>
        )}
        <Button kind="quiet" onPress={props.onLeave}>
          Leave
        </Button>
      </div>
    </header>
  );
}

function BenchClock({ port, job }: BenchPageProps) {
  const atMs = useClock(port);
  const over = job.minutes !== null && atMs > job.minutes * 60_000;
  return (
    <span class={`bench-clock ${over ? 'bench-clock-over' : ''}`} role="timer">
      <span class="visually-hidden">Time at the bench </span>
      {clock(atMs)}
      {job.minutes === null ? null : ` of ${clock(job.minutes * 60_000)}`}
      {over ? <strong> time is up</strong> : null}
    </span>
  );
}
