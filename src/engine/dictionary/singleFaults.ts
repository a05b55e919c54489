import type { ArmatureDesign } from '../parts/armature.ts';
import type { ArmatureFault } from '../parts/armatureFault.ts';
import { coilPlaces } from '../parts/winding.ts';

/** Grades on which the list of single faults stands, ohm. */
const JOINTS: readonly (number | 'open')[] = [1e-3, 5e-3, 0.02, 0.05, 0.2, 0.5, 'open'];
const COPPER: readonly number[] = [1e-4, 2e-4, 1e-3, 5e-3, 0.05];
const CARBON: readonly number[] = [0.1, 1, 10];
const SHORTS: readonly number[] = [2e-4, 1e-3, 0.01];
const GROUND_OHM = 0.5;

/** Every single fault of winding and commutator this armature can have: each kind, at each place, on a grid of grades. */
export function singleFaults(a: ArmatureDesign): ArmatureFault[] {
  return Array.from({ length: a.bars }, (_, place) => faultsAt(a, place)).flat();
}

function faultsAt(a: ArmatureDesign, place: number): ArmatureFault[] {
  const joints = (form: 'bar' | 'oneEnd' | 'bothEnds') =>
    JOINTS.map((ohm) => ({ kind: 'riserJoint', bar: place, form, ohm }) as const);
  const bridges = (by: 'copper' | 'carbon', ohms: readonly number[]) =>
    ohms.map((ohm) => ({ kind: 'bridgedBars', bar: place, ohm, by }) as const);
  const turns = Array.from({ length: a.turns }, (_, k) => k + 1);
  return [
    { kind: 'openCoil', coil: place },
    ...joints('bar'),
    ...joints('oneEnd'),
    ...joints('bothEnds'),
    ...bridges('copper', COPPER),
    ...bridges('carbon', CARBON),
    ...turns.flatMap((n) =>
      SHORTS.map((ohm) => ({ kind: 'turnShort', coil: place, turns: n, ohm }) as const),
    ),
    ...under(a, place).flatMap((bottomCoil) =>
      SHORTS.map((ohm) => ({ kind: 'coilShort', topCoil: place, bottomCoil, ohm }) as const),
    ),
    { kind: 'reversedCoil', coil: place },
    { kind: 'groundedBar', bar: place, ohm: GROUND_OHM },
    { kind: 'groundedCoil', coil: place, fraction: 0.5, ohm: GROUND_OHM },
  ];
}

/** Coils whose lower side lies in the slot of the top side of this one. */
function under(a: ArmatureDesign, topCoil: number): number[] {
  const places = coilPlaces(a);
  const { topSlot } = places[topCoil]!;
  return places.flatMap((p, coil) => (p.bottomSlot === topSlot ? [coil] : []));
}
