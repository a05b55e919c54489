import type { GrowlerDesign } from '../growler.ts';
import type { ArmatureDesign } from '../parts/armature.ts';
import { type SlotPotentials, slotPotentials } from './toothNetwork.ts';

/** Angles at which one slot pitch is solved. */
const STEPS = 64;
/** A rotation this close to one of them (share of a step) is taken to be it: rounding of a slot pitch is far below. */
const ON_STEP = 1e-8;

/** Slot potentials at some rotation: taken `shift` slots back, so slot s is found at place (s + shift) mod S. */
export interface ShiftedPotentials extends SlotPotentials {
  readonly shift: number;
}

/** Where a rotation lies in the table. */
export interface TablePlace {
  readonly shift: number;
  readonly before: SlotPotentials;
  readonly after: SlotPotentials;
  /** Share of the way from `before` to `after`, 0..1. */
  readonly share: number;
}

/**
 * Slot potentials over all rotations. The core looks the same again after one slot pitch, so one pitch is solved at
 * 64 angles, each when first asked for, and read between by straight lines: within 5e-4 of the largest element. A
 * smoother curve gains nothing, because the network itself steps when a point of a tooth passes the end of a face.
 */
export class SlotTable {
  private readonly a: ArmatureDesign;
  private readonly g: GrowlerDesign;
  private readonly solved = new Array<SlotPotentials | undefined>(STEPS + 1);

  constructor(a: ArmatureDesign, g: GrowlerDesign) {
    this.a = a;
    this.g = g;
  }

  /** @param rotation rad, any value */
  at(rotation: number): ShiftedPotentials {
    return new TableReading(this.a.slots, this.look(rotation));
  }

  /**
   * The matrix `m` alone, written into an array of the caller; returns the shift.
   * @param rotation rad, any value  @param into (S+1)²
   */
  matrixAt(rotation: number, into: Float64Array): number {
    const { shift, before, after, share } = this.look(rotation);
    mix(before.m, after.m, share, into);
    return shift;
  }

  /** @param rotation rad, any value */
  look(rotation: number): TablePlace {
    const s = this.a.slots;
    const turns = rotation / (2 * Math.PI);
    const steps = (turns - Math.floor(turns)) * s * STEPS;
    const near = Math.round(steps);
    const whole = Math.abs(steps - near) < ON_STEP ? near : Math.floor(steps);
    const step = whole % STEPS;
    const shift = Math.floor(whole / STEPS) % s;
    const share = whole === near && Math.abs(steps - near) < ON_STEP ? 0 : steps - whole;
    const before = this.step(step);
    return { shift, before, after: share === 0 ? before : this.step(step + 1), share };
  }

  private step(step: number): SlotPotentials {
    const known = this.solved[step];
    if (known) return known;
    const fresh = slotPotentials(this.a, this.g, (2 * Math.PI * step) / (STEPS * this.a.slots));
    this.solved[step] = fresh;
    return fresh;
  }
}

/** Tooth potentials at a place of the table. */
export function tipsAt({ before, after, share }: TablePlace): Float64Array {
  return between(before.tips, after.tips, share);
}

/** Mixes the tooth potentials only when somebody holds a strip there. */
class TableReading implements ShiftedPotentials {
  readonly slots: number;
  readonly shift: number;
  readonly m: Float64Array;
  private readonly reading: TablePlace;
  private mixedTips: Float64Array | null = null;

  constructor(slots: number, reading: TablePlace) {
    this.slots = slots;
    this.shift = reading.shift;
    this.reading = reading;
    this.m = between(reading.before.m, reading.after.m, reading.share);
  }

  get tips(): Float64Array {
    this.mixedTips ??= tipsAt(this.reading);
    return this.mixedTips;
  }
}

/** Shared, not copied, where nothing has to be mixed: potentials are never written to. */
function between(from: Float64Array, to: Float64Array, share: number): Float64Array {
  return share === 0 ? from : mix(from, to, share, new Float64Array(from.length));
}

function mix(from: Float64Array, to: Float64Array, share: number, into: Float64Array): Float64Array {
  for (let i = 0; i < into.length; i++) into[i] = from[i]! + share * (to[i]! - from[i]!);
  return into;
}
