import type { Condition, Finding, Verdict } from '../../../bench/paper.ts';
import type { TrueFinding } from '../../diagnosis/finding.ts';
import { placeWorth } from '../../diagnosis/place.ts';
import { CONTRADICTED, CONTRADICTED_SHARE, type Judgement, PROVEN } from '../judge.ts';
import type { Case, Group } from './case.ts';

/** One finding of a verdict on field frame or brush plate, weighed. */
export interface MatJudgedFinding extends Chance {
  readonly finding: Finding;
  readonly judgement: Judgement;
  /** Whether it is true of the part. */
  readonly right: boolean;
  /** Both chances before anything was read. */
  readonly before: Chance;
}

export interface MatJudged {
  readonly judgement: Judgement;
  readonly findings: readonly MatJudgedFinding[];
  /** Faults the allowed tests can show that no finding names. */
  readonly missed: readonly TrueFinding[];
}

/** A part as weighed, with what each fault it could have may rightly be called. */
export interface Weighed<F> {
  readonly groups: readonly Group<F>[];
  readonly tellingOf: (fault: F) => TrueFinding<F> | null;
}

/** How right a condition is for a fault; what the tests cannot tell apart is wholly right. */
const names = (told: TrueFinding, condition: Condition) => told.expected.conditions[condition] ?? 0;
const lies = (told: TrueFinding, { place }: Finding) => placeWorth(place, null, told.place, 1);
export const isTold = ({ toldBy }: TrueFinding) => toldBy.length > 0;

/**
 * Judges a verdict by what the readings make probable: proven from 0.95 on condition and place, among faults the
 * allowed tests can show; what they cannot tell apart counts as one.
 * @param truth what the part really has, for saying right or wrong afterwards, never for weighing
 */
export function judgeMat<F>(
  weighed: Weighed<F>,
  verdict: Pick<Verdict, 'findings'>,
  truth: readonly TrueFinding[],
): MatJudged {
  const told = truth.filter(isTold);
  const beyond = truth.filter((one) => !isTold(one));
  // Seen by the lens alone: right, and for no reading to prove.
  const said = verdict.findings.filter(
    (finding) => !beyond.some((one) => names(one, finding.condition) > 0 && lies(one, finding) > 0),
  );
  const sound: Finding = { condition: 'sound', place: { kind: 'somewhere' } };
  const list = said.length === 0 && verdict.findings.length > 0 ? [sound] : said;
  const findings = list.map((finding) => judgeFinding(weighed, finding, told));
  const missed = told.filter((one) => !list.some((finding) => worth(one, finding) > 0));
  return { judgement: overall(findings, missed.length), findings, missed };
}

function overall(findings: readonly MatJudgedFinding[], missed: number): Judgement {
  const some = (judgement: Judgement) => findings.some((finding) => finding.judgement === judgement);
  if (some('contradicted')) return 'contradicted';
  if (some('wrong') || findings.length === 0) return 'wrong';
  return some('rightNotProven') || missed > 0 ? 'rightNotProven' : 'proven';
}

/** How right a finding is of one fault, 0 to 1. */
export function worth(told: TrueFinding, finding: Finding): number {
  return Math.min(names(told, finding.condition), lies(told, finding));
}

function judgeFinding<F>(
  weighed: Weighed<F>,
  finding: Finding,
  told: readonly TrueFinding[],
): MatJudgedFinding {
  if (finding.condition === 'notTested')
    return { finding, judgement: 'rightNotProven', right: true, ...NO_CHANCE, before: NO_CHANCE };
  const chances = chancesOf(weighed, finding);
  const right =
    finding.condition === 'sound'
      ? Number(told.length === 0)
      : Math.max(0, ...told.map((one) => worth(one, finding)));
  const { before, after } = chances;
  return { finding, judgement: judgementOf(right, chances), right: right > 0, ...after, before };
}

/** Probability that the part has a condition, and has it at the named place. */
interface Chance {
  readonly condition: number;
  readonly place: number;
}
const NO_CHANCE: Chance = { condition: 0, place: 0 };
type When = 'before' | 'after';
type Chances = Readonly<Record<When, Chance>>;

function judgementOf(right: number, { before, after }: Chances): Judgement {
  const fallen = after.place <= CONTRADICTED && after.place <= CONTRADICTED_SHARE * before.place;
  if (fallen && before.place > 0) return 'contradicted';
  if (right === 0) return 'wrong';
  return right === 1 && after.condition >= PROVEN && after.place >= PROVEN ? 'proven' : 'rightNotProven';
}

function chancesOf<F>({ groups, tellingOf }: Weighed<F>, finding: Finding): Chances {
  const known = new Map<F, TrueFinding | null>();
  const telling = (fault: F) => {
    if (!known.has(fault)) known.set(fault, tellingOf(fault));
    return known.get(fault)!;
  };
  const has = (test: (told: TrueFinding) => boolean) => (one: Case<F>) =>
    one.faults?.some((fault) => {
      const told = telling(fault);
      return told !== null && isTold(told) && test(told);
    }) === true;
  if (finding.condition === 'sound') {
    const something = has(() => true);
    const all = (when: When) => product(groups, when, (one) => one.faults !== null && !something(one));
    const [before, after] = [all('before'), all('after')];
    return { before: { condition: before, place: before }, after: { condition: after, place: after } };
  }
  const called = has((told) => names(told, finding.condition) === 1);
  const placed = has((told) => worth(told, finding) === 1);
  const some = (when: When, test: (one: Case<F>) => boolean) =>
    1 - product(groups, when, (one) => !test(one));
  const of = (when: When) => ({ condition: some(when, called), place: some(when, placed) });
  return { before: of('before'), after: of('after') };
}

/** Chance that the case of every group passes a test. */
function product<F>(groups: readonly Group<F>[], when: When, test: (one: Case<F>) => boolean): number {
  return groups.reduce(
    (all, group) => all * group.reduce((sum, one) => (test(one) ? sum + one[when] : sum), 0),
    1,
  );
}
