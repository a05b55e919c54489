import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ScenarioPublic } from '../scenario.ts';
import type { Limits } from './job.ts';

/** How far a commutator may be turned down where the card names no diameter, mm. Figure ours. */
const TURNED_DOWN_MM = 2;

/**
 * The card's limits, with the usual ones where it names none.
 * @source references A04 run-out limit 0.05 mm, A02 undercut re-cut when under 0.2 mm, A09 brush replaced at 7.9 mm
 *   (one starter), A07 least insulation 1 megohm; the diameter is ours
 */
export function limitsOf({ limits }: Pick<ScenarioPublic, 'limits'>, design: ArmatureDesign): Limits {
  return {
    commutatorDiameterMm: 2000 * design.commutatorRadius - TURNED_DOWN_MM,
    runOutMm: 0.05,
    undercutMm: 0.2,
    brushLengthMm: 7.9,
    insulationMohm: 1,
    ...limits,
  };
}
