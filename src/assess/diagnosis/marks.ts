import type { PartKind } from '../../bench/action.ts';
import type { Finding, Verdict } from '../../bench/paper.ts';
import { type Rubric, type ScoringRule, weightOf } from '../../scenario/public/rubric.ts';
import type { Mark } from '../mark.ts';
import { retestOf } from '../retest.ts';
import { conditionsOn, DISPOSITION_WORDS, fullAnswers, listed, PART_TITLES } from '../words.ts';
import type { Worked } from '../worked.ts';
import { type Credit, SOUND } from './expected.ts';
import type { TrueFinding } from './finding.ts';
import { type Matched, matched } from './match.ts';
import { placeWorth } from './place.ts';
import { supportOf } from './support.ts';
import { SURE_TITLES, sureScore } from './sure.ts';
import { remedyOf, truthOfPart } from './truth.ts';

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

/** A verdict held against the part as it lay when it was written. */
interface Case {
  readonly worked: Worked;
  readonly verdict: Verdict;
  readonly entry: number;
  /** Faults still there that the tests of the job can show. */
  readonly told: readonly TrueFinding[];
  /** Faults that a remedy at this bench had cured by then, if the tests of the job can show them. */
  readonly cured: readonly TrueFinding[];
  /** Faults that no test of the job can show. */
  readonly hiddenFromTests: readonly TrueFinding[];
  readonly matches: readonly Matched[];
  /** What the verdict says, less findings that name what was cured. */
  readonly findings: readonly Finding[];
  readonly namingCured: readonly Finding[];
}

function chalkedAt(worked: Worked, entry: number): number | null {
  const marks = worked.film.entries.filter(
    ({ n, action, outcome }) => n < entry && action.type === 'chalk.mark' && outcome.kind === 'done',
  );
  const last = marks.at(-1)?.action;
  return last?.type === 'chalk.mark' ? last.bar : null;
}

const names = ({ expected }: TrueFinding, { condition }: Finding) =>
  (expected.conditions[condition] ?? 0) > 0;

function caseOf(worked: Worked, part: PartKind): Case | null {
  const written = worked.verdicts.get(part);
  if (written === undefined) return null;
  const { entry, verdict } = written;
  const { scenario, design } = worked.film;
  const truth = truthOfPart(part, { scenario, design, condition: worked.conditions[entry]! });
  const shown = truth.filter(({ toldBy }) => toldBy.length > 0);
  const told = shown.filter((one) => !one.cured);
  const cured = shown.filter((one) => one.cured);
  const said = verdict.findings.filter(({ condition }) => condition !== 'notTested');
  const matches = matched(told, said, chalkedAt(worked, entry), design.bars);
  // A finding is held against what is still there first; what is left over may name what was cured.
  const used = matches.map(({ finding }) => finding);
  const namingCured = said.filter(
    (finding) => !used.includes(finding) && cured.some((one) => names(one, finding)),
  );
  const findings = said.filter((finding) => !namingCured.includes(finding));
  const hiddenFromTests = truth.filter(({ toldBy }) => toldBy.length === 0);
  return { worked, verdict, entry, told, cured, hiddenFromTests, matches, findings, namingCured };
}

/** What a finding that names a cured fault is worth: its condition and its place. */
function curedWorth({ cured, worked, entry }: Case, finding: Finding): { condition: number; place: number } {
  const chalked = chalkedAt(worked, entry);
  const of = cured.filter((one) => names(one, finding));
  const place = (one: TrueFinding) => placeWorth(finding.place, chalked, one.place, worked.film.design.bars);
  return {
    condition: Math.max(0, ...of.map(({ expected }) => expected.conditions[finding.condition] ?? 0)),
    place: Math.max(0, ...of.map(place)),
  };
}

/**
 * Nothing is left that the tests could show: sound is right, and so is what was cured at the bench, and the fault itself
 * if the lens gave it away.
 */
function soundShare(held: Case, what: 'condition' | 'place'): number {
  const { findings, namingCured, hiddenFromTests } = held;
  const right = findings.filter(
    (finding) => finding.condition === 'sound' || hiddenFromTests.some((one) => names(one, finding)),
  ).length;
  const named = namingCured.reduce((sum, finding) => sum + curedWorth(held, finding)[what], 0);
  const said = findings.length + namingCured.length;
  return said === 0 ? 0 : (right + named) / said;
}

const answers = ({ verdict }: Case, truth: readonly TrueFinding[]) =>
  listed(truth.map(({ expected }) => fullAnswers(expected.conditions, conditionsOn(verdict.part))));

function soundCondition(held: Case): Share {
  const { hiddenFromTests, cured, entry } = held;
  const sentence =
    cured.length > 0
      ? `What the part had (${answers(held, cured)}) was cured at the bench: that, or sound as it is now, is right.`
      : hiddenFromTests.length > 0
        ? `What is the matter (${answers(held, hiddenFromTests)}) is beyond what these tests can show.`
        : 'The part is sound.';
  return { share: soundShare(held, 'condition'), sentence, entries: [entry] };
}

