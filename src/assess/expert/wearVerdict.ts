import type { PartKind } from '../../bench/action.ts';
import type { Finding } from '../../bench/paper.ts';
import { partOfBrush } from '../../bench/touched.ts';
import type { Job } from '../../scenario/public/job.ts';
import type { Gauged, Notes } from './notes.ts';

/** What the gauges say against the card's limits. */

const WORN: Finding = { condition: 'worn', place: { kind: 'somewhere' } };

/** The last reading of a gauge: earlier ones were taken before work. */
export function gauged(notes: Pick<Notes, 'gauges'>, gauge: Gauged['gauge']): number | null {
  return notes.gauges.filter((one) => one.gauge === gauge).at(-1)?.mm ?? null;
}

/** Nothing more may come off: the part is scrap. */
export function isTurnedDown(notes: Notes, { limits }: Job): boolean {
  const diameter = gauged(notes, 'diameter');
  return diameter !== null && diameter < limits.commutatorDiameterMm;
}

export function runsOut(notes: Notes, { limits }: Job): boolean {
  return (gauged(notes, 'runOut') ?? 0) > limits.runOutMm;
}

export function isShallow(notes: Notes, { limits }: Job): boolean {
  return (gauged(notes, 'undercut') ?? Number.POSITIVE_INFINITY) < limits.undercutMm;
}

/** A skim takes a tenth off the radius beside what runs out: common practice, figures of this bench. */
const SKIM_MM = 0.1;

/** Whether the diameter bears a skim. */
export function bearsSkim(notes: Notes, { limits }: Job): boolean {
  const diameter = gauged(notes, 'diameter');
  const offMm = 2 * (SKIM_MM + (gauged(notes, 'runOut') ?? 0));
  return diameter !== null && diameter - offMm >= limits.commutatorDiameterMm;
}

function hasShortBrush(part: PartKind, { gauges }: Notes, { limits }: Job): boolean {
  return gauges.some(
    ({ brush, mm }) => brush !== null && partOfBrush(brush) === part && mm < limits.brushLengthMm,
  );
}

export function wearFindings(part: PartKind, notes: Notes, job: Job): Finding[] {
  const worn =
    part === 'armature'
      ? isTurnedDown(notes, job) || runsOut(notes, job) || isShallow(notes, job)
      : hasShortBrush(part, notes, job);
  return worn ? [WORN] : [];
}
