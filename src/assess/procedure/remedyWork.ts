import type { PartKind } from '../../bench/action.ts';
import type { Remedied } from '../conditions.ts';
import { mostDone, retestOf, tellingTests, testsBehind } from '../retest.ts';
import { listed, PART_WORDS, TEST_WORDS } from '../words.ts';
import type { Worked } from '../worked.ts';
import { byRules, type Criterion, type JobCard, type Judgement, someOf } from './criterion.ts';

/**
 * Remedies: after a finding, off and out of the cradle, retested, and never so far that the part is scrap. Looked for
 * only where a remedy was done: whoever sends a part on to be cleaned has not done less than was asked.
 */

/** Nothing done at this bench mends a field frame. */
const applies = ({ parts }: JobCard) => parts.some((part) => part !== 'fieldFrame');
const arises = ({ remedies }: Worked) => remedies.length > 0;
const entriesOf = ({ remedies }: Worked) => someOf(remedies.map(({ entry }) => entry));

/** The first remedy of each spell of work on a part: those that follow at once rest on the same finding. */
function begun(worked: Worked): { readonly first: Remedied; readonly since: number }[] {
  return worked.remedies.flatMap((first, nth) => {
    const before = worked.remedies.slice(0, nth).filter(({ part }) => part === first.part);
    const since = before.at(-1)?.entry ?? -1;
    const tested = mostDone(worked, first.part, testsBehind(worked, [first]), [since, first.entry]).share > 0;
    return before.length === 0 || tested ? [{ first, since }] : [];
  });
}

const remedyAfterFinding: Criterion = {
  id: 'remedyAfterFinding',
  title: 'A remedy only after a test had found something',
  applies,
  arises,
  judge(worked) {
    const judged = begun(worked).map(({ first, since }) => calledFor(worked, first, since));
    const share = judged.reduce((sum, one) => sum + one.share, 0) / judged.length;
    const worst = judged.reduce((low, one) => (one.share < low.share ? one : low));
    return { share, sentence: worst.sentence, entries: someOf(judged.flatMap(({ entries }) => entries)) };
  },
};

/** Looking alone calls for nothing; a test broken off has found as much as was done of it. */
function calledFor(worked: Worked, first: Remedied, since: number): Judgement {
  const part = PART_WORDS[first.part];
  const tests = testsBehind(worked, [first]);
  const done = mostDone(worked, first.part, tests, [since, first.entry]);
  const entries = [...someOf(done.entries), first.entry];
  const which = listed(tests.map((test) => TEST_WORDS[test]));
  if (tests.length === 0)
    return { share: 0, sentence: `The card has no test that could call for this on ${part}.`, entries };
  if (done.share < 1) {
    const before = done.share === 0 ? 'before' : 'before all of';
    const sentence = `A remedy was begun on ${part} ${before} ${which}: it hides what it may cure.`;
    return { share: done.share, sentence, entries };
  }
  if (!tests.some((test) => tellingTests(worked, first.part).has(test)))
    return { share: 0.5, sentence: `Nothing that could be found on ${part} called for a remedy.`, entries };
  return { share: 1, sentence: 'Each remedy followed a test that had found something.', entries };
}

const remedySafe: Criterion = {
  id: 'remedySafe',
  title: 'Off, and out of the cradle, for any work on a part',
  arises: ({ remedies, film }) =>
    remedies.length > 0 || film.broken.some(({ breach }) => WORK_RULES.includes(breach.interlock)),
  judge: byRules(['remedyLive', 'remedyInCradle', 'setRightLive'], {
    shownBy: entriesOf,
    notShown: 'No remedy was done.',
    kept: 'The bench was off and the part out of the cradle whenever it was worked on.',
  }),
};
const WORK_RULES: readonly string[] = ['remedyLive', 'remedyInCradle', 'setRightLive'];

const retested: Criterion = {
  id: 'retested',
  title: 'Tested again after a remedy',
  applies,
  arises,
  judge(worked) {
    const parts = [...new Set(worked.remedies.map(({ part }) => part))];
    const judged = parts.flatMap((part) => {
      const done = retestOf(worked, part, Number.POSITIVE_INFINITY);
      return done === null ? [] : [{ part, ...done }];
    });
    const entries = [...entriesOf(worked), ...judged.flatMap((one) => one.entries)];
    if (judged.length === 0)
      return { share: 1, sentence: 'The card has no test that could show what became of it.', entries };
    const share = judged.reduce((sum, one) => sum + one.share, 0) / judged.length;
    const thin: PartKind[] = judged.filter((one) => one.share < 1).map(({ part }) => part);
    const sentence =
      thin.length === 0
        ? 'What was worked on was tested again afterwards.'
        : `After the remedy ${listed(thin.map((part) => PART_WORDS[part]))} was not tested again as before: whether it helped is not known.`;
    return { share, sentence, entries: someOf(entries) };
  },
};

const partSpared: Criterion = {
  id: 'partSpared',
  title: 'Nothing turned down below the limit',
  applies: ({ parts }) => parts.includes('armature'),
  arises: ({ remedies }) => remedies.some(({ remedy }) => remedy === 'skimAndPolish'),
  judge(worked) {
    const skims = worked.remedies.filter(({ remedy }) => remedy === 'skimAndPolish');
    const spoilt = skims.filter(({ entry }) => worked.conditions[entry + 1]!.scrapped.length > 0);
    const entries = someOf((spoilt.length > 0 ? spoilt : skims).map(({ entry }) => entry));
    return spoilt.length > 0
      ? {
          share: 0,
          sentence: 'The commutator was turned down below the card’s limit: the part is scrap.',
          entries,
        }
      : { share: 1, sentence: 'The commutator is still above the card’s limit.', entries };
  },
};

export const REMEDY_WORK: readonly Criterion[] = [remedyAfterFinding, remedySafe, retested, partSpared];
