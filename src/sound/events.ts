import type { Observation } from '../bench/observation.ts';
import { ALL_LEADS, type LeadId, leadSet, PANEL_LEADS } from '../bench/places.ts';
import type { ShotName } from './names.ts';

const SNAPPED_ON = 4;
/** Deflection from which breaking the ammeter's contact draws a spark. */
const SPARKING_DEFLECTION = 0.1;

/** The single sounds that belong to the change from one observation to the next, in a fixed order. */
export function soundsBetween(before: Observation, now: Observation): readonly ShotName[] {
  const sounds: ShotName[] = [];
  if (before.selector !== now.selector || before.rangeA !== now.rangeA) sounds.push('click');
  if (before.supply === 'on' && now.supply === 'cutOut') sounds.push('clack');
  if (before.cradle === 'empty' && now.cradle === 'armature') sounds.push('thud');
  if (PANEL_LEADS.some((lead) => sparks(before, now, lead))) sounds.push('arc');
  if (ALL_LEADS.some((lead) => lands(before, now, lead))) sounds.push('tick');
  if (now.chalkedBar !== null && before.chalkedBar !== now.chalkedBar) sounds.push('chalk');
  if (before.strip.pull < SNAPPED_ON && now.strip.pull >= SNAPPED_ON) sounds.push('slap');
  return sounds;
}

/** A tip comes down on metal; a bar that passes under a tip in the stand makes no sound of its own. */
function lands(before: Observation, now: Observation, lead: LeadId): boolean {
  return before.leads[lead].touches === null && now.leads[lead].touches !== null;
}

/** A tip leaves metal while current passes. */
function sparks(before: Observation, now: Observation, lead: LeadId): boolean {
  const lifted = before.leads[lead].touches !== null && now.leads[lead].touches === null;
  if (!lifted || before.supply !== 'on') return false;
  return leadSet(lead) === 'lamp' ? before.lamp.glow > 0 : before.needle.deflection > SPARKING_DEFLECTION;
}
