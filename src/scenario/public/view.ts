import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { JOB_PLATES } from '../../engine/parts/brushPlate.ts';
import { JOB_FRAMES } from '../../engine/parts/fieldFrameDesigns.ts';
import { barZeroDeg } from '../../engine/parts/winding.ts';
import type { PartLibrary, ScenarioPublic } from '../scenario.ts';
import type { ArmatureView, BrushPlateView, FieldFrameView, Job } from './job.ts';
import { limitsOf } from './limits.ts';

/** What the outside of an armature shows anyone. */
export function armatureView(design: ArmatureDesign): ArmatureView {
  const { name, winding, poles, slots, bars, coilsPerSlot } = design;
  const { outerRadius, shaftRadius, stackLength, commutatorRadius, slotMouth } = design;
  return {
    typeId: design.id,
    ...{ name, winding, poles, slots, bars, coilsPerSlot },
    ...(design.equalised ? { equalised: true } : {}),
    barZeroDeg: barZeroDeg(design),
    ...{ outerRadius, shaftRadius, stackLength, commutatorRadius, slotMouth },
  };
}

export function frameView(id: string | undefined): FieldFrameView | null {
  const frame = id === undefined ? undefined : JOB_FRAMES.get(id);
  if (frame === undefined) return null;
  const coils = frame.coils.map(({ from, to }) => ({ from, to }));
  const links = frame.links.map(({ a, b }) => ({ from: a, to: b }));
  return { typeId: frame.id, name: frame.name, coils, links };
}

export function plateView(id: string | undefined): BrushPlateView | null {
  const plate = id === undefined ? undefined : JOB_PLATES.get(id);
  return plate === undefined ? null : { typeId: plate.id, name: plate.name };
}

/**
 * The job as the apprentice's screens know it: made from the public half alone.
 * @param library  must hold the part type, as parsing has made sure
 */
export function jobOf(scenario: { readonly public: ScenarioPublic }, library: PartLibrary): Job {
  const { id, workshop, card, mains, parts, tests, mode, minutes } = scenario.public;
  const design = library.get(scenario.public.armature);
  if (design === undefined) throw new Error(`part type ${scenario.public.armature} is not in the library`);
  return {
    ...{ id, workshop, card, mains, parts, tests, mode, minutes },
    armature: armatureView(design),
    fieldFrame: frameView(scenario.public.fieldFrame),
    brushPlate: plateView(scenario.public.brushPlate),
    limits: limitsOf(scenario.public, design),
  };
}
