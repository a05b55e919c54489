import type { Action, PartKind } from './action.ts';
import { acts, CONTROLS, type Control } from './controlActs.ts';
import { barAngleDeg, type CommutatorGeometry, canReach } from './geometry.ts';
import type { Observation } from './observation.ts';
import {
  ALL_LEADS,
  barOf,
  barPlace,
  FIELD_PLACES,
  type HandlePlace,
  PANEL_LEADS,
  PLATE_PLACES,
  type Place,
  partOf,
  type RiserPlace,
  type TipPlace,
} from './places.ts';
import { placeWords } from './placeWords.ts';
import { refusalOf } from './refusals.ts';
import { visibleState } from './state.ts';

export { type Control, STRIP_STEP_DEG, USUAL_STRIP_MM } from './controlActs.ts';

/**
 * A place that can be touched, looked at or marked, with everything the hands could do there now. Picture and
 * plain-words twin are both made from this list, so neither can do what the other cannot.
 */
export interface Touchable {
  readonly place: Place;
  /** Part it belongs to; null: the bench and its leads. */
  readonly part: PartKind | null;
  /** As someone at the bench would point it out. */
  readonly label: string;
  /** Angle from the bottom for a place on the commutator, degrees, else null. */
  readonly angleDeg: number | null;
  readonly reachable: boolean;
  readonly actions: readonly Action[];
}

/** A thing on the bench with everything that can be done with it as a whole. */
export interface Operable {
  readonly control: Control;
  readonly actions: readonly Action[];
}

/** Every place on the parts of the job, every free tip and what of the bench can be looked at, in the order a person would go through them. */
export function touchables(geometry: CommutatorGeometry, seen: Observation): readonly Touchable[] {
  const state = visibleState(geometry, seen);
  return placesOf(geometry, seen).map((place) => {
    const bar = barOf(place);
    const angleDeg = bar === null ? null : barAngleDeg(geometry, bar, seen.rotationDeg);
    return {
      place,
      part: partOf(place),
      label: placeWords(geometry, seen, place),
      angleDeg,
      reachable: isReachable(seen, place, angleDeg),
      actions: actsAt(geometry, seen, place).filter((action) => refusalOf(state, action) === null),
    };
  });
}

function placesOf(geometry: CommutatorGeometry, { mat, leads }: Observation): readonly Place[] {
  const bars = Array.from({ length: geometry.bars }, (_, bar) => bar);
  return [
    ...bars.map(barPlace),
    ...bars.map((bar): RiserPlace => `riser:${bar}`),
    'core',
    'shaft',
    ...(mat.fieldFrame === 'absent' ? [] : FIELD_PLACES),
    ...(mat.brushPlate === 'absent' ? [] : PLATE_PLACES),
    ...ALL_LEADS.filter((lead) => leads[lead].at !== 'absent').map((lead): TipPlace => `tip:${lead}`),
    ...PANEL_LEADS.map((lead): HandlePlace => `handle:${lead}`),
    'lampBulb',
  ];
}

function isReachable(seen: Observation, place: Place, angleDeg: number | null): boolean {
  const part = partOf(place);
  if (part === 'fieldFrame' || part === 'brushPlate') return seen.mat[part] === 'forward';
  return seen.cradle === 'empty' || angleDeg === null || canReach(angleDeg);
}

function actsAt(geometry: CommutatorGeometry, seen: Observation, place: Place): Action[] {
  const touches = ALL_LEADS.map((lead): Action => ({ type: 'lead.touch', lead, place }));
  if (place.startsWith('tip:')) return touches;
  const looks: Action = { type: 'lens.look', place };
  const bar = barOf(place);
  if (bar === null) return [...touches, looks, ...feedsAt(geometry, seen, place)];
  const marks: Action = place.startsWith('bar')
    ? { type: 'chalk.mark', bar }
    : { type: 'remedy.do', remedy: 'resolderRiser', bar };
  return [...touches, looks, marks, ...feedsAt(geometry, seen, place)];
}

/** Feeds that begin at a place: to the next bar, a quarter and half a turn on; along each branch; over each joint. */
function feedsAt({ bars }: CommutatorGeometry, { drop }: Observation, place: Place): Action[] {
  if (drop.at === 'absent' || drop.feed !== null) return [];
  const to = (other: Place): Action => ({ type: 'drop.feed', at: [place, other] });
  const bar = place.startsWith('bar') ? barOf(place) : null;
  if (bar !== null) {
    return [1, Math.round(bars / 4), Math.round(bars / 2)].map((on) => to(barPlace((bar + on) % bars)));
  }
  if (place === 'field:terminal') return [to('field:brush1'), to('field:brush2')];
  return place.startsWith('plate:') && place !== 'plate:metal' ? [to('plate:metal')] : [];
}

/** Every control, tool and lead with what could be done with it now. */
export function operables(geometry: CommutatorGeometry, seen: Observation): readonly Operable[] {
  const state = visibleState(geometry, seen);
  return CONTROLS.map((control) => ({
    control,
    actions: acts(control, geometry, seen).filter((action) => refusalOf(state, action) === null),
  }));
}
