import { describe, expect, it } from 'vitest';
import { barAngleDeg } from '../../src/bench/geometry.ts';
import { parseScenarioText } from '../../src/scenario/parse.ts';
import { jobOf } from '../../src/scenario/public/view.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { partLibrary, scenarioTexts } from './files.ts';

const library = partLibrary();

function scenario(id: string): Scenario {
  const read = parseScenarioText(scenarioTexts().get(id)!, library);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
}

describe('the public half', () => {
  it('is the same whatever is hidden', () => {
    const faulty = scenario('q-91d2');
    const sound: Scenario = {
      ...faulty,
      hidden: { ...faulty.hidden, armature: { faults: [] }, seed: 1, supplyReference: 'earthed' },
    };
    expect(jobOf(sound, library)).toEqual(jobOf(faulty, library));
    expect(JSON.stringify(jobOf(faulty, library))).not.toMatch(/riserJoint|floating|seed|52961/);
  });

  it('shows the armature as it can be seen, its bars lying either side of the bottom on the wave winding', () => {
    const { armature } = jobOf(scenario('q-4c7f'), library);
    const angles = Array.from({ length: armature.bars }, (_, bar) => barAngleDeg(armature, bar, 0));
    expect(Math.min(...angles.map(Math.abs))).toBeCloseTo(360 / 23 / 2, 9);
    expect(armature).toMatchObject({ typeId: 'wave-23', poles: 4, slots: 23, bars: 23 });
  });

  it('of a part type that is not in the library is a mistake of ours', () => {
    expect(() => jobOf(scenario('q-4c7f'), new Map())).toThrow(/wave-23/);
  });
});
