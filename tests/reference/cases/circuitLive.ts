import { NOMINAL_LOOP_OHM, spanStation } from '../../../src/engine/answers.ts';
import { createArmatureSolver } from '../../../src/engine/armatureBench.ts';
import { type Drive, MAINS, type MeterTap } from '../../../src/engine/drive.ts';
import { LINEAR_GROWLER } from '../../../src/engine/growler.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import {
  drive,
  EQUALISED_LAP_28,
  FORCED_WAVE_35,
  LAP_24,
  LAP_28,
  WAVE_23,
} from '../../engine/support/parts.ts';
import { type Finding, rowsOf, type WitnessCase, type WitnessGroup, within, worst } from '../case.ts';
import { type LiveNetlist, liveNetlist } from '../support/liveNetlist.ts';
import { type AcPoint, acPoint, minus, type Phasor, sizeOf } from '../support/ngspice.ts';

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

interface Question {
  readonly a: ArmatureDesign;
  readonly faults: readonly ArmatureFault[];
  readonly drive: Drive;
}

/** Ammeter on neighbouring bars beside the fault, then across the span station. */
function taps({ a, faults }: Question): MeterTap[] {
  const loopOhm = faults.some((f) => f.kind === 'dirtyCommutator') ? 0.011 : NOMINAL_LOOP_OHM;
  const beside = { first: 5, second: 6 };
  return [beside, spanStation(a)].map(({ first, second }) => ({
    barA: first,
    barB: second,
    loopOhm,
  }));
}

const at = (point: AcPoint, name: string | null): Phasor =>
  (name === null || name === '0' ? undefined : point.get(`v(${name})`)) ?? { re: 0, im: 0 };

/** Open-circuit volts of every bar against the next and against bar 0, and the growler's current. */
async function idleFindings(q: Question): Promise<Finding[]> {
  const ours = createArmatureSolver(q.a, LINEAR_GROWLER).solve(q.faults, q.drive);
  const net = liveNetlist(q);
  const theirs = await acPoint(net.text);
  const islands = islandsOf(net);
  const volts = (i: number, j: number) =>
    islands[i] === islands[j] ? sizeOf(minus(at(theirs, net.node[i]!), at(theirs, net.node[j]!))) : 0;
  const pairs = Array.from({ length: q.a.bars }, (_, b) => [
    [b, (b + 1) % q.a.bars],
    [b, 0],
  ]).flat() as [number, number][];
  return [
    { ours: ours.growlerA, reference: sizeOf(theirs.get('i(vp)')!) },
    worst(
      pairs.map(([i, j]) => ours.openVolt(i, j)),
      pairs.map(([i, j]) => volts(i, j)),
    ),
  ];
}

/** Growler, ammeter and coil currents with the ammeter connected. */
async function loadedFindings(q: Question, meter: MeterTap): Promise<Finding[]> {
  const asked = { ...q, drive: { ...q.drive, meter } };
  const ours = createArmatureSolver(q.a, LINEAR_GROWLER).solve(q.faults, asked.drive);
  const net = liveNetlist(asked);
  const theirs = await acPoint(net.text);
  const drop = minus(at(theirs, net.node[meter.barA]!), at(theirs, net.node[meter.barB]!));
  const coils = new Float64Array(q.a.bars);
  net.current.forEach((name, k) => {
    const { coil } = net.topology.segments[k]!;
    coils[coil] = Math.max(coils[coil]!, sizeOf(theirs.get(name)!));
  });
  const meterA = sizeOf(drop) / meter.loopOhm;
  const growlerA = sizeOf(theirs.get('i(vp)')!);
  // An ammeter on a bar cut off reads nothing, and a sound ring then carries nothing: the growler is the measure.
  const scale = Math.max(...coils, meterA, growlerA);
  return [
    { ours: ours.growlerA, reference: growlerA },
    { ours: ours.meterA, reference: meterA, scale: meterA > 1e-9 * scale ? meterA : scale },
    worst(ours.coilCurrentA(), coils, scale),
  ];
}

