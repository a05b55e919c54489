import { type Action, RANGES_A } from './action.ts';
import { barAngleDeg, type CommutatorGeometry, canReach, STRIP_ARC_DEG } from './geometry.ts';
import type { Observation } from './observation.ts';
import {
  barOf,
  barPlace,
  LEAD_IDS,
  type LeadId,
  type Place,
  type RiserPlace,
  type TipPlace,
} from './places.ts';
import { placeWords } from './placeWords.ts';
import { refusalOf } from './refusals.ts';
import { visibleState } from './state.ts';

/**
 * A place that can be touched, looked at or marked, with everything the hands could do there now. Picture and
 * plain-words twin are both made from this list, so neither can do what the other cannot.
 */
export interface Touchable {
  readonly place: Place;
  /** As someone at the bench would point it out. */
  readonly label: string;
  /** Angle from the bottom for a place on the commutator, degrees, else null. */
  readonly angleDeg: number | null;
  readonly reachable: boolean;
  readonly actions: readonly Action[];
}

export type Control = 'selector' | 'range' | 'armature' | 'strip' | LeadId;
/** A thing on the bench with everything that can be done with it as a whole. */
export interface Operable {
  readonly control: Control;
  readonly actions: readonly Action[];
}

/** Height at which the strip is first held above the core, mm. */
export const USUAL_STRIP_MM = 0.5;
/** Steps in which the strip is moved by keys and in words, degrees. */
export const STRIP_STEP_DEG = 5;

/** Every place on the armature and every free tip, in the order a person would go through them. */
export function touchables(geometry: CommutatorGeometry, seen: Observation): readonly Touchable[] {
  const bars = Array.from({ length: geometry.bars }, (_, bar) => bar);
  const places: readonly Place[] = [
    ...bars.map(barPlace),
    ...bars.map((bar): RiserPlace => `riser:${bar}`),
    'core',
    'shaft',
    ...LEAD_IDS.map((lead): TipPlace => `tip:${lead}`),
  ];
  const state = visibleState(geometry, seen);
  return places.map((place) => {
    const bar = barOf(place);
    const angleDeg = bar === null ? null : barAngleDeg(geometry, bar, seen.rotationDeg);
    return {
      place,
      label: placeWords(geometry, seen, place),
      angleDeg,
      reachable: seen.cradle === 'empty' || angleDeg === null || canReach(angleDeg),
      actions: actsAt(place, bar).filter((action) => refusalOf(state, action) === null),
    };
  });
}

function actsAt(place: Place, bar: number | null): Action[] {
  const touches = LEAD_IDS.map((lead): Action => ({ type: 'lead.touch', lead, place }));
  if (place.startsWith('tip:')) return touches;
  const looks: Action = { type: 'lens.look', place };
  return bar !== null && place.startsWith('bar')
    ? [...touches, looks, { type: 'chalk.mark', bar }]
    : [...touches, looks];
}

/** Every control, tool and lead with what could be done with it now. */
export function operables(geometry: CommutatorGeometry, seen: Observation): readonly Operable[] {
  const state = visibleState(geometry, seen);
  return CONTROLS.map((control) => ({
    control,
    actions: actsWith(control, geometry, seen).filter((action) => refusalOf(state, action) === null),
  }));
}

const CONTROLS: readonly Control[] = ['selector', 'range', 'armature', ...LEAD_IDS, 'strip'];

function actsWith(control: Control, geometry: CommutatorGeometry, seen: Observation): Action[] {
  switch (control) {
    case 'selector':
      return (['off', 'low', 'high'] as const).map((to) => ({ type: 'selector.turn', to }));
    case 'range':
      return RANGES_A.map((to) => ({ type: 'range.turn', to }));
    case 'armature':
      return armatureActs(360 / geometry.bars);
    case 'strip':
      return stripActs(seen);
    default:
      return leadActs(control);
  }
}

function armatureActs(oneBarDeg: number): Action[] {
  return [
    { type: 'armature.place' },
    { type: 'armature.lift' },
    { type: 'armature.hold' },
    { type: 'armature.release' },
    { type: 'armature.turn', byDeg: oneBarDeg },
    { type: 'armature.turn', byDeg: -oneBarDeg },
    { type: 'armature.turn', byDeg: 5 },
    { type: 'armature.turn', byDeg: -5 },
  ];
}

function leadActs(lead: LeadId): Action[] {
  return [
    { type: 'lead.take', lead, grip: 'handle' },
    { type: 'lead.take', lead, grip: 'tip' },
    { type: 'lead.lift', lead },
    { type: 'lead.clamp', lead },
    { type: 'lead.holster', lead },
  ];
}

/** Over the top first; from there a step either way along the arc, nearer and further. */
function stripActs({ strip }: Observation): Action[] {
  const { angleDeg, heightMm } = strip;
  const hold = (angle: number, height: number): Action => ({
    type: 'strip.hold',
    angleDeg: Math.min(STRIP_ARC_DEG.to, Math.max(STRIP_ARC_DEG.from, angle)),
    heightMm: height,
  });
  const moves =
    angleDeg === null || heightMm === null
      ? [hold((STRIP_ARC_DEG.from + STRIP_ARC_DEG.to) / 2, USUAL_STRIP_MM)]
      : [
          hold(angleDeg + STRIP_STEP_DEG, heightMm),
          hold(angleDeg - STRIP_STEP_DEG, heightMm),
          hold(angleDeg, heightMm + 0.5),
          hold(angleDeg, Math.max(USUAL_STRIP_MM, heightMm - 0.5)),
        ];
  return [{ type: 'strip.take' }, ...moves, { type: 'strip.away' }, { type: 'strip.hang' }];
}
