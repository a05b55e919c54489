import { createArmatureSolver } from '../../../engine/armatureBench.ts';
import type { ArmatureDesign } from '../../../engine/parts/armature.ts';
import type { PartLibrary } from '../../../scenario/scenario.ts';
import { levels, type Row, rowOf } from './cells.ts';
import { conditions } from './faults.ts';

/** Every condition of one armature against every test of the bench. */
export interface ArmatureMatrix {
  readonly design: ArmatureDesign;
  readonly rows: readonly Row[];
}

/** The armatures of the library; an equalised four-pole lap is added where the library has none. */
export function matrixArmatures(library: PartLibrary): readonly ArmatureDesign[] {
  const parts = [...library.values()];
  if (parts.some(({ equalised }) => equalised)) return parts;
  return parts.flatMap((part) =>
    part.winding === 'lap' && part.poles > 2
      ? [part, { ...part, id: `${part.id}e`, name: `${part.name}, equalised`, equalised: true }]
      : [part],
  );
}

export function matrixOf(design: ArmatureDesign): ArmatureMatrix {
  const solver = createArmatureSolver(design);
  const sound = levels(solver, []);
  return { design, rows: conditions(design).map(({ name, faults }) => rowOf(solver, name, faults, sound)) };
}
