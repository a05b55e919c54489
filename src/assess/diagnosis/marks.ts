import type { Finding, Verdict } from '../../bench/paper.ts';
import { type Rubric, weightOf } from '../../scenario/public/rubric.ts';
import type { Mark } from '../mark.ts';
import { CONDITION_WORDS, DISPOSITION_WORDS, fullAnswers, listed } from '../words.ts';
import type { Worked } from '../worked.ts';
import { SOUND } from './expected.ts';
import { type Matched, matched } from './match.ts';
import { supportOf } from './support.ts';
import { SURE_TITLES, sureScore } from './sure.ts';
import { remedyOf, type TrueFinding, truthOf } from './truth.ts';

/** What a verdict is marked for; what each is worth stands in the rubric. */
export const DIAGNOSIS_TITLES = {
  condition: 'Condition named',
  place: 'Place named, no finer than the tests can tell',
  disposition: 'What happens to the part next',
  supported: 'Verdict rests on tests that were done',
} as const;
type DiagnosisId = keyof typeof DIAGNOSIS_TITLES;

interface Share {
  readonly share: number;
  readonly sentence: string;
  readonly entries: readonly number[];
}

/** A verdict held against the part. */
export interface Case {
  readonly worked: Worked;
  readonly verdict: Verdict;
  readonly entry: number;
  /** Faults that the tests of the job can show. */
  readonly told: readonly TrueFinding[];
  /** Faults that none of them can. */
  readonly hiddenFromTests: readonly TrueFinding[];
  readonly matches: readonly Matched[];
  readonly findings: readonly Finding[];
}

function chalkedAt(worked: Worked, entry: number): number | null {
  const marks = worked.film.entries.filter(
    ({ n, action, outcome }) => n < entry && action.type === 'chalk.mark' && outcome.kind === 'done',
  );
  const last = marks.at(-1)?.action;
  return last?.type === 'chalk.mark' ? last.bar : null;
}

function caseOf(worked: Worked): Case | null {
  if (worked.verdict === null) return null;
  const { entry, verdict } = worked.verdict;
  const truth = truthOf(worked.film.scenario, worked.film.design);
  const told = truth.filter(({ toldBy }) => toldBy.length > 0);
  const findings = verdict.findings.filter(({ condition }) => condition !== 'notTested');
  const matches = matched(told, findings, chalkedAt(worked, entry), worked.film.design.bars);
  const hiddenFromTests = truth.filter(({ toldBy }) => toldBy.length === 0);
  return { worked, verdict, entry, told, hiddenFromTests, matches, findings };
}

/** Nothing the tests could show: sound is right, and so is the fault itself if the lens gave it away. */
function soundCondition({ findings, hiddenFromTests, entry }: Case): Share {
  const named = (finding: Finding) =>
    finding.condition === 'sound' ||
    hiddenFromTests.some(({ expected }) => (expected.conditions[finding.condition] ?? 0) > 0);
  const right = findings.filter(named).length;
  const share = findings.length === 0 ? 0 : right / findings.length;
  const hidden = hiddenFromTests.map(({ expected }) => fullAnswers(expected.conditions, CONDITION_WORDS));
  const sentence =
    hidden.length > 0
      ? `What is the matter (${listed(hidden)}) is beyond what these tests can show.`
      : 'The part is sound.';
  return { share, sentence, entries: [entry] };
}

function conditionShare(held: Case): Share {
  const { matches, findings, told, entry } = held;
  if (told.length === 0) return soundCondition(held);
  const earned = matches.reduce((sum, { condition }) => sum + condition, 0);
  const share = earned / Math.max(told.length, findings.length);
  const truth = listed(told.map(({ expected }) => fullAnswers(expected.conditions, CONDITION_WORDS)));
  const said = listed(findings.map(({ condition }) => CONDITION_WORDS[condition])) || 'nothing';
  const sentence = share === 1 ? `Right: ${said}.` : `The verdict says ${said}; the part has: ${truth}.`;
  return { share, sentence, entries: [entry] };
}

