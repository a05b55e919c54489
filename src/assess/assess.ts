import type { Attempt } from '../attempt/entry.ts';
import { type Rubric, rubricOf } from '../scenario/public/rubric.ts';
import type { PartLibrary } from '../scenario/scenario.ts';
import { diagnosisMarks } from './diagnosis/marks.ts';
import { provenMarks } from './diagnosis/proven.ts';
import { type Film, filmOf } from './film.ts';
import type { Marks } from './mark.ts';
import { procedureMarks } from './procedure/rubric.ts';
import { workedOf } from './worked.ts';

function stoppedBy({ broken }: Film): Marks['stoppedBy'] {
  const critical = broken.find(({ breach, refused }) => breach.critical && !refused);
  return critical === undefined ? null : { entry: critical.entry, breach: critical.breach };
}

/**
 * Marks of a film already played.
 * @param own  the job's own, unless another is tried on it; what stops an attempt is for no rubric to say
 */
export function marksOf(film: Film, own: Rubric = rubricOf(film.scenario.public)): Marks {
  const rubric = film.points.rubricOf(own);
  const worked = workedOf(film);
  const marks = [
    ...procedureMarks(worked, rubric),
    ...diagnosisMarks(worked, rubric),
    ...provenMarks(film, rubric),
  ];
  const sum = (key: 'earned' | 'of') =>
    Math.round(marks.reduce((total, mark) => total + mark[key], 0) * 10) / 10;
  return { marks, earned: sum('earned'), of: sum('of'), stoppedBy: stoppedBy(film) };
}

/**
 * Marks an attempt: it is played again from its acts, and every mark names the entries that earned or lost it.
 * Marks never become competence by themselves; a critical act makes the outcome *not yet* whatever they are.
 */
export function assess(attempt: Attempt, library: PartLibrary): Marks {
  return marksOf(filmOf(attempt, library));
}
