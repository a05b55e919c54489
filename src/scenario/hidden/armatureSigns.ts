import type { Clue } from '../../bench/observation.ts';
import { barPlace, type Place, type RiserPlace } from '../../bench/places.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import type { Wear } from '../../engine/parts/wear.ts';
import type { Sign } from './sign.ts';

/** What the lens shows on an armature. */

const riserPlace = (bar: number): RiserPlace => `riser:${bar}`;

function step(design: ArmatureDesign, bar: number, by: number): number {
  return (((bar + by) % design.bars) + design.bars) % design.bars;
}

/** A bad joint throws its solder outwards: on to its own riser, now and then on to a neighbour's. */
function jointSigns(bar: number, ohm: number | 'open', design: ArmatureDesign): Sign[] {
  const hot = ohm === 'open' || ohm >= 0.02;
  return [
    { place: riserPlace(bar), clue: 'solderThrown', chance: hot ? 0.8 : 0.35 },
    { place: riserPlace(step(design, bar, 1)), clue: 'solderThrown', chance: 0.2 },
    { place: riserPlace(step(design, bar, -1)), clue: 'solderThrown', chance: 0.2 },
    { place: barPlace(bar), clue: 'burntBarEdge', chance: hot ? 0.5 : 0.2 },
  ];
}

/** An open coil burns the edge of the bars it ends at, by the arc under the brush. */
function openSigns(coil: number, design: ArmatureDesign): Sign[] {
  return [coil, step(design, coil, design.commutatorPitch)].map((bar) => ({
    place: barPlace(bar),
    clue: 'burntBarEdge',
    chance: 0.6,
  }));
}

/** What lies across the mica can be seen from either bar, when it has not been wiped over. */
function bridgeSigns(bar: number, by: 'copper' | 'carbon', design: ArmatureDesign): Sign[] {
  const clue: Clue = by === 'copper' ? 'metalAcrossMica' : 'carbonAcrossMica';
  return [
    { place: barPlace(bar), clue, chance: 0.75 },
    { place: barPlace(step(design, bar, 1)), clue, chance: 0.75 },
  ];
}

const everyBar = (design: ArmatureDesign, clue: Clue, chance: number): Sign[] =>
  Array.from({ length: design.bars }, (_, bar) => ({ place: barPlace(bar), clue, chance }));

export function armatureSigns(fault: ArmatureFault, design: ArmatureDesign): Sign[] {
  switch (fault.kind) {
    case 'openCoil':
      return openSigns(fault.coil, design);
    case 'riserJoint':
      return jointSigns(fault.bar, fault.ohm, design);
    case 'bridgedBars':
      return bridgeSigns(fault.bar, fault.by, design);
    case 'turnShort':
    case 'coilShort':
      return [{ place: 'core', clue: 'charredInsulation', chance: 0.6 }];
    case 'groundedBar':
      return [{ place: riserPlace(fault.bar), clue: 'charredInsulation', chance: 0.4 }];
    case 'groundedCoil':
      return [
        { place: 'core', clue: 'charredInsulation', chance: 0.4 },
        { place: 'core', clue: 'rubbedCore', chance: 0.4 },
      ];
    case 'reversedCoil':
      return [{ place: riserPlace(fault.coil), clue: 'brightSolder', chance: 0.9 }];
    case 'weakInsulation':
      return [{ place: 'core', clue: 'dirt', chance: 0.7 }];
    case 'dirtyCommutator':
      return [...everyBar(design, 'dirt', 0.85), ...everyBar(design, 'wornSurface', 0.4)];
  }
}

/** A commutator that runs out is worn in bands all round. */
export function wearSigns({ runOutMm = 0 }: Partial<Wear>, design: ArmatureDesign): Sign[] {
  return runOutMm > WORN_RUN_OUT_MM ? everyBar(design, 'wornSurface', 0.5) : [];
}
/** Limit of run-out (references A04), mm. */
const WORN_RUN_OUT_MM = 0.05;

/** Signs a part without any fault shows too: honest wear, an old repair, a smear. */
export function everydayOnArmature(place: Place): Sign[] {
  if (place === 'shaft') return [];
  if (place === 'core')
    return [
      { place, clue: 'rubbedCore', chance: 0.12 },
      { place, clue: 'dirt', chance: 0.25 },
    ];
  if (place.startsWith('riser:'))
    return [
      { place, clue: 'brightSolder', chance: 0.08 },
      { place, clue: 'solderThrown', chance: 0.03 },
    ];
  return [
    { place, clue: 'burntBarEdge', chance: 0.03 },
    { place, clue: 'carbonAcrossMica', chance: 0.04 },
    { place, clue: 'dirt', chance: 0.06 },
  ];
}
