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
import { type Draw, pick } from './part.ts';
import { EDGES, type Said } from './reliability.ts';
import type { World } from './worlds.ts';

/** One attempt of one learner at one part, judged. */
export interface Tried extends Said {
  readonly learner: string;
  readonly design: string;
  readonly judgement: Judgement;
}

const MAINS = '230V50Hz';
const TESTS = ['look', 'spaced', 'neighbour', 'ground', 'strip'] as const;
const models = new Map<string, { readonly model: EvidenceModel; readonly before: Posterior }>();

function modelOf(design: ArmatureDesign) {
  const known = models.get(design.id);
  if (known !== undefined) return known;
  const model = createEvidence({ design, mains: MAINS, tests: TESTS });
  const fresh = { model, before: new Weigher(model).result() };
  models.set(design.id, fresh);
  return fresh;
}

/**
 * A part is drawn, a learner of some skill reads what they read, and something is said of the part. What is said may
 * depend on the readings in any way, never on the truth: to fill all bins it is the possibility whose chance comes
 * nearest to one drawn.
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
  const { model, before } = modelOf(design);
  const weigher = new Weigher(model);
  for (const reading of learn(learner, bench, offsets, draw)) weigher.add(reading);
  const after = weigher.result();
  const verdict = verdictOf(choose(possibilitiesOf(after), draw), design);
  const { findings } = judge(after, before, verdict, { faults: part.faults, chalkedBar: 0 });
  const { place, right, judgement } = findings[0]!;
  return { chance: place, right, judgement, learner: learner.name, design: design.id };
}

/** Something to say whose chance lies about where a bin drawn by lot has its middle. */
function choose(possibilities: readonly Possibility[], draw: Draw): Possibility {
  const bin = Math.floor(draw() * (EDGES.length - 1));
  const aim = (EDGES[bin]! + EDGES[bin + 1]!) / 2;
  const away = ({ chance }: Possibility) => Math.abs(chance - aim);
  const sayable = possibilities.filter(({ what }) => what !== 'noneOfThese');
  return sayable.reduce((best, one) => (away(one) < away(best) ? one : best));
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
