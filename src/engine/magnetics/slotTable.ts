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
    const s = this.a.slots;
    const turns = rotation / (2 * Math.PI);
    const pitches = (turns - Math.floor(turns)) * s;
    const shift = Math.floor(pitches) % s;
    const x = (pitches - Math.floor(pitches)) * STEPS;
    const step = Math.min(STEPS - 1, Math.floor(x));
    const before = this.step(step);
    const after = this.step(step + 1);
    const m = mix(before.m, after.m, x - step);
    const tips = mix(before.tips, after.tips, x - step);
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

function mix(from: Float64Array, to: Float64Array, share: number): Float64Array {
  const out = new Float64Array(from.length);
  for (let i = 0; i < out.length; i++) out[i] = from[i]! + share * (to[i]! - from[i]!);
  return out;
}
