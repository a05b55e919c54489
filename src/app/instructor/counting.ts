import { readingsToProve } from '../../assess/evidence/ideal.ts';
import { groundOf } from '../../assess/evidence/index.ts';
import type { Question } from './solving.ts';

export function readingsNeeded({ scenario, design }: Question): number | null {
  const { model } = groundOf({ scenario, design });
  return readingsToProve(model, scenario.hidden.armature.faults);
}
