import { fieldFinding } from '../../../assess/diagnosis/fieldTruth.ts';
import type { PartAt, TrueFinding } from '../../../assess/diagnosis/finding.ts';
import { plateFinding } from '../../../assess/diagnosis/plateTruth.ts';
import { Classes } from '../../../assess/evidence/mat/classes.ts';
import { FrameModel } from '../../../assess/evidence/mat/frame.ts';
import { isTold, judgeMat, type Weighed, worth } from '../../../assess/evidence/mat/judge.ts';
import type { MatModel } from '../../../assess/evidence/mat/model.ts';
import { PlateModel } from '../../../assess/evidence/mat/plate.ts';
import type { StoryPossibility } from '../../../assess/evidence/story/shape.ts';
import { firstCondition } from '../../../attempt/condition.ts';
import type { MatPart } from '../../../bench/action.ts';
import type { Finding, FoundPlace, TestKind } from '../../../bench/paper.ts';
import { seeded } from '../../../engine/math/random.ts';
import type { ArmatureDesign } from '../../../engine/parts/armature.ts';
import { type BrushPlateFault, FOUR_HOLDERS } from '../../../engine/parts/brushPlate.ts';
import type { FieldFrameDesign, FieldFrameFault } from '../../../engine/parts/fieldFrame.ts';
import { cluesAt } from '../../../scenario/hidden/looks.ts';
import { SCENARIO_VERSION, type Scenario, type ScenarioHidden } from '../../../scenario/scenario.ts';
import type { Tried } from '../attempt.ts';
import { pick } from '../part.ts';
import { nearestByBin, onePerBin } from '../reliability.ts';
import { asked, MAT_LEARNERS } from './learners.ts';
import type { MatFault } from './part.ts';
import { readOff } from './read.ts';

/** A part of the mat to be tried: a field frame, or the brush plate where none is named. */
export interface MatTrial {
  readonly frame: FieldFrameDesign | null;
  readonly faults: readonly MatFault[];
  /** States of one more fault that comes and goes: any of them stands while a reading is taken. None: there is none. */
  readonly restless: readonly MatFault[];
  /** Spread of the readings against the believed one. */
  readonly scatter: number;
  /** The armature on the card: no part in anything here. */
  readonly armature: ArmatureDesign;
}

const MAINS = '230V50Hz';
const TESTS: Readonly<Record<MatPart, readonly TestKind[]>> = {
  fieldFrame: ['look', 'fieldContinuity', 'fieldInsulation', 'megohm', 'millivolt'],
  brushPlate: ['look', 'plateInsulation', 'plateEarthed', 'megohm'],
};

/** A learner of some skill asks what they ask of a drawn part, and things are said of it, as of an armature. */
export function tryMat(trial: MatTrial, seed: string): Tried {
  const draw = seeded(`attempt ${seed}`);
  const { restless } = trial;
  const all = [...trial.faults, ...restless];
  const at = partAt({ ...trial, faults: all }, Math.floor(draw() * 2 ** 31));
  const learner = pick(draw, MAT_LEARNERS);
  const from = learner.writes ? 'sheet' : 'instrument';
  const part = trial.frame === null ? 'brushPlate' : 'fieldFrame';
  const { questions, looked } = asked(part, learner, draw);
  const looks = new Map(
    looked.map((place, entry) => [
      place,
      { kind: 'look' as const, entry, place, sees: cluesAt(at.scenario.hidden, at.design, place) },
    ]),
  );
  // A claim is right when whoever has seen no more may rightly say so: what the lens would have shown counts where it was used.
  const asSeen: PartAt = { ...at, clues: (place) => looks.get(place)?.sees ?? [] };
  const id = trial.frame?.id ?? FOUR_HOLDERS.id;
  const seen = `${id} ${[...looks].map(([place, { sees }]) => `${place} ${sees}`).join()}`;
  const tried = <F extends MatFault>(kind: Kind<F>): Omit<Tried, 'learner' | 'design'> => {
    const now = () => [...trial.faults, ...(restless.length === 0 ? [] : [pick(draw, restless)])] as F[];
    const readings = questions.map((question, nth) =>
      readOff(question, kind.model.shows(question, now()), nth, {
        from,
        scatter: trial.scatter,
        draw,
      }),
    );
    const groups = kind.model.weigh({ readings, looks, from });
    const tellingOf = remembering(seen, kind.tellingOf);
    const classes = new Classes(kind.model.everyFault, tellingOf);
    return say({ groups, tellingOf }, classes, kind.truth.filter(isTold));
  };
  const said =
    trial.frame === null
      ? tried<BrushPlateFault>({
          model: new PlateModel(FOUR_HOLDERS, MAINS, []),
          tellingOf: (fault) => plateFinding(asSeen, fault),
          truth: rightly(asSeen, all as readonly BrushPlateFault[], plateFinding),
        })
      : tried<FieldFrameFault>({
          model: new FrameModel(trial.frame, MAINS),
          tellingOf: (fault) => fieldFinding(asSeen, fault),
          truth: rightly(asSeen, all as readonly FieldFrameFault[], fieldFinding),
        });
  return { ...said, learner: learner.name, design: id };
}

