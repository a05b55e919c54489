import { seeded } from '../../engine/math/random.ts';
import { difficulties, type Family, generateScenario, tellable } from '../../scenario/generate.ts';
import type { PartLibrary, Scenario } from '../../scenario/scenario.ts';
import type { SetWish } from '../../screens/instructor/desk.ts';

/** A part with two faults would share one of them with a neighbour, so a class has one fault a bench, or none. */
function familiesOf(wish: SetWish, library: PartLibrary): readonly Family[] {
  const design = library.get(wish.part);
  return design === undefined ? [] : tellable(design).filter((family) => family !== 'two');
}

/** Families seat by seat: never that of the bench to the left, of the one in front, nor of the two beside that one. */
export function seatFamilies(wish: SetWish, families: readonly Family[]): readonly Family[] {
  const chance = seeded(`class ${wish.seed} ${wish.part} ${wish.difficulty}`);
  const used = new Map<Family, number>();
  const given: Family[] = [];
  for (let seat = 0; seat < wish.seats; seat++) {
    const beside = neighboursBefore(seat, wish.perRow).map((other) => given[other]);
    const free = families.filter((family) => !beside.includes(family));
    const fewest = Math.min(...free.map((family) => used.get(family) ?? 0));
    const fair = free.filter((family) => (used.get(family) ?? 0) === fewest);
    const family = fair[Math.floor(chance() * fair.length)]!;
    used.set(family, (used.get(family) ?? 0) + 1);
    given.push(family);
  }
  return given;
}

/** Seats next to one, among those with a lower number: left, in front, and in front to either side. */
export function neighboursBefore(seat: number, perRow: number): number[] {
  const column = seat % perRow;
  const front = seat - perRow;
  return [
    ...(column > 0 ? [seat - 1] : []),
    ...(front >= 0 && column > 0 ? [front - 1] : []),
    ...(front >= 0 ? [front] : []),
    ...(front >= 0 && column < perRow - 1 ? [front + 1] : []),
  ];
}

/**
 * Jobs for a class, bench by bench, neighbours with different kinds of fault at one difficulty. The same wish gives
 * the same set everywhere; no two jobs of a set share an id.
 */
export function classSet(wish: SetWish, library: PartLibrary): readonly Scenario[] {
  const taken = new Set<string>();
  return seatFamilies(wish, familiesOf(wish, library)).map((family, seat) => {
    for (let draw = 0; ; draw++) {
      const { part, difficulty, mains, mode } = wish;
      const seed = `${wish.seed} bench ${seat} draw ${draw}`;
      const made = generateScenario({ seed, part, family, difficulty, mains, mode }, library);
      if (taken.has(made.public.id)) continue;
      taken.add(made.public.id);
      return made;
    }
  });
}

/** What is wrong with a wish, as path and sentence; empty when it can be granted. */
export function wishIssues(wish: SetWish, library: PartLibrary): { path: string; sentence: string }[] {
  const design = library.get(wish.part);
  const offered = design === undefined ? [] : difficulties(design);
  return [
    ...whole('seats', wish.seats, 60),
    ...whole('perRow', wish.perRow, 20),
    ...(wish.seed.trim() === '' ? [{ path: 'seed', sentence: 'Expected a seed, but nothing came.' }] : []),
    ...(design === undefined
      ? [{ path: 'part', sentence: `Expected a known part type, but "${wish.part}" came.` }]
      : []),
    ...(design !== undefined && !offered.includes(wish.difficulty)
      ? [
          {
            path: 'difficulty',
            sentence: `Expected ${offered.join(' or ')} for this part type, but "${wish.difficulty}" came.`,
          },
        ]
      : []),
  ];
}

function whole(path: string, value: number, most: number): { path: string; sentence: string }[] {
  if (Number.isInteger(value) && value >= 1 && value <= most) return [];
  return [{ path, sentence: `Expected a whole number from 1 to ${most}, but ${value} came.` }];
}
