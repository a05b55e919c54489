/** How the reference was come by. */
export type Verified =
  /** The figure itself was read in a stored copy of the source. */
  | 'yes'
  /** Read in a second source that attributes it to the document named. */
  | '2nd'
  /** Worked out from the stated formula and checked numerically. */
  | 'calc'
  /** From memory: no stored source was found. */
  | 'memory'
  /** Common practice of the trade, no source. */
  | 'practice'
  /** Stored result of an independent program. */
  | 'stored'
  /** Result of an independent program started in this very run. */
  | 'live';

/**
 * `independent`: nobody of this project had a hand in the reference. `fitted`: the reference is independent, but
 * constants of the model were set by it. `ours`: another calculation of our own; no witness, shown for completeness.
 */
export type Standing = 'independent' | 'fitted' | 'ours';

export type Value = number | string;

export interface Finding {
  readonly ours: Value;
  /** Left out where the tolerance is a range, which says it all. */
  readonly reference?: Value;
  /** What the difference is measured against; the reference itself when left out. */
  readonly scale?: number;
}

export type Tolerance =
  /** Largest |ours - reference| / scale. */
  | { readonly kind: 'relative'; readonly most: number }
  /** Largest |ours - reference|, in the unit of the row. */
  | { readonly kind: 'absolute'; readonly most: number }
  | { readonly kind: 'range'; readonly low: number; readonly high: number }
  | { readonly kind: 'equal' };

export const within = (most: number): Tolerance => ({ kind: 'relative', most });
export const absolute = (most: number): Tolerance => ({ kind: 'absolute', most });
export const between = (low: number, high: number): Tolerance => ({ kind: 'range', low, high });
export const equal: Tolerance = { kind: 'equal' };

/** One objective test: a quantity of the engine against a reference. */
export interface WitnessCase {
  readonly id: string;
  readonly quantity: string;
  readonly unit: string;
  readonly source: string;
  readonly verified: Verified;
  readonly standing: Standing;
  readonly tolerance: Tolerance;
  readonly find: () => Finding | Promise<Finding>;
}

export interface WitnessGroup {
  readonly title: string;
  /** What the group checks, with its limits. */
  readonly about: string;
  readonly cases: readonly WitnessCase[];
}

export interface Outcome {
  readonly of: WitnessCase;
  readonly finding: Finding | null;
  /** Difference as the tolerance measures it; null where it is not a number. */
  readonly error: number | null;
  readonly pass: boolean;
  /** One sentence when it does not pass. */
  readonly failure: string | null;
}

/** Runs a case and measures it; a case that throws is a failure, never an end to the run. */
export async function judge(of: WitnessCase): Promise<Outcome> {
  try {
    return measure(of, await of.find());
  } catch (error) {
    const failure = error instanceof Error ? error.message : String(error);
    return { of, finding: null, error: null, pass: false, failure };
  }
}

function measure(of: WitnessCase, finding: Finding): Outcome {
  const { ours, reference } = finding;
  const error = difference(of.tolerance, finding);
  const pass = passes(of.tolerance, finding, error);
  const failure = pass ? null : `Expected ${say(reference, of.tolerance)}, but ${ours} came.`;
  return { of, finding, error, pass, failure };
}

function difference(tolerance: Tolerance, { ours, reference, scale }: Finding): number | null {
  if (typeof ours !== 'number' || typeof reference !== 'number') return null;
  if (tolerance.kind === 'absolute') return Math.abs(ours - reference);
  if (tolerance.kind === 'relative') return Math.abs(ours - reference) / Math.abs(scale ?? reference);
  return null;
}

function passes(tolerance: Tolerance, { ours, reference }: Finding, error: number | null): boolean {
  if (tolerance.kind === 'equal') return ours === reference;
  if (tolerance.kind === 'range')
    return typeof ours === 'number' && ours >= tolerance.low && ours <= tolerance.high;
  return error !== null && error <= tolerance.most;
}

function say(reference: Value | undefined, tolerance: Tolerance): string {
  return tolerance.kind === 'range' ? `${tolerance.low} to ${tolerance.high}` : String(reference);
}

/** Where everything in a family of rows but the quantity and its figures is the same. */
export type Family = Pick<WitnessCase, 'unit' | 'source' | 'verified' | 'standing' | 'tolerance'>;

/** Maker of rows of one family; any field of the family may be replaced for one row. */
export function rowsOf(family: Family) {
  return (
    id: string,
    quantity: string,
    find: WitnessCase['find'],
    change: Partial<Family> = {},
  ): WitnessCase => ({
    ...family,
    ...change,
    id,
    quantity,
    find,
  });
}

/** The pair that differs most, as a finding, with the largest reference as the scale unless another is given. */
export function worst(ours: ArrayLike<number>, reference: ArrayLike<number>, scale?: number): Finding {
  if (ours.length !== reference.length)
    throw new Error(`Expected ${reference.length} values to compare, but ${ours.length} came.`);
  let at = 0;
  let largest = 0;
  let most = -1;
  for (let i = 0; i < ours.length; i++) {
    const away = Math.abs(ours[i]! - reference[i]!);
    if (Number.isNaN(away)) throw new Error(`Expected a number at place ${i}, but ${ours[i]} came.`);
    if (away > most) {
      at = i;
      most = away;
    }
    largest = Math.max(largest, Math.abs(reference[i]!));
  }
  return { ours: ours[at]!, reference: reference[at]!, scale: scale ?? largest };
}