interface Kind<F> {
  readonly model: MatModel<F>;
  readonly tellingOf: Weighed<F>['tellingOf'];
  readonly truth: readonly TrueFinding<F>[];
}

/** What may rightly be said, fault by fault: of two that no test tells apart each may be named by its own name. */
function rightly<F>(
  at: PartAt,
  faults: readonly F[],
  findingOf: (at: PartAt, fault: F) => TrueFinding<F> | null,
): TrueFinding<F>[] {
  return faults.flatMap((fault) => findingOf(at, fault) ?? []);
}

/** What faults may be called, kept: the same lists of faults come up whenever the same has been seen of a kind of part. */
const tellings = new Map<string, Map<unknown, unknown>>();

function remembering<F, T>(seen: string, ask: (fault: F) => T): (fault: F) => T {
  const known = (tellings.get(seen) ?? new Map()) as Map<F, T>;
  tellings.set(seen, known);
  return (fault) => {
    if (!known.has(fault)) known.set(fault, ask(fault));
    return known.get(fault)!;
  };
}

function say<F>(
  weighed: Weighed<F>,
  classes: Classes<F>,
  truth: readonly TrueFinding<F>[],
): Pick<Tried, 'said' | 'judgement'> {
  const sayable = classes.field(weighed.groups).filter(({ what }) => what !== 'noneOfThese');
  const judged = (possibility: StoryPossibility) => {
    const finding = findingOf(possibility);
    const right =
      finding.condition === 'sound' ? truth.length === 0 : truth.some((one) => worth(one, finding) === 1);
    return { ...judgeMat(weighed, { findings: [finding] }, truth).findings[0]!, right };
  };
  const likeliest = sayable.reduce((best, one) => (one.chance > best.chance ? one : best));
  const said = nearestByBin(sayable).map((possibility) => {
    const { place, right, before } = judged(possibility);
    return { chance: place, right, before: before.place };
  });
  return { judgement: judged(likeliest).judgement, said: onePerBin(said) };
}

function findingOf({ what, place }: StoryPossibility): Finding {
  const condition = what === 'nothing' || what === 'noneOfThese' ? 'sound' : what;
  return { condition: condition as Finding['condition'], place: foundAt(place) };
}

function foundAt(place: StoryPossibility['place']): FoundPlace {
  if (place?.kind === 'branch') return { kind: 'branch', brush: place.brushes[0]! };
  return place?.kind === 'holder' ? { kind: 'holder', holder: place.holder } : { kind: 'somewhere' };
}

function partAt({ frame, faults, armature }: MatTrial, seed: number): PartAt {
  const part = frame === null ? 'brushPlate' : 'fieldFrame';
  const hidden: ScenarioHidden = {
    armature: { faults: [] },
    ...(frame === null
      ? { brushPlate: { faults: faults as readonly BrushPlateFault[] } }
      : { fieldFrame: { faults: faults as readonly FieldFrameFault[] } }),
    startRotationDeg: 0,
    seed,
    supplyReference: 'floating',
  };
  const scenario: Scenario = {
    format: 'slot-and-riser/scenario',
    version: SCENARIO_VERSION,
    public: {
      id: 'trial',
      workshop: '',
      card: { unit: '', broughtInBy: '', complaint: '', askedFor: '' },
      mains: MAINS,
      parts: [part],
      armature: armature.id,
      ...(frame === null ? { brushPlate: FOUR_HOLDERS.id } : { fieldFrame: frame.id }),
      tests: TESTS[part],
      mode: 'practice',
      minutes: null,
    },
    hidden,
  };
  return { scenario, design: armature, condition: firstCondition(hidden, armature.commutatorRadius) };
}
