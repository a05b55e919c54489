import type { ArmatureDesign } from '../../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../../engine/parts/armatureFault.ts';
import { coilPlaces } from '../../../engine/parts/winding.ts';

/** One condition of an armature: a name and the faults that make it. */
export interface Condition {
  readonly name: string;
  readonly faults: readonly ArmatureFault[];
}

/** Where single faults sit; grounds and second faults lie elsewhere. */
const BAR = 5;

type One = (name: string, ...faults: readonly ArmatureFault[]) => Condition;
const one: One = (name, ...faults) => ({ name, faults });

const riser = (form: 'bar' | 'oneEnd' | 'bothEnds', ohm: number | 'open'): ArmatureFault => ({
  kind: 'riserJoint',
  bar: BAR,
  form,
  ohm,
});
const bridge = (ohm: number, by: 'copper' | 'carbon'): ArmatureFault => ({
  kind: 'bridgedBars',
  bar: BAR,
  ohm,
  by,
});
const ground = (bar: number, ohm: number): ArmatureFault => ({ kind: 'groundedBar', bar, ohm });
const weak = (ohm: number, breakdownV: number | null = null): ArmatureFault => ({
  kind: 'weakInsulation',
  ohm,
  breakdownV,
});

const joints: readonly Condition[] = [
  ...[0.001, 0.002, 0.005, 0.02, 0.05, 0.2, 0.5].map((ohm) =>
    one(`riser joint to its bar, ${ohm * 1000} mΩ`, riser('bar', ohm)),
  ),
  one('riser joint to its bar open, coil ends joined', riser('bar', 'open')),
  one('one coil end in its riser, 5 mΩ', riser('oneEnd', 0.005)),
  one('one coil end in its riser, 50 mΩ', riser('oneEnd', 0.05)),
  one('one coil end off its riser', riser('oneEnd', 'open')),
  one('both coil ends in their riser, 50 mΩ each', riser('bothEnds', 0.05)),
  one('both coil ends off their riser and apart', riser('bothEnds', 'open')),
];

const bridges: readonly Condition[] = [
  ...[0.0001, 0.0002, 0.001, 0.005, 0.05].map((ohm) =>
    one(`bars bridged by copper, ${ohm * 1000} mΩ`, bridge(ohm, 'copper')),
  ),
  ...[0.1, 1, 10].map((ohm) => one(`bars bridged by carbon, ${ohm} Ω`, bridge(ohm, 'carbon'))),
];

/** One, half and all turns of a coil shorted, as far as these differ. */
function shortedTurns({ turns }: ArmatureDesign): Condition[] {
  const counts = [...new Set([1, Math.ceil(turns / 2), turns])];
  return counts.map((n) =>
    one(`${n} of ${turns} turns of a coil shorted, 1 mΩ`, {
      kind: 'turnShort',
      coil: BAR,
      turns: n,
      ohm: 0.001,
    }),
  );
}

/** A coil's upper side touching the lower side of one that lies under it. */
function coilShorts(a: ArmatureDesign): Condition[] {
  const places = coilPlaces(a);
  const bottomCoil = places.findIndex(({ bottomSlot }) => bottomSlot === places[BAR]!.topSlot);
  if (bottomCoil < 0) return [];
  return [0.001, 0.05].map((ohm) =>
    one(`coil to coil in a slot, ${ohm * 1000} mΩ`, { kind: 'coilShort', topCoil: BAR, bottomCoil, ohm }),
  );
}

function grounds({ bars, poles }: ArmatureDesign): Condition[] {
  const further = (BAR + Math.round(bars / poles)) % bars;
  return [
    one('one bar grounded, 20 mΩ', ground(BAR, 0.02)),
    one('one bar grounded, 0.5 Ω', ground(BAR, 0.5)),
    one('one bar grounded, 1 kΩ', ground(BAR, 1000)),
    one('one coil grounded in its middle, 0.5 Ω', {
      kind: 'groundedCoil',
      coil: BAR,
      fraction: 0.5,
      ohm: 0.5,
    }),
    one('two bars a pole pitch apart grounded, 20 mΩ each', ground(BAR, 0.02), ground(further, 0.02)),
    one('two bars a pole pitch apart grounded, 0.5 Ω each', ground(BAR, 0.5), ground(further, 0.5)),
  ];
}

const insulation: readonly Condition[] = [
  one('weak insulation, 10 kΩ', weak(1e4)),
  one('weak insulation, 100 kΩ', weak(1e5)),
  one('weak insulation, 500 kΩ', weak(5e5)),
  one('weak insulation, 5 MΩ', weak(5e6)),
  one('weak insulation, 5 MΩ, breaking down above 400 V', weak(5e6, 400)),
];

/** Sound, then every fault kind this armature can have, in several grades, then some faults at once. */
export function conditions(a: ArmatureDesign): readonly Condition[] {
  return [
    one('sound'),
    one('coil open', { kind: 'openCoil', coil: BAR }),
    ...joints,
    ...bridges,
    ...shortedTurns(a),
    ...coilShorts(a),
    one('coil reversed', { kind: 'reversedCoil', coil: BAR }),
    ...grounds(a),
    ...insulation,
    one('dirty commutator', { kind: 'dirtyCommutator' }),
    one('coil open and a bar grounded', { kind: 'openCoil', coil: BAR }, ground(BAR + 4, 0.5)),
    one('hard bridge and an open coil elsewhere', bridge(0.0002, 'copper'), {
      kind: 'openCoil',
      coil: BAR + 4,
    }),
  ];
}
