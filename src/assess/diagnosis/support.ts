import type { PartKind } from '../../bench/action.ts';
import type { Condition, Finding, TestKind, Verdict } from '../../bench/paper.ts';
import { partOf } from '../../bench/places.ts';
import { doneOf, testsOf } from '../done.ts';
import { acts } from '../film.ts';
import { within } from '../readings.ts';
import { retestOf } from '../retest.ts';
import { conditionsOn, listed, TEST_WORDS } from '../words.ts';
import type { Worked } from '../worked.ts';

/** Tests of which the first the card allows must be done. */
type FirstOf = readonly TestKind[];

const BARS: FirstOf = ['neighbour', 'spaced', 'millivolt'];
const STRIP: FirstOf = ['strip'];
const LEAK: FirstOf = ['megohm', 'ground'];
const FRAME: FirstOf = ['fieldContinuity', 'millivolt'];
const HOLDERS: FirstOf = ['plateInsulation', 'megohm'];
const WORN: FirstOf = ['gauges', 'look'];

/**
 * Tests a condition must rest on, whether it is right or not. A low reading is a finding, not a name: the strip tells a
 * bridge or short from an open coil, so neither may be named without it.
 */
const NEEDS: Readonly<Record<PartKind, Readonly<Partial<Record<Condition, readonly FirstOf[] | 'all'>>>>> = {
  armature: {
    sound: 'all',
    openCoil: [BARS, STRIP],
    badRiserJoint: [BARS, STRIP],
    bridgedBars: [BARS, STRIP],
    shortedCoil: [BARS, STRIP],
    reversed: [BARS, STRIP],
    grounded: [['ground', 'megohm']],
    poorInsulation: [LEAK],
    worn: [WORN],
  },
  fieldFrame: {
    sound: 'all',
    openCoil: [FRAME],
    brokenJoint: [FRAME],
    shortedCoil: [['millivolt']],
    grounded: [['fieldInsulation', 'megohm']],
    poorInsulation: [['megohm', 'fieldInsulation']],
    worn: [WORN],
  },
  brushPlate: {
    sound: 'all',
    grounded: [HOLDERS],
    bridgedBars: [HOLDERS],
    poorInsulation: [['megohm', 'plateInsulation']],
    looseRivet: [HOLDERS],
    brokenJoint: [['plateEarthed']],
    worn: [WORN],
  },
};

/** A rivet or joint of an earthed holder is found where the earthed brushes are tested. */
function groupsOf(part: PartKind, { condition, place }: Finding): readonly FirstOf[] | 'all' {
  const earthed = place.kind === 'holder' && place.holder.startsWith('plate:earthed');
  if (condition === 'looseRivet' && earthed) return [['plateEarthed']];
  return NEEDS[part][condition] ?? [];
}

function needed(part: PartKind, findings: readonly Finding[], allowed: readonly TestKind[]): TestKind[] {
  const groups = findings.map((finding) => groupsOf(part, finding));
  if (groups.includes('all')) return [...allowed];
  const firsts = groups.flatMap((group) => (group === 'all' ? [] : group)).map((tests) => firstOf(tests));
  return allowed.filter((test) => firsts.includes(test));

  function firstOf(tests: FirstOf): TestKind | undefined {
    return tests.find((test) => allowed.includes(test));
  }
}

/** How much of a test was done on a part up to the verdict, at most between one remedy and the next, 0..1. */
function doneShare(worked: Worked, part: PartKind, test: TestKind, before: number): number {
  if (test === 'look') {
    const looks = acts(worked.film, 'lens.look');
    return looks.some(({ n, action }) => n < before && partOf(action.place) === part) ? 1 : 0;
  }
  const cuts = worked.remedies.filter((one) => one.part === part && one.entry < before);
  const ends = [...cuts.map(({ entry }) => entry), before];
  const shares = ends.map((end, nth) => {
    const readings = within(worked.readings, cuts[nth - 1]?.entry ?? -1, end);
    return doneOf(test, part, readings, worked.film.design).share;
  });
  return Math.max(...shares);
}

export interface Support {
  readonly share: number;
  readonly sentence: string;
  readonly entries: readonly number[];
}

/**
 * Judges whether the verdict could rest on what was done: right or wrong, a verdict without readings is a guess. A part
 * that was worked on must have been tested again.
 */
export function supportOf(worked: Worked, { part, findings }: Verdict, entry: number): Support {
  const tests = needed(part, findings, testsOf(part, worked.tests));
  if (tests.length === 0)
    return { share: 0, sentence: 'The verdict names no finding to support.', entries: [entry] };
  const retest = retestOf(worked, part, entry);
  const asked = [
    ...tests.map((test) => ({ words: TEST_WORDS[test], share: doneShare(worked, part, test, entry) })),
    ...(retest === null ? [] : [{ words: 'a retest after the remedy', share: retest.share }]),
  ];
  const share = asked.reduce((sum, one) => sum + one.share, 0) / asked.length;
  const thin = asked.filter((one) => one.share < 1).map(({ words }) => words);
  const said = listed(findings.map(({ condition }) => conditionsOn(part)[condition]));
  const sentence =
    thin.length === 0
      ? `Everything needed to say “${said}” was tested.`
      : `To say “${said}” takes ${listed(thin)}, ${WHOLE[part]}, first.`;
  return { share, sentence, entries: [entry] };
}

const WHOLE: Readonly<Record<PartKind, string>> = {
  armature: 'all the way round',
  fieldFrame: 'at every place',
  brushPlate: 'at every holder',
};