function islandsOf({ topology }: LiveNetlist): number[] {
  const group = Array.from({ length: topology.nodes }, (_, i) => i);
  const root = (i: number): number => (group[i] === i ? i : root(group[i]!));
  for (const { from, to } of topology.segments) group[root(from)] = root(to);
  return group.map((_, i) => root(i));
}

/** The finding that lies furthest off for its size. */
function furthest(findings: readonly Finding[]): Finding {
  const share = ({ ours, reference, scale }: Finding) =>
    Math.abs(Number(ours) - Number(reference)) / Math.abs(scale ?? Number(reference));
  return findings.reduce((far, f) => (share(f) > share(far) ? f : far));
}

async function allFindings(q: Question): Promise<Finding> {
  const findings = await idleFindings(q);
  for (const tap of taps(q)) findings.push(...(await loadedFindings(q, tap)));
  return furthest(findings);
}

/** Impedance from each third bar to the core with the growler open, as a lamp between them meets it. */
async function pathFinding({ a, faults, drive: d }: Question): Promise<Finding> {
  const solver = createArmatureSolver(a, LINEAR_GROWLER);
  const ours: number[] = [];
  const theirs: number[] = [];
  for (let bar = 0; bar < a.bars; bar += 3) {
    const z = solver.path(faults, bar, 'core', d.mains.hz)!;
    const net = liveNetlist({ a, faults, drive: { ...d, rotationRad: 0 }, feed: { from: bar, to: a.bars } });
    const point = await acPoint(net.text);
    const drop = minus(at(point, net.node[bar]!), at(point, net.node[a.bars]!));
    ours.push(z.re, z.im);
    theirs.push(drop.re, drop.im);
  }
  return worst(ours, theirs);
}

const row = rowsOf({
  unit: 'A, V',
  source: 'ngspice 45, ac analysis of the netlist of the same branches',
  verified: 'live',
  standing: 'independent',
  tolerance: within(1e-6),
});

const HIGH_230 = drive();
const LOW_120 = drive({ mains: MAINS['120V60Hz'], excitation: 'low', windingC: 70 });

function circuit(id: string, name: string, a: ArmatureDesign, faults: readonly ArmatureFault[], d: Drive) {
  const q = { a, faults, drive: { ...d, rotationRad: rotationOf(a) } };
  return row(id, `${a.id}, ${name}: worst of growler, bar volts, ammeter, coil currents`, () =>
    allFindings(q),
  );
}

const everyFault = [WAVE_23, LAP_28, LAP_24].flatMap((a) =>
  Object.entries(faultsOn(a)).map(([name, faults], i) =>
    circuit(`live-${a.id}-${i}`, name, a, faults, HIGH_230),
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

const otherParts = [EQUALISED_LAP_28, FORCED_WAVE_35, SIX_POLE_WAVE, CHORDED].flatMap((a) => [
  circuit(`live-${a.id}-sound`, 'sound', a, [], HIGH_230),
  circuit(`live-${a.id}-bridge`, 'bars bridged by copper, 0.2 mΩ', a, bridged, HIGH_230),
]);

const otherSupply = [WAVE_23, LAP_28, LAP_24].map((a) =>
  circuit(`live-${a.id}-low120`, 'bars bridged, 120 V 60 Hz, LOW, winding at 70 °C', a, bridged, LOW_120),
);

const paths: WitnessCase[] = [WAVE_23, LAP_28, LAP_24].map((a) =>
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
    'Every fault kind on all three armatures and sound, and some other windings, supplies and paths. The branches and ' +
    'the slot potentials are the engine’s; the inductances are put together again from them. This checks the circuit ' +
    'solution and its loading of the growler; the finite elements check the magnetics.',
  cases: [...everyFault, ...otherParts, ...otherSupply, ...paths],
};