function conditionShare(held: Case): Share {
  const { matches, findings, namingCured, told, entry } = held;
  if (told.length === 0) return soundCondition(held);
  const earned = matches.reduce((sum, { condition }) => sum + condition, 0);
  const share = earned / Math.max(told.length, findings.length);
  const all = [...findings, ...namingCured];
  const said = listed(all.map(({ condition }) => conditionsOn(held.verdict.part)[condition])) || 'nothing';
  const sentence =
    share === 1 ? `Right: ${said}.` : `The verdict says ${said}; the part has: ${answers(held, told)}.`;
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
    const share = soundShare(held, 'place');
    return {
      share,
      sentence:
        share === 1 ? 'There is no place to name.' : 'A place was named for a fault the part does not have.',
      entries,
    };
  }
  const share = matches.reduce((sum, { place }) => sum + place, 0) / told.length;
  const counts = matches.some(
    ({ finding }) => finding?.place.kind === 'bar' || finding?.place.kind === 'pair',
  );
  if (share === 1)
    return { share, sentence: 'The place is right, as finely as these tests can tell.', entries };
  const sentence =
    chalkedAt(worked, entry) === null && counts
      ? 'No bar was chalked before the verdict, so its count has nothing to start from.'
      : placeSentence(matches);
  return { share, sentence, entries };
}

function placeSentence(matches: readonly Matched[]): string {
  const tooFine = matches.find(({ told: { place: right }, finding, place }) => {
    const placeless = right.pairs.size === 0 && right.bars.size === 0 && right.named === undefined;
    return placeless && place === 0 && finding !== null;
  });
  if (tooFine !== undefined) return 'A place was named that these tests cannot tell.';
  if (matches.some(({ finding }) => finding?.place.kind === 'somewhere'))
    return 'No place was named, though the readings show one.';
  return 'The place is not where the readings stand out.';
}

/**
 * What may happen to a part that was cured: into service once it has been tested again, and to be retested before that.
 * What it called for before the remedy is half right afterwards: the record of what was done, and not of what is next.
 */
function curedDispositions({ cured, worked, entry, verdict }: Case): Credit<Verdict['disposition']> {
  const share = retestOf(worked, verdict.part, entry)?.share ?? 1;
  const before = remedyOf(cured).dispositions;
  if (share < 1) return { ...before, service: 0.5, cleanAndRetest: 1 };
  const half = Object.keys(before).map((answer) => [answer, 0.5] as const);
  return { ...Object.fromEntries(half), service: 1 };
}

function dispositionShare(held: Case): Share {
  const { told, cured, hiddenFromTests, verdict, entry } = held;
  const nothing = cured.length > 0 ? curedDispositions(held) : SOUND.dispositions;
  const right = told.length > 0 ? remedyOf(told).dispositions : nothing;
  const beyond = told.length > 0 ? [] : hiddenFromTests;
  const share = Math.max(
    right[verdict.disposition] ?? 0,
    ...beyond.map(({ expected }) => expected.dispositions[verdict.disposition] ?? 0),
  );
  const said = DISPOSITION_WORDS[verdict.disposition];
  const sentence =
    share === 1
      ? `Right: ${said}.`
      : `The verdict says ${said}; this part calls for: ${fullAnswers(right, DISPOSITION_WORDS)}.`;
  return { share, sentence, entries: [entry] };
}

const NO_VERDICT: Share = { share: 0, sentence: 'No verdict was written.', entries: [] };

function sharesOf(held: Case | null): Record<DiagnosisId, Share> {
  if (held === null)
    return { condition: NO_VERDICT, place: NO_VERDICT, disposition: NO_VERDICT, supported: NO_VERDICT };
  return {
    condition: conditionShare(held),
    place: placeShare(held),
    disposition: dispositionShare(held),
    supported: supportOf(held.worked, held.verdict, held.entry),
  };
}

/** How sure the learner was, where the rubric scores it. */
function sureShare(held: Case | null, right: boolean, rule: ScoringRule): Share {
  if (held === null) return NO_VERDICT;
  return { ...sureScore(rule, held.verdict.sure, right), entries: [held.entry] };
}

/** Marks for one part. Those of an armature go by the plain names, since most jobs are about nothing else. */
function marksOfPart(worked: Worked, part: PartKind, rubric: Rubric): Mark[] {
  const held = caseOf(worked, part);
  const shares = sharesOf(held);
  const marks = (Object.keys(DIAGNOSIS_TITLES) as DiagnosisId[]).flatMap((id) => {
    const weight = weightOf(rubric, id);
    if (weight === null) return [];
    const worth = worthOf(weight);
    return [mark(id, DIAGNOSIS_TITLES[id], shares[id], worth.of, worth.earned(shares[id].share))];
  });
  if (rubric.sure === null) return marks;
  const { rule, weight } = rubric.sure;
  const sure = sureShare(held, shares.condition.share === 1, rule);
  const worth = worthOf(weight);
  return [...marks, mark('sure', SURE_TITLES[rule], sure, worth.of, worth.scored(sure.share))];

  function worthOf(weight: number) {
    return worked.film.points.worth(weight, worked.parts.length, worked.parts.indexOf(part));
  }

  function mark(id: string, title: string, { sentence, entries }: Share, of: number, earned: number): Mark {
    const alone = part === 'armature' && worked.parts.length === 1;
    return {
      id: part === 'armature' ? id : `${part}.${id}`,
      group: 'diagnosis',
      title: alone ? title : `${PART_TITLES[part]}: ${lowerFirst(title)}`,
      earned,
      of,
      sentence,
      entries,
    };
  }
}

function lowerFirst(words: string): string {
  return words[0]!.toLowerCase() + words.slice(1);
}

/** Marks for what was decided about each part: what diagnosis is worth is shared by the parts of the job. */
export function diagnosisMarks(worked: Worked, rubric: Rubric): Mark[] {
  return worked.parts.flatMap((part) => marksOfPart(worked, part, rubric));
}
