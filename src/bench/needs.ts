import type { Action, MatPart, PartKind } from './action.ts';
import { barAngleDeg, canReach } from './geometry.ts';
import {
  ALL_LEADS,
  barOf,
  isClip,
  type LeadId,
  type LeadSet,
  leadSet,
  type Place,
  partOf,
} from './places.ts';
import { clippedTo, freeHand, handFor, handHolding, isMatPart, onPart, type VisibleState } from './state.ts';

/** What an act needs of the bench: each answers with one sentence, or null when all is well. */

const HANDS_FULL = 'Both hands are full: put something down first.';
const NOT_HERE = 'There is nothing of that kind on this bench.';
const PART_NAMES: Readonly<Record<PartKind, string>> = {
  armature: 'the armature',
  fieldFrame: 'the field frame',
  brushPlate: 'the brush plate',
};

export function needsHand(state: VisibleState): string | null {
  return freeHand(state) === null ? HANDS_FULL : null;
}

export function needsHandFor(state: VisibleState, action: Action): string | null {
  return handFor(state, action) === null ? HANDS_FULL : null;
}

export function needsBothHands(state: VisibleState): string | null {
  return state.hands.every((held) => held === 'nothing')
    ? null
    : 'That takes both hands: put everything down first.';
}

export function needsArmature(state: VisibleState): string | null {
  return state.cradle === 'armature' ? null : 'The armature is not in the cradle.';
}

export function needsArmatureOut(state: VisibleState): string | null {
  return state.cradle === 'empty'
    ? null
    : 'The gauges need the armature clear of the cradle: take it out first.';
}

export function needsLead(state: VisibleState, lead: LeadId): string | null {
  return state.leads[lead].at === 'hand' ? null : 'Take that lead into a hand first.';
}

export function needsOnRail(state: VisibleState, lead: LeadId): string | null {
  return state.leads[lead].at === 'absent' ? NOT_ALLOWED[leadSet(lead)] : null;
}
const NOT_ALLOWED: Readonly<Record<LeadSet, string>> = {
  ammeter: NOT_HERE,
  lamp: NOT_HERE,
  tester: 'The card does not ask for the insulation tester: it is not on the rail.',
  drop: 'The card does not ask for the millivolt-drop test: its set is not on the rail.',
};

export function needsTester({ tester }: VisibleState): string | null {
  return tester.at === 'absent' ? NOT_ALLOWED.tester : null;
}

export function needsDrop({ drop }: VisibleState): string | null {
  return drop.at === 'absent' ? NOT_ALLOWED.drop : null;
}

export function needsStrip(state: VisibleState): string | null {
  return handHolding(state, 'strip') === null ? 'Take the strip into a hand first.' : null;
}

/** The stand keeps a station over the commutator, a clip stays on any metal. */
export function needsHoldUnder(state: VisibleState, lead: LeadId): string | null {
  const { stationDeg, touches } = state.leads[lead];
  if (isClip(lead)) return onPart(touches) ? null : 'Put the clip on metal of a part first.';
  return stationDeg === null
    ? 'Put the tip on the commutator first: the stand keeps it where it touches.'
    : null;
}

export function needsForward({ mat }: VisibleState, part: MatPart): string | null {
  if (mat[part] === 'absent') return NOT_HERE;
  return mat[part] === 'away' ? `Take ${PART_NAMES[part]} up first.` : null;
}

export function needsUnclipped(state: VisibleState, part: PartKind): string | null {
  return clippedTo(state, part) ? `Take every clip off ${PART_NAMES[part]} first.` : null;
}

/** Nothing of any lead lies on the part. */
export function needsClear(state: VisibleState, part: PartKind): string | null {
  const touched = ALL_LEADS.some((lead) => {
    const { touches } = state.leads[lead];
    return touches !== null && partOf(touches) === part;
  });
  return touched || clippedTo(state, part) ? `Take every lead off ${PART_NAMES[part]} first.` : null;
}

/** Whether the job has this place at all. */
export function noSuchPlace(state: VisibleState, place: Place): string | null {
  const bar = barOf(place);
  if (bar !== null) return bar < state.geometry.bars ? null : 'The commutator has no such bar.';
  const part = partOf(place);
  if (part === null) return null;
  return isMatPart(part) ? needsForward(state, part) : null;
}

export function outOfReach(state: VisibleState, place: Place): string | null {
  const bar = barOf(place);
  if (bar === null || canReach(barAngleDeg(state.geometry, bar, state.rotationDeg))) return null;
  return 'That bar is round the far side: turn the armature to bring it within reach.';
}

export function cannotTouch(state: VisibleState, lead: LeadId, place: Place): string | null {
  const other = ALL_LEADS.find((id) => place === `tip:${id}`);
  if (other === lead) return 'A tip cannot touch itself.';
  if (other !== undefined) return otherHangs(state, other);
  return partOf(place) === null
    ? 'A tip finds no metal there.'
    : cannotReachMetal(state, place, isClip(lead));
}

function otherHangs(state: VisibleState, other: LeadId): string | null {
  const { at } = state.leads[other];
  if (at === 'absent') return NOT_HERE;
  return at === 'holster' ? 'The other lead hangs in its holster.' : null;
}

/** Leads of the panel reach an armature in the cradle only; clips also one that lies on the mat, all round it. */
export function cannotReachMetal(state: VisibleState, place: Place, onMatToo: boolean): string | null {
  const missing = noSuchPlace(state, place);
  if (missing !== null || partOf(place) !== 'armature') return missing;
  if (onMatToo && state.cradle === 'empty') return null;
  return needsArmature(state) ?? outOfReach(state, place);
}

export function cannotSee(state: VisibleState, place: Place): string | null {
  if (place.startsWith('tip:')) return NOT_HERE;
  const missing = noSuchPlace(state, place);
  if (missing !== null) return missing;
  return state.cradle === 'armature' ? outOfReach(state, place) : null;
}
