import { type Judgement, judge } from '../../assess/evidence/judge.ts';
import { createEvidence, type EvidenceModel } from '../../assess/evidence/model.ts';
import { coilsOfPair } from '../../assess/evidence/placing.ts';
import { type Possibility, possibilitiesOf } from '../../assess/evidence/possibilities.ts';
import type { Posterior } from '../../assess/evidence/posterior.ts';
import { Weigher } from '../../assess/evidence/weigher.ts';
import type { Finding, Verdict } from '../../bench/paper.ts';
import { seeded } from '../../engine/math/random.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { TrialBench } from './bench.ts';
import { LEARNERS, learn } from './learners.ts';
import { pick } from './part.ts';
import { nearestByBin, onePerBin, type Said } from './reliability.ts';
import type { World } from './worlds.ts';

/** One attempt of one learner at one part. */
export interface Tried {
  readonly learner: string;
  readonly design: string;
  /** What became of the likeliest thing there was to say. */
  readonly judgement: Judgement;
  /** What else might have been said, judged: at most one for each bin, so that a bin counts attempts. */
  readonly said: readonly Said[];
}

const MAINS = '230V50Hz';
const TESTS = ['look', 'spaced', 'neighbour', 'ground', 'strip'] as const;
const models = new Map<string, { readonly model: EvidenceModel; readonly before: Posterior }>();

function modelOf(design: ArmatureDesign, { told }: World) {
  const key = `${design.id} ${JSON.stringify(told)}`;
  const known = models.get(key);
  if (known !== undefined) return known;
  const model = createEvidence({ design, mains: MAINS, tests: TESTS, ...(told && { believed: told }) });
  const fresh = { model, before: new Weigher(model).result() };
  models.set(key, fresh);
  return fresh;
}

/**
 * A part is drawn, a learner of some skill reads what they read, and things are said of the part. What is said may
 * depend on the readings in any way, never on the truth: to fill all bins it is, for each, the possibility whose chance
 * comes nearest to its middle.
 * @param offsets shares of a slot pitch at which the armature may lie
 */
export function tryOnce(
  world: World,
  design: ArmatureDesign,
  offsets: readonly number[],
  seed: string,
): Tried {
  const draw = seeded(`attempt ${seed}`);
  const part = world.drawPart(design, draw);
  const bench = new TrialBench(part, MAINS, seed, world);
  const learner = pick(draw, LEARNERS);
  const { model, before } = modelOf(design, world);
  const weigher = new Weigher(model);
  for (const reading of learn(learner, bench, offsets, draw)) weigher.add(reading);
  const after = weigher.result();
  const sayable = possibilitiesOf(after).filter(({ what }) => what !== 'noneOfThese');
  const judged = (possibility: Possibility) =>
    judge(after, before, verdictOf(possibility, design), { faults: part.faults, chalkedBar: 0 }).findings[0]!;
  const { judgement } = judged(sayable[0]!);
  const said = nearestByBin(sayable).map((possibility): Said => {
    const { place, right, before: then } = judged(possibility);
    return { chance: place, right, before: then.place };
  });
  return { said: onePerBin(said), judgement, learner: learner.name, design: design.id };
}

/** A possibility as a learner would write it, counted from bar 0. */
export function verdictOf({ what, place }: Possibility, design: ArmatureDesign): Verdict {
  const named: Finding['condition'] =
    what === 'nothing' || what === 'noneOfThese' ? 'sound' : what === 'dirty' ? 'worn' : what;
  const finding: Finding = { condition: named, place: placeOf(place, design) };
  return { part: 'armature', findings: [finding], disposition: 'service', sure: 0.5, because: '' };
}

function placeOf(place: Possibility['place'], design: ArmatureDesign): Finding['place'] {
  if (place === null) return { kind: 'somewhere' };
  if (place.kind !== 'coil') return { kind: place.kind, count: place.at };
  const pairs = Array.from({ length: design.bars }, (_, pair) => pair);
  return {
    kind: 'pair',
    count: pairs.find((pair) => coilsOfPair(design, pair).includes(place.at)) ?? place.at,
  };
}
