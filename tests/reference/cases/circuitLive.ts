import { type Drive, MAINS } from '../../../src/engine/drive.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { ARMATURES, drive, EQUALISED_LAP_28, FORCED_WAVE_35, LAP_28 } from '../../engine/support/parts.ts';
import { rowsOf, type WitnessCase, type WitnessGroup, within } from '../case.ts';
import { allFindings, pathFinding, type Question } from '../support/liveFindings.ts';

/** Faults of every kind and some of many grades, on the armature `a`; several at once at the end. */
function faultsOn(a: ArmatureDesign): Readonly<Record<string, readonly ArmatureFault[]>> {
  const bridge = (bar: number, ohm: number, by: 'copper' | 'carbon' = 'copper') =>
    ({ kind: 'bridgedBars', bar, ohm, by }) as const;
  const riser = (form: 'bar' | 'oneEnd' | 'bothEnds', ohm: number | 'open') =>
    ({ kind: 'riserJoint', bar: 5, form, ohm }) as const;
  const ground = (bar: number, ohm: number) => ({ kind: 'groundedBar', bar, ohm }) as const;
  const under = (topCoil: number) => (topCoil - a.spanSlots * a.coilsPerSlot + a.bars) % a.bars;
  return {
    sound: [],
    'coil open': [{ kind: 'openCoil', coil: 5 }],
    'riser joint 1 mΩ': [riser('bar', 1e-3)],
    'riser joint 500 mΩ': [riser('bar', 0.5)],
    'riser joint open': [riser('bar', 'open')],
    'one coil end 5 mΩ': [riser('oneEnd', 5e-3)],
    'one coil end off': [riser('oneEnd', 'open')],
    'both coil ends 50 mΩ': [riser('bothEnds', 0.05)],
    'both coil ends off': [riser('bothEnds', 'open')],
    'bars bridged by copper, 0.1 mΩ': [bridge(5, 1e-4)],
    'bars bridged by copper, 5 mΩ': [bridge(5, 5e-3)],
    'bars bridged by carbon, 10 Ω': [bridge(5, 10, 'carbon')],
    ...shortedTurns(a),
    'coil to coil in a slot, 1 mΩ': [{ kind: 'coilShort', topCoil: 12, bottomCoil: under(12), ohm: 1e-3 }],
    'one bar grounded, 20 mΩ': [ground(5, 0.02)],
    'two bars grounded, 20 mΩ each': [ground(5, 0.02), ground(5 + (a.bars >> 1), 0.02)],
    'coil grounded in the middle and a bar': [
      { kind: 'groundedCoil', coil: 5, fraction: 0.5, ohm: 0.01 },
      ground(14, 0.05),
    ],
    'coil reversed': [{ kind: 'reversedCoil', coil: 5 }],
    'weak insulation 500 kΩ': [{ kind: 'weakInsulation', ohm: 5e5, breakdownV: null }],
    'dirty commutator (loop 11 mΩ)': [{ kind: 'dirtyCommutator' }],
    'open coil, bridge and bad joint at once': [
      { kind: 'openCoil', coil: 9 },
      bridge(2, 2e-3),
      { kind: 'riserJoint', bar: 15, form: 'bar', ohm: 0.02 },
    ],
    'reversed coil, shorted coil and two grounds at once': [
      { kind: 'reversedCoil', coil: 3 },
      { kind: 'turnShort', coil: 17, turns: a.turns, ohm: 5e-4 },
      ground(1, 0.01),
      ground(8, 0.01),
    ],
  };
}

/** One, half and all of a coil's turns shorted, as far as they differ. */
function shortedTurns(a: ArmatureDesign): Record<string, readonly ArmatureFault[]> {
  const counts = [...new Set([1, Math.ceil(a.turns / 2), a.turns])];
  return Object.fromEntries(
    counts.map((turns) => [
      `${turns} of ${a.turns} turns shorted, 1 mΩ`,
      [{ kind: 'turnShort', coil: 5, turns, ohm: 1e-3 }],
    ]),
  );
}

/** A rotation at which the engine's table of slot potentials has a point: three slots and a quarter round. */
const rotationOf = (a: ArmatureDesign) => ((2 * Math.PI) / a.slots) * 3.25;

