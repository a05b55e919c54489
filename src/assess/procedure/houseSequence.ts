import type { TestKind } from '../../bench/paper.ts';
import { HOUSE_SEQUENCE, rubricOf } from '../../scenario/public/rubric.ts';
import { doneOf } from '../done.ts';
import { acts } from '../film.ts';
import { listed, TEST_WORDS } from '../words.ts';
import type { Worked } from '../worked.ts';
import { type Criterion, notShown, someOf } from './criterion.ts';

/** Entries in which a test was at work; where only the sheet tells, those that wrote it down. */
function entriesOf(test: TestKind, worked: Worked): number[] {
  const { readings, film, sheet } = worked;
  const written = sheet.filter(({ line }) => line.test === test).map(({ entry }) => entry);
  switch (test) {
    case 'look':
      return acts(film, 'lens.look').map(({ n }) => n);
    case 'spaced':
      return worked.spaced.readings.map(({ entry }) => entry);
    case 'neighbour':
      return worked.neighbour.readings.map(({ entry }) => entry);
    case 'ground':
      return [...worked.ground.values()].map(({ entry }) => entry);
    case 'strip':
      return readings.strip.filter(({ excited }) => excited).map(({ entry }) => entry);
    default:
      return begunOn(test, worked) ?? written;
  }
}

/** Entries of a test of mat or rail on any part, or null. */
function begunOn(test: TestKind, { parts, readings, film }: Worked): number[] | null {
  const entries = parts.flatMap((part) => doneOf(test, part, readings, film.design).entries);
  return entries.length > 0 ? entries : null;
}

interface Begun {
  readonly test: TestKind;
  /** First entry of the test, or null: it was not done. */
  readonly first: number | null;
}

function begunIn(sequence: readonly TestKind[], worked: Worked): Begun[] {
  return sequence
    .filter((test) => worked.tests.includes(test))
    .map((test) => {
      const entries = entriesOf(test, worked);
      return { test, first: entries.length === 0 ? null : Math.min(...entries) };
    });
}

/** Marked only where a school's rubric asks for its own order of tests. Out of order is never critical. */
export const houseSequence: Criterion = {
  id: HOUSE_SEQUENCE,
  title: 'Tests in the order of the house',
  applies: (card) =>
    (rubricOf(card).houseSequence ?? []).filter((test) => card.tests.includes(test)).length > 1,
  judge(worked) {
    const sequence = rubricOf(worked.film.scenario.public).houseSequence ?? [];
    const begun = begunIn(sequence, worked);
    const done = begun.filter(({ first }) => first !== null);
    if (done.length === 0) return notShown('None of the tests of the house sequence was done.');
    const steps = begun.slice(1).map((next, nth) => ({ before: begun[nth]!, next }));
    const kept = steps.filter(
      ({ before, next }) => before.first !== null && next.first !== null && before.first < next.first,
    );
    const order = listed(begun.map(({ test }) => TEST_WORDS[test]));
    const sentence =
      kept.length === steps.length
        ? `The tests were done in the order of the house: ${order}.`
        : `The order of the house is ${order}; it was kept in ${kept.length} of ${steps.length} steps.`;
    return {
      share: kept.length / steps.length,
      sentence,
      entries: someOf(done.map(({ first }) => first ?? -1)),
    };
  },
};
