import { toldByTests } from '../../assess/toldByTests.ts';
import type { PartKind } from '../../bench/action.ts';
import type { TestKind } from '../../bench/paper.ts';
import type { PartLibrary, Scenario } from '../../scenario/scenario.ts';
import type { LineEffect } from '../../screens/instructor/desk.ts';

/** Tests that are not read on the growler's ammeter or by the strip, whether the card allows them or not. */
const OTHER_TESTS: Readonly<Record<PartKind, readonly TestKind[]>> = {
  armature: ['megohm', 'gauges'],
  fieldFrame: ['fieldContinuity', 'fieldInsulation', 'megohm', 'millivolt', 'gauges'],
  brushPlate: ['plateInsulation', 'plateEarthed', 'megohm', 'gauges'],
};

/** Every such test of the job's parts, done by a careful hand on a bench in good order. */
export function lineEffects(scenario: Scenario, library: PartLibrary): LineEffect[] {
  const { parts } = scenario.public;
  const tests = [...new Set(parts.flatMap((part) => OTHER_TESTS[part]))];
  const every: Scenario = { ...scenario, public: { ...scenario.public, tests } };
  return toldByTests({ scenario: every, entries: [] }, library).map(({ about, sound, cameIn }) => ({
    about,
    sound,
    shows: cameIn,
  }));
}
