/**
 * Faults of an armature as data: each changes parameters or topology of the circuit, never its equations.
 * Resistances in ohm; `'open'` removes the branch.
 */
export type ArmatureFault =
  | { readonly kind: 'openCoil'; readonly coil: number }
  /** `bar`: joint to the bar bad while both coil ends stay joined; `oneEnd`: the coil that starts at this bar is off it;
   * `bothEnds`: both coil ends off the bar and apart. */
  | {
      readonly kind: 'riserJoint';
      readonly bar: number;
      readonly form: 'bar' | 'oneEnd' | 'bothEnds';
      readonly ohm: number | 'open';
    }
  /** Bridge from `bar` to the next one. */
  | {
      readonly kind: 'bridgedBars';
      readonly bar: number;
      readonly ohm: number;
      readonly by: 'copper' | 'carbon';
    }
  | { readonly kind: 'turnShort'; readonly coil: number; readonly turns: number; readonly ohm: number }
  /** Two coils touching in the slot where they lie above one another: the top coil's side and the bottom coil's side. */
  | {
      readonly kind: 'coilShort';
      readonly topCoil: number;
      readonly bottomCoil: number;
      readonly ohm: number;
    }
  | { readonly kind: 'groundedBar'; readonly bar: number; readonly ohm: number }
  /** `fraction` of the coil's turns from its start, 0..1. */
  | { readonly kind: 'groundedCoil'; readonly coil: number; readonly fraction: number; readonly ohm: number }
  | { readonly kind: 'reversedCoil'; readonly coil: number }
  /** Leakage from winding to core; breaks down to a ground above `breakdownV` (peak), or never when null. */
  | { readonly kind: 'weakInsulation'; readonly ohm: number; readonly breakdownV: number | null }
  | { readonly kind: 'dirtyCommutator' };

export type ArmatureFaultKind = ArmatureFault['kind'];
