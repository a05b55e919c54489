import { describe, expect, it } from 'vitest';
import {
  gatherReadings,
  judge,
  possibilitiesOf,
  readingsFrom,
  weighReadings,
} from '../../../src/assess/evidence/index.ts';
import { filmOf } from '../../../src/assess/film.ts';
import type { Condition, FoundPlace, Verdict } from '../../../src/bench/paper.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { expertAttempt, library, scenarioWith } from '../attempts.ts';
import { perform, stepsOf } from '../script.ts';
import { all, benchWith, modelOf, neighbourPass } from './support/readings.ts';

const CHALKED = 3;

function verdict(condition: Condition, place: FoundPlace = { kind: 'somewhere' }): Verdict {
  return { part: 'armature', findings: [{ condition, place }], disposition: 'service', sure: 1, because: '' };
}

/** Count from the chalk to a bar. */
const count = (bar: number, bars: number) => (bar - CHALKED + bars) % bars;

function judged(
  faults: readonly ArmatureFault[],
  said: Verdict,
  readings: Parameters<typeof weighReadings>[1],
  id: Parameters<typeof modelOf>[0] = 'wave-23',
) {
  const model = modelOf(id);
  const before = weighReadings(model, []);
  return judge(weighReadings(model, readings), before, said, { faults, chalkedBar: CHALKED });
}

/** The expert's whole attempt on the bench, weighed from what the needle showed and from what was written. */
function expertJudged(faults: readonly ArmatureFault[], armature: 'wave-23' | 'lap-28' | 'lap-24') {
  const { attempt, verdict: said } = expertAttempt(scenarioWith(faults, { armature }));
  const gathered = gatherReadings(filmOf(attempt, library));
  return (['instrument', 'sheet'] as const).map(
    (from) => judged(faults, said, readingsFrom(gathered, from), armature).judgement,
  );
}

const CASES: readonly (readonly [ArmatureFault | null, 'wave-23' | 'lap-28' | 'lap-24'])[] = [
  [null, 'lap-24'],
  [{ kind: 'openCoil', coil: 9 }, 'wave-23'],
  [{ kind: 'riserJoint', bar: 8, form: 'bar', ohm: 0.03 }, 'wave-23'],
  [{ kind: 'bridgedBars', bar: 12, ohm: 0.0014, by: 'carbon' }, 'lap-28'],
  [{ kind: 'groundedCoil', coil: 6, fraction: 0.5, ohm: 5 }, 'lap-28'],
];

describe('a verdict against the readings behind it', () => {
  it.each(CASES)('the expert proves %j on %s, by the needle and by the sheet', (fault, armature) => {
    expect(expertJudged(fault === null ? [] : [fault], armature)).toEqual(['proven', 'proven']);
  });

  it('a lucky guess is never proven, whatever it says and wherever the lens was put', () => {
    const guesses: [ArmatureFault | null, Condition, FoundPlace][] = [
      [null, 'sound', { kind: 'somewhere' }],
      [{ kind: 'openCoil', coil: 9 }, 'openCoil', { kind: 'pair', count: count(8, 23) }],
      [
        { kind: 'riserJoint', bar: 8, form: 'bar', ohm: 'open' },
        'badRiserJoint',
        { kind: 'bar', count: count(8, 23) },
      ],
      [
        { kind: 'bridgedBars', bar: 5, ohm: 0.0005, by: 'copper' },
        'bridgedBars',
        { kind: 'pair', count: count(5, 23) },
      ],
      [{ kind: 'groundedBar', bar: 5, ohm: 1 }, 'grounded', { kind: 'somewhere' }],
      [{ kind: 'reversedCoil', coil: 5 }, 'reversed', { kind: 'somewhere' }],
    ];
    for (const [fault, condition, place] of guesses) {
      const faults = fault === null ? [] : [fault];
      const bench = benchWith('wave-23', faults);
      const looks = all(23).flatMap((bar) => [bench.look(`bar:${bar}`), bench.look(`riser:${bar}`)]);
      for (const readings of [[], [...looks, bench.look('core')], neighbourPass(bench, [1])])
        expect(judged(faults, verdict(condition, place), readings).judgement).not.toBe('proven');
    }
  });

  it('a right answer with half the readings is right but not proven', () => {
    const fault = { kind: 'openCoil', coil: 9 } as const;
    const pass = neighbourPass(benchWith('wave-23', [fault]), all(23));
    const away = pass.filter(({ bars }) => ![8, 20].includes(bars[0]));
    const said = verdict('openCoil', { kind: 'pair', count: count(8, 23) });
    expect(judged([fault], said, away.slice(0, 6))).toMatchObject({
      judgement: 'rightNotProven',
      missed: [],
    });
  });

  it('a verdict that the own readings speak against is contradicted, be it right or wrong', () => {
    const fault = { kind: 'riserJoint', bar: 8, form: 'bar', ohm: 0.03 } as const;
    const pass = neighbourPass(benchWith('wave-23', [fault]), all(23));
    expect(judged([fault], verdict('sound'), pass).judgement).toBe('contradicted');
    const elsewhere = verdict('badRiserJoint', { kind: 'bar', count: count(15, 23) });
    expect(judged([fault], elsewhere, pass).judgement).toBe('contradicted');
    // Readings of a sound part handed in for this one.
    const swapped = neighbourPass(benchWith('wave-23', []), all(23));
    const right = verdict('badRiserJoint', { kind: 'bar', count: count(8, 23) });
    expect(judged([fault], right, swapped)).toMatchObject({
      judgement: 'contradicted',
      findings: [{ right: true }],
    });
  });

  it('a wrong verdict nobody tested is wrong, not contradicted', () => {
    const fault = { kind: 'openCoil', coil: 9 } as const;
    expect(judged([fault], verdict('grounded'), []).judgement).toBe('wrong');
    expect(judged([fault], verdict('sound'), []).judgement).toBe('wrong');
  });

  it('names what cannot be told apart alike: an open coil and a coil end off its bar', () => {
    const off = { kind: 'riserJoint', bar: 9, form: 'oneEnd', ohm: 'open' } as const;
    const bench = benchWith('lap-28', [off]);
    const readings = [
      ...neighbourPass(bench, all(28)),
      ...all(28).map((slot) => bench.strip(125, (125 - (360 * slot) / 28 + 720) % 360)),
    ];
    for (const said of [
      verdict('openCoil', { kind: 'pair', count: count(9, 28) }),
      verdict('badRiserJoint', { kind: 'bar', count: count(9, 28) }),
    ])
      expect(judged([off], said, readings, 'lap-28').judgement).toBe('proven');
  });

  it('takes any of the pairs that show it for the place of a coil on a wave winding', () => {
    const fault = { kind: 'openCoil', coil: 9 } as const;
    const pass = neighbourPass(benchWith('wave-23', [fault]), all(23));
    for (const pair of [8, 20]) {
      const said = verdict('openCoil', { kind: 'pair', count: count(pair, 23) });
      expect(judged([fault], said, pass).findings[0]).toMatchObject({ right: true });
      expect(judged([fault], said, pass).findings[0]!.place).toBeGreaterThan(0.9);
    }
  });

  it('counts a fault no allowed test can show as none', () => {
    const soft = { kind: 'bridgedBars', bar: 5, ohm: 5, by: 'carbon' } as const;
    const bench = benchWith('wave-23', [soft]);
    const readings = [
      ...neighbourPass(bench, all(23)),
      ...all(3).map((bar) => bench.lamp(['shaft', `bar:${bar}`])),
      ...all(23).map((slot) => bench.strip(150, (150 - (360 * slot) / 23 + 720) % 360)),
    ];
    expect(judged([soft], verdict('sound'), readings).judgement).toBe('proven');
  });

  it('misses what a verdict leaves out', () => {
    const faults = [
      { kind: 'riserJoint', bar: 8, form: 'bar', ohm: 0.03 },
      { kind: 'groundedCoil', coil: 2, fraction: 0.5, ohm: 3 },
    ] as const;
    const bench = benchWith('wave-23', faults);
    const readings = [...neighbourPass(bench, all(23)), bench.lamp(['shaft', 'bar:1'])];
    const half = verdict('badRiserJoint', { kind: 'bar', count: count(8, 23) });
    expect(judged(faults, half, readings)).toMatchObject({
      judgement: 'rightNotProven',
      missed: [faults[1]],
    });
    const whole = { ...half, findings: [...half.findings, ...verdict('grounded').findings] };
    expect(judged(faults, whole, readings)).toMatchObject({ judgement: 'proven', missed: [] });
  });
});

