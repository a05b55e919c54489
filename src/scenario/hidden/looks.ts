import type { Clue } from '../../bench/observation.ts';
import { CLUES } from '../../bench/observation.ts';
import { barOf, barPlace, type Place, type RiserPlace } from '../../bench/places.ts';
import { seeded } from '../../engine/math/random.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import type { ScenarioHidden } from '../scenario.ts';

/**
 * What the lens shows. A fault shows its sign at a place only with a certain chance, and a sound place shows a sign of
 * its own now and then: clues are not verdicts. The chances are ours (common practice names the signs, no source gives
 * figures), drawn from the scenario's seed and the place, so the same part always looks the same.
 */
interface Sign {
  readonly place: Place;
  readonly clue: Clue;
  readonly chance: number;
}

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

function signsOf(fault: ArmatureFault, design: ArmatureDesign): Sign[] {
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

/** Signs a part without any fault shows too: honest wear, an old repair, a smear. */
function everydaySigns(place: Place): Sign[] {
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

/**
 * Clues the lens shows at one place of the armature, in the order of CLUES, each once; empty where there is nothing
 * to see or the part has no such place.
 */
export function cluesAt(hidden: ScenarioHidden, design: ArmatureDesign, place: Place): readonly Clue[] {
  const bar = barOf(place);
  const onPart = bar === null ? place === 'shaft' || place === 'core' : bar < design.bars;
  if (!onPart) return [];
  const signs = [
    ...hidden.armature.faults.flatMap((fault) => signsOf(fault, design)),
    ...everydaySigns(place),
  ].filter((sign) => sign.place === place);
  const shown = signs.filter(
    (sign, nth) => seeded(`look ${hidden.seed} ${place} ${sign.clue} ${nth}`)() < sign.chance,
  );
  const planted = (hidden.falseLeads ?? []).filter((lead) => lead.place === place);
  const seen = new Set([...shown, ...planted].map((sign) => sign.clue));
  return CLUES.filter((clue) => seen.has(clue));
}
