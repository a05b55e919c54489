import { benchLamp, lampCurrent, steadyFilament } from '../../../src/engine/instruments/lamp.ts';
import { bodyEffect, bodyOhm, type Percentile, touchCurrent } from '../../../src/engine/instruments/touch.ts';
import { equal, rowsOf, type WitnessCase, type WitnessGroup, within } from '../case.ts';

const row = rowsOf({
  unit: 'Ω',
  source: 'IEC 479-1:1994 table 1, through a stored note',
  verified: '2nd',
  standing: 'independent',
  tolerance: within(1e-9),
});

const PERCENTILES: readonly Percentile[] = [5, 50, 95];
const TABLE: readonly (readonly [string, number, readonly [number, number, number]])[] = [
  ['S05', 220, [1000, 1350, 2125]],
  ['S06-125', 125, [1125, 1625, 2875]],
  ['S06-50', 50, [1450, 2625, 4375]],
  ['S06-25', 25, [1750, 3250, 6100]],
];
const impedance: WitnessCase[] = TABLE.flatMap(([id, volt, ohms]) =>
  PERCENTILES.map((percentile, i) =>
    row(`${id}-${percentile}`, `body hand to hand at ${volt} V, ${percentile} % of people below`, () => ({
      ours: bodyOhm(volt, percentile),
      reference: ohms[i]!,
    })),
  ),
);

const LATER = [775, 1225, 1900];
const MILLIAMPS_230 = [297, 188, 121];
const MILLIAMPS_220 = [220, 163, 104];
const later: WitnessCase[] = PERCENTILES.flatMap((percentile, i) => [
  row(
    `S07-${percentile}`,
    `body at 225 V against the later edition, ${percentile} %`,
    () => ({ ours: bodyOhm(225, percentile), reference: LATER[i]! }),
    { source: 'IEC TS 60479-1:2005 table 1', verified: 'memory', tolerance: within(0.3) },
  ),
  row(
    `S08-${percentile}`,
    `straight touch at 230 V against the later edition, ${percentile} %`,
    () => ({ ours: 230e3 / bodyOhm(230, percentile), reference: MILLIAMPS_230[i]! }),
    { unit: 'mA', source: 'V/Z from S07', verified: 'memory', tolerance: within(0.3) },
  ),
  row(
    `S09-${percentile}`,
    `straight touch at 220 V, ${percentile} %`,
    () => ({ ours: 220e3 / bodyOhm(220, percentile), reference: MILLIAMPS_220[i]! }),
    { unit: 'mA', source: 'V/Z from S05', verified: 'calc', tolerance: within(5e-3) },
  ),
]);

/** Current at which the named effect begins, mA. */
function limit(effect: ReturnType<typeof bodyEffect>): number {
  for (let tenths = 1; tenths < 1000; tenths++)
    if (bodyEffect((tenths + 1e-6) / 1e4) === effect) return tenths / 10;
  throw new Error(`No current up to 100 mA has the effect ${effect}.`);
}

const effects: WitnessCase[] = [
  row('S01', 'current from which it is felt', () => ({ ours: limit('felt'), reference: 0.5 }), {
    unit: 'mA',
    source: 'IEC 60479-1, stored textbook extract',
  }),
  row(
    'S02',
    'current from which an adult cannot let go',
    () => ({ ours: limit('cannotLetGo'), reference: 10 }),
    {
      unit: 'mA',
      source: 'IEC TS 60479-1:2005',
      verified: 'memory',
    },
  ),
  row(
    'S03',
    'current from which it may kill, long touch',
    () => ({ ours: limit('mayKill'), reference: 40 }),
    {
      unit: 'mA',
      source: 'IEC TS 60479-1:2005',
      verified: 'memory',
    },
  ),
];

/** Current the bench lamp passes with its probes on one another, mA. */
function lampMilliamps(volt: number): number {
  const lamp = benchLamp(volt);
  const circuit = { volt, path: { re: 0, im: 0 } };
  return 1000 * lampCurrent(lamp, steadyFilament(lamp, circuit), circuit);
}

const touched = (volt: 230 | 120, reference: 'floating' | 'earthed') =>
  touchCurrent({ lamp: benchLamp(volt), volt, hz: volt === 230 ? 50 : 60, reference, way: 'toEarth' });

const lampRows: WitnessCase[] = [
  row(
    'S24-230',
    'current a 15 W lamp passes at 230 V',
    () => ({ ours: lampMilliamps(230), reference: 65.2 }),
    {
      unit: 'mA',
      source: 'W/V',
      verified: 'calc',
      tolerance: within(1e-3),
    },
  ),
  row(
    'S24-120',
    'current a 15 W lamp passes at 120 V',
    () => ({ ours: lampMilliamps(120), reference: 125 }),
    {
      unit: 'mA',
      source: 'W/V',
      verified: 'calc',
      tolerance: within(1e-3),
    },
  ),
  row(
    'S24-letgo',
    'touch of a live lamp probe on an earthed winding passes let-go (10 mA) and 3 mA (INDG354), 230 and 120 V',
    () => ({
      ours: ([230, 120] as const).every((v) => touched(v, 'earthed').currentA > 10e-3) ? 'yes' : 'no',
      reference: 'yes',
    }),
    { unit: '-', source: 'S02; HSE INDG354(rev1), Oct 2013', verified: 'yes', tolerance: equal },
  ),
];

export const body: WitnessGroup = {
  title: 'Touch current',
  about:
    'Figures of IEC 60479-1 are at second hand or from memory. They serve the debrief only: any touch of live metal is ' +
    'a critical breach whatever the figure.',
  cases: [...impedance, ...later, ...effects, ...lampRows],
};
