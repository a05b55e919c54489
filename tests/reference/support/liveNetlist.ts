import { type Segment, type Topology, windingTopology } from '../../../src/engine/circuit/topology.ts';
import type { Drive } from '../../../src/engine/drive.ts';
import {
  BENCH_GROWLER,
  endLeakageHenry,
  mainsIdOf,
  sharedDepth,
  windingOhm,
} from '../../../src/engine/growler.ts';
import { slotPotentials } from '../../../src/engine/magnetics/toothNetwork.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { coilOhm } from '../../../src/engine/parts/winding.ts';
import type { CoupledCircuit } from './storedNetlist.ts';

/**
 * Growler and armature as a netlist for a general-purpose circuit solver: every coil or piece of a coil an inductor
 * with its resistance, coupled to every other and to the growler winding. Which branches there are is the engine's
 * topology; the inductances are put together here from the slot potentials, in the plainest way.
 */
export interface LiveNetlist {
  readonly text: string;
  readonly topology: Topology;
  /** Node name of every node of the topology; '0' for one node of each island, null for a node with no branch. */
  readonly node: readonly (string | null)[];
  /** Name of the current of every winding segment as the solver reports it. */
  readonly current: readonly string[];
}

export interface LiveSetting {
  readonly a: ArmatureDesign;
  readonly faults: readonly ArmatureFault[];
  readonly drive: Drive;
  /** Inductance across the growler winding that stands for its saturated teeth, H. */
  readonly choke?: number | undefined;
  /** A second source in place of the growler: one ampere from node to node, growler winding open. */
  readonly feed?: { readonly from: number; readonly to: number };
}

/** Share of its own slot leakage by which a piece of a divided coil is not coupled to the rest (the engine's own). */
const PIECE_LEAKAGE = 0.02;
const MU0 = 4e-7 * Math.PI;

export function liveNetlist({ a, faults, drive, feed, choke }: LiveSetting): LiveNetlist {
  const topology = windingTopology(a, faults);
  const extra = drive.meter
    ? [{ from: drive.meter.barA, to: drive.meter.barB, ohm: drive.meter.loopOhm }]
    : [];
  const node = nodeNames(topology, extra, feed);
  const { coil, growler } = henries(a, topology, drive.rotationRad);
  const { turns } = BENCH_GROWLER.windings[mainsIdOf(drive.mains)][drive.excitation];
  const growlerHenry = turns ** 2 * growler.own;
  const windings = topology.segments.slice(0, topology.windingSegments).map((s) => warmed(a, s, drive));
  const lines = [
    '* growler and armature',
    ...windings.flatMap((s, k) => coilLines(s, k, node, coil[k]![k]!)),
    ...topology.segments
      .slice(topology.windingSegments)
      .map((s, k) => `RF${k} ${node[s.from]} ${node[s.to]} ${s.ohm}`),
    ...extra.map((m) => `RM ${node[m.from]} ${node[m.to]} ${m.ohm}`),
    ...couplings(coil),
    ...(feed
      ? [`IF ${node[feed.to]} ${node[feed.from]} DC 0 AC 1`]
      : growlerLines(drive, growlerHenry, choke)),
    ...(feed
      ? []
      : growlerCouplings(
          growlerHenry,
          growler.coupling.map((x) => turns * x),
          coil,
        )),
    `.ac lin 1 ${drive.mains.hz} ${drive.mains.hz}`,
    '.end',
  ];
  const current = windings.map((_, k) => (coil[k]![k]! === 0 ? `i(v${k})` : `i(l${k})`));
  return { text: lines.join('\n'), topology, node, current };
}

function coilLines(s: Segment, k: number, node: readonly (string | null)[], henry: number): string[] {
  // A piece of no turns has a resistance only; a source of no volts shows its current.
  const inductor = henry === 0 ? `V${k} x${k} ${node[s.to]} DC 0 AC 0` : `L${k} x${k} ${node[s.to]} ${henry}`;
  return [`R${k} ${node[s.from]} x${k} ${s.ohm}`, inductor];
}

/** A coil as warm as it is: its copper follows it, its joints do not. */
function warmed(a: ArmatureDesign, s: Segment, { coilC }: Drive): Segment {
  if (!coilC) return s;
  const copper = (coilOhm(a) * (s.top - s.bottom)) / (2 * a.turns);
  return { ...s, ohm: s.ohm + copper * 0.00393 * (coilC[s.coil]! - 20) };
}

function couplings(coil: readonly (readonly number[])[]): string[] {
  return coil.flatMap((row, i) =>
    row.slice(0, i).flatMap((henry, j) => {
      const most = Math.sqrt(coil[i]![i]! * coil[j]![j]!);
      return henry === 0 || most === 0 ? [] : [`K${i}_${j} L${i} L${j} ${henry / most}`];
    }),
  );
}

