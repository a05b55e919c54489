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

/** Time at the bench and the minutes work has taken by the book, together, against the time the card allows. */
function BenchClock({ port, job }: BenchPageProps) {
  const { atMs, minutesSpent } = useClock(port);
  const usedMs = atMs + minutesSpent * 60_000;
  const over = job.minutes !== null && usedMs > job.minutes * 60_000;
  return (
    <span class={`bench-clock ${over ? 'bench-clock-over' : ''}`} role="timer">
      <span class="visually-hidden">Time used </span>
      {clock(usedMs)}
      {job.minutes === null ? null : ` of ${clock(job.minutes * 60_000)}`}
      {minutesSpent === 0 ? null : `, ${minutesSpent} min of it work by the book`}
      {over ? <strong> time is up</strong> : null}
    </span>
  );
}
