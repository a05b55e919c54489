import type { MatPart } from '../../../bench/action.ts';
import type { TestKind, Verdict } from '../../../bench/paper.ts';
import { type BrushPlateFault, JOB_PLATES } from '../../../engine/parts/brushPlate.ts';
import type { FieldFrameFault } from '../../../engine/parts/fieldFrame.ts';
import { JOB_FRAMES } from '../../../engine/parts/fieldFrameDesigns.ts';
import { isArmatureRemedy, type PlateRemedy } from '../../../engine/parts/remedies.ts';
import type { ScenarioPublic } from '../../../scenario/scenario.ts';
import { conditionsOf } from '../../conditions.ts';
import { fieldFinding, fieldTruth } from '../../diagnosis/fieldTruth.ts';
import type { PartAt } from '../../diagnosis/finding.ts';
import { plateFinding, plateTruth } from '../../diagnosis/plateTruth.ts';
import { acts, type Film } from '../../film.ts';
import type { Spell } from '../gather.ts';
import type { Judgement } from '../judge.ts';
import { sourceOf } from '../ofAttempt.ts';
import type { Source } from '../reading.ts';
import { FrameModel } from './frame.ts';
import { matLooks, matReadings } from './gather.ts';
import { judgeMat, type MatJudged, type Weighed } from './judge.ts';
import type { MatModel } from './model.ts';
import { PlateModel } from './plate.ts';
import type { MatEvidence } from './reading.ts';

/** The last verdict on a part of the mat, judged by what had been read when it was written. */
export interface MatRested {
  readonly entry: number;
  readonly from: Source;
  readonly judged: MatJudged;
}

/** Tests whose readings say something of a part. */
const WEIGHED: Readonly<Record<MatPart, readonly TestKind[]>> = {
  fieldFrame: ['fieldContinuity', 'fieldInsulation', 'megohm', 'millivolt'],
  brushPlate: ['plateInsulation', 'plateEarthed', 'megohm'],
};

/** Whether the card lets a verdict on the part rest on any reading. */
export function canBeProven(card: Pick<ScenarioPublic, 'parts' | 'tests'>, part: MatPart): boolean {
  return card.parts.includes(part) && card.tests.some((test) => WEIGHED[part].includes(test));
}

/** Null without a verdict. */
export function matRestedOf(film: Film, part: MatPart): MatRested | null {
  const last = acts(film, 'verdict.write').findLast(({ action }) => action.verdict.part === part);
  if (last === undefined) return null;
  const verdict = withoutWear(last.action.verdict, film.scenario.public.tests);
  const judged = spellsBefore(film, part, last.n).map((spell) => judgeSpell(film, part, spell, verdict));
  return { entry: last.n, from: sourceOf(film), judged: betterOf(judged) };
}

/** Wear is measured or seen, which no electrical reading can prove: the rest stands alone. */
function withoutWear(verdict: Verdict, tests: readonly TestKind[]): Pick<Verdict, 'findings'> {
  const rest = verdict.findings.filter(({ condition }) => condition !== 'worn');
  if (rest.length === verdict.findings.length || !tests.some((test) => WEAR.includes(test))) return verdict;
  return { findings: rest.length > 0 ? rest : [{ condition: 'sound', place: { kind: 'somewhere' } }] };
}
const WEAR: readonly TestKind[] = ['gauges', 'look'];

/** The part as it came, and as it lay after the last remedy on it: of two the better counts. */
function spellsBefore(film: Film, part: MatPart, verdictEntry: number): readonly [Spell, ...Spell[]] {
  const done = platesDone(film).filter(({ n }) => part === 'brushPlate' && n < verdictEntry);
  const [first, last] = [done[0], done.at(-1)];
  if (first === undefined || last === undefined) return [{ from: -1, before: verdictEntry }];
  return [
    { from: -1, before: first.n },
    { from: last.n, before: verdictEntry },
  ];
}

/** The part as it came, to the first remedy on it or the end of the attempt. */
export function firstSpell(film: Film, part: MatPart): Spell {
  return spellsBefore(film, part, Number.POSITIVE_INFINITY)[0];
}

function platesDone(film: Film) {
  return acts(film, 'remedy.do').filter(({ action: { remedy } }) => !isArmatureRemedy(remedy));
}

function judgeSpell(film: Film, part: MatPart, spell: Spell, said: Pick<Verdict, 'findings'>): MatJudged {
  const { scenario, design } = film;
  const truth: PartAt = { scenario, design, condition: conditionsOf(film)[spell.from + 1]! };
  const evidence = matEvidence(film, part, spell);
  if (part === 'fieldFrame')
    return judgeMat(weighedBy(fieldKind(film, spell), evidence), said, fieldTruth(truth));
  const left = plateTruth(truth).filter(({ cured }) => !cured);
  return judgeMat(weighedBy(plateKind(film, spell), evidence), said, left);
}

function weighedBy<F>({ model, tellingOf }: MatKind<F>, evidence: MatEvidence): Weighed<F> {
  return { groups: model.weigh(evidence), tellingOf };
}

export function matEvidence(film: Film, part: MatPart, spell: Spell): MatEvidence {
  const from = sourceOf(film);
  return { readings: matReadings(film, part, spell, from), looks: matLooks(film, part, spell), from };
}

/** A part with what its faults may be called by one who has seen what was seen of it up to the end of a spell. */
export interface MatKind<F> {
  readonly model: MatModel<F>;
  readonly tellingOf: Weighed<F>['tellingOf'];
}

export function fieldKind(film: Film, spell: Spell): MatKind<FieldFrameFault> {
  const { fieldFrame, mains } = film.scenario.public;
  const model = new FrameModel(JOB_FRAMES.get(fieldFrame!)!, mains);
  const asSeen = partAsSeen(film, 'fieldFrame', spell);
  return { model, tellingOf: (fault) => fieldFinding(asSeen, fault) };
}

export function plateKind(film: Film, spell: Spell): MatKind<BrushPlateFault> {
  const { brushPlate, mains } = film.scenario.public;
  const done = platesDone(film).flatMap(({ n, action: { remedy } }) =>
    n <= spell.from ? [remedy as PlateRemedy] : [],
  );
  const model = new PlateModel(JOB_PLATES.get(brushPlate!)!, mains, done);
  const asSeen = partAsSeen(film, 'brushPlate', spell);
  return { model, tellingOf: (fault) => plateFinding(asSeen, fault) };
}

function partAsSeen(film: Film, part: MatPart, { from, before }: Spell): PartAt {
  const { scenario, design } = film;
  const seen = matLooks(film, part, { from: -1, before });
  return {
    scenario,
    design,
    condition: conditionsOf(film)[from + 1]!,
    clues: (place) => seen.get(place)?.sees ?? [],
  };
}

const BEST_FIRST: readonly Judgement[] = ['proven', 'rightNotProven', 'contradicted', 'wrong'];

function betterOf(judged: readonly MatJudged[]): MatJudged {
  const rank = ({ judgement }: MatJudged) => BEST_FIRST.indexOf(judgement);
  return judged.reduce((best, one) => (rank(one) < rank(best) ? one : best));
}
