import { describe, expect, it } from 'vitest';
import type { ArmatureFault, ArmatureFaultKind } from '../../src/engine/parts/armatureFault.ts';
import type { BrushPlateFault } from '../../src/engine/parts/brushPlate.ts';
import {
  ARMATURE_REMEDIES,
  type ArmatureRemedy,
  isArmatureRemedy,
  PLATE_REMEDIES,
  type PlateRemedy,
  REMEDIES,
  REMEDY_MINUTES,
  remedyArmature,
  remedyBrushPlate,
} from '../../src/engine/parts/remedies.ts';
import { FRESH_UNDERCUT_MM, freshWear, wornBy } from '../../src/engine/parts/wear.ts';

/** Every fault an armature can have, with the remedies that cure it. Common practice, no source. */
const ARMATURE: readonly [string, ArmatureFault, readonly ArmatureRemedy[]][] = [
  ['an open coil', { kind: 'openCoil', coil: 4 }, []],
  ['a bad joint at the bar', { kind: 'riserJoint', bar: 4, form: 'bar', ohm: 0.02 }, ['resolderRiser']],
  ['one coil end off', { kind: 'riserJoint', bar: 4, form: 'oneEnd', ohm: 'open' }, ['resolderRiser']],
  ['both coil ends off', { kind: 'riserJoint', bar: 4, form: 'bothEnds', ohm: 'open' }, ['resolderRiser']],
  [
    'carbon across the mica',
    { kind: 'bridgedBars', bar: 4, ohm: 0.5, by: 'carbon' },
    ['brushBetweenBars', 'undercut', 'skimAndPolish'],
  ],
  [
    'copper across the mica',
    { kind: 'bridgedBars', bar: 4, ohm: 2e-4, by: 'copper' },
    ['undercut', 'skimAndPolish'],
  ],
  ['shorted turns', { kind: 'turnShort', coil: 4, turns: 2, ohm: 1e-3 }, []],
  ['two coils touching', { kind: 'coilShort', topCoil: 4, bottomCoil: 21, ohm: 1e-3 }, []],
  ['a grounded bar', { kind: 'groundedBar', bar: 4, ohm: 0.5 }, []],
  ['a grounded coil', { kind: 'groundedCoil', coil: 4, fraction: 0.5, ohm: 0.5 }, []],
  ['a reversed coil', { kind: 'reversedCoil', coil: 4 }, []],
  ['weak insulation', { kind: 'weakInsulation', ohm: 3e5, breakdownV: null }, []],
  ['a dirty commutator', { kind: 'dirtyCommutator' }, ['skimAndPolish']],
];

const PLATE: readonly [string, BrushPlateFault, readonly PlateRemedy[]][] = [
  ['packed dirt', { kind: 'dirt', holder: 'plate:insulated1', ohm: 100 }, ['cleanPlateInsulation']],
  [
    'a loose rivet',
    { kind: 'looseRivet', holder: 'plate:earthed1', makes: 'pressed', ohm: 0.1 },
    ['tightenRivets'],
  ],
  [
    'a broken-down insulator',
    { kind: 'insulatorDown', holder: 'plate:insulated2', ohm: 10, breakdownV: null },
    [],
  ],
  ['a broken pigtail', { kind: 'brokenPigtail', holder: 'plate:earthed2' }, []],
];

describe.each(ARMATURE)('%s', (_, fault, cures) => {
  it.each(ARMATURE_REMEDIES)('against %s', (remedy) => {
    const faults = [fault];
    const left = remedyArmature(faults, remedy, 4);
    if (cures.includes(remedy)) expect(left).toEqual([]);
    else expect(left).toBe(faults);
  });

  it('leaves a fault of every other kind alone when it is cured', () => {
    const others = ARMATURE.map(([, other]) => other).filter((other) => other.kind !== fault.kind);
    for (const remedy of cures) {
      const left = remedyArmature([...others, fault], remedy, 4);
      const alsoCured = others.filter((other) => !remedyArmature([other], remedy, 4).length);
      expect(left).toEqual(others.filter((other) => !alsoCured.includes(other)));
    }
  });
});

describe.each(PLATE)('%s', (_, fault, cures) => {
  it.each(PLATE_REMEDIES)('against %s', (remedy) => {
    const faults = [fault];
    const left = remedyBrushPlate(faults, remedy);
    if (cures.includes(remedy)) expect(left).toEqual([]);
    else expect(left).toBe(faults);
  });
});

describe('the pairs', () => {
  it('are all there: every kind of fault, every remedy', () => {
    const kinds: Record<ArmatureFaultKind, true> = {
      openCoil: true,
      riserJoint: true,
      bridgedBars: true,
      turnShort: true,
      coilShort: true,
      groundedBar: true,
      groundedCoil: true,
      reversedCoil: true,
      weakInsulation: true,
      dirtyCommutator: true,
    };
    expect(new Set(ARMATURE.map(([, { kind }]) => kind))).toEqual(new Set(Object.keys(kinds)));
    expect(REMEDIES.filter(isArmatureRemedy)).toEqual(ARMATURE_REMEDIES);
    for (const remedy of REMEDIES) expect(REMEDY_MINUTES[remedy]).toBeGreaterThan(0);
  });

  it('of a joint hold for the named riser only', () => {
    const [, joint] = ARMATURE[1]!;
    for (const bar of [3, 5, undefined])
      expect(remedyArmature([joint], 'resolderRiser', bar)).toEqual([joint]);
  });
});

describe('what a remedy takes off the part', () => {
  const fresh = freshWear(0.019);

  it.each(REMEDIES.filter((remedy) => remedy !== 'skimAndPolish'))(
    'is nothing of the diameter for %s',
    (remedy) => {
      expect(wornBy(fresh, remedy)).toBe(fresh);
    },
  );

  it('is more for a surface that runs out further, twice on the diameter, once on the depth', () => {
    const worn = { ...fresh, runOutMm: 0.2 };
    const turned = wornBy(worn, 'skimAndPolish');
    const off = worn.commutatorDiameterMm - turned.commutatorDiameterMm;
    expect(off).toBeGreaterThan(
      fresh.commutatorDiameterMm - wornBy(fresh, 'skimAndPolish').commutatorDiameterMm,
    );
    expect(worn.undercutMm - turned.undercutMm).toBeCloseTo(off / 2, 9);
    expect(turned.runOutMm).toBeLessThanOrEqual(0.02);
  });

  it('never leaves mica above the bars, and a saw brings it down again', () => {
    let wear = fresh;
    for (let cut = 0; cut < 10; cut += 1) wear = wornBy(wear, 'skimAndPolish');
    expect(wear.undercutMm).toBe(0);
    expect(wornBy(wear, 'undercut').undercutMm).toBe(FRESH_UNDERCUT_MM);
  });

  // References A02: undercut of one starter 0.5 to 0.8 mm.
  it('leaves a fresh undercut within the published range', () => {
    expect(FRESH_UNDERCUT_MM).toBeGreaterThanOrEqual(0.5);
    expect(FRESH_UNDERCUT_MM).toBeLessThanOrEqual(0.8);
  });
});
