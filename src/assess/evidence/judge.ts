import type { Finding, Verdict } from '../../bench/paper.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import type { CaseTable } from './cases.ts';
import { insulationShows, nearestInsulation } from './insulation.ts';
import { likenessOf } from './likeness.ts';
import type { EvidenceModel } from './model.ts';
import { type Claim, claimOf, type Meaning, meaningOf } from './naming.ts';
import type { Posterior, StateSet } from './posterior.ts';
import { nearestSuspect } from './suspects.ts';

/** How a verdict stands to the learner's own readings. */
export type Judgement = 'proven' | 'rightNotProven' | 'contradicted' | 'wrong';

/** From here on a verdict is proven. */
export const PROVEN = 0.95;
/** Below this, and at most a tenth of what it was before any reading, a verdict is contradicted. */
export const CONTRADICTED = 0.05;
export const CONTRADICTED_SHARE = 0.1;

/** One finding of a verdict weighed. */
export interface JudgedFinding {
  readonly claim: Claim;
  readonly judgement: Judgement;
  /** Whether it is true of the part. */
  readonly right: boolean;
  /** Probability that the part has this condition, and has it at the marked place. */
  readonly condition: number;
  readonly place: number;
  /** Both before anything was read. */
  readonly before: { readonly condition: number; readonly place: number };
}

export interface JudgedVerdict {
  readonly judgement: Judgement;
  readonly findings: readonly JudgedFinding[];
  /** Faults the allowed tests can show that no finding names. */
  readonly missed: readonly ArmatureFault[];
}

/** Where the part's truth comes in: for saying right or wrong afterwards, never for weighing. */
export interface Truth {
  readonly faults: readonly ArmatureFault[];
  /** Bar the chalk was on when the verdict was written. */
  readonly chalkedBar: number | null;
}

/**
 * Judges a verdict by what the readings make probable: proven from 0.95 on condition and marked place, among faults
 * the allowed tests can show; what they cannot tell apart counts as one.
 * @param after  with all the readings weighed
 * @param before with none
 */
export function judge(after: Posterior, before: Posterior, verdict: Verdict, truth: Truth): JudgedVerdict {
  const { model } = after;
  const states = truth.faults.map((fault) => trueState(model, fault));
  const shown = states.filter(({ showable }) => showable);
  const findings = forReadings(model, verdict, truth).map((finding) =>
    judgeFinding(after, before, finding, claimOf(finding, truth.chalkedBar, model.design.bars), shown),
  );
  const meanings = findings.map(({ claim }) => meaningFor(model, claim));
  const missed = shown
    .filter((state) => !meanings.some((meaning) => holds(meaning, state)))
    .map(({ fault }) => fault);
  return { judgement: overall(findings, missed.length), findings, missed };
}

/** Dirt that only the lens shows is rightly named and for no reading to prove: the rest stands alone. */
function forReadings(
  model: EvidenceModel,
  { findings }: Verdict,
  { faults, chalkedBar }: Truth,
): readonly Finding[] {
  if (scatterShows(model) || !faults.some(({ kind }) => kind === 'dirtyCommutator')) return findings;
  const isDirt = (finding: Finding) => {
    const meaning = meaningFor(model, claimOf(finding, chalkedBar, model.design.bars));
    return typeof meaning !== 'string' && meaning.dirty;
  };
  const rest = findings.filter((finding) => !isDirt(finding));
  const isBare = rest.length === 0 && findings.length > 0;
  return isBare ? [{ condition: 'sound', place: { kind: 'somewhere' } }] : rest;
}

function overall(findings: readonly JudgedFinding[], missed: number): Judgement {
  const some = (judgement: Judgement) => findings.some((finding) => finding.judgement === judgement);
  if (some('contradicted')) return 'contradicted';
  if (some('wrong') || findings.length === 0) return 'wrong';
  return some('rightNotProven') || missed > 0 ? 'rightNotProven' : 'proven';
}

/** A claim of a fault, or of soundness, as a set of states. */
type Set = Meaning | 'sound' | 'notTested';

function meaningFor(model: EvidenceModel, claim: Claim): Set {
  if (claim.condition === 'sound' || claim.condition === 'notTested') return claim.condition;
  return meaningOf(model, claim);
}

