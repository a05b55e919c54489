import { newInductances } from '../../../src/engine/circuit/inductance.ts';
import { LoopCircuit } from '../../../src/engine/circuit/loopSolution.ts';
import { windingTopology } from '../../../src/engine/circuit/topology.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../../src/engine/parts/armatureFault.ts';
import { checkWinding } from '../../../src/engine/parts/windingRules.ts';

/** Extra connections between bars, such as brushes, ohm. */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly ohm: number;
}

/**
 * Resistance between any two bars with every coil 1 ohm and no joints, by the engine's loop solution without frequency.
 * @throws when the armature cannot be wound
 */
export function unitRing(
  a: ArmatureDesign,
  faults: readonly ArmatureFault[] = [],
  links: readonly Link[] = [],
): (from: number, to: number) => number {
  const objections = checkWinding(a);
  if (objections.length > 0) throw new Error(objections.map((o) => o.sentence).join(' '));
  const topology = windingTopology(a, faults);
  const coils = topology.segments.map((s) =>
    s.coil < 0 ? s : { ...s, ohm: (s.top - s.bottom) / (2 * a.turns) },
  );
  const circuit = new LoopCircuit({
    nodes: topology.nodes,
    branches: [...coils, ...links],
    inductive: topology.windingSegments,
  });
  const { zRe } = circuit.solve(newInductances(topology.windingSegments), 0, 0);
  const n = topology.nodes;
  return (i, j) => zRe[i * n + i]! + zRe[j * n + j]! - 2 * zRe[i * n + j]!;
}

/** Neighbouring resistances, bar b to b + 1, in coils. */
export function neighbours(a: ArmatureDesign, faults: readonly ArmatureFault[]): number[] {
  const ohm = unitRing(a, faults);
  return Array.from({ length: a.bars }, (_, b) => ohm(b, (b + 1) % a.bars));
}
