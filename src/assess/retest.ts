import type { PartKind } from '../bench/action.ts';
import type { TestKind } from '../bench/paper.ts';
import type { RemedyKind } from '../engine/parts/remedies.ts';
import type { Remedied } from './conditions.ts';
import { truthOfPart } from './diagnosis/truth.ts';
import { type Done, doneOf } from './done.ts';
import { within } from './readings.ts';
import type { Worked } from './worked.ts';

/** Tests before a remedy, and tests after it. */

const WINDING: readonly TestKind[] = ['neighbour', 'spaced', 'strip', 'millivolt'];
/** Tests that can call for a remedy, and that show whether it has helped. Looking is a clue and no test. */
const SHOWN_BY: Readonly<Record<RemedyKind, readonly TestKind[]>> = {
  brushBetweenBars: [...WINDING, 'megohm'],
  undercut: [...WINDING, 'gauges'],
  skimAndPolish: [...WINDING, 'gauges'],
  resolderRiser: ['neighbour', 'spaced', 'millivolt'],
  cleanPlateInsulation: ['plateInsulation', 'megohm'],
  tightenRivets: ['plateInsulation', 'plateEarthed'],
};

/** Tests of the card that show whether a remedy is called for and has helped; none: the card has no such test. */
export function testsBehind({ tests }: Pick<Worked, 'tests'>, remedies: readonly Remedied[]): TestKind[] {
  return tests.filter((test) => remedies.some(({ remedy }) => SHOWN_BY[remedy].includes(test)));
}

const told = new WeakMap<Worked, Map<PartKind, ReadonlySet<TestKind>>>();

/** Tests of the card that show anything the matter with a part as it came to the bench. */
export function tellingTests(worked: Worked, part: PartKind): ReadonlySet<TestKind> {
  const known = told.get(worked) ?? new Map<PartKind, ReadonlySet<TestKind>>();
  told.set(worked, known);
  const { scenario, design } = worked.film;
  const found =
    known.get(part) ??
    new Set(
      truthOfPart(part, { scenario, design, condition: worked.conditions[0]! }).flatMap(
        ({ toldBy }) => toldBy,
      ),
    );
  known.set(part, found);
  return found;
}

/** The test most fully done of some, between two entries. */
export function mostDone(
  worked: Worked,
  part: PartKind,
  tests: readonly TestKind[],
  [from, before]: readonly [number, number],
): Done {
  const readings = within(worked.readings, from, before);
  const done = tests.map((test) => doneOf(test, part, readings, worked.film.design));
  return done.reduce((best, one) => (one.share > best.share ? one : best), { share: 0, entries: [] });
}

/**
 * How far a part was tested again after the last remedy done on it, up to an entry; null where there was none, or where
 * the card has no test that could show what became of it. The retest is by a test that showed something before, where
 * there is one: a strip that never felt a soft bridge cannot say that it is gone.
 */
export function retestOf(worked: Worked, part: PartKind, before: number): Done | null {
  const remedies = worked.remedies.filter((one) => one.part === part && one.entry < before);
  const last = remedies.at(-1);
  const behind = testsBehind(worked, remedies);
  if (last === undefined || behind.length === 0) return null;
  const telling = tellingTests(worked, part);
  const showed = behind.filter((test) => telling.has(test));
  return mostDone(worked, part, showed.length > 0 ? showed : behind, [last.entry, before]);
}
