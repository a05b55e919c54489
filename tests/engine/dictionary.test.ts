import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { neighbourStation, spanStation, type TestSetup } from '../../src/engine/answers.ts';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { barsAt, type FaultDictionary, faultDictionary } from '../../src/engine/dictionary/dictionary.ts';
import { singleFaults } from '../../src/engine/dictionary/singleFaults.ts';
import { MAINS } from '../../src/engine/drive.ts';
import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import { checkFault } from '../../src/engine/parts/faultRules.ts';
import { ARMATURES, EQUALISED_LAP_28, FORCED_WAVE_35, LAP_24, LAP_28 } from './support/parts.ts';
import { anyArmature } from './support/random.ts';

const SETUP: TestSetup = { mains: MAINS['230V50Hz'], excitation: 'high', loopOhm: 0.008, windingC: 20 };
const stationsOf = (a: ArmatureDesign) => [neighbourStation(a), spanStation(a)];

/** Bars no more than a test has time for. */
const smallArmature = anyArmature.filter((a) => a.bars <= 48);

/**
 * Largest difference, A, from a full solution of its own, over every `stride`-th entry. A coil grounded in its middle
 * is divided there in the full solution and so has the 2 % more slot leakage of its pieces: left out.
 */
function worst(a: ArmatureDesign, d: FaultDictionary, stride: number): number {
  const solver = createArmatureSolver(a);
  let most = 0;
  for (let n = 0; n < d.faults.length * d.positions; n += stride) {
    const fault = d.faults[Math.floor(n / d.positions)]!;
    if (fault.kind === 'groundedCoil') continue;
    const position = n % d.positions;
    const rotationRad = (-2 * Math.PI * position) / a.slots;
    const point = solver.solve([fault], { ...SETUP, rotationRad, meter: null });
    d.stations.forEach((station, s) => {
      const { first, second } = barsAt(a, station, position);
      const amps = d.amps[n * d.stations.length + s]!;
      most = Math.max(most, Math.abs(amps - point.reading(first, second, SETUP.loopOhm)));
    });
  }
  return most;
}

describe('dictionary of single faults', () => {
  it.each([...ARMATURES, EQUALISED_LAP_28, FORCED_WAVE_35].map((a) => [a.id, a] as const))(
    'holds what a full solution of each fault gives, %s',
    (_id, a) => {
      const d = faultDictionary(a, SETUP, stationsOf(a));
      expect(d.amps).toHaveLength(d.faults.length * a.slots * 2);
      expect(worst(a, d, 101)).toBeLessThan(1e-7);
    },
  );

  it('does so on any armature', () => {
    fc.assert(
      fc.property(smallArmature, fc.nat(96), (a, start) => {
        const faults = singleFaults(a).filter((_, k) => k % 97 === start);
        const d = faultDictionary(a, SETUP, stationsOf(a), faults);
        expect(worst(a, d, 7)).toBeLessThan(1e-6);
      }),
      { numRuns: 12 },
    );
  });

  it('lists every kind at every place, and only faults the armature can have', () => {
    for (const a of [LAP_24, LAP_28, FORCED_WAVE_35]) {
      const faults = singleFaults(a);
      for (const fault of faults) expect(checkFault(a, fault)).toEqual([]);
      const kinds = new Set(faults.map((f) => f.kind));
      expect(kinds.size).toBe(8);
      expect(new Set(faults.map((f) => JSON.stringify(f))).size).toBe(faults.length);
    }
  });

  it('has the sound armature beside it: the same at every position with one coil a slot', () => {
    const { sound, positions } = faultDictionary(LAP_28, SETUP, stationsOf(LAP_28), []);
    expect(positions).toBe(28);
    for (let k = 0; k < 28; k++) expect(sound[2 * k + 1]! / sound[1]!).toBeCloseTo(1, 12);
  });

  it('takes faults in any order and leaves none out', () => {
    const faults = singleFaults(LAP_24)
      .filter((f) => f.kind === 'bridgedBars')
      .reverse();
    const some = faultDictionary(LAP_24, SETUP, stationsOf(LAP_24), faults.slice(0, 5));
    const more = faultDictionary(LAP_24, SETUP, stationsOf(LAP_24), faults);
    expect(Array.from(more.amps.slice(0, some.amps.length))).toEqual(Array.from(some.amps));
    expect(Math.min(...some.amps)).toBeGreaterThan(0);
  });
});
