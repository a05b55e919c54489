/** One way things can be: its faults (null: none of the things listed), and how probable it is. */
export interface Case<F> {
  readonly faults: readonly F[] | null;
  /** Before anything was read, and with all readings weighed. */
  readonly before: number;
  readonly after: number;
}

/** Cases of which one is true. Groups of one part have nothing to do with one another. */
export type Group<F> = readonly Case<F>[];

/** A case with odds against the sound one, and the logarithm of how well it explains what was read. */
export interface Unweighed<F> {
  readonly faults: readonly F[] | null;
  readonly odds: number;
  readonly log: number;
}

export function weighed<F>(cases: readonly Unweighed<F>[]): Group<F> {
  let [most, all, left] = [Number.NEGATIVE_INFINITY, 0, 0];
  for (const { log } of cases) most = Math.max(most, log);
  for (const { odds, log } of cases) {
    all += odds;
    left += odds * Math.exp(log - most);
  }
  return cases.map(({ faults, odds, log }) => ({
    faults,
    before: odds / all,
    after: (odds * Math.exp(log - most)) / left,
  }));
}
