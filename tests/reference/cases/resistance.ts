import { neighbourDrops } from '../../../src/engine/instruments/millivoltDrop.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { coilOhm, JOINT_OHM } from '../../../src/engine/parts/winding.ts';
import { LAP_24, WAVE_25 } from '../../engine/support/parts.ts';
import {
  absolute,
  equal,
  type Finding,
  rowsOf,
  type WitnessCase,
  type WitnessGroup,
  within,
  worst,
} from '../case.ts';
import { neighbours, unitRing } from '../support/unitRing.ts';

const dead = { ohm: 0 } as const;
const OPEN: readonly ArmatureFault[] = [{ kind: 'openCoil', coil: 0 }];
const BRIDGE: readonly ArmatureFault[] = [{ kind: 'bridgedBars', bar: 0, by: 'copper', ...dead }];
const shorted = (coil: number, turns: number): readonly ArmatureFault[] => [
  { kind: 'turnShort', coil, turns, ...dead },
];

/** All pairs of neighbouring bars against the values of the row: some pairs by number, the rest alike. */
function pairs(values: readonly number[], odd: Readonly<Record<number, number>>, rest: number): Finding {
  return worst(
    values,
    values.map((_, bar) => odd[bar] ?? rest),
    1,
  );
}

const row = rowsOf({
  unit: 'coils',
  source: 'ring network, solved by two methods outside this program',
  verified: 'calc',
  standing: 'independent',
  tolerance: absolute(1e-6),
});

interface Exact {
  readonly id: string;
  readonly what: string;
  readonly a: ArmatureDesign;
  readonly faults: readonly ArmatureFault[];
  readonly odd: Readonly<Record<number, number>>;
  readonly rest: number;
}

const EXACT: readonly Exact[] = [
  { id: 'B01', what: 'lap, 24 bars, sound: (C-1)/C', a: LAP_24, faults: [], odd: {}, rest: 23 / 24 },
  { id: 'B02', what: 'lap, coil 0 open: 23, then 1', a: LAP_24, faults: OPEN, odd: { 0: 23 }, rest: 1 },
  {
    id: 'B03',
    what: 'lap, coil 0 dead short: 0, then 22/23',
    a: LAP_24,
    faults: shorted(0, LAP_24.turns),
    odd: { 0: 0 },
    rest: 22 / 23,
  },
  {
    id: 'B04',
    what: 'lap, half the turns of coil 0 shorted',
    a: LAP_24,
    faults: shorted(0, LAP_24.turns / 2),
    odd: { 0: 0.489362 },
    rest: 0.957447,
  },
  { id: 'B06', what: 'wave, 4 poles, 25 bars, sound: p(C-p)/C', a: WAVE_25, faults: [], odd: {}, rest: 1.84 },
  {
    id: 'B07',
    what: 'wave, coil 0 open: 23 on bars 0-1 and 12-13, else 2',
    a: WAVE_25,
    faults: OPEN,
    odd: { 0: 23, 12: 23 },
    rest: 2,
  },
  {
    id: 'B09',
    what: 'wave, bars 0-1 bridged: 0, two pairs of 1.456522, else 1.826087',
    a: WAVE_25,
    faults: BRIDGE,
    odd: { 0: 0, 12: 1.456522, 13: 1.456522 },
    rest: 1.826087,
  },
];

const byLoops: WitnessCase[] = EXACT.map(({ id, what, a, faults, odd, rest }) =>
  row(id, `${what}: worst of all pairs`, () => pairs(neighbours(a, faults), odd, rest)),
);

/** The millivolt-drop test finds the same values by another road; the real joints and insulation cost a few ppm. */
const byDrops: WitnessCase[] = EXACT.filter((e) => e.id !== 'B04').map(({ id, what, a, faults, odd, rest }) =>
  row(
    `${id}-drop`,
    `${what}: by millivolt drop, worst of all pairs`,
    () => {
      const coil = coilOhm(a) + 2 * JOINT_OHM;
      const values = neighbourDrops(a, faults.map(real), 1).map((volt) => volt! / coil);
      return pairs(values, odd, rest);
    },
    // A coil shorted inside keeps its two joints of 20 µΩ: 0.3 % of a coil.
    { tolerance: absolute(id === 'B03' ? 3e-3 : 5e-5) },
  ),
);

/** A dead short of no ohms at all is no resistor: a nanoohm for it. */
function real(fault: ArmatureFault): ArmatureFault {
  return 'ohm' in fault && fault.ohm === 0 ? ({ ...fault, ohm: 1e-9 } as ArmatureFault) : fault;
}

/** Pairs that stand out with one coil shorted. */
function marked(a: ArmatureDesign, coil: number): string {
  const sound = neighbours(a, [])[0]!;
  const values = neighbours(a, shorted(coil, a.turns));
  return values.flatMap((v, bar) => (v < 0.9 * sound ? [bar] : [])).join(', ');
}

/** Drops of the neighbouring pairs over the feed's, fed at bars 0 and 12. */
function fedDrops(faults: readonly ArmatureFault[]): number[] {
  const ohm = unitRing(LAP_24, faults);
  const volts = Array.from({ length: 24 }, (_, b) => (ohm(b, 12) + ohm(0, 12) - ohm(0, b)) / 2);
  return volts.map((v, b) => (v - volts[(b + 1) % 24]!) / ohm(0, 12));
}

const half = (b: number, drop: number) => (b < 12 ? drop : -1 / 12);
const TWELFTHS = Array.from({ length: 24 }, (_, b) => half(b, 1 / 12));
const EMPTIED = Array.from({ length: 24 }, (_, b) => half(b, b === 4 ? 1 : 0));

export const resistance: WitnessGroup = {
  title: 'Bar-to-bar resistance, every coil 1 Ω',
  about:
    'Exact values of ring networks without brushes: the loop solution at no frequency, and the millivolt drop.',
  cases: [
    ...byLoops,
    ...byDrops,
    row('B11-lap', 'pairs a shorted coil 7 marks, lap', () => ({ ours: marked(LAP_24, 7), reference: '7' }), {
      unit: 'first bar',
      source: 'one coil lies between neighbouring bars of a lap winding',
      tolerance: equal,
    }),
    row(
      'B11-wave',
      'pairs a shorted coil 7 marks, wave: p of them, about C/p apart',
      () => ({ ours: marked(WAVE_25, 7), reference: '7, 19' }),
      {
        unit: 'first bar',
        source: 'p coils lie between neighbouring bars of a wave winding',
        tolerance: equal,
      },
    ),
    row(
      'B12-sound',
      'fed at opposite bars, sound: share of the feed, worst pair',
      () => worst(fedDrops([]), TWELFTHS),
      {
        unit: 'of feed',
      },
    ),
    row(
      'B12-open',
      'fed at opposite bars, coil 4 open: whole feed there, nothing in its half, worst pair',
      () => worst(fedDrops([{ kind: 'openCoil', coil: 4 }]), EMPTIED),
      { unit: 'of feed', tolerance: within(1e-6) },
    ),
  ],
};
