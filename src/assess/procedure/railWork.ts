import type { PartKind } from '../../bench/action.ts';
import type { TestKind } from '../../bench/paper.ts';
import { doneOf, testsOf } from '../done.ts';
import { listed, PART_WORDS } from '../words.ts';
import type { Worked } from '../worked.ts';
import {
  atLeast,
  byRules,
  type Criterion,
  type JobCard,
  type Judgement,
  notShown,
  someOf,
} from './criterion.ts';

/** Insulation tester, millivolt drop and gauges: that they were used, on every part, and used properly. */

type RailTest = 'megohm' | 'millivolt' | 'gauges';

const partsFor = ({ parts, tests }: Pick<JobCard, 'parts' | 'tests'>, test: TestKind): PartKind[] =>
  parts.filter((part) => testsOf(part, tests).includes(test));

/** Judges how much of a test was done on every part it belongs to. */
function covered(
  worked: Worked,
  test: RailTest,
  words: { none: string; done: string; whole: string },
): Judgement {
  const done = partsFor(worked, test).map((part) => ({
    part,
    ...doneOf(test, part, worked.readings, worked.film.design),
  }));
  const share = done.reduce((sum, one) => sum + one.share, 0) / done.length;
  if (share === 0) return notShown(words.none);
  const thin = done.filter((one) => one.share < 1).map(({ part }) => PART_WORDS[part]);
  const sentence =
    thin.length === 0 ? words.done : `${words.whole} was left undone, or half done, on ${listed(thin)}.`;
  return { share, sentence, entries: someOf(done.flatMap(({ entries }) => entries)) };
}

const applies = (test: RailTest) => (card: JobCard) => partsFor(card, test).length > 0;

const megohmPass: Criterion = {
  id: 'megohmPass',
  title: 'Insulation measured with the tester',
  applies: applies('megohm'),
  judge: (worked, least) =>
    atLeast(
      least,
      covered(worked, 'megohm', {
        none: 'The insulation tester was not held down until its display stood still, across insulation of a part.',
        done: 'The insulation of every part was measured until the display stood still.',
        whole: 'The insulation tester',
      }),
    ),
};

const testerUse = ({ readings }: Worked) => someOf(readings.megohm.map(({ entry }) => entry));

const testerSafe: Criterion = {
  id: 'testerSafe',
  title: 'Insulation tester: growler off, part alone, lamp first, discharged after',
  applies: applies('megohm'),
  judge: byRules(
    ['testerLive', 'testerInCradle', 'testerNotAlone', 'testerBeforeLamp', 'testerHand', 'notDischarged'],
    {
      shownBy: testerUse,
      notShown: 'The insulation tester was not used on a part.',
      kept: 'The growler was off, the part alone and tested with the lamp before, and it was discharged afterwards.',
    },
  ),
};

const millivoltPass: Criterion = {
  id: 'millivoltPass',
  title: 'Millivolt drop read over every branch and pair of bars',
  applies: applies('millivolt'),
  judge: (worked, least) =>
    atLeast(
      least,
      covered(worked, 'millivolt', {
        none: 'No drop was read with the feed on the same part.',
        done: 'The drop was read everywhere, so that each could be held against the others.',
        whole: 'The millivolt drop',
      }),
    ),
};

const dropSafe: Criterion = {
  id: 'dropSafe',
  title: 'Feed of the millivolt drop with the growler off and the cradle empty',
  applies: applies('millivolt'),
  judge: byRules(['dropLive', 'dropInCradle'], {
    shownBy: ({ readings }) => someOf(readings.drop.map(({ entry }) => entry)),
    notShown: 'The millivolt drop was not read.',
    kept: 'The feed was on with the growler off, and on an armature only outside the cradle.',
  }),
};

const gaugesRead: Criterion = {
  id: 'gaugesRead',
  title: 'Commutator and brushes gauged',
  applies: applies('gauges'),
  judge: (worked, least) =>
    atLeast(
      least,
      covered(worked, 'gauges', {
        none: 'No gauge was put to a part.',
        done: 'Every length the card sets a limit for was measured.',
        whole: 'Measuring',
      }),
    ),
};

export const RAIL_WORK: readonly Criterion[] = [megohmPass, testerSafe, millivoltPass, dropSafe, gaugesRead];
