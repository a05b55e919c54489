import { groundPaths } from '../../../src/engine/answers.ts';
import { createArmatureSolver } from '../../../src/engine/armatureBench.ts';
import { JUST_FELT_N } from '../../../src/engine/instruments/stripMotion.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { coilPlaces } from '../../../src/engine/parts/winding.ts';
import {
  ARMATURES,
  drive,
  EQUALISED_LAP_28,
  LAP_24,
  LAP_28,
  WAVE_23,
  WAVE_25,
} from '../../engine/support/parts.ts';
import { between, equal, rowsOf, type WitnessCase, type WitnessGroup } from '../case.ts';
import {
  bridgeAt,
  fallen,
  feltSlots,
  largestPull,
  neighbourPass,
  pulledSlots,
  SETUP,
} from '../support/bench.ts';

const row = rowsOf({
  unit: '-',
  source: 'theory of closed drum windings',
  verified: 'calc',
  standing: 'independent',
  tolerance: equal,
});

const shortedCoil = (a: ArmatureDesign, coil: number): readonly ArmatureFault[] => [
  { kind: 'turnShort', coil, turns: a.turns, ohm: 1e-4 },
];
const list = (values: readonly number[]) => [...values].sort((x, y) => x - y).join(', ');

/** Slots of coils, counted once each. */
function slotsOf(a: ArmatureDesign, coils: readonly number[]): string {
  const places = coilPlaces(a);
  return list([...new Set(coils.flatMap((c) => [places[c]!.topSlot, places[c]!.bottomSlot]))]);
}

/** Coils that carry at least a tenth of the largest current. */
function carrying(a: ArmatureDesign, faults: readonly ArmatureFault[]): string {
  const solver = createArmatureSolver(a);
  const most = new Float64Array(a.bars);
  for (let k = 0; k < a.slots; k++) {
    const point = solver.solve(faults, drive({ rotationRad: (2 * Math.PI * k) / a.slots }));
    point.coilCurrentA().forEach((amps, coil) => {
      most[coil] = Math.max(most[coil]!, amps);
    });
  }
  const largest = Math.max(...most);
  return list(Array.from(most).flatMap((amps, coil) => (amps > largest / 10 ? [coil] : [])));
}

function ringCurrent(a: ArmatureDesign): number {
  return Math.max(
    ...createArmatureSolver(a)
      .solve([], drive({ rotationRad: 0.1 }))
      .coilCurrentA(),
  );
}

const SLOTS = { unit: 'slots' } as const;
const one: WitnessCase[] = [WAVE_23, LAP_24].map((a) =>
  row(
    `G12-${a.id}`,
    `${a.id}, coil 5 shorted, strip at the top: slots that pull, one coil span apart`,
    () => ({ ours: list(pulledSlots(a, shortedCoil(a, 5), 180)), reference: slotsOf(a, [5]) }),
    SLOTS,
  ),
);

const bridged: WitnessCase[] = [
  row(
    'G13-lap-24',
    'lap-24, bars 5-6 bridged, strip at the top: slots of one coil',
    () => ({ ours: list(pulledSlots(LAP_24, bridgeAt(5), 180)), reference: slotsOf(LAP_24, [5]) }),
    SLOTS,
  ),
  row(
    'G13-lap-28',
    'lap-28, bars 5-6 bridged: coils that carry the current',
    () => ({
      ours: carrying(LAP_28, bridgeAt(5)),
      reference: '5',
    }),
    { unit: 'coils' },
  ),
  row(
    'G14-wave-23',
    'wave-23, bars 5-6 bridged, strip at the top: slots of two coils in series, 2p = 4',
    () => ({ ours: list(pulledSlots(WAVE_23, bridgeAt(5), 180)), reference: slotsOf(WAVE_23, [6, 17]) }),
    SLOTS,
  ),
  row(
    'G14-wave-25',
    'wave of 25, pitch 13, bars 0-1 bridged: coils that carry the current',
    () => ({
      ours: carrying(WAVE_25, bridgeAt(0)),
      reference: '0, 13',
    }),
    { unit: 'coils' },
  ),
];

const still = between(0, JUST_FELT_N / 5);
const stillness: WitnessCase[] = ARMATURES.flatMap((a) => [
  row(
    `G01-${a.id}`,
    `${a.id}, sound: largest current in the ring, the volts round it being zero`,
    () => ({
      ours: ringCurrent(a),
    }),
    { unit: 'A', tolerance: between(0, 1e-6) },
  ),
  row(
    `G02-${a.id}-sound`,
    `${a.id}, sound: largest pull anywhere clear of the jaws`,
    () => ({ ours: largestPull(a, []) }),
    {
      unit: 'N',
      tolerance: still,
      source: 'US Army OD0010 6-P18: attraction means a short',
      verified: 'yes',
    },
  ),
  row(
    `G17-${a.id}`,
    `${a.id}, one coil open: largest pull`,
    () => ({
      ours: largestPull(a, [{ kind: 'openCoil', coil: 5 }]),
    }),
    { unit: 'N', tolerance: still },
  ),
  row(
    `G18-${a.id}`,
    `${a.id}, one bar grounded: largest pull`,
    () => ({
      ours: largestPull(a, [{ kind: 'groundedBar', bar: 5, ohm: 0.02 }]),
    }),
    { unit: 'N', tolerance: still },
  ),
  row(
    `G02-${a.id}-short`,
    `${a.id}, bars bridged hard: largest pull`,
    () => ({ ours: largestPull(a, bridgeAt(5)) }),
    {
      unit: 'N',
      tolerance: between(JUST_FELT_N, 20),
      source: 'US Army OD0010 6-P18: attraction means a short',
      verified: 'yes',
    },
  ),
]);

