import { NOMINAL_LOOP_OHM, spanStation } from '../../../src/engine/answers.ts';
import { createArmatureSolver } from '../../../src/engine/armatureBench.ts';
import type { Drive, MeterTap } from '../../../src/engine/drive.ts';
import { BENCH_GROWLER, LINEAR_GROWLER, mainsIdOf } from '../../../src/engine/growler.ts';
import { SlotTable } from '../../../src/engine/magnetics/slotTable.ts';
import { ToothSaturation } from '../../../src/engine/magnetics/toothSaturation.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { type Finding, worst } from '../case.ts';
import { type LiveNetlist, liveNetlist } from './liveNetlist.ts';
import { type AcPoint, acPoint, minus, type Phasor, sizeOf } from './ngspice.ts';

/** One armature in one state, asked of the engine and of the circuit solver. */
export interface Question {
  readonly a: ArmatureDesign;
  readonly faults: readonly ArmatureFault[];
  readonly drive: Drive;
  /** Teeth under the jaws saturate; otherwise the iron is linear. */
  readonly saturated?: boolean;
}

const growlerOf = ({ saturated }: Question) => (saturated ? BENCH_GROWLER : LINEAR_GROWLER);

/** Netlist of a question. Saturated teeth are a choke across the growler: the flux at no ammeter over what they ask. */
function netlistOf(q: Question): LiveNetlist {
  if (!q.saturated) return liveNetlist(q);
  const { rotationRad, mains, excitation } = q.drive;
  const { fluxWb } = createArmatureSolver(q.a).solve(q.faults, { ...q.drive, meter: null });
  const iron = new ToothSaturation(q.a, BENCH_GROWLER, new SlotTable(q.a, BENCH_GROWLER));
  const { turns } = BENCH_GROWLER.windings[mainsIdOf(mains)][excitation];
  return liveNetlist({ ...q, choke: (fluxWb * turns ** 2) / iron.ampereTurns(rotationRad, fluxWb) });
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
  const ours = createArmatureSolver(q.a, growlerOf(q)).solve(q.faults, q.drive);
  const net = netlistOf(q);
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
  const ours = createArmatureSolver(q.a, growlerOf(q)).solve(q.faults, asked.drive);
  const net = netlistOf(asked);
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

/** The worst of growler, bar volts, ammeter and coil currents, with no ammeter and with it at two places. */
export async function allFindings(q: Question): Promise<Finding> {
  const findings = await idleFindings(q);
  for (const tap of taps(q)) findings.push(...(await loadedFindings(q, tap)));
  return furthest(findings);
}

/** Impedance from each third bar to the core with the growler open, as a lamp between them meets it. */
export async function pathFinding({ a, faults, drive: d }: Question): Promise<Finding> {
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
