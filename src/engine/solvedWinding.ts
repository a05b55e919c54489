import type { LoopCircuit } from './circuit/loopSolution.ts';
import type { PairProbe } from './circuit/pairProbe.ts';
import type { Topology } from './circuit/topology.ts';
import type { GrowlerDesign } from './growler.ts';
import type { TablePlace } from './magnetics/slotTable.ts';
import type { ToothSaturation } from './magnetics/toothSaturation.ts';
import type { ArmatureDesign } from './parts/armature.ts';

/** A winding with its faults, as warm as it is, at one rotation and one frequency. */
export interface SolvedWinding {
  readonly design: ArmatureDesign;
  readonly growler: GrowlerDesign;
  /** Depth over which armature and growler share their field, m. */
  readonly depth: number;
  readonly topology: Topology;
  /** Resistance of every branch as warm as it is, ohm. */
  readonly ohms: Float64Array;
  readonly circuit: LoopCircuit;
  /** Shared by all points of the same winding: turned afresh before it is asked. */
  readonly probe: PairProbe;
  readonly place: TablePlace;
  /** rad, rad/s */
  readonly rotation: number;
  readonly omega: number;
  /** null: linear iron */
  readonly saturation: ToothSaturation | null;
}
