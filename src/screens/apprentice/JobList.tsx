import type { Mode } from '../../bench/port.ts';
import { writeRoute } from '../route.ts';
import { clock, dayWords } from '../shared/time.ts';
import {
  capital,
  mainsWords,
  modeMeaning,
  modeWords,
  partWords,
  spoken,
  type Vocabulary,
} from '../shared/words.ts';
import type { AttemptSummary, JobSummary, Settings } from '../shell.ts';
import './jobs.css';

export interface JobListProps {
  readonly jobs: readonly JobSummary[];
  readonly settings: Settings;
}

/** The board of jobs: one paper slip per unit that has come in. */
export function JobList(props: JobListProps) {
  const { mains, vocabulary } = props.settings;
  const shown = props.jobs.filter(({ job }) => mains === 'all' || job.mains === mains);
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
        <p class="board-empty">
          No job here is for {mains === 'all' ? 'any supply' : mainsWords(mains)}. Choose another supply under
          “Words, sound and motion”.
        </p>
      ) : (
        SHELVES.map((mode) => (
          <Shelf
            key={mode}
            mode={mode}
            jobs={shown.filter(({ job }) => job.mode === mode)}
            vocabulary={vocabulary}
          />
        ))
      )}
    </main>
  );
}

/** Jobs in the order a learner meets them. */
const SHELVES: readonly Mode[] = ['guided', 'practice', 'assessed'];

interface ShelfProps {
  readonly mode: Mode;
  readonly jobs: readonly JobSummary[];
  readonly vocabulary: Vocabulary;
}

function Shelf({ mode, jobs, vocabulary }: ShelfProps) {
  if (jobs.length === 0) return null;
  return (
    <section aria-labelledby={`shelf-${mode}`}>
      <h2 id={`shelf-${mode}`} class="shelf-title">
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
  const running = attempts.find((attempt) => attempt.state === 'running');
  return (
    <li class="slip paper">
      <h3>
        <a href={writeRoute({ screen: 'job', id: job.id })}>{spoken(job.card.unit, props.vocabulary)}</a>
      </h3>
      <p class="slip-complaint">{spoken(job.card.complaint, props.vocabulary)}</p>
      <p class="slip-facts">
        <span>{capital(job.parts.map(partWords).join(', ').toLowerCase())}</span>
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
  const marks = attempt.earned === null || attempt.of === null ? '' : ` ${attempt.earned} of ${attempt.of}`;
  return `Handed in, ${when}:${marks} debrief`;
}
