import { BarPair, loopCurrent, NOTHING } from '../../assess/evidence/thevenin.ts';
import { newInductances } from '../../engine/circuit/inductance.ts';
import { LoopCircuit } from '../../engine/circuit/loopSolution.ts';
import { type Topology, windingTopology } from '../../engine/circuit/topology.ts';
import { MAINS } from '../../engine/drive.ts';
import { BENCH_GROWLER, endLeakageHenry, sharedDepth, windingOhm } from '../../engine/growler.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { OtherMeter } from './worlds.ts';

/**
 * Vector potentials by plane finite elements: source 0 the growler's turn, then 1 + (slot·2 + layer)·columns + column;
 * layer 0 on top. H per metre of depth.
 */
export interface FieldTable {
  readonly bars: number;
  readonly columns: number;
  /** Rotation in slot pitches at which it was solved. */
  readonly pitches: number;
  readonly matrix: readonly (readonly number[])[];
}
export type FieldTables = readonly FieldTable[];

const WINDING_C = 45;
const MAINS_ID = '230V50Hz';

/** Rotations within a slot pitch at which an armature has tables. */
export function pitchesOf(tables: FieldTables, design: ArmatureDesign): number[] {
  return tables.filter(({ bars }) => bars === design.bars).map(({ pitches }) => pitches);
}

/**
 * Ammeter currents with all inductances of slots and growler taken from finite elements. Rotations must lie a whole
 * number of slot pitches from one that was solved. Linear iron.
 */
export function finiteElementMeter(tables: FieldTables): OtherMeter {
  return ({ design, faults }, rotationDeg, bars, loopOhm) => {
    const pitches = (((rotationDeg % 360) + 360) % 360) / (360 / design.slots);
    const table = tables.find(
      (one) => one.bars === design.bars && Math.abs(((pitches - one.pitches + 0.5) % 1) - 0.5) < 1e-6,
    );
    if (table === undefined) throw new Error(`no finite elements for ${design.id} at ${rotationDeg} degrees`);
    const shift = Math.round(pitches - table.pitches);
    return current(design, windingTopology(design, faults), table, shift, bars, loopOhm);
  };
}

function current(
  design: ArmatureDesign,
  topology: Topology,
  table: FieldTable,
  shift: number,
  bars: readonly [number, number],
  loopOhm: number,
): number {
  const circuit = new LoopCircuit({
    nodes: topology.nodes,
    branches: topology.segments,
    inductive: topology.windingSegments,
  });
  if (circuit.forest.island[bars[0]] !== circuit.forest.island[bars[1]]) return 0;
  const depth = sharedDepth(BENCH_GROWLER, design.stackLength);
  const omega = 2 * Math.PI * MAINS[MAINS_ID].hz;
  const own = depth * table.matrix[0]![0]! + endLeakageHenry(BENCH_GROWLER);
  const solution = circuit.solve(inductances(design, topology, table, shift, depth), omega, own);
  const winding = BENCH_GROWLER.windings[MAINS_ID].high;
  const supply = {
    turns: winding.turns,
    ohmRe: windingOhm(winding, WINDING_C),
    ohmIm: 0,
    volt: MAINS[MAINS_ID].volt,
  };
  const source = { v2: 0, r: 0, x: 0 };
  new BarPair(solution, bars[0], bars[1]).source(NOTHING, supply, source);
  return loopCurrent(source, loopOhm);
}

/** L_ij = depth·Σ w_i·w_j·A over the conductors of both segments, the coil ends on the diagonal. */
function inductances(
  design: ArmatureDesign,
  topology: Topology,
  { matrix, columns }: FieldTable,
  shift: number,
  depth: number,
) {
  const n = topology.windingSegments;
  const into = newInductances(n);
  const winding = topology.segments.slice(0, n).map((segment) => {
    const place = (slot: number, layer: number) =>
      1 + (((slot + shift) % design.slots) * 2 + layer) * columns + (segment.coil % columns);
    return {
      segment,
      sides: [
        [place(segment.topSlot, 0), segment.top],
        [place(segment.bottomSlot, 1), segment.bottom],
      ] as const,
    };
  });
  winding.forEach(({ segment, sides }, i) => {
    into.growler[i] = depth * sides.reduce((sum, [a, w]) => sum + w * matrix[a]![0]!, 0);
    winding.forEach(({ sides: others }, j) => {
      let sum = 0;
      for (const [a, w] of sides) for (const [b, v] of others) sum += w * v * matrix[a]![b]!;
      into.mutual[i * n + j] = depth * sum;
    });
    into.mutual[i * n + i]! += segment.endLeak;
  });
  return into;
}
