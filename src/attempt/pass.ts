import { AMBIENT_K } from '../engine/instruments/lamp.ts';
import { stepCoil, stepWinding, THERMAL_STEP_MS } from '../engine/instruments/thermal.ts';
import type { PartOnBench } from './part.ts';
import type { World } from './world.ts';

/**
 * The world after minutes of work by the workshop's book that the clock of the attempt does not count: whatever was
 * warm has cooled meanwhile. With the bench on nothing is passed over: such work stops the attempt.
 */
export function passMinutes(part: PartOnBench, world: World, minutes: number): World {
  if (minutes === 0 || world.state.supply === 'on') return world;
  const steps = Math.round((minutes * 60_000) / THERMAL_STEP_MS);
  const { windingC } = stepWinding({ windingC: world.windingC, cutOut: true }, () => 0, steps);
  const coilRiseK = world.coilRiseK.map((rise, coil) => stepCoil(rise, 0, part.coilKg[coil]!, steps));
  return { ...world, windingC, coilRiseK, filamentK: AMBIENT_K };
}
