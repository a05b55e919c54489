import { type Inductances, newInductances, segmentInductances } from '../../engine/circuit/inductance.ts';
import { LoopCircuit, type LoopSolution } from '../../engine/circuit/loopSolution.ts';
import type { Topology } from '../../engine/circuit/topology.ts';
import { endLeakageHenry, type GrowlerDesign, sharedDepth } from '../../engine/growler.ts';
import type { ShiftedPotentials } from '../../engine/magnetics/slotTable.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';

/** One winding as a circuit that can be solved at any rotation: what the suspects that share it are worked out from. */
export class Network {
  readonly topology: Topology;
  readonly circuit: LoopCircuit;
  private readonly design: ArmatureDesign;
  private readonly growler: GrowlerDesign;
  private readonly depth: number;
  private readonly inductances: Inductances;

  constructor(design: ArmatureDesign, growler: GrowlerDesign, topology: Topology) {
    this.design = design;
    this.growler = growler;
    this.topology = topology;
    this.depth = sharedDepth(growler, design.stackLength);
    this.circuit = new LoopCircuit({
      nodes: topology.nodes,
      branches: topology.segments,
      inductive: topology.windingSegments,
    });
    this.inductances = newInductances(topology.windingSegments);
  }

  /** @param hz mains frequency */
  solve(potentials: ShiftedPotentials, hz: number): LoopSolution {
    const { m, shift } = potentials;
    segmentInductances(this.design, this.depth, this.topology, m, shift, this.inductances);
    const own = this.depth * m[0]! + endLeakageHenry(this.growler);
    return this.circuit.solve(this.inductances, 2 * Math.PI * hz, own);
  }
}
