import type { Verdict } from '../../bench/paper.ts';
import type { Job } from '../../scenario/public/job.ts';
import { neighbourTest, spacedTest } from './ammeterTests.ts';
import { decide } from './decide.ts';
import { type Bench, Hands } from './hands.ts';
import { NO_NOTES, type Notes } from './notes.ts';
import { groundTest, lookOver, stripTest } from './otherTests.ts';

/** The bar the expert chalks; any will do. */
const CHALKED = 3;

/** Every test the card allows, in the order of the sheet; the lamp's word stays null where there is none. */
function work(hands: Hands): Notes {
  const { tests } = hands.job;
  const looks = tests.includes('look') ? lookOver(hands) : NO_NOTES.looks;
  hands.all({ type: 'chalk.mark', bar: CHALKED }, { type: 'armature.place' });
  const notes: Notes = {
    looks,
    spaced: tests.includes('spaced') ? spacedTest(hands, CHALKED) : [],
    neighbour: tests.includes('neighbour') ? neighbourTest(hands, CHALKED) : [],
    lit: tests.includes('ground') ? groundTest(hands) : null,
    strip: tests.includes('strip') ? stripTest(hands) : [],
  };
  hands.do({ type: 'armature.lift' });
  return notes;
}

/**
 * Works a whole job at a bench as someone who knows the trade would, and hands it in. Sees only observations and the
 * public half of the scenario: whatever the expert can win, a learner can win honestly.
 */
export function workJob(
  bench: Bench,
  job: Job,
): { readonly verdict: Verdict; readonly notes: Notes; readonly endMs: number } {
  const hands = new Hands(bench, job);
  const notes = work(hands);
  const verdict = decide(notes, job, CHALKED);
  hands.do({ type: 'verdict.write', verdict });
  hands.do({ type: 'job.handIn' });
  return { verdict, notes, endMs: hands.atMs };
}
