import type { ArmatureFault } from './armatureFault.ts';
import type { BrushPlateFault } from './brushPlate.ts';

/** What can be done to a part at the bench, in the order a workshop would try it. */
export const ARMATURE_REMEDIES = ['brushBetweenBars', 'undercut', 'skimAndPolish', 'resolderRiser'] as const;
export const PLATE_REMEDIES = ['cleanPlateInsulation', 'tightenRivets'] as const;
export const REMEDIES = [...ARMATURE_REMEDIES, ...PLATE_REMEDIES] as const;
export type ArmatureRemedy = (typeof ARMATURE_REMEDIES)[number];
export type PlateRemedy = (typeof PLATE_REMEDIES)[number];
export type RemedyKind = (typeof REMEDIES)[number];

/** Time a practised hand takes, minutes. Figures ours. */
export const REMEDY_MINUTES: Readonly<Record<RemedyKind, number>> = {
  brushBetweenBars: 6,
  undercut: 20,
  skimAndPolish: 25,
  resolderRiser: 10,
  cleanPlateInsulation: 6,
  tightenRivets: 8,
};

export function isArmatureRemedy(remedy: RemedyKind): remedy is ArmatureRemedy {
  return (ARMATURE_REMEDIES as readonly RemedyKind[]).includes(remedy);
}

/**
 * What is left of an armature's faults after a remedy; the same list where it cures nothing.
 *
 * A brush takes carbon out from between the bars; a saw takes out whatever lies in the groove, copper too; skimming
 * takes off what is smeared over the surface and the dirt on it. A joint is made anew at the riser that is named.
 * Nothing done at this bench mends a coil, its insulation or a ground.
 * @param bar riser that is resoldered
 * @source common practice, no source
 */
export function remedyArmature(
  faults: readonly ArmatureFault[],
  remedy: ArmatureRemedy,
  bar?: number,
): readonly ArmatureFault[] {
  return keep(faults, (fault) => !curesArmature(fault, remedy, bar));
}

function curesArmature(fault: ArmatureFault, remedy: ArmatureRemedy, bar?: number): boolean {
  switch (fault.kind) {
    case 'bridgedBars':
      return remedy === 'brushBetweenBars' ? fault.by === 'carbon' : CUTS.has(remedy);
    case 'dirtyCommutator':
      return remedy === 'skimAndPolish';
    case 'riserJoint':
      return remedy === 'resolderRiser' && fault.bar === bar;
    default:
      return false;
  }
}
const CUTS: ReadonlySet<ArmatureRemedy> = new Set(['undercut', 'skimAndPolish']);

/**
 * What is left of a brush plate's faults after a remedy; the same list where it cures nothing. Cleaning takes off
 * packed dirt, a tightened rivet no longer moves; an insulator that has broken down and a torn pigtail need new parts.
 * @source common practice, no source
 */
export function remedyBrushPlate(
  faults: readonly BrushPlateFault[],
  remedy: PlateRemedy,
): readonly BrushPlateFault[] {
  const cured = remedy === 'cleanPlateInsulation' ? 'dirt' : 'looseRivet';
  return keep(faults, (fault) => fault.kind !== cured);
}

/** The same list when nothing goes, so that what was worked out for it stays good. */
function keep<T>(faults: readonly T[], stays: (fault: T) => boolean): readonly T[] {
  return faults.every(stays) ? faults : faults.filter(stays);
}
