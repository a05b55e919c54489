import type { RemedyKind } from './remedies.ts';

/** What rubbing and turning have left of commutator and brushes, mm. */
export interface Wear {
  readonly commutatorDiameterMm: number;
  /** Total indicated run-out of the running surface. */
  readonly runOutMm: number;
  /** Depth of the mica below the bars. */
  readonly undercutMm: number;
  /** Field brushes 1 and 2, then the brushes of earthed holders 1 and 2. */
  readonly brushLengthsMm: readonly [number, number, number, number];
}

/** Depth a saw leaves between the bars, mm: middle of the range of references A02. */
export const FRESH_UNDERCUT_MM = 0.65;
/** What a lathe leaves of the run-out, mm. Figure ours; references A04 give 0.02 as the standard. */
export const TURNED_RUN_OUT_MM = 0.01;
/** Cleaned off beside the run-out itself, mm of radius. Figure ours. */
const SKIM_MM = 0.1;

/** A part in good order: commutator as the design has it, brushes hardly run in. */
export function freshWear(commutatorRadiusM: number): Wear {
  return {
    commutatorDiameterMm: 2000 * commutatorRadiusM,
    runOutMm: 0.02,
    undercutMm: FRESH_UNDERCUT_MM,
    brushLengthsMm: [14, 14, 14, 14],
  };
}

/** What a remedy leaves; the same wear where it takes nothing away. */
export function wornBy(wear: Wear, remedy: RemedyKind): Wear {
  if (remedy === 'skimAndPolish') return skimmed(wear);
  if (remedy !== 'undercut' || wear.undercutMm >= FRESH_UNDERCUT_MM) return wear;
  return { ...wear, undercutMm: FRESH_UNDERCUT_MM };
}

/** Turned until it runs true and clean: what goes off the radius comes off the depth between the bars too. */
function skimmed(wear: Wear): Wear {
  const offMm = SKIM_MM + Math.max(0, wear.runOutMm - TURNED_RUN_OUT_MM);
  return {
    ...wear,
    commutatorDiameterMm: wear.commutatorDiameterMm - 2 * offMm,
    runOutMm: Math.min(wear.runOutMm, TURNED_RUN_OUT_MM),
    undercutMm: Math.max(0, wear.undercutMm - offMm),
  };
}
