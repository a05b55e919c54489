import { describe, expect, it } from 'vitest';
import lap24 from '../../../scenarios/parts/lap-24.json' with { type: 'json' };
import lap28 from '../../../scenarios/parts/lap-28.json' with { type: 'json' };
import wave23 from '../../../scenarios/parts/wave-23.json' with { type: 'json' };
import { createArmatureSolver, emptyCradle } from '../../../src/engine/armatureBench.ts';
import { type Excitation, MAINS, type MainsId } from '../../../src/engine/drive.ts';
import { BENCH_GROWLER } from '../../../src/engine/growler.ts';
import { hum } from '../../../src/engine/instruments/hum.ts';
import { COLD_WINDING, stepWinding } from '../../../src/engine/instruments/thermal.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';

/** Facts of the trade (common practice, no source) that have to come out of currents and instruments together. */

const ARMATURES = [wave23, lap28, lap24] as ArmatureDesign[];
const SETTINGS: readonly (readonly [MainsId, Excitation])[] = [
  ['230V50Hz', 'high'],
  ['230V50Hz', 'low'],
  ['120V60Hz', 'high'],
  ['120V60Hz', 'low'],
];
const HOUR = 36_000;

function loaded(
  design: ArmatureDesign,
  mainsId: MainsId,
  excitation: Excitation,
  windingC: number,
  faults: ArmatureFault[] = [],
) {
  const drive = { mains: MAINS[mainsId], excitation, rotationRad: 0, windingC, meter: null };
  return createArmatureSolver(design).solve(faults, drive);
}

function heard(growler: { growlerA: number; fluxWb: number }, mainsId: MainsId, excitation: Excitation) {
  const { turns } = BENCH_GROWLER.windings[mainsId][excitation];
  return hum({ ampereTurns: growler.growlerA * turns, fluxWb: growler.fluxWb }, MAINS[mainsId].hz);
}

describe.each(SETTINGS)('on %s, %s', (mainsId, excitation) => {
  it('an empty cradle heats the winding until the cut-out opens, within minutes', () => {
    const { trippedAfter } = stepWinding(
      COLD_WINDING,
      (windingC) => emptyCradle(MAINS[mainsId], excitation, windingC).growlerW,
      HOUR,
    );
    expect(trippedAfter! / 600).toBeGreaterThan(1);
    expect(trippedAfter! / 600).toBeLessThan(10);
  });

  it.each(ARMATURES)('a sound armature never trips it: $name', (design) => {
    // Between the two temperatures solved for, the loss is taken as a straight line.
    const cold = loaded(design, mainsId, excitation, 20).growlerW;
    const hot = loaded(design, mainsId, excitation, 95).growlerW;
    const loss = (windingC: number) => cold + ((hot - cold) * (windingC - 20)) / 75;
    expect(stepWinding(COLD_WINDING, loss, HOUR).trippedAfter).toBeNull();
  });

  it.each(ARMATURES)('the empty cradle growls louder and harsher: $name', (design) => {
    const closed = heard(loaded(design, mainsId, excitation, 20), mainsId, excitation);
    const open = heard(emptyCradle(MAINS[mainsId], excitation, 20), mainsId, excitation);
    expect(open.level).toBeGreaterThanOrEqual(closed.level + 4);
    expect(open.harshness).toBeGreaterThanOrEqual(closed.harshness + 4);
  });
});

it('two coils shorted in a slot deepen the hum of a lap armature', () => {
  const fault: ArmatureFault = { kind: 'coilShort', topCoil: 5, bottomCoil: 26, ohm: 1e-3 };
  const design = lap28 as ArmatureDesign;
  const shorted = heard(loaded(design, '230V50Hz', 'high', 20, [fault]), '230V50Hz', 'high');
  const sound = heard(loaded(design, '230V50Hz', 'high', 20), '230V50Hz', 'high');
  expect(shorted.level).toBeGreaterThan(sound.level);
});
