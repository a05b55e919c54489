/** How far two people who judged the same things agreed, beyond what chance would give. */
export interface Agreement {
  readonly categories: readonly string[];
  /** counts[a][b]: how often the first said category a and the second category b. Shape [categories][categories]. */
  readonly counts: readonly (readonly number[])[];
  /** Number of things both judged. */
  readonly judged: number;
  /** Share on which they agreed, 0..1; null when nothing was judged. */
  readonly observed: number | null;
  /** Share on which they would have agreed by chance, each keeping their own habits, 0..1. */
  readonly expected: number | null;
  /**
   * Cohen's kappa, (observed − expected) / (1 − expected), −1..1. Null when chance alone would always agree: both used
   * one and the same category throughout, and nothing can be said.
   * @source Cohen 1960, A coefficient of agreement for nominal scales, Educ. Psychol. Meas. 20:37-46 (from memory)
   */
  readonly kappa: number | null;
}

/**
 * @param pairs       what the first and the second person said of each thing
 * @param categories  order of the table; those said but not listed come after, in the order they appear
 */
export function agreement(
  pairs: readonly (readonly [first: string, second: string])[],
  categories: readonly string[] = [],
): Agreement {
  const all = [...new Set([...categories, ...pairs.flat()])];
  const place = new Map(all.map((category, nth) => [category, nth]));
  const counts = all.map(() => all.map(() => 0));
  for (const [first, second] of pairs) counts[place.get(first)!]![place.get(second)!]! += 1;
  return { categories: all, counts, judged: pairs.length, ...kappaOf(counts) };
}

/** @param counts  square table, whole numbers or shares */
export function kappaOf(
  counts: readonly (readonly number[])[],
): Pick<Agreement, 'observed' | 'expected' | 'kappa'> {
  const rows = counts.map((row) => sum(row));
  const columns = counts.map((_, nth) => sum(counts.map((row) => row[nth]!)));
  const total = sum(rows);
  if (total === 0) return { observed: null, expected: null, kappa: null };
  const observed = sum(counts.map((row, nth) => row[nth]!)) / total;
  const expected = sum(rows.map((row, nth) => row * columns[nth]!)) / total ** 2;
  return { observed, expected, kappa: expected > 1 - 1e-12 ? null : (observed - expected) / (1 - expected) };
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0);

/**
 * What people call a kappa of this size.
 * @source references.md E10: Landis and Koch 1977, Biometrics 33:159-174
 */
export function kappaWords(kappa: number): string {
  if (kappa < 0) return 'less than chance';
  const bands = ['slight', 'fair', 'moderate', 'substantial', 'almost perfect'];
  return bands[[0.2, 0.4, 0.6, 0.8].filter((limit) => kappa > limit).length]!;
}
