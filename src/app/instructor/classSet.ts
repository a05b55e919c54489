import { PART_KINDS, type PartKind } from '../../bench/action.ts';
import { seeded } from '../../engine/math/random.ts';
import { TWO_BRANCHES } from '../../engine/parts/fieldFrameDesigns.ts';
import {
  difficulties,
  generateScenario,
  PLATE_FAMILIES,
  tellable,
  tellableOnFrame,
  type Wish,
} from '../../scenario/generate.ts';
import type { PartLibrary, Scenario } from '../../scenario/scenario.ts';
import type { SetWish } from '../../screens/instructor/desk.ts';

/** The frame every bench of a class gets: each kind of fault can be told on it. */
const FRAME = TWO_BRANCHES;

/** A part with two faults would share one of them with a neighbour, so a class has one fault a part, or none. */
function familiesOf(part: PartKind, wish: SetWish, library: PartLibrary): readonly string[] {
  const design = library.get(wish.part);
  const all: readonly string[] = {
    armature: design === undefined ? [] : tellable(design),
    fieldFrame: tellableOnFrame(FRAME),
    brushPlate: PLATE_FAMILIES,
  }[part];
  return all.filter((family) => family !== 'two');
}

/** Families seat by seat: never that of the bench to the left, of the one in front, nor of the two beside that one. */
export function seatFamilies<F extends string>(
  wish: SetWish,
  families: readonly F[],
  part: PartKind = 'armature',
): readonly F[] {
  const chance = seeded(
    `class ${wish.seed} ${wish.part} ${wish.difficulty}${part === 'armature' ? '' : ` ${part}`}`,
  );
  const used = new Map<F, number>();
  const given: F[] = [];
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
  const seats = familiesBySeat(wish, library);
  return Array.from({ length: wish.seats }, (_, seat) => {
    for (let draw = 0; ; draw++) {
      const { part, about, difficulty, mains, mode } = wish;
      const seed = `${wish.seed} bench ${seat} draw ${draw}`;
      const made = generateScenario({ seed, part, about, difficulty, mains, mode, ...seats(seat) }, library);
      if (taken.has(made.public.id)) continue;
      taken.add(made.public.id);
      return made;
    }
  });
}

type Families = Pick<Wish, 'family' | 'frame' | 'frameFamily' | 'plateFamily'>;

/** What each bench gets, part by part. */
function familiesBySeat(wish: SetWish, library: PartLibrary): (seat: number) => Families {
  const { about } = wish;
  const of = (part: PartKind) =>
    about.includes(part) ? seatFamilies(wish, familiesOf(part, wish, library), part) : null;
  const [armature, frame, plate] = PART_KINDS.map(of);
  return (seat) =>
    ({
      ...(armature ? { family: armature[seat] } : {}),
      ...(frame ? { frame: FRAME.id, frameFamily: frame[seat] } : {}),
      ...(plate ? { plateFamily: plate[seat] } : {}),
    }) as Families;
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
    ...(wish.about.length === 0
      ? [{ path: 'about', sentence: 'Expected at least one part to be judged, but none came.' }]
      : []),
    ...(design !== undefined && design.poles !== 4 && wish.about.some((part) => part !== 'armature')
      ? [
          {
            path: 'part',
            sentence: `Expected a four-pole armature beside a field frame or brush plate, but one of ${design.poles} poles came.`,
          },
        ]
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
