import { MAT_PARTS, type MatPart, type PartKind } from '../../bench/action.ts';
import type { TestKind } from '../../bench/paper.ts';
import { type Rubric, weightOf } from '../../scenario/public/rubric.ts';
import type { ScenarioPublic } from '../../scenario/scenario.ts';
import type { Judgement } from '../evidence/judge.ts';
import { canBeProven, matRestedOf } from '../evidence/mat/ofAttempt.ts';
import { judgeRested, type Rested, restedOf } from '../evidence/ofAttempt.ts';
import type { Film } from '../film.ts';
import type { Mark } from '../mark.ts';
import type { Worth } from '../points.ts';
import { PART_TITLES, percentWords } from '../words.ts';

export const PROVEN_ID = 'proven';
export const PROVEN_TITLE = 'Verdict proven by own readings';
const ARMATURE_TITLE = 'Verdict on the armature proven by own readings';

/** A right verdict that is not yet proven earns at most this share, and that only as far as the readings carry it. */
const NOT_PROVEN = 0.5;

/** Tests of an armature whose readings are weighed. The lens alone proves nothing. */
const WEIGHED: readonly TestKind[] = ['spaced', 'neighbour', 'ground', 'strip', 'megohm', 'millivolt'];

/** Parts of a job of which own readings may prove a verdict. */
export function provableParts(card: ProvableCard): PartKind[] {
  const mat = MAT_PARTS.filter((part) => canBeProven(card, part));
  const isRead = card.parts.includes('armature') && card.tests.some((test) => WEIGHED.includes(test));
  return isRead ? ['armature', ...mat] : mat;
}
type ProvableCard = Pick<ScenarioPublic, 'parts' | 'tests'>;

/** A verdict on any part as far as its mark goes. */
interface Judged {
  readonly judgement: Judgement;
  readonly findings: readonly { readonly condition: number; readonly place: number }[];
  readonly missed: readonly unknown[];
}

/** Chance of the least probable finding, each with its place. */
function leastChance({ findings }: Judged): number {
  return Math.min(1, ...findings.map(({ condition, place }) => Math.min(condition, place)));
}

/** How much of the mark a judged verdict earns, 0..1. A lucky guess earns hardly anything: its chance is small. */
export function provenShare(judged: Judged): number {
  if (judged.judgement === 'proven') return 1;
  if (judged.judgement !== 'rightNotProven') return 0;
  const { findings, missed } = judged;
  return (NOT_PROVEN * leastChance(judged) * findings.length) / (findings.length + missed.length);
}

/** The judgement in one sentence. */
export function provenSentence(judged: Judged, { from }: Pick<Rested, 'from'>): string {
  const chance = percentWords(leastChance(judged));
  const readings = from === 'sheet' ? 'what you wrote on the sheet' : 'your own readings';
  switch (judged.judgement) {
    case 'proven':
      return `Proven: by ${readings} it is ${chance} likely, at the place you named.`;
    case 'rightNotProven':
      return judged.missed.length > 0
        ? `What you named is right, but another fault that these tests can show is missing.`
        : `Right, but not yet proven: by ${readings} it is ${chance} likely, and 95 % counts as proven.`;
    case 'contradicted':
      return `It goes against ${readings}: by them, what you named is ${chance} likely.`;
    case 'wrong':
      return `Not what the part has; by ${readings} it was ${chance} likely.`;
  }
}

/** Marks for what the learner's own readings make of the verdict on each part. */
export function provenMarks(film: Film, rubric: Rubric): Mark[] {
  const weight = weightOf(rubric, PROVEN_ID);
  if (weight === null) return [];
  const { parts } = film.scenario.public;
  return provableParts(film.scenario.public).map((part) => {
    // What diagnosis is worth is shared by the parts of the job.
    const { of } = film.points.worth(weight, parts.length, parts.indexOf(part));
    const worth = film.points.worth(of);
    return part === 'armature' ? armatureMark(film, worth) : matMark(film, part, worth);
  });
}

function armatureMark(film: Film, worth: Worth): Mark {
  const rested = restedOf(film);
  const mark = { id: PROVEN_ID, group: 'diagnosis', title: ARMATURE_TITLE, of: worth.of } as const;
  return markOf(mark, worth, rested && { ...rested, judged: judgeRested(film, rested) });
}

function matMark(film: Film, part: MatPart, worth: Worth): Mark {
  const title = `${PART_TITLES[part]}: verdict proven by own readings`;
  const mark = { id: `${part}.${PROVEN_ID}`, group: 'diagnosis', title, of: worth.of } as const;
  return markOf(mark, worth, matRestedOf(film, part));
}

function markOf(
  mark: Pick<Mark, 'id' | 'group' | 'title' | 'of'>,
  worth: Worth,
  rested: (Pick<Rested, 'from' | 'entry'> & { readonly judged: Judged }) | null,
): Mark {
  if (rested === null) return { ...mark, earned: 0, sentence: 'No verdict was written.', entries: [] };
  const earned = worth.earned(provenShare(rested.judged));
  return { ...mark, earned, sentence: provenSentence(rested.judged, rested), entries: [rested.entry] };
}
