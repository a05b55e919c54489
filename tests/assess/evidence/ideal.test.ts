import { describe, expect, it } from 'vitest';
import { readingsToProve } from '../../../src/assess/evidence/ideal.ts';
import { createEvidence } from '../../../src/assess/evidence/index.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { armature } from './support/parts.ts';
import { modelOf } from './support/readings.ts';

describe('the readings it takes to prove a fault', () => {
  const model = modelOf('wave-23');
  const hard: ArmatureFault = { kind: 'riserJoint', bar: 8, form: 'bar', ohm: 0.03 };

  it('are few where each is the one that tells most', () => {
    const count = readingsToProve(model, [hard])!;
    expect(count).toBeGreaterThan(1);
    expect(count).toBeLessThan(16);
  });

  it('are more for a slight fault than for a plain one', () => {
    const slight = readingsToProve(model, [{ ...hard, ohm: 0.004 }]) ?? Infinity;
    expect(slight).toBeGreaterThan(readingsToProve(model, [hard])!);
  });

  it('is one for a ground where the lamp is all there is', () => {
    const lampOnly = createEvidence({ design: armature('wave-23'), mains: '230V50Hz', tests: ['ground'] });
    expect(readingsToProve(lampOnly, [{ kind: 'groundedBar', bar: 4, ohm: 1 }])).toBe(1);
    // Nothing else can be shown by a lamp: a joint leaves the part sound as far as it tells.
    expect(readingsToProve(lampOnly, [hard])).toBe(1);
  });
});