describe('the fault hidden in the job', () => {
  it('has no part in what the readings make probable', () => {
    const scenario = scenarioWith([{ kind: 'openCoil', coil: 9 }]);
    const { attempt } = expertAttempt(scenario);
    const film = filmOf(attempt, library);
    const readings = readingsFrom(gatherReadings(film), 'instrument');
    const others: ArmatureFault[][] = [[], [{ kind: 'groundedBar', bar: 2, ohm: 1 }]];
    const straight = possibilitiesOf(weighReadings(modelOf('wave-23'), readings));
    for (const faults of others) {
      const hidden = { ...scenario.hidden, armature: { faults }, seed: 999, startRotationDeg: 77 };
      const swapped = { ...film, scenario: { ...scenario, hidden } };
      const again = readingsFrom(gatherReadings(swapped), 'instrument');
      expect(again).toEqual(readings);
      expect(possibilitiesOf(weighReadings(modelOf('wave-23'), again))).toEqual(straight);
    }
  });

  it('is the only thing that tells a right verdict from a wrong one', () => {
    const pass = neighbourPass(benchWith('wave-23', [{ kind: 'openCoil', coil: 9 }]), all(23));
    const said = verdict('openCoil', { kind: 'pair', count: count(8, 23) });
    const right = judged([{ kind: 'openCoil', coil: 9 }], said, pass);
    const wrong = judged([], said, pass);
    expect(wrong.findings[0]!.place).toBe(right.findings[0]!.place);
    expect([right.findings[0]!.right, wrong.findings[0]!.right]).toEqual([true, false]);
  });
});

describe('an attempt worked through the bench', () => {
  it('gains nothing by holding every contact longer', () => {
    const scenario = scenarioWith([{ kind: 'riserJoint', bar: 8, form: 'bar', ohm: 0.03 }], {
      tests: ['neighbour'],
    });
    const steps = stepsOf(expertAttempt(scenario).attempt);
    const held = steps.flatMap((one) =>
      one.action.type === 'sheet.write'
        ? // A remark that takes its time, twice, with the probes where they are.
          [
            one,
            {
              action: { type: 'sheet.write', line: { test: 'look', count: null, remark: 'hm' } },
              pauseMs: 1500,
            } as const,
          ]
        : [one],
    );
    const plain = gatherReadings(filmOf(perform(scenario, steps), library));
    const longer = gatherReadings(filmOf(perform(scenario, held), library));
    expect(longer.contacts.meter).toHaveLength(plain.contacts.meter.length);
    longer.contacts.meter.forEach(({ bars, deflection }, n) => {
      expect(bars).toEqual(plain.contacts.meter[n]!.bars);
      expect(deflection).toBeCloseTo(plain.contacts.meter[n]!.deflection, 2);
    });
  });
});
