import { CLUES, type Clue } from '../../bench/observation.ts';
import { barOf, type Place, partOf } from '../../bench/places.ts';
import { seeded } from '../../engine/math/random.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { RemedyKind } from '../../engine/parts/remedies.ts';
import type { ScenarioHidden } from '../scenario.ts';
import { armatureSigns, everydayOnArmature, wearSigns } from './armatureSigns.ts';
import { benchSigns, everydayOnMat, fieldSigns, plateSigns } from './matSigns.ts';
import type { Sign } from './sign.ts';

/**
 * What the lens shows, drawn from the scenario's seed and the place, so that the same part always looks the same: see
 * sign.ts for what that is worth.
 */

/** What work at the bench has changed: faults that are left, and what was done. Faults are known again by identity. */
export interface Since {
  readonly left: ReadonlySet<unknown>;
  readonly done: readonly { readonly remedy: RemedyKind; readonly bar: number | null }[];
}

/** A sign with the fault it comes from; null: everyday wear. */
interface Shown extends Sign {
  readonly from: unknown;
}

/**
 * Clues the lens shows at one place, in the order of CLUES, each once; empty where there is nothing to see or the
 * part has no such place.
 * @param since left out: nothing has been done to the part
 */
export function cluesAt(
  hidden: ScenarioHidden,
  design: ArmatureDesign,
  place: Place,
  since?: Since,
): readonly Clue[] {
  const bar = barOf(place);
  if (place.startsWith('tip:') || (bar !== null && bar >= design.bars)) return [];
  const signs = signsAt(hidden, design, place);
  const drawn = signs.filter(
    (sign, nth) => seeded(`look ${hidden.seed} ${place} ${sign.clue} ${nth}`)() < sign.chance,
  );
  const planted = (hidden.falseLeads ?? []).filter((lead) => lead.place === place);
  const shown = [...drawn, ...planted.map((lead) => ({ ...lead, from: null }))];
  const seen = new Set(shown.filter((sign) => remains(sign, since)).map((sign) => sign.clue));
  if (since !== undefined && isResoldered(place, since)) seen.add('brightSolder');
  return CLUES.filter((clue) => seen.has(clue));
}

function signsAt(hidden: ScenarioHidden, design: ArmatureDesign, place: Place): Shown[] {
  const of = <F>(faults: readonly F[] | undefined, signs: (fault: F) => Sign[]): Shown[] =>
    (faults ?? []).flatMap((fault) => signs(fault).map((sign) => ({ ...sign, from: fault })));
  const everyday = (signs: Sign[]): Shown[] => signs.map((sign) => ({ ...sign, from: null }));
  const all =
    partOf(place) === 'armature'
      ? [
          ...of(hidden.armature.faults, (fault) => armatureSigns(fault, design)),
          ...everyday(everydayOnArmature(place)),
          ...everyday(wearSigns(hidden.wear ?? {}, design)),
        ]
      : [
          ...of(hidden.fieldFrame?.faults, fieldSigns),
          ...of(hidden.brushPlate?.faults, plateSigns),
          ...of(hidden.bench?.faults, benchSigns),
          ...everyday(everydayOnMat(place)),
        ];
  return all.filter((sign) => sign.place === place);
}

/** Whether a sign is still there after the work: gone with its fault, or wiped off with the rest. */
function remains(sign: Pick<Shown, 'place' | 'clue' | 'from'>, since: Since | undefined): boolean {
  if (since === undefined) return true;
  if (sign.from !== null && !since.left.has(sign.from)) return false;
  return !since.done.some(({ remedy, bar }) => wipesOff(remedy, bar, sign));
}

/** What work takes away beside the fault it cures. */
function wipesOff(
  remedy: RemedyKind,
  bar: number | null,
  { place, clue }: Pick<Shown, 'place' | 'clue'>,
): boolean {
  if (remedy === 'cleanPlateInsulation') return partOf(place) === 'brushPlate' && clue === 'dirt';
  if (remedy === 'tightenRivets') return clue === 'looseRivet';
  if (remedy === 'resolderRiser') return place === `riser:${bar}` && clue === 'solderThrown';
  return place.startsWith('bar:') && WIPED[remedy].includes(clue);
}
const WIPED: Readonly<Record<'brushBetweenBars' | 'undercut' | 'skimAndPolish', readonly Clue[]>> = {
  brushBetweenBars: ['carbonAcrossMica'],
  undercut: ['carbonAcrossMica', 'metalAcrossMica'],
  skimAndPolish: ['metalAcrossMica', 'burntBarEdge', 'dirt', 'wornSurface'],
};

function isResoldered(place: Place, { done }: Since): boolean {
  return done.some(({ remedy, bar }) => remedy === 'resolderRiser' && place === `riser:${bar}`);
}
