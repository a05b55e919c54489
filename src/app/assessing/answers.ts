import { marksOf } from '../../assess/assess.ts';
import { passCharts } from '../../assess/charts.ts';
import type { EvidenceStory } from '../../assess/evidence/story/shape.ts';
import { evidenceStories } from '../../assess/evidence/story/stories.ts';
import { acts, type Film, filmOf } from '../../assess/film.ts';
import type { Attempt } from '../../attempt/entry.ts';
import { type Divergence, replay } from '../../attempt/replay.ts';
import type { PartLibrary } from '../../scenario/scenario.ts';
import type { DebriefData } from '../../screens/shell.ts';
import type { AttemptResult } from '../../store/attemptStore.ts';
import { passesOf } from '../passes.ts';
import { expertAttempt } from './expertAttempt.ts';

/** What can be asked of a finished attempt. */
export interface Answers {
  /** Null for one that was neither handed in nor stopped. */
  readonly result: AttemptResult | null;
  readonly debrief: Pick<DebriefData, 'marks' | 'passes'>;
  /** One for each part of which readings can say something. */
  readonly evidence: readonly EvidenceStory[];
  /** Where doing it all again first parts from the record; null: nowhere. */
  readonly replay: Divergence | null;
  /** The scripted expert at the same job, from observations alone. */
  readonly expert: Attempt;
}

export interface Question {
  readonly ask: keyof Answers;
  readonly attempt: Attempt;
  readonly parts: PartLibrary;
}

/** The last film played: debrief and evidence are asked for one after the other. Two files may carry one id. */
let last: { readonly text: string; readonly film: Film } | null = null;

function playedFilm({ attempt, parts }: Question): Film {
  const text = JSON.stringify(attempt);
  if (last?.text !== text) last = { text, film: filmOf(attempt, parts) };
  return last.film;
}

export function answer(question: Question): Answers[keyof Answers] {
  const { attempt, parts } = question;
  if (question.ask === 'replay') {
    const again = replay(attempt, parts);
    return again.agreed ? null : again.firstDivergence;
  }
  if (question.ask === 'expert') {
    return expertAttempt(attempt, parts);
  }
  const film = playedFilm(question);
  switch (question.ask) {
    case 'result': {
      const { earned, of, stoppedBy } = marksOf(film);
      if (stoppedBy !== null) return { state: 'stopped', earned, of };
      return acts(film, 'job.handIn').length > 0 ? { state: 'handedIn', earned, of } : null;
    }
    case 'debrief':
      return { marks: marksOf(film), passes: passesOf(passCharts(film)) };
    case 'evidence':
      return evidenceStories(film);
  }
}
