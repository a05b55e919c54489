import type { Second } from './pairs.ts';

/** Two winding faults at once. */
export interface PairCase {
  readonly suspect: number;
  readonly second: Second;
}

/** How one case of the winding stands to everything read so far. */
export interface CaseWeight {
  /** Logarithm of odds times likelihood with a clean and with a dirty commutator. */
  readonly clean: number;
  readonly dirty: number;
  /** Weight of what the lens showed, logarithm. */
  readonly look: number;
  /** Bars cut off from the winding, -1 for none. */
  readonly cutOff: readonly [number, number];
  /** Winding faults it consists of. */
  readonly faults: number;
}

/**
 * Cases of the winding side by side: 0 without fault, then every single suspect by its number, then "none of these",
 * then pairs.
 */
export class CaseTable {
  readonly singles: number;
  readonly pairs: readonly PairCase[];
  readonly count: number;
  readonly clean: Float64Array;
  readonly dirty: Float64Array;
  readonly look: Float64Array;
  readonly cutOff: Int16Array;
  readonly faults: Uint8Array;

  constructor(singles: number, pairs: readonly PairCase[]) {
    this.singles = singles;
    this.pairs = pairs;
    this.count = singles + 1 + pairs.length;
    this.clean = new Float64Array(this.count);
    this.dirty = new Float64Array(this.count);
    this.look = new Float64Array(this.count);
    this.cutOff = new Int16Array(2 * this.count).fill(-1);
    this.faults = new Uint8Array(this.count);
  }

  /** Number of the case that is none of the suspects. */
  get none(): number {
    return this.singles;
  }

  pairAt(number: number): PairCase | null {
    return this.pairs[number - this.singles - 1] ?? null;
  }

  set(number: number, { clean, dirty, look, cutOff, faults }: CaseWeight): void {
    this.clean[number] = clean;
    this.dirty[number] = dirty;
    this.look[number] = look;
    this.cutOff[2 * number] = cutOff[0];
    this.cutOff[2 * number + 1] = cutOff[1];
    this.faults[number] = faults;
  }
}