const row = rowsOf({
  unit: 'A, V',
  source: 'ngspice 45, ac analysis of the netlist of the same branches',
  verified: 'live',
  standing: 'independent',
  tolerance: within(1e-6),
});

const HIGH_230 = drive();
const LOW_120 = drive({ mains: MAINS['120V60Hz'], excitation: 'low', windingC: 70 });

function circuit(id: string, name: string, q: Question): WitnessCase {
  const turned = { ...q, drive: { ...q.drive, rotationRad: rotationOf(q.a) } };
  return row(id, `${q.a.id}, ${name}: worst of growler, bar volts, ammeter, coil currents`, () =>
    allFindings(turned),
  );
}

const everyFault = ARMATURES.flatMap((a) =>
  Object.entries(faultsOn(a)).map(([name, faults], i) =>
    circuit(`live-${a.id}-${i}`, name, { a, faults, drive: HIGH_230 }),
  ),
);

const SIX_POLE_WAVE: ArmatureDesign = {
  ...FORCED_WAVE_35,
  id: 'six-pole-wave-35',
  slots: 35,
  dummyPlace: undefined,
};
const CHORDED: ArmatureDesign = { ...LAP_28, id: 'chorded-lap-28', spanSlots: 6, commutatorPitch: -1 };
const bridged: readonly ArmatureFault[] = [{ kind: 'bridgedBars', bar: 5, ohm: 2e-4, by: 'copper' }];

const EQUALISED_SIX: ArmatureDesign = {
  ...EQUALISED_LAP_28,
  id: 'equalised-lap-36',
  poles: 6,
  slots: 36,
  bars: 36,
  spanSlots: 6,
  slotWidth: 0.0022,
  slotMouth: 0.0012,
  conductorArea: 8e-6,
};

const otherParts = [EQUALISED_LAP_28, EQUALISED_SIX, FORCED_WAVE_35, SIX_POLE_WAVE, CHORDED].flatMap((a) => [
  circuit(`live-${a.id}-sound`, 'sound', { a, faults: [], drive: HIGH_230 }),
  circuit(`live-${a.id}-bridge`, 'bars bridged by copper, 0.2 mΩ', { a, faults: bridged, drive: HIGH_230 }),
]);

/** One coil at 120 C among coils at 40 C. */
const warm = (a: ArmatureDesign): Drive => ({
  ...HIGH_230,
  coilC: Array.from({ length: a.bars }, (_, coil) => (coil === 5 ? 120 : 40)),
});

const otherStates = ARMATURES.flatMap((a) => [
  circuit(`live-${a.id}-low120`, 'bars bridged, 120 V 60 Hz, LOW, winding at 70 °C', {
    a,
    faults: bridged,
    drive: LOW_120,
  }),
  circuit(`live-${a.id}-warm`, 'bars bridged, coil at 120 °C, the others at 40 °C', {
    a,
    faults: bridged,
    drive: warm(a),
  }),
  circuit(`live-${a.id}-saturated`, 'sound, teeth saturated as a choke across the growler', {
    a,
    faults: [],
    drive: HIGH_230,
    saturated: true,
  }),
  circuit(`live-${a.id}-saturated-bridge`, 'bars bridged, teeth saturated as a choke across the growler', {
    a,
    faults: bridged,
    drive: HIGH_230,
    saturated: true,
  }),
]);

const paths: WitnessCase[] = ARMATURES.map((a) =>
  row(
    `live-${a.id}-path`,
    `${a.id}, one bar grounded and one coil open: impedance of bars to the core, growler open`,
    () =>
      pathFinding({
        a,
        faults: [
          { kind: 'groundedBar', bar: 5, ohm: 0.5 },
          { kind: 'openCoil', coil: 9 },
        ],
        drive: HIGH_230,
      }),
    { unit: 'Ω' },
  ),
);

export const circuitLive: WitnessGroup = {
  title: 'Circuit, against ngspice started in this run',
  about:
    'Every fault kind on all three armatures and sound, and some other windings, supplies, temperatures and paths; iron linear where it is not called saturated. The branches and ' +
    'the slot potentials are the engine’s; the inductances are put together again from them. This checks the circuit ' +
    'solution and its loading of the growler; the finite elements check the magnetics.',
  cases: [...everyFault, ...otherParts, ...otherStates, ...paths],
};
