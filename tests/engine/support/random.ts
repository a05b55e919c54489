import fc from 'fast-check';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { coilPlaces } from '../../../src/engine/parts/winding.ts';
import { checkWinding } from '../../../src/engine/parts/windingRules.ts';
import { WAVE_23 } from './parts.ts';

/** Any simplex lap or wave armature of 2, 4 or 6 poles, 1 to 3 coils a slot, full pitch or chorded, that can be wound. */
export const anyArmature: fc.Arbitrary<ArmatureDesign> = fc
  .record({
    winding: fc.constantFrom('lap' as const, 'wave' as const),
    poles: fc.constantFrom(2, 4, 6),
    slots: fc.integer({ min: 9, max: 37 }),
    coilsPerSlot: fc.integer({ min: 1, max: 3 }),
    turns: fc.integer({ min: 1, max: 6 }),
    sense: fc.constantFrom(1, -1),
    chord: fc.integer({ min: -1, max: 1 }),
    equalised: fc.boolean(),
    dummy: fc.boolean(),
    fill: fc.double({ min: 0.3, max: 0.6, noNaN: true }),
    jawGap: fc.double({ min: 1e-4, max: 1e-3, noNaN: true }),
  })
  .map(buildArmature)
  .filter((a) => checkWinding(a).length === 0);

interface Choice {
  readonly winding: 'lap' | 'wave';
  readonly poles: number;
  readonly slots: number;
  readonly coilsPerSlot: number;
  readonly turns: number;
  readonly sense: number;
  readonly chord: number;
  readonly equalised: boolean;
  readonly dummy: boolean;
  readonly fill: number;
  readonly jawGap: number;
}

export function buildArmature(c: Choice): ArmatureDesign {
  const dummy = c.dummy && c.winding === 'wave';
  const bars = c.slots * c.coilsPerSlot - (dummy ? 1 : 0);
  const rootPitch = (2 * Math.PI * (WAVE_23.outerRadius - 0.012)) / c.slots;
  const slotWidth = c.fill * rootPitch;
  const room = (2 * WAVE_23.layerHeight * slotWidth) / (2 * c.coilsPerSlot * c.turns);
  return {
    ...WAVE_23,
    id: 'random',
    winding: c.winding,
    poles: c.poles,
    slots: c.slots,
    coilsPerSlot: c.coilsPerSlot,
    bars,
    turns: c.turns,
    commutatorPitch: c.winding === 'lap' ? c.sense : (bars + c.sense) / (c.poles / 2),
    spanSlots: Math.max(1, Math.round(c.slots / c.poles) + c.chord),
    equalised: c.equalised && c.winding === 'lap' && c.poles > 2 && bars % (c.poles / 2) === 0,
    dummyPlace: dummy ? bars >> 1 : undefined,
    jawGap: c.jawGap,
    slotWidth,
    slotMouth: 0.6 * slotWidth,
    conductorArea: 0.7 * room,
  };
}

/** One fault of any kind this armature can have. */
export function anyFault(a: ArmatureDesign): fc.Arbitrary<ArmatureFault> {
  const bar = fc.integer({ min: 0, max: a.bars - 1 });
  const ohm = fc.integer({ min: -60, max: 20 }).map((x) => 10 ** (x / 10));
  const joint = fc.oneof(ohm, fc.constant('open' as const));
  const places = coilPlaces(a);
  const under = (topCoil: number) => places.findIndex((p) => p.bottomSlot === places[topCoil]!.topSlot);
  return fc.oneof(
    bar.map((coil) => ({ kind: 'openCoil' as const, coil })),
    fc.record({
      kind: fc.constant('riserJoint' as const),
      bar,
      form: fc.constantFrom('bar' as const, 'oneEnd' as const, 'bothEnds' as const),
      ohm: joint,
    }),
    fc.record({
      kind: fc.constant('bridgedBars' as const),
      bar,
      ohm,
      by: fc.constantFrom('copper' as const, 'carbon' as const),
    }),
    fc.record({
      kind: fc.constant('turnShort' as const),
      coil: bar,
      turns: fc.integer({ min: 1, max: a.turns }),
      ohm,
    }),
    fc
      .record({ topCoil: bar, ohm })
      .filter(({ topCoil }) => under(topCoil) >= 0)
      .map((f) => ({ kind: 'coilShort' as const, bottomCoil: under(f.topCoil), ...f })),
    fc.record({ kind: fc.constant('groundedBar' as const), bar, ohm }),
    fc.record({
      kind: fc.constant('groundedCoil' as const),
      coil: bar,
      fraction: fc.integer({ min: 0, max: 8 }).map((x) => x / 8),
      ohm,
    }),
    bar.map((coil) => ({ kind: 'reversedCoil' as const, coil })),
    ohm.map((x) => ({ kind: 'weakInsulation' as const, ohm: 1e4 * (1 + x), breakdownV: null })),
    fc.constant({ kind: 'dirtyCommutator' as const }),
  );
}

/** An armature with up to four faults at once. */
export const anyFaultyArmature = anyArmature.chain((a) =>
  fc.record({ a: fc.constant(a), faults: fc.array(anyFault(a), { maxLength: 4 }) }),
);
