import { newInductances, segmentInductances } from './circuit/inductance.ts';
import { LoopCircuit } from './circuit/loopSolution.ts';
import { type Topology, windingTopology } from './circuit/topology.ts';
import type { Drive, Excitation, Mains, OperatingPoint } from './drive.ts';
import {
  BENCH_GROWLER,
  emptyHenry,
  endLeakageHenry,
  type GrowlerDesign,
  mainsIdOf,
  sharedDepth,
  windingOhm,
} from './growler.ts';
import { SlotTable } from './magnetics/slotTable.ts';
import { operatingPoint, type SolvedWinding } from './operatingPoint.ts';
import type { ArmatureDesign } from './parts/armature.ts';
import type { ArmatureFault } from './parts/armatureFault.ts';

export { checkFault } from './parts/faultRules.ts';
export { barZeroDeg } from './parts/winding.ts';
export { checkWinding } from './parts/windingRules.ts';

/** A bar, or the core with the shaft it is pressed on. */
export type Metal = 'core' | number;

export interface Impedance {
  readonly re: number;
  readonly im: number;
}

/** One armature lying in the cradle of the bench. Solving changes nothing; the same question gives the same answer. */
export interface ArmatureSolver {
  readonly design: ArmatureDesign;
  /** Steady state of growler and armature. Bars named in `drive.meter` must exist. */
  solve(faults: readonly ArmatureFault[], drive: Drive): OperatingPoint;
  /**
   * Impedance between two pieces of metal with the growler off, ohm; null where there is no path.
   * @param peakV voltage put across them, peak: weak insulation may break down above its limit
   */
  path(faults: readonly ArmatureFault[], a: Metal, b: Metal, hz: number, peakV?: number): Impedance | null;
}

/** Resistance of an arc track once weak insulation has broken down, ohm. Estimate. */
const ARC_OHM = 200;

/** How many sets of faults a solver remembers the topology of. */
const REMEMBERED = 8;

interface FaultedWinding {
  readonly topology: Topology;
  readonly circuit: LoopCircuit;
  /** The last solution and what it was for. */
  last: { rotation: number; hz: number; solved: SolvedWinding } | null;
}

/** @param design must have passed `checkWinding`, and every fault `checkFault` */
export function createArmatureSolver(
  design: ArmatureDesign,
  growler: GrowlerDesign = BENCH_GROWLER,
): ArmatureSolver {
  const table = new SlotTable(design, growler);
  const depth = sharedDepth(growler, design.stackLength);
  const windings = new Map<string, FaultedWinding>();
  let recent: { faults: readonly ArmatureFault[]; winding: FaultedWinding } | null = null;

  function winding(faults: readonly ArmatureFault[]): FaultedWinding {
    if (recent?.faults !== faults) recent = { faults, winding: lookUp(faults) };
    return recent.winding;
  }

  function lookUp(faults: readonly ArmatureFault[]): FaultedWinding {
    const key = JSON.stringify(faults);
    const known = windings.get(key);
    if (known) return known;
    if (windings.size >= REMEMBERED) windings.delete(windings.keys().next().value as string);
    const topology = windingTopology(design, faults);
    const circuit = new LoopCircuit({
      nodes: topology.nodes,
      branches: topology.segments,
      inductive: topology.windingSegments,
    });
    const fresh: FaultedWinding = { topology, circuit, last: null };
    windings.set(key, fresh);
    return fresh;
  }

  function solveWinding(faults: readonly ArmatureFault[], rotation: number, hz: number): SolvedWinding {
    const w = winding(faults);
    if (w.last && w.last.rotation === rotation && w.last.hz === hz) return w.last.solved;
    const potentials = table.at(rotation);
    const l = newInductances(w.topology.windingSegments);
    segmentInductances(design, depth, w.topology, potentials.m, potentials.shift, l);
    const own = depth * potentials.m[0]! + endLeakageHenry(growler);
    const solution = w.circuit.solve(l, 2 * Math.PI * hz, own);
    const solved = { design, growler, depth, topology: w.topology, circuit: w.circuit, solution, potentials };
    w.last = { rotation, hz, solved };
    return solved;
  }

  return {
    design,
    solve: (faults, drive) => operatingPoint(solveWinding(faults, drive.rotationRad, drive.mains.hz), drive),
    path: (faults, a, b, hz, peakV = 0) => {
      const { circuit, topology, solution } = solveWinding(brokenDown(faults, peakV), 0, hz);
      const i = a === 'core' ? topology.core : a;
      const j = b === 'core' ? topology.core : b;
      if (circuit.forest.island[i] !== circuit.forest.island[j]) return null;
      const z = (part: Float64Array) =>
        part[i * circuit.nodes + i]! + part[j * circuit.nodes + j]! - 2 * part[i * circuit.nodes + j]!;
      return { re: z(solution.zRe), im: z(solution.zIm) };
    },
  };
}

/** Weak insulation under a voltage above its limit is a ground. */
function brokenDown(faults: readonly ArmatureFault[], peakV: number): readonly ArmatureFault[] {
  const breaks = (f: ArmatureFault) =>
    f.kind === 'weakInsulation' && f.breakdownV !== null && peakV > f.breakdownV;
  if (!faults.some(breaks)) return faults;
  return faults.map((f) =>
    f.kind === 'weakInsulation' && breaks(f) ? { ...f, ohm: Math.min(f.ohm, ARC_OHM) } : f,
  );
}

/** What the growler does with nothing in its jaws. */
export function emptyCradle(
  mains: Mains,
  excitation: Excitation,
  windingC: number,
  growler: GrowlerDesign = BENCH_GROWLER,
): { readonly growlerA: number; readonly growlerW: number; readonly fluxWb: number } {
  const winding = growler.windings[mainsIdOf(mains)][excitation];
  const ohm = windingOhm(winding, windingC);
  const x = 2 * Math.PI * mains.hz * winding.turns ** 2 * emptyHenry(growler);
  const growlerA = mains.volt / Math.hypot(ohm, x);
  const fluxWb = (Math.SQRT2 * growlerA * x) / (2 * Math.PI * mains.hz * winding.turns);
  return { growlerA, growlerW: growlerA ** 2 * ohm, fluxWb };
}
