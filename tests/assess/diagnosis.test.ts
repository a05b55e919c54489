import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { markedPairs, placeWorth } from '../../src/assess/diagnosis/place.ts';
import { shownBy } from '../../src/assess/diagnosis/shown.ts';
import { truthOf } from '../../src/assess/diagnosis/truth.ts';
import type { Disposition, Finding } from '../../src/bench/paper.ts';
import { createArmatureSolver } from '../../src/engine/armatureBench.ts';
import { MAINS } from '../../src/engine/drive.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { expertAttempt, library, scenarioWith } from './attempts.ts';
import { perform, stepsOf } from './script.ts';

const design = (id: string) => library.get(id)!;
const shown = (id: string, ...faults: ArmatureFault[]) =>
  shownBy(createArmatureSolver(design(id)), faults, MAINS['230V50Hz']);
const openCoil: ArmatureFault = { kind: 'openCoil', coil: 9 };
/** In whole points. */
const HALF_OF_FIFTEEN = 8 / 15;

describe('where a coil fault shows', () => {
  // A coil fault marks one pair of bars on a lap winding, and as many pairs as pole pairs, about C/p apart, on a
  // simplex wave winding (theory of closed windings; references B11, worked out there for B02 and B07).
  it('is one pair on a lap winding', () => {
    expect(markedPairs(shown('lap-24', openCoil))).toEqual([9]);
    expect(markedPairs(shown('lap-28', openCoil))).toEqual([9]);
  });
  it('is a pair for every pair of poles on a wave winding', () => {
    const pairs = markedPairs(shown('wave-23', openCoil));
    expect(pairs).toHaveLength(2);
    expect(Math.abs(pairs[1]! - pairs[0]! - 23 / 2)).toBeLessThanOrEqual(1);
  });
  it('is nowhere on a sound armature, and nowhere for a ground', () => {
    expect(markedPairs(shown('wave-23'))).toEqual([]);
    const ground = shown('wave-23', { kind: 'groundedBar', bar: 4, ohm: 0.5 });
    expect(markedPairs(ground)).toEqual([]);
    expect(ground.litBars).toHaveLength(23);
  });
});

describe('what a place is worth', () => {
  const place = (fault: ArmatureFault, armature = 'wave-23', tests?: Scenario['public']['tests']) => {
    const scenario = scenarioWith([fault], tests ? { armature, tests } : { armature });
    return truthOf(scenario, design(armature))[0]!.place;
  };
  it('any of the pairs a faulty coil shows at, no other, and half for one of its bars', () => {
    const right = place(openCoil);
    const [one, two] = [...right.pairs.keys()];
    expect(placeWorth({ kind: 'pair', count: one! - 3 }, 3, right, 23)).toBe(1);
    expect(placeWorth({ kind: 'pair', count: two! }, 0, right, 23)).toBe(1);
    expect(placeWorth({ kind: 'pair', count: one! + 2 }, 0, right, 23)).toBe(0);
    expect(placeWorth({ kind: 'bar', count: 9 }, 0, right, 23)).toBe(0.5);
    expect(placeWorth({ kind: 'somewhere' }, 0, right, 23)).toBe(0);
  });
  it('is counted from the chalked bar, round the end of the numbers', () => {
    const right = place({ kind: 'riserJoint', bar: 1, form: 'bar', ohm: 'open' });
    expect(placeWorth({ kind: 'bar', count: 3 }, 21, right, 23)).toBe(1);
    expect(placeWorth({ kind: 'bar', count: 3 }, null, right, 23)).toBe(0);
    expect(placeWorth({ kind: 'pair', count: 0 }, 0, right, 23)).toBe(0.5);
  });
  it('for a ground only that it has none', () => {
    const right = place({ kind: 'groundedBar', bar: 4, ohm: 0.5 });
    expect(placeWorth({ kind: 'somewhere' }, 0, right, 23)).toBe(1);
    expect(placeWorth({ kind: 'bar', count: 4 }, 0, right, 23)).toBe(0);
  });
  it('for a hard bridge its own pair, though many others fall as well', () => {
    const right = place({ kind: 'bridgedBars', bar: 5, ohm: 0.0002, by: 'copper' });
    expect([...right.pairs.keys()]).toContain(5);
    expect(right.pairs.size).toBeLessThan(4);
  });
  it('is open where the job has no test that counts bars', () => {
    const right = place({ kind: 'bridgedBars', bar: 5, ohm: 0.0002, by: 'copper' }, 'lap-24', ['strip']);
    expect(placeWorth({ kind: 'somewhere' }, 0, right, 24)).toBe(1);
  });
});

