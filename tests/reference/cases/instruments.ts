import {
  ACCURACY_CLASS,
  makeAmmeter,
  scaleCurrent,
  scaleFraction,
  targetDeflection,
} from '../../../src/engine/instruments/ammeter.ts';
import { insulationRise } from '../../../src/engine/instruments/armatureDc.ts';
import {
  correctedTo40,
  LEAST_OHM,
  shortCurrent,
  TEST_VOLTS,
  terminalVolt,
} from '../../../src/engine/instruments/insulationTester.ts';
import { DAMPING, NATURAL_RATE, needleAt } from '../../../src/engine/instruments/needle.ts';
import { seeded } from '../../../src/engine/math/random.ts';
import { between, equal, rowsOf, type WitnessCase, type WitnessGroup, within } from '../case.ts';

const row = rowsOf({
  unit: '%',
  source: 'IEC 60051-1',
  verified: 'memory',
  standing: 'independent',
  tolerance: between(0, 0),
});

const STEP = { fromDeflection: 0, fromRate: 0, target: 0.7 };

/** Furthest the needle swings past its mark after a step, % of the step. */
function overshoot(): number {
  let most = 0;
  for (let ms = 0; ms <= 6000; ms += 1) most = Math.max(most, needleAt(STEP, ms).deflection);
  return 100 * (most / STEP.target - 1);
}

/** Largest deviation left from 4 s after a step on, % of the scale. */
function leftAfter4s(): number {
  let most = 0;
  for (let ms = 4000; ms <= 12_000; ms += 5)
    most = Math.max(most, Math.abs(needleAt(STEP, ms).deflection - STEP.target));
  return 100 * most;
}

const overshootOf = (zeta: number) => 100 * Math.exp((-Math.PI * zeta) / Math.sqrt(1 - zeta * zeta));

/** Worst reading error of many instruments anywhere on a 10 A scale, A. */
function worstError(): number {
  const random = seeded('witness ammeters');
  let most = 0;
  for (let i = 0; i < 200; i++) {
    const meter = makeAmmeter(random);
    for (let amps = 0; amps <= 10; amps += 0.5)
      most = Math.max(most, Math.abs(scaleCurrent(targetDeflection(amps, 10, meter), 10) - amps));
  }
  return most;
}

const needle: WitnessCase[] = [
  row(
    'I01',
    'class as a share of full scale: 10 A',
    () => ({ ours: (10 * ACCURACY_CLASS) / 100, reference: 0.15 }),
    {
      unit: 'A',
      source: 'ANSI-terms glossary; IEC 60051-1 cl. 5.2.3 title',
      verified: '2nd',
      tolerance: within(1e-9),
    },
  ),
  row(
    'I02',
    'class of the ammeter is one of the indices',
    () => ({
      ours: [0.05, 0.1, 0.2, 0.3, 0.5, 1, 1.5, 2, 2.5, 3, 5].includes(ACCURACY_CLASS) ? 'yes' : 'no',
      reference: 'yes',
    }),
    { unit: '-', tolerance: equal },
  ),
  row('I03', 'worst error of 200 ammeters anywhere on a 10 A scale', () => ({ ours: worstError() }), {
    unit: 'A',
    source: 'I01, class 1.5',
    verified: 'calc',
    tolerance: between(0.1, 0.15),
  }),
  row('I04', 'overshoot after a step', () => ({ ours: overshoot() }), {
    source: 'IEC 60051-1, damping clause',
    tolerance: between(0, 20),
  }),
  row('I05', 'deviation left 4 s after a step', () => ({ ours: leftAfter4s() }), {
    source: 'IEC 60051-1, response clause',
    tolerance: between(0, 1.5),
  }),
  row(
    'I06',
    'overshoot of the damping, exp(-πζ/√(1-ζ²))',
    () => ({ ours: overshoot(), reference: overshootOf(DAMPING) }),
    {
      source: 'second-order theory; ζ = 0.45595 gives 20 %',
      verified: 'calc',
      tolerance: within(1e-3),
    },
  ),
  row(
    'I06-20',
    'damping at which the overshoot is 20 %',
    () => ({ ours: overshootOf(0.45595), reference: 20 }),
    {
      source: 'second-order theory',
      verified: 'calc',
      standing: 'ours',
      tolerance: within(1e-4),
    },
  ),
  row('I07', 'natural rate of the needle, at least', () => ({ ours: NATURAL_RATE }), {
    unit: 'rad/s',
    source: 'envelope of I05 at 20 % overshoot',
    verified: 'calc',
    tolerance: between(2.367, 10),
  }),
  row(
    'I08',
    'scale at 2 % over 1 % of range: square law',
    () => ({ ours: scaleFraction(0.02, 1) / scaleFraction(0.01, 1), reference: 4 }),
    {
      unit: '-',
      source: 'stored supplier’s description of moving-iron scales',
      verified: 'yes',
      tolerance: within(0.1),
    },
  ),
  row(
    'I08-crowd',
    'place of 15 % of range on the scale: crowded below',
    () => ({ ours: 100 * scaleFraction(0.15, 1) }),
    {
      source: 'stored supplier’s description of moving-iron scales',
      verified: 'yes',
      tolerance: between(0, 10),
    },
  ),
];

const IR = { unit: 'MΩ', source: 'stored article on IEEE 43-2013', verified: '2nd' } as const;
const insulation: WitnessCase[] = [
  row(
    'A18',
    'correction to 40 °C from 30 °C: R·0.5^((40-T)/10)',
    () => ({ ours: correctedTo40(8e6, 30) / 1e6, reference: 4 }),
    {
      ...IR,
      tolerance: within(1e-9),
    },
  ),
  row(
    'A19',
    '200 MΩ at 20 °C carried to 40 °C',
    () => ({ ours: correctedTo40(200e6, 20) / 1e6, reference: 50 }),
    {
      ...IR,
      verified: 'calc',
      tolerance: within(1e-9),
    },
  ),
  row(
    'A18-part',
    'insulation of a part at 40 °C over that at 20 °C',
    () => ({ ours: insulationRise(40), reference: 0.25 }),
    {
      ...IR,
      unit: '-',
      tolerance: within(1e-9),
    },
  ),
  row(
    'A07',
    'least insulation accepted, field coil to housing',
    () => ({ ours: LEAST_OHM / 1e6, reference: 1 }),
    {
      ...IR,
      source: 'TM 9-4940-549-14&P p. 7-10',
      verified: 'yes',
      tolerance: equal,
    },
  ),
  row(
    'A21',
    'highest test voltage for windings under 1 kV',
    () => ({ ours: Math.max(...TEST_VOLTS), reference: 500 }),
    {
      unit: 'V',
      source: 'IEEE 43 table 1',
      tolerance: equal,
    },
  ),
  row(
    'A-1mA',
    'tester at 1000 Ω per volt keeps its marked 500 V',
    () => ({ ours: terminalVolt(500, 500e3), reference: 500 }),
    {
      unit: 'V',
      source: 'IEC 61557-2: at least 1 mA',
      tolerance: within(1e-9),
    },
  ),
  row('A-15mA', 'tester into a short', () => ({ ours: 1000 * shortCurrent(500) }), {
    unit: 'mA',
    source: 'IEC 61557-2: at most 15 mA',
    tolerance: between(1, 15),
  }),
];

export const instruments: WitnessGroup = {
  title: 'Needle and insulation tester',
  about:
    'Pointer instrument of class 1.5 and insulation tester. Clauses of IEC standards are from memory or at second hand: ' +
    'the documents were not read. A20 (thermosetting correction) is not in the code.',
  cases: [...needle, ...insulation],
};
