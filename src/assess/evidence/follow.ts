import type { EvidenceModel } from './model.ts';
import { type Possibility, possibilitiesOf } from './possibilities.ts';
import type { Posterior } from './posterior.ts';
import type { Reading } from './reading.ts';
import { Weigher } from './weigher.ts';

/** What one reading did to the field of possibilities. */
export interface Step {
  readonly reading: Reading;
  /** Possibilities whose chance it changed by more than half a hundredth, the largest change first. */
  readonly moved: readonly Moved[];
  /** Of those, the ones it ruled out: from a hundredth or more to less than a fifth of what they were and below a hundredth. */
  readonly ruledOut: readonly Moved[];
  /** Possibilities still at a hundredth or more, and how undecided the field is, bits. */
  readonly open: number;
  readonly bits: number;
}

export interface Moved {
  readonly possibility: Omit<Possibility, 'chance'>;
  readonly from: number;
  readonly to: number;
}

export interface Followed {
  /** Before anything was read. */
  readonly before: Posterior;
  readonly after: Posterior;
  readonly steps: readonly Step[];
  /** How undecided the field is before anything was read, bits. */
  readonly bitsBefore: number;
}

const NOTABLE = 0.005;
const OPEN = 0.01;
const FALLEN = 0.2;

/**
 * Weighs readings one after another and tells what each of them did.
 * @param see shown the whole field before the first reading and after each
 */
export function followReadings(
  model: EvidenceModel,
  readings: readonly Reading[],
  see: (field: readonly Possibility[]) => void = () => {},
): Followed {
  const weigher = new Weigher(model);
  const before = weigher.result();
  let field = possibilitiesOf(before);
  const bitsBefore = undecided(field);
  see(field);
  let after = before;
  const steps = readings.map((reading): Step => {
    weigher.add(reading);
    after = weigher.result();
    const next = possibilitiesOf(after);
    const moved = movedBetween(field, next);
    field = next;
    see(next);
    return {
      reading,
      moved,
      ruledOut: moved.filter(({ from, to }) => from >= OPEN && to < OPEN && to < FALLEN * from),
      open: next.filter(({ chance }) => chance >= OPEN).length,
      bits: undecided(next),
    };
  });
  return { before, after, steps, bitsBefore };
}

/** All readings weighed at once. */
export function weighReadings(model: EvidenceModel, readings: readonly Reading[]): Posterior {
  const weigher = new Weigher(model);
  for (const reading of readings) weigher.add(reading);
  return weigher.result();
}

function movedBetween(before: readonly Possibility[], after: readonly Possibility[]): Moved[] {
  const from = new Map(before.map(({ id, chance }) => [id, chance]));
  return after
    .map(({ chance, ...possibility }) => ({ possibility, from: from.get(possibility.id) ?? 0, to: chance }))
    .filter(({ from: was, to }) => Math.abs(to - was) >= NOTABLE)
    .sort((a, b) => Math.abs(b.to - b.from) - Math.abs(a.to - a.from));
}

/** Each possibility is there or not: the sum of how undecided that is, bits. */
export function undecided(field: readonly Pick<Possibility, 'chance'>[]): number {
  const plogp = (p: number) => (p > 0 ? -p * Math.log2(p) : 0);
  return field.reduce((sum, { chance }) => sum + plogp(chance) + plogp(1 - chance), 0);
}
