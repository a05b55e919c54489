/** One verdict: how probable the engine made it, and whether it was right. */
export interface Said {
  readonly chance: number;
  readonly right: boolean;
  /** How probable it was before anything was read, where that is known. */
  readonly before?: number;
}

/** One row of a reliability table. */
export interface Bin {
  readonly from: number;
  readonly to: number;
  readonly count: number;
  /** Mean of what was said, and share that was right. */
  readonly said: number;
  readonly right: number;
  /** 95 % interval of that share. */
  readonly low: number;
  readonly high: number;
}

/** Edges of the bins; the last is what counts as proven. */
export const EDGES = [0, 0.05, 0.3, 0.6, 0.95, 1] as const;
/** Bins with fewer verdicts are shown, not judged. */
export const JUDGED_FROM = 200;

/** Number of the bin a chance falls into; the last takes in its upper edge. */
export function binAt(chance: number): number {
  const above = EDGES.findIndex((edge) => chance < edge);
  return above === -1 ? EDGES.length - 2 : above - 1;
}

/** For each bin what comes nearest to its middle, if anything lies in it. */
export function nearestByBin<P extends { readonly chance: number }>(sayable: readonly P[]): P[] {
  return EDGES.slice(0, -1).flatMap((from, k) => {
    const to = EDGES[k + 1]!;
    const within = sayable.filter(({ chance }) => binAt(chance) === k);
    const away = ({ chance }: P) => Math.abs(chance - (from + to) / 2);
    return within.length === 0 ? [] : [within.reduce((best, one) => (away(one) < away(best) ? one : best))];
  });
}

/** Judged, a claim counts with what cannot be told from it, and may move to another bin. */
export function onePerBin(said: readonly Said[]): Said[] {
  const bins = said.map(({ chance }) => binAt(chance));
  return said.filter((_, n) => bins.indexOf(bins[n]!) === n);
}

const oddsLog = (chance: number) => Math.log(chance / (1 - chance));

/** Whether readings have made it twice as likely or half as likely, in odds, as it was before them. */
export function isRead({ chance, before }: Said): boolean {
  if (before === undefined || chance >= 1 || chance <= 0) return true;
  return Math.abs(oddsLog(chance) - oddsLog(before)) >= Math.LN2;
}

export function binsOf(said: readonly Said[], edges: readonly number[] = EDGES): Bin[] {
  return edges.slice(0, -1).map((from, k) => {
    const to = edges[k + 1]!;
    const last = k === edges.length - 2;
    const within = said.filter(({ chance }) => chance >= from && (chance < to || (last && chance <= to)));
    const count = within.length;
    const right = within.filter((one) => one.right).length;
    const mean = within.reduce((sum, { chance }) => sum + chance, 0) / Math.max(1, count);
    const [low, high] = wilson(right, count);
    return { from, to, count, said: mean, right: right / Math.max(1, count), low, high };
  });
}

/**
 * 95 % interval of a share by Wilson's score.
 * @source E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209 (formula from memory)
 */
export function wilson(right: number, count: number): readonly [number, number] {
  if (count === 0) return [0, 1];
  const z2 = 1.959964 ** 2;
  const share = right / count;
  const middle = share + z2 / (2 * count);
  const half = 1.959964 * Math.sqrt((share * (1 - share)) / count + z2 / (4 * count * count));
  const whole = 1 + z2 / count;
  return [Math.max(0, (middle - half) / whole), Math.min(1, (middle + half) / whole)];
}

/** Whether what was said lies within the interval, or no further outside than the limit. */
export function holds({ said, low, high }: Bin, tolerance: number): boolean {
  return said >= low - tolerance && said <= high + tolerance;
}

/** Mean logarithmic score, nats: 0 is best, ln 2 = 0.693 is that of a coin. */
export function logScore(said: readonly Said[]): number {
  const sum = said.reduce((total, { chance, right }) => {
    const bounded = Math.min(1 - 1e-6, Math.max(1e-6, chance));
    return total - Math.log(right ? bounded : 1 - bounded);
  }, 0);
  return sum / Math.max(1, said.length);
}
