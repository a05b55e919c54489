import type { GrowlerDesign } from '../growler.ts';
import type { ArmatureDesign } from '../parts/armature.ts';
import { type SlotPotentials, slotPotentials } from './toothNetwork.ts';

/** Angles at which one slot pitch is solved. */
const STEPS = 64;

/** Slot potentials at some rotation: taken `shift` slots back, so slot s is found at place (s + shift) mod S. */
export interface ShiftedPotentials extends SlotPotentials {
  readonly shift: number;
}

/**
 * Slot potentials over all rotations. The core looks the same again after one slot pitch, so one pitch is solved at
 * 64 angles, each when first asked for, and read between by straight lines: within 2e-4 of the largest element.
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
    const s = this.a.slots;
    const turns = rotation / (2 * Math.PI);
    const pitches = (turns - Math.floor(turns)) * s;
    const shift = Math.floor(pitches) % s;
    const x = (pitches - Math.floor(pitches)) * STEPS;
    const step = Math.min(STEPS - 1, Math.floor(x));
    const m = new Float64Array((s + 1) * (s + 1));
    const tips = new Float64Array((s + 2) * (s + 1));
    mix(m, this.step(step).m, this.step(step + 1).m, x - step);
    mix(tips, this.step(step).tips, this.step(step + 1).tips, x - step);
    return { slots: s, m, tips, shift };
  }

  private step(step: number): SlotPotentials {
    const known = this.solved[step];
    if (known) return known;
    const fresh = slotPotentials(this.a, this.g, (2 * Math.PI * step) / (STEPS * this.a.slots));
    this.solved[step] = fresh;
    return fresh;
  }
}

function mix(into: Float64Array, from: Float64Array, to: Float64Array, share: number): void {
  for (let i = 0; i < into.length; i++) into[i] = from[i]! + share * (to[i]! - from[i]!);
}
