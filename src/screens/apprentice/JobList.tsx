import type { Mode } from '../../bench/port.ts';
import { writeRoute } from '../route.ts';
import { Button } from '../shared/Button.tsx';
import { PickFile } from '../shared/PickFile.tsx';
import { clock, dayWords } from '../shared/time.ts';
import { mainsWords, modeMeaning, modeWords, partList, spoken, type Vocabulary } from '../shared/words.ts';
import type { AttemptSummary, JobSummary, Settings } from '../shell.ts';
import './jobs.css';

export interface JobListProps {
  readonly jobs: readonly JobSummary[];
  readonly settings: Settings;
  readonly onFile: (file: File) => void;
}

/** The board of jobs: one paper slip per unit that has come in. */
export function JobList(props: JobListProps) {
  const { mains, vocabulary } = props.settings;
  const shown = props.jobs.filter(({ job }) => mains === 'all' || job.mains === mains);
  const fromFile = <PickFile onPick={props.onFile}>Open an attempt from a file</PickFile>;
  return (
    <main class="board">
      <header class="board-head">
        <h1>Jobs on the board</h1>
        <p>
          Take a card, look at what is asked, and go to the bench. A job left half done stays where you left
          it.
        </p>
      </header>
      {shown.length === 0 ? (
        <>
          <p class="board-empty">
            No job here is for {mains === 'all' ? 'any supply' : mainsWords(mains)}. Choose another supply
            under “Settings”.
          </p>
          {fromFile}
        </>
      ) : (
        <>
          <UnderWay jobs={shown} vocabulary={vocabulary} />
          <div class="board-ways">
            <ShelfLinks jobs={shown} />
            {fromFile}
          </div>
          {SHELVES.map((mode) => (
            <Shelf key={mode} mode={mode} jobs={onShelf(shown, mode)} vocabulary={vocabulary} />
          ))}
        </>
      )}
    </main>
  );
}

/** Jobs in the order a learner meets them. */
const SHELVES: readonly Mode[] = ['guided', 'practice', 'assessed'];
const onShelf = (jobs: readonly JobSummary[], mode: Mode) => jobs.filter(({ job }) => job.mode === mode);
const runningOf = ({ attempts }: JobSummary) => attempts.find(({ state }) => state === 'running');

/** What was left half done, before all else: its card may hang far down the board. */
function UnderWay({ jobs, vocabulary }: Omit<ShelfProps, 'mode'>) {
  const left = jobs.filter(runningOf);
  if (left.length === 0) return null;
  return (
    <section aria-labelledby="under-way">
      <h2 id="under-way" class="shelf-title">
        Left half done
      </h2>
      <ul class="under-way">
        {left.map((summary) => {
          const { id, endMs } = runningOf(summary)!;
          return (
            <li key={id}>
              <a href={writeRoute({ screen: 'bench', id })}>
                {spoken(summary.job.card.unit, vocabulary)}, at {clock(endMs)}
              </a>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** Ways down a long board. */
function ShelfLinks({ jobs }: Pick<JobListProps, 'jobs'>) {
  const goTo = (mode: Mode) => {
    const title = document.getElementById(`shelf-${mode}`);
    title?.focus();
    title?.scrollIntoView();
  };
  return (
    <nav class="shelf-links" aria-label="Shelves">
      {SHELVES.filter((mode) => onShelf(jobs, mode).length > 0).map((mode) => (
        <Button key={mode} kind="quiet" onPress={() => goTo(mode)}>
          {modeWords(mode)} ({onShelf(jobs, mode).length})
        </Button>
      ))}
    </nav>
  );
}

interface ShelfProps {
  readonly mode: Mode;
  readonly jobs: readonly JobSummary[];
  readonly vocabulary: Vocabulary;
}

function Shelf({ mode, jobs, vocabulary }: ShelfProps) {
  if (jobs.length === 0) return null;
  return (
    <section aria-labelledby={`shelf-${mode}`}>
      <h2 id={`shelf-${mode}`} class="shelf-title" tabIndex={-1}>
        <span class={`mode mode-${mode}`}>{modeWords(mode)}</span>
      </h2>
      <p class="shelf-words">{modeMeaning(mode)}</p>
      <ul class="slips">
        {jobs.map((summary) => (
          <JobSlip key={summary.job.id} summary={summary} vocabulary={vocabulary} />
        ))}
      </ul>
    </section>
  );
}

function JobSlip(props: { readonly summary: JobSummary; readonly vocabulary: Vocabulary }) {
  const { job, attempts } = props.summary;
  const running = runningOf(props.summary);
  return (
    <li class="slip paper">
      <h3>
        <a href={writeRoute({ screen: 'job', id: job.id })}>{spoken(job.card.unit, props.vocabulary)}</a>
      </h3>
      <p class="slip-complaint">{spoken(job.card.complaint, props.vocabulary)}</p>
      <p class="slip-facts">
        <span>{partList(job.parts)}</span>
        <span>{mainsWords(job.mains)}</span>
        {job.minutes === null ? null : <span>{job.minutes} minutes</span>}
      </p>
      {running ? (
        <p class="slip-state">
          <a class="button button-main" href={writeRoute({ screen: 'bench', id: running.id })}>
            Carry on at {clock(running.endMs)}
          </a>
        </p>
      ) : null}
      {attempts.some((attempt) => attempt.state !== 'running') ? (
        <ul class="slip-done" aria-label={`Finished attempts at ${job.card.unit}`}>
          {attempts
            .filter((attempt) => attempt.state !== 'running')
            .map((attempt) => (
              <li key={attempt.id}>
                <a href={writeRoute({ screen: 'debrief', id: attempt.id })}>{finishedWords(attempt)}</a>
              </li>
            ))}
        </ul>
      ) : null}
    </li>
  );
}

function finishedWords(attempt: AttemptSummary): string {
  const when = dayWords(attempt.startedAt);
  if (attempt.state === 'stopped') return `Stopped, ${when}: read why`;
  const marks =
    attempt.earned === null || attempt.of === null ? '' : `: ${attempt.earned} of ${attempt.of} marks`;
  return `Handed in, ${when}${marks}`;
}
