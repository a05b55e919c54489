import {
  createEvidence,
  type EvidenceModel,
  type MeterReading,
} from '../../../../src/assess/evidence/index.ts';
import { TrialBench } from '../../../../src/cli/calibrate/bench.ts';
import { BELIEVED } from '../../../../src/cli/calibrate/worlds.ts';
import { neighbourStation } from '../../../../src/engine/answers.ts';
import type { ArmatureFault } from '../../../../src/engine/parts/armatureFault.ts';
import { ALL_TESTS, armature } from './parts.ts';

const models = new Map<string, EvidenceModel>();

/** The evidence model of one of the workshop's armatures, made once. */
export function modelOf(id: Parameters<typeof armature>[0]): EvidenceModel {
  const model =
    models.get(id) ?? createEvidence({ design: armature(id), mains: '230V50Hz', tests: ALL_TESTS });
  models.set(id, model);
  return model;
}

/** A bench with that armature, its faults and everything unsteady about it. */
export function benchWith(
  id: Parameters<typeof armature>[0],
  faults: readonly ArmatureFault[],
  seed = 'bench',
): TrialBench {
  const dirty = faults.some(({ kind }) => kind === 'dirtyCommutator');
  return new TrialBench({ design: armature(id), faults, dirty }, '230V50Hz', seed, BELIEVED);
}

/** Neighbouring bars read at some of the bars, the armature turned under the probes. */
export function neighbourPass(bench: TrialBench, steps: readonly number[], written = false): MeterReading[] {
  const { bars } = bench.design;
  const { first, second } = neighbourStation(bench.design);
  return steps.map((step) =>
    bench.meter([(first + step) % bars, (second + step) % bars], (-360 * step) / bars, written),
  );
}

export function all(count: number): number[] {
  return Array.from({ length: count }, (_, k) => k);
}
