import { marksOf } from '../../assess/assess.ts';
import { passCharts } from '../../assess/charts.ts';
import type { EvidenceStory } from '../../assess/evidence/story/shape.ts';
import { evidenceStories } from '../../assess/evidence/story/stories.ts';
import { type Film, filmOf } from '../../assess/film.ts';
import type { Attempt } from '../../attempt/entry.ts';
import type { PartLibrary } from '../../scenario/scenario.ts';
import type { DebriefData } from '../../screens/shell.ts';
import type { AttemptResult } from '../../store/attemptStore.ts';
import { passesOf } from '../passes.ts';

/** What can be asked of a finished attempt. */
export interface Answers {
  readonly result: AttemptResult;
  readonly debrief: Pick<DebriefData, 'marks' | 'passes'>;
  /** One for each part of which readings can say something. */
  readonly evidence: readonly EvidenceStory[];
}

export interface Question {
  readonly ask: keyof Answers;
  readonly attempt: Attempt;
  readonly parts: PartLibrary;
}

/** The last film played: debrief and evidence are asked for one after the other. */
let last: { readonly id: string; readonly entries: number; readonly film: Film } | null = null;

function playedFilm({ attempt, parts }: Question): Film {
  const { id, entries } = attempt;
  if (last?.id !== id || last.entries !== entries.length)
    last = { id, entries: entries.length, film: filmOf(attempt, parts) };
  return last.film;
}

export function answer(question: Question): Answers[keyof Answers] {
  const film = playedFilm(question);
  switch (question.ask) {
    case 'result': {
      const { earned, of, stoppedBy } = marksOf(film);
      return { state: stoppedBy ? 'stopped' : 'handedIn', earned, of };
    }
    case 'debrief':
      return { marks: marksOf(film), passes: passesOf(passCharts(film)) };
    case 'evidence':
      return evidenceStories(film);
  }
}
