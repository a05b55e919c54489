import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { barZeroDeg } from '../../engine/parts/winding.ts';
import type { PartLibrary, ScenarioPublic } from '../scenario.ts';
import type { ArmatureView, Job } from './job.ts';

/** What the outside of an armature shows anyone. */
export function armatureView(design: ArmatureDesign): ArmatureView {
  const { name, winding, poles, slots, bars, coilsPerSlot } = design;
  const { outerRadius, shaftRadius, stackLength, commutatorRadius, slotMouth } = design;
  return {
    typeId: design.id,
    ...{ name, winding, poles, slots, bars, coilsPerSlot },
    barZeroDeg: barZeroDeg(design),
    ...{ outerRadius, shaftRadius, stackLength, commutatorRadius, slotMouth },
  };
}

/**
 * The job as the apprentice's screens know it: made from the public half alone.
 * @param library  must hold the part type, as parsing has made sure
 */
export function jobOf(scenario: { readonly public: ScenarioPublic }, library: PartLibrary): Job {
  const { id, workshop, card, mains, part, tests, mode, minutes } = scenario.public;
  const design = library.get(scenario.public.armature);
  if (design === undefined) throw new Error(`part type ${scenario.public.armature} is not in the library`);
  return { id, workshop, card, mains, part, armature: armatureView(design), tests, mode, minutes };
}
