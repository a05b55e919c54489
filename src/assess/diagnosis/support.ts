import type { Condition, TestKind, Verdict } from '../../bench/paper.ts';
import { STRIP_ZONES } from '../passes.ts';
import { CONDITION_WORDS, listed, TEST_WORDS } from '../words.ts';
import type { Worked } from '../worked.ts';

/**
 * Tests a condition must rest on, whether it is right or not. A low reading is a finding, not a name: the strip tells a
 * bridge or short from an open coil, so neither may be named without it.
 */
const NEEDS: Readonly<Partial<Record<Condition, readonly TestKind[] | 'all'>>> = {
  sound: 'all',
  openCoil: ['neighbour', 'strip'],
  badRiserJoint: ['neighbour', 'strip'],
  bridgedBars: ['neighbour', 'strip'],
  shortedCoil: ['neighbour', 'strip'],
  reversed: ['neighbour', 'strip'],
  grounded: ['ground'],
  poorInsulation: ['ground'],
  worn: ['look'],
};

/** How much of a test was done, 0..1, by what was touched and settled up to the verdict. */
function doneShare(worked: Worked, test: TestKind, before: number): number {
  const { bars, slots } = worked.film.design;
  const early = <T extends { readonly entry: number }>(readings: Iterable<T>) =>
    [...readings].filter(({ entry }) => entry < before).length;
  switch (test) {
    case 'look':
      return worked.film.entries.some(({ n, action }) => n < before && action.type === 'lens.look') ? 1 : 0;
    case 'spaced':
      return early(worked.spaced.readings) / bars;
    case 'neighbour':
      return early(worked.neighbour.readings) / bars;
    case 'ground':
      // One bar that lights settles it; dark ones must all have been tried.
      return [...worked.ground.values()].some(({ lit, entry }) => lit && entry < before)
        ? 1
        : early(worked.ground.values()) / bars;
    case 'strip':
      return worked.strip.reduce((sum, zone) => sum + zone.size, 0) / (slots * STRIP_ZONES.length);
    default:
      return 0;
  }
}

/** Where the ammeter allowed is the spaced one only, it must do for the neighbouring one. */
function needed(conditions: readonly Condition[], allowed: readonly TestKind[]): TestKind[] {
  if (conditions.some((condition) => NEEDS[condition] === 'all')) return [...allowed];
  const tests = new Set<string>(conditions.flatMap((condition) => NEEDS[condition] ?? []));
  return allowed.filter((test) => tests.has(test) || (test === 'spaced' && onlySpaced(tests, allowed)));
}

function onlySpaced(tests: ReadonlySet<string>, allowed: readonly TestKind[]): boolean {
  return tests.has('neighbour') && !allowed.includes('neighbour');
}

/** Judges whether the verdict could rest on what was done: right or wrong, a verdict without readings is a guess. */
export function supportOf(
  worked: Worked,
  verdict: Verdict,
  entry: number,
): { readonly share: number; readonly sentence: string; readonly entries: readonly number[] } {
  const conditions = verdict.findings.map(({ condition }) => condition);
  const tests = needed(conditions, worked.tests);
  if (tests.length === 0)
    return { share: 0, sentence: 'The verdict names no finding to support.', entries: [entry] };
  const shares = tests.map((test) => doneShare(worked, test, entry));
  const share = shares.reduce((sum, one) => sum + one, 0) / tests.length;
  const thin = tests.filter((_, nth) => shares[nth]! < 1);
  const said = listed(conditions.map((condition) => CONDITION_WORDS[condition]));
  const sentence =
    thin.length === 0
      ? `Everything needed to say “${said}” was tested.`
      : `To say “${said}” takes ${listed(thin.map((test) => TEST_WORDS[test]))}, all the way round, first.`;
  return { share, sentence, entries: [entry] };
}
