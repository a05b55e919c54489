import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  followReadings,
  nextReadings,
  possibilitiesOf,
  type Reading,
  weighReadings,
} from '../../../src/assess/evidence/index.ts';
import { all, benchWith, modelOf, neighbourPass } from './support/readings.ts';

const JOINT = { kind: 'riserJoint', bar: 9, form: 'bar', ohm: 0.02 } as const;

/** Some of everything, taken from a part with a bad joint. */
function mixedReadings(): Reading[] {
  const bench = benchWith('lap-28', [JOINT]);
  return [
    bench.look('riser:9'),
    bench.look('bar:2'),
    ...neighbourPass(bench, [0, 3, 8, 9, 10, 20]),
    bench.lamp(['shaft', 'bar:3']),
    bench.lamp(['bar:9', 'bar:15']),
    bench.strip(120, 40),
    bench.strip(180, 200),
  ];
}

describe('probabilities', () => {
  it('add up to one and lie between nothing and one, whatever is read', () => {
    const { steps, after } = followReadings(modelOf('lap-28'), mixedReadings());
    for (const marginal of [after.winding, after.insulation, after.surface]) {
      expect(marginal.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
      expect(Math.min(...marginal)).toBeGreaterThanOrEqual(0);
    }
    expect(after.chance({})).toBeCloseTo(1, 12);
    expect(steps).toHaveLength(mixedReadings().length);
    for (const { chance } of possibilitiesOf(after)) expect(chance).toBeLessThanOrEqual(1 + 1e-9);
  });

  it('of a set and of all outside it add up to one', () => {
    const after = weighReadings(modelOf('lap-28'), mixedReadings());
    const winding = Uint8Array.from({ length: after.cases.count }, (_, w) => (w % 3 === 0 ? 1 : 0));
    const rest = winding.map((marked) => 1 - marked);
    expect(after.chance({ winding }) + after.chance({ winding: rest })).toBeCloseTo(1, 9);
    const surface = Uint8Array.from([1, 0]);
    expect(after.chance({ surface })).toBeCloseTo(after.surface[0]!, 9);
    const insulation = after.insulation.map((_, i) => (i === 0 ? 1 : 0));
    expect(after.chance({ insulation: Uint8Array.from(insulation) })).toBeCloseTo(after.insulation[0]!, 9);
  });

  it('do not depend on the order of the readings', () => {
    const readings = mixedReadings();
    const straight = weighReadings(modelOf('lap-28'), readings);
    fc.assert(
      fc.property(fc.shuffledSubarray(readings, { minLength: readings.length }), (shuffled) => {
        const other = weighReadings(modelOf('lap-28'), shuffled);
        other.winding.forEach((chance, w) => {
          expect(chance).toBeCloseTo(straight.winding[w]!, 9);
        });
        expect(other.surface[1]).toBeCloseTo(straight.surface[1]!, 9);
      }),
      { numRuns: 4, seed: 20 },
    );
  });

  it('are those of the part type before anything is read: soundness likely, nothing near certain', () => {
    for (const id of ['wave-23', 'lap-28', 'lap-24'] as const) {
      const field = possibilitiesOf(weighReadings(modelOf(id), []));
      expect(field[0]!.what).toBe('nothing');
      expect(field[0]!.chance).toBeLessThan(0.6);
      expect(field.find(({ what }) => what === 'noneOfThese')!.chance).toBeGreaterThan(0.005);
    }
  });
});

describe('what readings show', () => {
  it('finds each kind of fault at its place from a full pass and the strip', () => {
    const cases = [
      [JOINT, 'badRiserJoint', 'bar', 9],
      [{ kind: 'openCoil', coil: 9 }, 'openCoil', 'coil', 9],
      [{ kind: 'bridgedBars', bar: 9, ohm: 0.0007, by: 'copper' }, 'bridgedBars', 'pair', 9],
      [{ kind: 'reversedCoil', coil: 9 }, 'reversed', 'coil', 9],
    ] as const;
    for (const [fault, what, kind, at] of cases) {
      const bench = benchWith('lap-28', [fault]);
      const readings = [
        ...neighbourPass(bench, all(28)),
        ...all(28).map((slot) => bench.strip(125, (125 - (360 * slot) / 28 + 720) % 360)),
      ];
      const [first] = possibilitiesOf(weighReadings(modelOf('lap-28'), readings));
      expect(first).toMatchObject({ what, place: { kind, at } });
      expect(first!.chance).toBeGreaterThan(0.95);
    }
  });

  it('finds two faults of the winding, and two open coils that part it', () => {
    const pairs = [
      [JOINT, { kind: 'bridgedBars', bar: 20, ohm: 0.0006, by: 'copper' }],
      [
        { kind: 'openCoil', coil: 4 },
        { kind: 'openCoil', coil: 17 },
      ],
    ] as const;
    const places = [
      [9, 20],
      [4, 17],
    ];
    pairs.forEach((faults, n) => {
      const bench = benchWith('lap-28', faults);
      const field = possibilitiesOf(weighReadings(modelOf('lap-28'), neighbourPass(bench, all(28))));
      const sure = field.filter(({ chance, place }) => chance > 0.9 && place !== null);
      expect(sure.map(({ place }) => place!.at).sort((a, b) => a - b)).toEqual(places[n]);
    });
  });

  it('finds three and four faults of one sort, each at its place', () => {
    const joint = (bar: number) => ({ kind: 'riserJoint', bar, form: 'bar', ohm: 0.05 }) as const;
    const bridge = (bar: number) => ({ kind: 'bridgedBars', bar, ohm: 0.001, by: 'copper' }) as const;
    for (const faults of [[3, 9, 20].map(joint), [3, 9, 14, 20].map(joint), [3, 9, 20].map(bridge)]) {
      const bench = benchWith('lap-28', faults);
      const field = possibilitiesOf(weighReadings(modelOf('lap-28'), neighbourPass(bench, all(28))));
      const likely = field.filter(({ chance, place }) => chance > 0.3 && place !== null);
      expect(likely.map(({ place }) => place!.at).sort((a, b) => a - b)).toEqual(
        faults.map(({ bar }) => bar),
      );
    }
  });

  it('keeps what the lens shows from ever deciding alone', () => {
    const bench = benchWith('lap-28', [{ kind: 'bridgedBars', bar: 9, ohm: 0.0005, by: 'copper' }]);
    const looks = all(28).flatMap((bar) => [bench.look(`bar:${bar}`), bench.look(`riser:${bar}`)]);
    const before = possibilitiesOf(weighReadings(modelOf('lap-28'), []));
    const after = possibilitiesOf(weighReadings(modelOf('lap-28'), looks));
    for (const { id, chance, place } of after) {
      const was = before.find((one) => one.id === id)!.chance;
      // Eight to one for and, where the rest has fallen, eight to one against everything else.
      if (place !== null) expect(chance / (1 - chance)).toBeLessThanOrEqual((65 * was) / (1 - was));
      expect(chance).toBeLessThan(0.95);
    }
  });

  it('tells a dirty commutator by its scatter and says nothing of the winding by it', () => {
    const bench = benchWith('lap-28', [{ kind: 'dirtyCommutator' }]);
    const field = possibilitiesOf(weighReadings(modelOf('lap-28'), neighbourPass(bench, all(28))));
    expect(field[0]).toMatchObject({ what: 'dirty' });
    expect(field[0]!.chance).toBeGreaterThan(0.99);
    expect(field.filter(({ place, chance }) => place !== null && chance > 0.3)).toEqual([]);
  });

  it('gives "none of these" the part when no fault it knows explains the readings', () => {
    const bench = benchWith(
      'lap-28',
      [5, 11, 17, 23].map((coil) => ({ kind: 'turnShort', coil, turns: 1, ohm: 0.0004 })),
    );
    const field = possibilitiesOf(weighReadings(modelOf('lap-28'), neighbourPass(bench, all(28))));
    expect(field.find(({ what }) => what === 'noneOfThese')!.chance).toBeGreaterThan(0.5);
  });
});

describe('following an attempt', () => {
  it('tells which possibilities a reading ruled out', () => {
    const bench = benchWith('lap-28', []);
    const { steps } = followReadings(modelOf('lap-28'), [
      ...neighbourPass(bench, [0]),
      bench.lamp(['shaft', 'bar:0']),
    ]);
    const ruledOut = steps[1]!.ruledOut.map(({ possibility }) => possibility.what);
    expect(ruledOut).toContain('grounded');
    expect(steps[1]!.bits).toBeLessThan(steps[0]!.bits);
  });
});

describe('the next reading', () => {
  it('is the pair where two possibilities part company', () => {
    // Two neighbouring pairs are low: the joint between them, or two coils; everything else is read.
    const bench = benchWith('lap-28', [JOINT]);
    const { first } = { first: neighbourPass(bench, [0])[0]!.bars[0] };
    const toBar = (bar: number) => (bar - first + 28) % 28;
    const read = all(28).filter((step) => step !== toBar(9));
    const after = weighReadings(modelOf('lap-28'), neighbourPass(bench, read));
    const best = nextReadings(after).filter(({ test }) => test === 'neighbour')[0]!;
    expect(best.bars).toContain(9);
    expect(best.bits).toBeGreaterThan(0.1);
  });

  it('is the lamp when the winding is settled and the insulation is not', () => {
    const after = weighReadings(modelOf('lap-28'), neighbourPass(benchWith('lap-28', []), all(28)));
    expect(nextReadings(after)[0]!.test).toBe('ground');
    const tested = [
      ...neighbourPass(benchWith('lap-28', []), all(28)),
      benchWith('lap-28', []).lamp(['shaft', 'bar:0']),
    ];
    const then = nextReadings(weighReadings(modelOf('lap-28'), tested));
    expect(then.find(({ test }) => test === 'ground')!.bits).toBeLessThan(0.1);
  });
});
