import type { PartKind } from '../../bench/action.ts';
import type { TestKind, Verdict } from '../../bench/paper.ts';
import { isMatPart } from '../../bench/state.ts';
import type { Job } from '../../scenario/public/job.ts';
import { neighbourTest, spacedTest } from './ammeterTests.ts';
import { groundTest, lookAtArmature, stripTest } from './armatureTests.ts';
import { makeReady } from './benchCare.ts';
import { cure, curesHere } from './cure.ts';
import { type Bench, Hands } from './hands.ts';
import { fieldTests, lookAtMat, plateTests } from './matTests.ts';
import { NO_NOTES, type Notes } from './notes.ts';
import { barDrops, branchDrops, gaugeParts, megohmTest } from './railTests.ts';
import { verdictOn } from './verdicts.ts';

/** The bar the expert chalks; any will do. */
const CHALKED = 3;

function allows({ tests }: Job, ...kinds: readonly TestKind[]): boolean {
  return kinds.some((kind) => tests.includes(kind));
}

/** Everything that is done with the bench off and the armature on the mat, before power. */
function inspect(hands: Hands): Notes {
  const { job } = hands;
  makeReady(hands);
  const looks = allows(job, 'look')
    ? job.parts.flatMap((part) => (isMatPart(part) ? lookAtMat(hands, part) : lookAtArmature(hands)))
    : [];
  const gauges = allows(job, 'gauges') ? gaugeParts(hands) : [];
  if (job.parts.includes('armature')) hands.do({ type: 'chalk.mark', bar: CHALKED });
  return { ...NO_NOTES, looks, gauges };
}

/** Every test on the growler the card allows; an armature lies in the cradle whatever is tested. */
function testOnGrowler(hands: Hands, before: Notes): Notes {
  const { job } = hands;
  hands.do({ type: 'armature.place' });
  const notes: Notes = {
    ...before,
    spaced: allows(job, 'spaced') ? spacedTest(hands, CHALKED) : [],
    neighbour: allows(job, 'neighbour') ? neighbourTest(hands, CHALKED) : [],
    lit: allows(job, 'ground') ? groundTest(hands) : null,
    strip: allows(job, 'strip') ? stripTest(hands) : [],
    ...(allows(job, 'fieldContinuity', 'fieldInsulation') ? fieldTests(hands) : {}),
    holders: allows(job, 'plateInsulation', 'plateEarthed') ? plateTests(hands) : [],
  };
  hands.do({ type: 'armature.lift' });
  return notes;
}

/** The tools of the rail, growler off and armature out. */
function testFromRail(hands: Hands, before: Notes): Notes {
  const { job } = hands;
  const megohms = allows(job, 'megohm') ? job.parts.flatMap((part) => megohmTest(hands, part)) : [];
  const fed = allows(job, 'millivolt');
  const drops = [
    ...(fed && job.parts.includes('fieldFrame') ? branchDrops(hands) : []),
    ...(fed && job.parts.includes('armature') ? barDrops(hands, CHALKED) : []),
  ];
  return { ...before, megohms, drops };
}

/** What can be cured at this bench is, where the card leaves that to it; then the verdict on the part. */
function judge(hands: Hands, part: PartKind, tested: Notes): Verdict {
  const { job } = hands;
  const curable = part !== 'fieldFrame' && curesHere(job);
  const { notes, cured } = curable ? cure(hands, part, tested, CHALKED) : { notes: tested, cured: [] };
  return verdictOn(part, notes, job, { chalked: CHALKED, cured });
}

/**
 * Works a whole job at a bench as someone who knows the trade would, and hands it in. Sees only observations and the
 * public half of the scenario: whatever the expert can win, a learner can win honestly.
 */
export function workJob(
  bench: Bench,
  job: Job,
): { readonly verdicts: readonly Verdict[]; readonly notes: Notes; readonly endMs: number } {
  const hands = new Hands(bench, job);
  const notes = testFromRail(hands, testOnGrowler(hands, inspect(hands)));
  const verdicts = job.parts.map((part) => judge(hands, part, notes));
  for (const verdict of verdicts) hands.do({ type: 'verdict.write', verdict });
  hands.do({ type: 'job.handIn' });
  return { verdicts, notes, endMs: hands.atMs };
}
