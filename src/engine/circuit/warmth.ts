import { copperRise } from '../math/constants.ts';
import type { ArmatureDesign } from '../parts/armature.ts';
import { coilOhm } from '../parts/winding.ts';
import type { Topology } from './topology.ts';

/** Resistance of every branch at 20 C, ohm. */
export function coldOhms({ segments }: Topology): Float64Array {
  return Float64Array.from(segments, (s) => s.ohm);
}

/**
 * The same with every coil at its own temperature: the copper of a coil follows it, R20·(1 + α(T − 20)); joints,
 * bridges, grounds and equalisers stay as they are.
 * @param coilC temperature of each coil, degrees C, length bars, about -50..200
 */
export function warmOhms(a: ArmatureDesign, topology: Topology, coilC: ArrayLike<number>): Float64Array {
  const perSide = coilOhm(a) / (2 * a.turns);
  return Float64Array.from(topology.segments, (s) => {
    if (s.coil < 0) return s.ohm;
    const copper = perSide * (s.top - s.bottom);
    return s.ohm + copper * (copperRise(coilC[s.coil]!) - 1);
  });
}
