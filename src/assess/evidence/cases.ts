/** Most winding faults thought of at once. */
export const FAULTS_MOST = 4;

/** Several winding faults at once, or two grounds with a winding fault. */
export interface SeveralCase {
  /** Nearest single suspect of each winding fault. */
  readonly suspects: readonly number[];
}

/** How one case of the winding stands to everything read so far. */
export interface CaseWeight {
  /**
   * Logarithm of odds times likelihood with a clean and with a dirty commutator; how rare it is for several winding
   * faults to come together is in it.
   */
  readonly clean: number;
  readonly dirty: number;
  /** Weight of what the lens showed, logarithm. */
  readonly look: number;
  /** Bars cut off from the winding. */
  readonly cutOff: readonly number[];
  /** Whether the winding itself has a fault; two grounds are none of the winding. */
  readonly faulty: boolean;
  /** Whether it can only be where the insulation has gone to ground. */
  readonly grounded: boolean;
}

/** The same of all single suspects, none in need of a ground. */
export interface SingleWeights {
  readonly clean: Float64Array;
  readonly dirty: Float64Array;
  /** Bar each cuts off, -1 for none. */
  readonly cutOff: Int16Array;
  look(suspect: number): number;
}

/**
 * Cases of the winding side by side: 0 without fault, then every single suspect by its number, then "none of these",
 * then several faults at once, then two grounds anywhere.
 */
export class CaseTable {
  readonly singles: number;
  readonly several: readonly SeveralCase[];
  readonly count: number;
  readonly clean: Float64Array;
  readonly dirty: Float64Array;
  readonly look: Float64Array;
  /** Bars each cuts off, FAULTS_MOST numbers a case, -1 for none. */
  readonly cutOff: Int16Array;
  readonly faulty: Uint8Array;
  readonly grounded: Uint8Array;

  constructor(singles: number, several: readonly SeveralCase[]) {
    this.singles = singles;
    this.several = several;
    this.count = singles + 2 + several.length;
    this.clean = new Float64Array(this.count);
    this.dirty = new Float64Array(this.count);
    this.look = new Float64Array(this.count);
    this.cutOff = new Int16Array(FAULTS_MOST * this.count).fill(-1);
    this.faulty = new Uint8Array(this.count);
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

  /** All single suspects at once. */
  setSingles({ clean, dirty, cutOff, look }: SingleWeights): void {
    this.clean.set(clean);
    this.dirty.set(dirty);
    for (let k = 0; k < this.singles; k++) {
      this.look[k] = look(k);
      this.faulty[k] = k === 0 ? 0 : 1;
      this.cutOff[FAULTS_MOST * k] = cutOff[k]!;
    }
  }

  set(number: number, { clean, dirty, look, cutOff, faulty, grounded }: CaseWeight): void {
    this.clean[number] = clean;
    this.dirty[number] = dirty;
    this.look[number] = look;
    this.cutOff.set(cutOff, FAULTS_MOST * number);
    this.faulty[number] = faulty ? 1 : 0;
    this.grounded[number] = grounded ? 1 : 0;
  }
}