/** Mains, the growler's resistance and inductance, and a choke across it for its saturated teeth. */
function growlerLines(drive: Drive, own: number, choke: number | undefined): string[] {
  const winding = BENCH_GROWLER.windings[mainsIdOf(drive.mains)][drive.excitation];
  // Without a trace of resistance two inductors side by side have no definite direct current.
  const saturated = choke === undefined ? [] : ['RX q y 1e-6', `LX y 0 ${choke}`];
  return [
    `VP p 0 DC 0 AC ${drive.mains.volt}`,
    `RP p q ${windingOhm(winding, drive.windingC)}`,
    `LP q 0 ${own}`,
    ...saturated,
  ];
}

function growlerCouplings(
  own: number,
  coupling: readonly number[],
  coil: readonly (readonly number[])[],
): string[] {
  return coupling.flatMap((henry, k) =>
    henry === 0 || coil[k]![k]! === 0 ? [] : [`K${k}_P L${k} LP ${henry / Math.sqrt(own * coil[k]![k]!)}`],
  );
}

/** The same circuit for a nodal solution: every branch between numbered nodes, every inductance in a matrix. */
export function coupledCircuit({ a, faults, drive }: LiveSetting): CoupledCircuit {
  const topology = windingTopology(a, faults);
  const { coil, growler } = henries(a, topology, drive.rotationRad);
  const { turns } = BENCH_GROWLER.windings[mainsIdOf(drive.mains)][drive.excitation];
  return {
    nodes: topology.nodes,
    branches: topology.segments,
    inductive: topology.windingSegments,
    l: {
      mutual: Float64Array.from(coil.flat()),
      growler: Float64Array.from(growler.coupling, (henry) => turns * henry),
    },
    growlerHenry: turns ** 2 * growler.own,
    growlerOhm: windingOhm(BENCH_GROWLER.windings[mainsIdOf(drive.mains)][drive.excitation], drive.windingC),
  };
}

/** L = depth·w·M·wᵀ + leakage over all pairs of segments, w turns by slot and layer; and the growler's row of it. */
function henries(a: ArmatureDesign, topology: Topology, rotation: number) {
  const { m } = slotPotentials(a, BENCH_GROWLER, rotation);
  const wide = a.slots + 1;
  const depth = sharedDepth(BENCH_GROWLER, a.stackLength);
  const windings = topology.segments.slice(0, topology.windingSegments);
  const sides = windings.map((s) => [
    { slot: s.topSlot, layer: 0, turns: s.top },
    { slot: s.bottomSlot, layer: 1, turns: s.bottom },
  ]);
  const unit = ((MU0 * a.layerHeight) / a.slotWidth) * a.stackLength;
  const leak = [
    [unit / 3, unit / 2],
    [unit / 2, (4 * unit) / 3],
  ];
  const pair = (i: number, j: number): number => {
    let sum = 0;
    for (const x of sides[i]!)
      for (const y of sides[j]!) {
        const shared = depth * m[(1 + x.slot) * wide + 1 + y.slot]!;
        const own = x.slot === y.slot ? leak[x.layer]![y.layer]! : 0;
        sum += x.turns * y.turns * (shared + own);
      }
    return sum;
  };
  const apart = (i: number) =>
    windings[i]!.endLeak +
    (windings[i]!.piece
      ? PIECE_LEAKAGE * sides[i]!.reduce((sum, x) => sum + x.turns ** 2 * leak[x.layer]![x.layer]!, 0)
      : 0);
  const coil = windings.map((_, i) => windings.map((_, j) => pair(i, j) + (i === j ? apart(i) : 0)));
  const coupling = sides.map((pairOf) =>
    pairOf.reduce((sum, x) => sum + x.turns * depth * m[1 + x.slot]!, 0),
  );
  return { coil, growler: { own: depth * m[0]! + endLeakageHenry(BENCH_GROWLER), coupling } };
}

/** Names the nodes, one of each island the solver's ground; nodes that no branch touches get none. */
function nodeNames(
  topology: Topology,
  extra: readonly { readonly from: number; readonly to: number }[],
  feed: LiveSetting['feed'],
): (string | null)[] {
  const group = Array.from({ length: topology.nodes }, (_, i) => i);
  const root = (i: number): number => (group[i] === i ? i : root(group[i]!));
  const touched = new Set<number>();
  for (const { from, to } of [...topology.segments, ...extra, ...(feed ? [feed] : [])]) {
    touched.add(from);
    touched.add(to);
    const [x, y] = [root(from), root(to)];
    group[Math.max(x, y)] = Math.min(x, y);
  }
  return group.map((_, i) => (touched.has(i) ? (root(i) === i ? '0' : `n${i}`) : null));
}
