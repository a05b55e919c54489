import type { Finding, TestKind, Verdict } from '../../bench/paper.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { limitsOf } from '../../scenario/public/limits.ts';
import { conditionsOf } from '../conditions.ts';
import { acts, type Film } from '../film.ts';
import { weighReadings } from './follow.ts';
import { type Gathered, gatherReadings, readingsFrom, spellsOf } from './gather.ts';
import { type JudgedVerdict, type Judgement, judge } from './judge.ts';
import { remembered } from './memory.ts';
import { createEvidence, type EvidenceModel } from './model.ts';
import type { Posterior } from './posterior.ts';
import type { Reading, Source } from './reading.ts';

/** What is known of an armature's kind, and how probable everything is before anything has been read. */
export interface Ground {
  readonly model: EvidenceModel;
  readonly before: Posterior;
}

/** What a model has worked out serves every attempt at the same type of part. */
const MODELS_REMEMBERED = 4;
const grounds = new Map<string, Ground>();

/** Depends on the job card alone, not on what is hidden. */
export function groundOf({ design, scenario: { public: card } }: Pick<Film, 'design' | 'scenario'>): Ground {
  const { mains, tests } = card;
  const leastMohm = limitsOf(card, design).insulationMohm;
  return remembered(grounds, JSON.stringify([design, mains, tests, leastMohm]), MODELS_REMEMBERED, () => {
    const model = createEvidence({ design, mains, tests, leastMohm });
    return { model, before: weighReadings(model, []) };
  });
}

/** The last verdict on the armature with the readings it can rest on: those taken before it was written. */
export interface Rested {
  readonly entry: number;
  readonly verdict: Verdict;
  /** Bar the chalk was on when it was written. */
  readonly chalkedBar: number | null;
  readonly from: Source;
  /** The armature as it came, and as it lay after the last remedy, if any was done before the verdict. */
  readonly spells: readonly RestedSpell[];
}

export interface RestedSpell {
  readonly gathered: Gathered;
  readonly readings: readonly Reading[];
  /** What was truly the matter then. */
  readonly faults: readonly ArmatureFault[];
}

/** Assessed work stands on what the learner wrote, other work on what the instruments showed. */
export function sourceOf({ scenario }: Film): Source {
  return scenario.public.mode === 'assessed' ? 'sheet' : 'instrument';
}

/** Null without a verdict. */
export function restedOf(film: Film): Rested | null {
  const last = acts(film, 'verdict.write').findLast(({ action }) => action.verdict.part === 'armature');
  if (last === undefined) return null;
  const from = sourceOf(film);
  const conditions = conditionsOf(film);
  const spells = spellsOf(film).filter((spell) => spell.from < last.n);
  return {
    entry: last.n,
    verdict: last.action.verdict,
    chalkedBar: film.stretches.findLast(({ since }) => since < last.n)?.seen.chalkedBar ?? null,
    from,
    spells: spells.map((spell): RestedSpell => {
      const gathered = gatherReadings(film, spell);
      return {
        gathered,
        readings: readingsFrom(gathered, from).filter(({ entry }) => entry < last.n),
        faults: conditions[spell.from + 1]!.armature,
      };
    }),
  };
}

const BEST_FIRST: readonly Judgement[] = ['proven', 'rightNotProven', 'contradicted', 'wrong'];

/** A verdict may be about the part as it came or as it lay after the work done on it: the better of the two counts. */
export function judgeRested(film: Film, rested: Rested): JudgedVerdict {
  const { model, before } = groundOf(film);
  const verdicts = readAs(rested.verdict, model.tests);
  const judged = rested.spells.flatMap(({ readings, faults }) => {
    const after = weighReadings(model, readings);
    return verdicts.map((verdict) => judge(after, before, verdict, { ...rested, faults }));
  });
  return betterOf(judged);
}

/** Where there are gauges, wear may have been measured, which no electrical reading can prove: the rest stands alone. */
function readAs(verdict: Verdict, tests: readonly TestKind[]): Verdict[] {
  const rest = verdict.findings.filter(({ condition }) => condition !== 'worn');
  if (rest.length === verdict.findings.length || !tests.includes('gauges')) return [verdict];
  const sound: Finding = { condition: 'sound', place: { kind: 'somewhere' } };
  return [verdict, { ...verdict, findings: rest.length > 0 ? rest : [sound] }];
}

function betterOf(judged: readonly JudgedVerdict[]): JudgedVerdict {
  const rank = ({ judgement }: JudgedVerdict) => BEST_FIRST.indexOf(judgement);
  return judged.reduce((best, one) => (rank(one) < rank(best) ? one : best));
}