function judgeFinding(
  after: Posterior,
  before: Posterior,
  { condition }: Finding,
  claim: Claim,
  shown: readonly TrueState[],
): JudgedFinding {
  const anywhere = meaningFor(after.model, { condition, mark: null });
  const meaning = meaningFor(after.model, claim);
  const chances = (posterior: Posterior) => ({
    condition: chanceOf(posterior, anywhere),
    place: chanceOf(posterior, meaning),
  });
  const now = chances(after);
  const then = chances(before);
  const right = isRight(meaning, shown);
  return { claim, judgement: judgementOf(meaning, right, now, then), right, ...now, before: then };
}

interface Chances {
  readonly condition: number;
  readonly place: number;
}

function judgementOf(meaning: Set, right: boolean, now: Chances, then: Chances): Judgement {
  if (meaning === 'notTested') return 'rightNotProven';
  const fallen = now.place <= CONTRADICTED && now.place <= CONTRADICTED_SHARE * then.place;
  if (fallen && then.place > 0) return 'contradicted';
  if (!right) return 'wrong';
  return now.condition >= PROVEN && now.place >= PROVEN ? 'proven' : 'rightNotProven';
}

/** Probability of a claim. */
export function chanceOf(posterior: Posterior, meaning: Set): number {
  if (meaning === 'notTested') return 0;
  if (meaning === 'sound') return posterior.chance(soundStates(posterior));
  const free = {
    winding: freeOf(posterior.cases, meaning.winding),
    insulation: meaning.insulation.map((right) => 1 - right),
    surface: Uint8Array.from([1, meaning.dirty ? 0 : 1]),
  };
  return 1 - posterior.chance(free);
}

/** Cases of the winding without any of the marked suspects in them. */
function freeOf(cases: CaseTable, marked: Uint8Array): Uint8Array {
  const free = new Uint8Array(cases.count).fill(1);
  for (let w = 0; w < cases.singles; w++) if (marked[w] === 1) free[w] = 0;
  cases.several.forEach(({ suspects }, k) => {
    if (suspects.some((suspect) => marked[suspect] === 1)) free[cases.none + 1 + k] = 0;
  });
  return free;
}

/** States in which the allowed tests could show nothing wrong. */
function soundStates({ cases, model }: Posterior): StateSet {
  const { showable } = likenessOf(model);
  const winding = freeOf(cases, showable);
  winding[cases.none] = 0;
  winding[cases.grounds] = 0;
  const insulation = Uint8Array.from(model.insulation, (suspect) =>
    insulationShows(suspect, model.tests) ? 0 : 1,
  );
  return { winding, insulation, surface: Uint8Array.from([1, scatterShows(model) ? 0 : 1]) };
}

/** Dirt scatters ammeter readings; without an ammeter nothing shows it but the lens, and clues prove nothing. */
function scatterShows({ tests }: EvidenceModel): boolean {
  return tests.includes('neighbour') || tests.includes('spaced');
}

/** A fault of the part among the states the engine weighs. */
interface TrueState {
  readonly fault: ArmatureFault;
  readonly suspect: number | null;
  readonly insulation: number | null;
  readonly dirty: boolean;
  readonly showable: boolean;
}

function trueState(model: EvidenceModel, fault: ArmatureFault): TrueState {
  if (fault.kind === 'dirtyCommutator')
    return { fault, suspect: null, insulation: null, dirty: true, showable: scatterShows(model) };
  const insulation = nearestInsulation(model.insulation, model.dictionary.mains, fault);
  if (insulation !== null) {
    const showable = insulationShows(model.insulation[insulation]!, model.tests);
    return { fault, suspect: null, insulation, dirty: false, showable };
  }
  const suspect = nearestSuspect(model.suspects, fault);
  const showable = suspect !== null && likenessOf(model).showable[suspect] === 1;
  return { fault, suspect, insulation: null, dirty: false, showable };
}

function holds(meaning: Set, { suspect, insulation, dirty }: TrueState): boolean {
  if (meaning === 'sound' || meaning === 'notTested') return false;
  return (
    (suspect !== null && meaning.winding[suspect] === 1) ||
    (insulation !== null && meaning.insulation[insulation] === 1) ||
    (dirty && meaning.dirty)
  );
}

/** Soundness is right of a part with nothing that could be shown; "not tested" claims nothing. */
function isRight(meaning: Set, shown: readonly TrueState[]): boolean {
  if (meaning === 'notTested') return true;
  if (meaning === 'sound') return shown.length === 0;
  return shown.some((state) => holds(meaning, state));
}
