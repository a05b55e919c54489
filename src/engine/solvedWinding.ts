import type { LoopCircuit, LoopSolution } from './circuit/loopSolution.ts';
import type { Topology } from './circuit/topology.ts';
import type { GrowlerDesign } from './growler.ts';
import type { ShiftedPotentials } from './magnetics/slotTable.ts';
import type { ToothSaturation } from './magnetics/toothSaturation.ts';
import type { ArmatureDesign } from './parts/armature.ts';

/** Everything about a winding at one rotation and one frequency that does not depend on the growler's winding. */
export interface SolvedWinding {
  readonly design: ArmatureDesign;
  readonly growler: GrowlerDesign;
  /** Depth over which armature and growler share their field, m. */
  readonly depth: number;
  readonly topology: Topology;
  /** Resistance of every branch as warm as it is, ohm. */
  readonly ohms: Float64Array;
  readonly circuit: LoopCircuit;
  readonly solution: LoopSolution;
  readonly potentials: ShiftedPotentials;
  /** rad, rad/s */
  readonly rotation: number;
  readonly omega: number;
  /** null: linear iron */
  readonly saturation: ToothSaturation | null;
}