/** Settled readings at the place of the fault: where it could be seen. */
function tellingEntries({ worked, told }: Case): number[] {
  const bars = new Set(told.flatMap(({ place }) => [...place.pairs.keys(), ...place.bars.keys()]));
  const readings = worked.neighbour.readings.filter(({ bars: [a, b] }) => bars.has(a) && bars.has(b));
  return readings.map(({ entry }) => entry).slice(0, 4);
}

function placeShare(held: Case): Share {
  const { told, matches, entry, worked } = held;
  const entries = [...tellingEntries(held), entry];
  if (told.length === 0) {
    const { share } = soundCondition(held);
    return {
      share,
      sentence:
        share === 1 ? 'There is no place to name.' : 'A place was named for a fault the part does not have.',
      entries,
    };
  }
  const share = matches.reduce((sum, { place }) => sum + place, 0) / told.length;
  const uncounted =
    chalkedAt(worked, entry) === null && matches.some(({ finding }) => finding?.place.kind !== 'somewhere');
  if (share === 1)
    return { share, sentence: 'The place is right, as finely as these tests can tell.', entries };
  const sentence = uncounted
    ? 'No bar was chalked before the verdict, so its count has nothing to start from.'
    : placeSentence(matches);
  return { share, sentence, entries };
}

function placeSentence(matches: readonly Matched[]): string {
  const tooFine = matches.find(({ told, finding, place }) => {
    const placeless = told.place.pairs.size === 0 && told.place.bars.size === 0;
    return placeless && place === 0 && finding !== null;
  });
  if (tooFine !== undefined) return 'A place was named that these tests cannot tell.';
  if (matches.some(({ finding }) => finding?.place.kind === 'somewhere'))
    return 'No place was named, though the readings round the commutator show one.';
  return 'The place is not where the readings stand out.';
}

function dispositionShare({ told, hiddenFromTests, verdict, entry }: Case): Share {
  const remedy = told.length > 0 ? remedyOf(told) : SOUND;
  const beyond =
    told.length > 0
      ? 0
      : Math.max(
          0,
          ...hiddenFromTests.map(({ expected }) => expected.dispositions[verdict.disposition] ?? 0),
        );
  const share = Math.max(remedy.dispositions[verdict.disposition] ?? 0, beyond);
  const right = fullAnswers(remedy.dispositions, DISPOSITION_WORDS);
  const said = DISPOSITION_WORDS[verdict.disposition];
  const sentence =
    share === 1 ? `Right: ${said}.` : `The verdict says ${said}; this part calls for: ${right}.`;
  return { share, sentence, entries: [entry] };
}

const NO_VERDICT: Share = { share: 0, sentence: 'No verdict was written.', entries: [] };

function sharesOf(held: Case | null, worked: Worked): Record<DiagnosisId, Share> {
  if (held === null)
    return { condition: NO_VERDICT, place: NO_VERDICT, disposition: NO_VERDICT, supported: NO_VERDICT };
  return {
    condition: conditionShare(held),
    place: placeShare(held),
    disposition: dispositionShare(held),
    supported: supportOf(worked, held.verdict, held.entry),
  };
}

/** A mark for knowing how much one knows, where the rubric has one. */
function sureMarks(held: Case | null, right: boolean, { sure }: Rubric): Mark[] {
  if (sure === null) return [];
  const scored = held === null ? NO_VERDICT : sureScore(sure.rule, held.verdict.sure, right);
  const entries = held === null ? [] : [held.entry];
  const title = SURE_TITLES[sure.rule];
  return [diagnosisMark('sure', title, sure.weight, { ...scored, entries })];
}

function diagnosisMark(id: string, title: string, of: number, { share, sentence, entries }: Share): Mark {
  return { id, group: 'diagnosis', title, earned: Math.round(share * of * 10) / 10, of, sentence, entries };
}

/** Marks for what was decided about the part. */
export function diagnosisMarks(worked: Worked, rubric: Rubric): Mark[] {
  const held = caseOf(worked);
  const shares = sharesOf(held, worked);
  const marks = (Object.keys(DIAGNOSIS_TITLES) as DiagnosisId[]).flatMap((id) => {
    const weight = weightOf(rubric, id);
    return weight === null ? [] : [diagnosisMark(id, DIAGNOSIS_TITLES[id], weight, shares[id])];
  });
  return [...marks, ...sureMarks(held, shares.condition.share === 1, rubric)];
}
