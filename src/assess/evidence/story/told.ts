import { undecided } from '../follow.ts';
import type { EvidenceStory, KindStory, StoryMoved, StoryPossibility, StoryStep } from './shape.ts';

/** Everything the part may have, with its chance, at one time of the attempt. */
export type Field = readonly StoryPossibility[];

/** Kinds that never came to this are left out. */
const WORTH_TELLING = 0.02;
/** Ruled out: below a tenth of what it was before anything was read, and below a hundredth. */
const FALLEN = 0.1;
const SLIGHT = 0.01;
/** A possibility that gained this much was raised by the reading. */
const RAISED = 0.1;
/** A reading that would settle less than this is not worth the walk to the bench, bits. */
export const WORTH_READING = 0.03;

export interface Told extends Pick<EvidenceStory, 'kinds' | 'steps' | 'openBefore'> {
  /** How undecided it is in the end, bits. */
  readonly doubt: number;
}

/**
 * What a run of readings did to the field of possibilities.
 * @param fields before the first reading and after each, with the same possibilities in each
 */
export function toldBy(
  readings: readonly Pick<StoryStep, 'reading' | 'ampere'>[],
  fields: readonly Field[],
): Told {
  return {
    kinds: kindsOf(fields),
    steps: stepsOf(readings, fields),
    openBefore: fields[0]!.length,
    doubt: undecided(fields.at(-1)!),
  };
}

/** Possibilities not ruled out, by id. */
function openIn(field: Field, first: ReadonlyMap<string, number>): Set<string> {
  const open = field.filter(({ id, chance }) => chance >= SLIGHT || chance >= FALLEN * first.get(id)!);
  return new Set(open.map(({ id }) => id));
}

const chancesOf = (field: Field) => new Map(field.map(({ id, chance }) => [id, chance]));

function stepsOf(
  readings: readonly Pick<StoryStep, 'reading' | 'ampere'>[],
  fields: readonly Field[],
): StoryStep[] {
  const first = chancesOf(fields[0]!);
  let open = openIn(fields[0]!, first);
  return readings.map((read, n) => {
    const before = open;
    const field = fields[n + 1]!;
    const moved = movedBetween(fields[n]!, field);
    open = openIn(field, first);
    return {
      ...read,
      ruledOut: moved.filter(({ possibility: { id } }) => before.has(id) && !open.has(id)),
      raised: moved
        .filter(({ from, to }) => to - from >= RAISED)
        .sort((a, b) => b.to - b.from - (a.to - a.from)),
      open: open.size,
      settled: undecided(fields[n]!) - undecided(field),
    };
  });
}

function movedBetween(before: Field, after: Field): StoryMoved[] {
  const from = chancesOf(before);
  return after.map(({ chance, ...possibility }) => ({
    possibility,
    from: from.get(possibility.id)!,
    to: chance,
  }));
}

function kindsOf(fields: readonly Field[]): KindStory[] {
  const first = fields[0]!;
  const open = openIn(fields.at(-1)!, chancesOf(first));
  const kinds = [...new Set(first.map(({ what }) => what))];
  return kinds
    .map((what): KindStory => {
      const own = first.filter((one) => one.what === what);
      const places = placesOf(own).size;
      const left = placesOf(own.filter(({ id }) => open.has(id))).size;
      return {
        what,
        alike: [...new Set(own.flatMap(({ alike }) => alike ?? []))],
        chances: fields.map((field) => chanceOf(field, what)),
        places: places > 0 ? [places, left] : null,
      };
    })
    .filter(({ chances }) => Math.max(...chances) >= WORTH_TELLING)
    .sort((a, b) => b.chances.at(-1)! - a.chances.at(-1)!);
}

/** Places by name; branches that cannot be told apart count one by one. */
function placesOf(field: readonly Pick<StoryPossibility, 'place'>[]): ReadonlySet<string> {
  const names = field.flatMap(({ place }) => {
    if (place === null) return [];
    return place.kind === 'branch' ? place.brushes.map(String) : [JSON.stringify(place)];
  });
  return new Set(names);
}

function chanceOf(field: Field, kind: StoryPossibility['what']): number {
  const sum = field.reduce((all, { what, chance }) => (what === kind ? all + chance : all), 0);
  return Math.min(1, sum);
}
