import { CLUES, type Clue } from '../../bench/observation.ts';
import { barOf, type Place } from '../../bench/places.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { InsulationSuspect } from './insulation.ts';
import type { Surface } from './noise.ts';
import { COPPER_UP_TO_OHM } from './priors.ts';
import type { LookReading } from './reading.ts';
import type { SuspectBlock } from './suspects.ts';

/**
 * What the lens is worth. A fault shows its sign with some chance, and sound places show signs of their own; chances
 * as in scenario/hidden/looks.ts (a test holds the two together). Common practice names the signs; figures ours.
 */
export type Signs = Readonly<Partial<Record<Clue, number>>>;

/** Clues are not verdicts: all that was seen together never weighs more than this against a part without fault. */
export const CLUES_AT_MOST = Math.log(8);

/** A smear, an old repair, a false lead laid on purpose: any clue may be seen anywhere. */
const ANYWHERE = 0.02;

const EVERYDAY: Readonly<Record<'shaft' | 'core' | 'riser' | 'bar', Signs>> = {
  shaft: {},
  core: { rubbedCore: 0.12, dirt: 0.25 },
  riser: { brightSolder: 0.08, solderThrown: 0.03 },
  bar: { burntBarEdge: 0.03, carbonAcrossMica: 0.04, dirt: 0.06 },
};

function everyday(place: Place): Signs {
  if (place === 'shaft' || place === 'core') return EVERYDAY[place];
  return place.startsWith('riser:') ? EVERYDAY.riser : EVERYDAY.bar;
}

const isRiser = (place: Place) => place.startsWith('riser:');
const HOT_JOINT_OHM = 0.02;

/** Signs a winding suspect adds at a place. */
export function windingSigns(
  design: ArmatureDesign,
  { kind, severities }: Pick<SuspectBlock, 'kind' | 'severities'>,
  at: number,
  severity: number,
  place: Place,
): Signs | null {
  const bar = barOf(place);
  const { ohm } = severities[severity]!;
  const on = (step: number) => bar === (at + step + design.bars) % design.bars;
  switch (kind) {
    case 'openCoil':
      return bar !== null && !isRiser(place) && (on(0) || on(design.commutatorPitch))
        ? { burntBarEdge: 0.6 }
        : null;
    case 'jointBar':
    case 'jointOneEnd':
    case 'jointBothEnds':
      return jointSigns(ohm === 'open' || ohm >= HOT_JOINT_OHM, place, on);
    case 'bridge': {
      if (bar === null || isRiser(place) || !(on(0) || on(1))) return null;
      return (ohm as number) <= COPPER_UP_TO_OHM ? { metalAcrossMica: 0.75 } : { carbonAcrossMica: 0.75 };
    }
    case 'turnShort':
    case 'coilShort':
      return place === 'core' ? { charredInsulation: 0.6 } : null;
    case 'reversed':
      return isRiser(place) && on(0) ? { brightSolder: 0.9 } : null;
  }
}

function jointSigns(hot: boolean, place: Place, on: (step: number) => boolean): Signs | null {
  if (!isRiser(place)) return on(0) ? { burntBarEdge: hot ? 0.5 : 0.2 } : null;
  if (on(0)) return { solderThrown: hot ? 0.8 : 0.35 };
  return on(1) || on(-1) ? { solderThrown: 0.2 } : null;
}

export function insulationSigns(
  { kind, bar }: Pick<InsulationSuspect, 'kind' | 'bar'>,
  place: Place,
): Signs | null {
  switch (kind) {
    case 'groundedBar':
      return isRiser(place) && barOf(place) === bar ? { charredInsulation: 0.4 } : null;
    case 'groundedCoil':
      return place === 'core' ? { charredInsulation: 0.4, rubbedCore: 0.4 } : null;
    case 'weak':
    case 'weakBreaksDown':
      return place === 'core' ? { dirt: 0.7 } : null;
    case 'sound':
      return null;
  }
}

export function surfaceSigns(surface: Surface, place: Place): Signs | null {
  const bar = barOf(place) !== null && !isRiser(place);
  return surface === 'dirty' && bar ? { dirt: 0.85, wornSurface: 0.4 } : null;
}

/** Chance of a clue at a place of a part without fault, a sign added or not. */
export function clueChance(place: Place, clue: Clue, added: number): number {
  return 1 - (1 - (everyday(place)[clue] ?? 0)) * (1 - ANYWHERE) * (1 - added);
}

/** Logarithm of how much better signs explain what was seen at a place than a part without fault does. */
export function signWeight(signs: Signs | null, { place, sees }: LookReading): number {
  if (signs === null) return 0;
  let log = 0;
  for (const clue of CLUES) {
    const added = signs[clue];
    if (added === undefined) continue;
    const plain = clueChance(place, clue, 0);
    const with_ = clueChance(place, clue, added);
    log += sees.includes(clue) ? Math.log(with_ / plain) : Math.log((1 - with_) / (1 - plain));
  }
  return log;
}
