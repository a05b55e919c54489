import type { Second } from './pairs.ts';

/** Two winding faults at once. */
export interface PairCase {
  /** 0 where the first is no single suspect but two grounds. */
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
  /** Whether it can only be where the insulation has gone to ground. */
  readonly grounded: boolean;
}

/** The same of all single suspects, each of one fault and none in need of a ground. */
export interface SingleWeights {
  readonly clean: Float64Array;
  readonly dirty: Float64Array;
  /** Bar each cuts off, -1 for none. */
  readonly cutOff: Int16Array;
  look(suspect: number): number;
}

/**
 * Cases of the winding side by side: 0 without fault, then every single suspect by its number, then "none of these",
 * then pairs, then two grounds anywhere.
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
  readonly grounded: Uint8Array;

  constructor(singles: number, pairs: readonly PairCase[]) {
    this.singles = singles;
    this.pairs = pairs;
    this.count = singles + 2 + pairs.length;
    this.clean = new Float64Array(this.count);
    this.dirty = new Float64Array(this.count);
    this.look = new Float64Array(this.count);
    this.cutOff = new Int16Array(2 * this.count).fill(-1);
    this.faults = new Uint8Array(this.count);
    this.grounded = new Uint8Array(this.count);
  }

  /** Number of the case that is none of the suspects. */
  get none(): number {
    return this.singles;
  }

  /** Number of the case of two grounds and nothing else. */
  get grounds(): number {
    return this.count - 1;
  }

  pairAt(number: number): PairCase | null {
    return this.pairs[number - this.singles - 1] ?? null;
  }

  /** All single suspects at once. */
  setSingles({ clean, dirty, cutOff, look }: SingleWeights): void {
    this.clean.set(clean);
    this.dirty.set(dirty);
    for (let k = 0; k < this.singles; k++) {
      this.look[k] = look(k);
      this.cutOff[2 * k] = cutOff[k]!;
      this.faults[k] = k === 0 ? 0 : 1;
    }
  }

  set(number: number, { clean, dirty, look, cutOff, faults, grounded }: CaseWeight): void {
    this.clean[number] = clean;
    this.dirty[number] = dirty;
    this.look[number] = look;
    this.cutOff[2 * number] = cutOff[0];
    this.cutOff[2 * number + 1] = cutOff[1];
    this.faults[number] = faults;
    this.grounded[number] = grounded ? 1 : 0;
  }
}