const two = (bar: number): ArmatureFault => ({ kind: 'groundedBar', bar, ohm: 0.02 });

/** Bars from which a lamp finds the core, of all. */
function barsToCore(a: ArmatureDesign, faults: readonly ArmatureFault[]): number {
  return groundPaths(createArmatureSolver(a), faults, SETUP.mains).filter((ohm) => ohm !== null).length;
}

const others: WitnessCase[] = [
  row(
    'G18-two',
    'lap-24, two bars grounded across it: largest pull, as of a short',
    () => ({ ours: largestPull(LAP_24, [two(5), two(17)]) }),
    { unit: 'N', tolerance: between(JUST_FELT_N, 20) },
  ),
  row(
    'G19-strip',
    'lap-24, two coils to a slot: slots pulled with coil 4 shorted, against coil 5',
    () => ({
      ours: list(feltSlots(LAP_24, shortedCoil(LAP_24, 4), 180)),
      reference: list(feltSlots(LAP_24, shortedCoil(LAP_24, 5), 180)),
    }),
    SLOTS,
  ),
  row(
    'G19-bars',
    'the same by the ammeter: pairs that fall, coil 4 then coil 5',
    () => ({
      ours: [4, 5].map((coil) => lowestPair(LAP_24, shortedCoil(LAP_24, coil))).join(', '),
      reference: '4, 5',
    }),
    { unit: 'first bar' },
  ),
  row(
    'G05',
    'equalised lap of 28, sound: largest pull, so the strip says nothing',
    () => ({ ours: largestPull(EQUALISED_LAP_28, []) }),
    {
      unit: 'N',
      tolerance: between(JUST_FELT_N, 20),
      source: 'NAVEDTRA 14273: some armatures vibrate all round',
      verified: 'yes',
    },
  ),
  row(
    'G15',
    'equalised lap of 28, sound: largest current in its coils',
    () => ({ ours: ringCurrent(EQUALISED_LAP_28) }),
    {
      unit: 'A',
      tolerance: between(10, 1000),
    },
  ),
  ...ARMATURES.flatMap((a) => [
    row(
      `G06-${a.id}`,
      `${a.id}, one bar grounded: bars from which the lamp finds the core`,
      () => ({ ours: barsToCore(a, [two(5)]), reference: a.bars }),
      { unit: 'bars', source: 'US Army OD0010 6-P17: any glow means grounded', verified: 'yes' },
    ),
    row(`G06-${a.id}-sound`, `${a.id}, sound: the same`, () => ({ ours: barsToCore(a, []), reference: 0 }), {
      unit: 'bars',
      source: 'US Army OD0010 6-P17: any glow means grounded',
      verified: 'yes',
    }),
  ]),
  row(
    'G07',
    'lap-24, coil open: pairs that fall in the neighbouring pass',
    () => ({
      ours: list(fallen(LAP_24, [{ kind: 'openCoil', coil: 5 }])),
      reference: '5',
    }),
    { unit: 'first bar', source: 'TM 10-3930-653-14&P p. 4-98', verified: 'yes' },
  ),
  row(
    'G03',
    'strip a thirty-second of an inch (0.79 mm) off a bridged wave-23: pull over a slot',
    () => ({
      ours: createArmatureSolver(WAVE_23)
        .solve(bridgeAt(5), drive({ rotationRad: Math.PI }))
        .strip(180, 0.00079).meanN,
    }),
    {
      unit: 'N',
      tolerance: between(JUST_FELT_N, 20),
      source: 'OD0010 6-P18; TM 10-3930-628-34 p. 4-5',
      verified: 'yes',
    },
  ),
];

/** First bar of the pair that reads least against its own kind. */
function lowestPair(a: ArmatureDesign, faults: readonly ArmatureFault[]): number {
  const sound = neighbourPass(a, []);
  const share = neighbourPass(a, faults).map((amps, bar) => amps / sound[bar]!);
  return share.indexOf(Math.min(...share));
}

export const places: WitnessGroup = {
  title: 'Where a fault is found',
  about:
    'Places per turn and what each test is blind to, for lap and wave, computed by the bench for the part as it lies.',
  cases: [...one, ...bridged, ...stillness, ...others],
};