describe('what the allowed tests can tell', () => {
  const toldBy = (fault: ArmatureFault, tests: Scenario['public']['tests'], armature = 'wave-23') =>
    truthOf(scenarioWith([fault], { tests, armature }), design(armature))[0]!.toldBy;
  it('a ground by the lamp alone', () => {
    expect(
      toldBy({ kind: 'groundedBar', bar: 4, ohm: 0.5 }, ['spaced', 'neighbour', 'ground', 'strip']),
    ).toEqual(['ground']);
  });
  it('an open coil by the ammeter, never by the strip', () => {
    expect(toldBy(openCoil, ['neighbour', 'strip'])).toEqual(['neighbour']);
  });
  it('carbon of some ohms and high leakage by nothing on this bench', () => {
    const all = ['spaced', 'neighbour', 'ground', 'strip'] as const;
    expect(toldBy({ kind: 'bridgedBars', bar: 2, ohm: 5, by: 'carbon' }, all)).toEqual([]);
    expect(toldBy({ kind: 'weakInsulation', ohm: 200_000, breakdownV: null }, all)).toEqual([]);
  });
});

/** Marks of an expert's work with another verdict under it; what its readings prove is tested in proven.test.ts. */
function marked(scenario: Scenario, findings: readonly Finding[], disposition: Disposition) {
  const steps = stepsOf(expertAttempt(scenario).attempt).map((one) =>
    one.action.type === 'verdict.write'
      ? { ...one, action: { ...one.action, verdict: { ...one.action.verdict, findings, disposition } } }
      : one,
  );
  const { marks } = assess(perform(scenario, steps), library);
  const group = marks.filter(({ id, group: name }) => name === 'diagnosis' && id !== 'proven');
  return Object.fromEntries(group.map(({ id, earned, of }) => [id, earned / of]));
}
const somewhere = { kind: 'somewhere' } as const;
/** The expert chalks bar 3. */
const pair = (bar: number, bars: number) => ({ kind: 'pair', count: (bar - 3 + bars) % bars }) as const;

describe('a verdict', () => {
  it('that names a place for a ground names more than the lamp can tell', () => {
    const scenario = scenarioWith([{ kind: 'groundedBar', bar: 4, ohm: 0.5 }]);
    expect(marked(scenario, [{ condition: 'grounded', place: { kind: 'bar', count: 1 } }], 'winder')).toEqual(
      {
        condition: 1,
        place: 0,
        disposition: 1,
        supported: 1,
      },
    );
  });
  it('that stops at the first of two faults earns half', () => {
    const faults: ArmatureFault[] = [
      { kind: 'groundedBar', bar: 4, ohm: 0.5 },
      { kind: 'riserJoint', bar: 10, form: 'bar', ohm: 'open' },
    ];
    const scenario = scenarioWith(faults);
    expect(marked(scenario, [{ condition: 'grounded', place: somewhere }], 'winder')).toEqual({
      condition: HALF_OF_FIFTEEN,
      place: 0.5,
      disposition: 1,
      supported: 1,
    });
  });
  it('that adds a fault the part does not have loses for it', () => {
    const scenario = scenarioWith([openCoil], { armature: 'lap-28' });
    const findings: Finding[] = [
      { condition: 'openCoil', place: pair(9, 28) },
      { condition: 'grounded', place: somewhere },
    ];
    expect(marked(scenario, findings, 'winder')).toMatchObject({ condition: HALF_OF_FIFTEEN, place: 1 });
  });
  it('of sound is right where nothing can be told, and so is the fault itself', () => {
    const scenario = scenarioWith([{ kind: 'weakInsulation', ohm: 200_000, breakdownV: null }]);
    expect(marked(scenario, [{ condition: 'sound', place: somewhere }], 'service')).toEqual({
      condition: 1,
      place: 1,
      disposition: 1,
      supported: 1,
    });
    expect(marked(scenario, [{ condition: 'openCoil', place: pair(1, 23) }], 'winder').condition).toBe(0);
  });
  it('calls two grounds grounded once: the lamp does not count them', () => {
    const faults: ArmatureFault[] = [
      { kind: 'groundedBar', bar: 4, ohm: 2 },
      { kind: 'groundedCoil', coil: 15, fraction: 0.5, ohm: 2 },
    ];
    const scenario = scenarioWith(faults);
    expect(marked(scenario, [{ condition: 'grounded', place: somewhere }], 'winder')).toMatchObject({
      condition: 1,
      place: 1,
    });
  });
});

describe('every mark', () => {
  it('says why in one sentence and points to entries of the log', () => {
    const { attempt } = expertAttempt(scenarioWith([openCoil]));
    const { marks, of } = assess(attempt, library);
    for (const mark of marks) {
      expect(mark.sentence).toMatch(/^[A-Z“].*\.$/);
      expect(mark.entries.length).toBeGreaterThan(0);
      for (const n of mark.entries) expect(attempt.entries[n]?.n).toBe(n);
    }
    expect(of).toBe(163);
  });
  it('is nothing for an attempt in which nothing was done', () => {
    const { earned, stoppedBy } = assess(perform(scenarioWith([]), []), library);
    expect({ earned, stoppedBy }).toEqual({ earned: 0, stoppedBy: null });
  });
});
