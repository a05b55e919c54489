import { type Action, type ActionType, RANGES_A } from './action.ts';
import { barAngleDeg, canReach, STRIP_ARC_DEG } from './geometry.ts';
import { barOf, LEAD_IDS, type LeadId, leadSet, type Place } from './places.ts';
import { freeHand, handFor, handHolding, onArmature, type VisibleState } from './state.ts';

type Refuse<T extends ActionType> = (
  state: VisibleState,
  action: Extract<Action, { readonly type: T }>,
) => string | null;

/** Least and greatest clear height of the strip above the core, mm. */
export const STRIP_HEIGHT_MM = { least: 0.1, most: 30 } as const;

const HANDS_FULL = 'Both hands are full: put something down first.';
const NO_ARMATURE = 'The armature is not in the cradle.';

/**
 * What a pair of hands at this bench cannot do, whatever the rules say: one sentence, or null when it can be done.
 * Such a refusal is the same in every mode and is never a breach.
 */
export function refusalOf(state: VisibleState, action: Action): string | null {
  if (state.stage === 'stopped') return 'The attempt was stopped: the bench is isolated.';
  if (state.stage === 'handedIn') return 'The job has been handed in.';
  const refuse = REFUSALS[action.type] as Refuse<ActionType>;
  return refuse(state, action);
}

const REFUSALS: { readonly [T in ActionType]: Refuse<T> } = {
  'selector.turn': (state, { to }) =>
    state.selector === to ? `The selector already stands at ${to.toUpperCase()}.` : needsHand(state),
  'range.turn': (state, { to }) => {
    if (!RANGES_A.includes(to)) return `The ammeter has no ${to} A range.`;
    return state.rangeA === to ? `The ammeter already stands on ${to} A.` : needsHand(state);
  },
  'armature.place': (state) =>
    state.cradle === 'armature' ? 'The armature already lies in the cradle.' : needsHand(state),
  'armature.lift': (state, action) => needsArmature(state) ?? needsHandFor(state, action),
  'armature.hold': (state) =>
    state.hands.includes('armature')
      ? 'A hand is on the armature already.'
      : (needsArmature(state) ?? needsHand(state)),
  'armature.release': (state) =>
    state.hands.includes('armature') ? null : 'There is no hand on the armature.',
  'armature.turn': (state, action) => {
    if (!Number.isFinite(action.byDeg)) return 'The armature cannot be turned by that much.';
    return needsArmature(state) ?? needsHandFor(state, action);
  },
  'lead.take': (state, action) => {
    const { at, grip } = state.leads[action.lead];
    if (at === 'hand' && grip === action.grip) return 'That lead is in the hand already.';
    return needsHandFor(state, action);
  },
  'lead.touch': (state, { lead, place }) =>
    needsLead(state, lead) ?? cannotTouch(state, lead, place) ?? sameMetal(state, lead, place),
  'lead.lift': (state, { lead }) =>
    needsLead(state, lead) ?? (state.leads[lead].touches === null ? 'That tip is not on anything.' : null),
  'lead.clamp': (state, { lead }) => {
    if (leadSet(lead) === 'lamp') return 'The holding stand is made for the ammeter leads only.';
    return needsLead(state, lead) ?? needsBarUnder(state, lead);
  },
  'lead.holster': (state, { lead }) => {
    if (state.leads[lead].at === 'holster') return 'That lead hangs in its holster already.';
    return state.leads[lead].at === 'stand' ? needsHand(state) : null;
  },
  'strip.take': (state) =>
    state.strip.at === 'rail' ? needsHand(state) : 'The strip is in the hand already.',
  'strip.hold': (state, { angleDeg, heightMm }) =>
    needsStrip(state) ?? needsArmature(state) ?? cannotHoldThere(angleDeg, heightMm),
  'strip.away': (state) => (state.strip.at === 'core' ? null : 'The strip is not at the core.'),
  'strip.hang': needsStrip,
  'lens.look': (state, { place }) => cannotSee(state, place),
  'chalk.mark': (state, { bar }) => needsHand(state) ?? cannotSee(state, `bar:${bar}`),
  'lead.lean': notYet,
  'part.takeUp': notYet,
  'part.putBack': notYet,
  'brushes.part': notYet,
  'brushes.join': notYet,
  'gauge.read': notYet,
  'remedy.do': notYet,
  'bench.setRight': notYet,
  'tester.volts': notYet,
  'tester.press': notYet,
  'tester.discharge': notYet,
  'drop.feed': notYet,
  'prepare.check': notYet,
  'sheet.write': () => null,
  'verdict.write': () => null,
  'job.handIn': () => null,
};

function notYet(): string {
  return 'This cannot be done on this bench yet.';
}

function needsHand(state: VisibleState): string | null {
  return freeHand(state) === null ? HANDS_FULL : null;
}

function needsHandFor(state: VisibleState, action: Action): string | null {
  return handFor(state, action) === null ? HANDS_FULL : null;
}

function needsArmature(state: VisibleState): string | null {
  return state.cradle === 'armature' ? null : NO_ARMATURE;
}

function needsLead(state: VisibleState, lead: LeadId): string | null {
  return state.leads[lead].at === 'hand' ? null : 'Take that lead into a hand first.';
}

function needsStrip(state: VisibleState): string | null {
  return handHolding(state, 'strip') === null ? 'Take the strip into a hand first.' : null;
}

function needsBarUnder(state: VisibleState, lead: LeadId): string | null {
  return state.leads[lead].stationDeg === null
    ? 'Put the tip on the commutator first: the stand keeps it where it touches.'
    : null;
}

/** Whether the armature has this place at all. */
function noSuchPlace(state: VisibleState, place: Place): string | null {
  const bar = barOf(place);
  if (bar !== null) return bar < state.geometry.bars ? null : 'The commutator has no such bar.';
  return onArmature(place) ? null : 'There is nothing of that kind on this bench.';
}

function cannotTouch(state: VisibleState, lead: LeadId, place: Place): string | null {
  const other = LEAD_IDS.find((id) => place === `tip:${id}`);
  if (other === lead) return 'A tip cannot touch itself.';
  if (other !== undefined) {
    return state.leads[other].at === 'holster' ? 'The other lead hangs in its holster.' : null;
  }
  return noSuchPlace(state, place) ?? needsArmature(state) ?? outOfReach(state, place);
}

function sameMetal(state: VisibleState, lead: LeadId, place: Place): string | null {
  return state.leads[lead].touches === place ? 'The tip is there already.' : null;
}

function cannotSee(state: VisibleState, place: Place): string | null {
  const missing = noSuchPlace(state, place);
  if (missing !== null) return missing;
  return state.cradle === 'armature' ? outOfReach(state, place) : null;
}

function outOfReach(state: VisibleState, place: Place): string | null {
  const bar = barOf(place);
  if (bar === null || canReach(barAngleDeg(state.geometry, bar, state.rotationDeg))) return null;
  return 'That bar is round the far side: turn the armature to bring it within reach.';
}

function cannotHoldThere(angleDeg: number, heightMm: number): string | null {
  const { from, to } = STRIP_ARC_DEG;
  if (!(angleDeg >= from && angleDeg <= to))
    return 'The jaws are in the way: hold the strip over the upper arc.';
  const { least, most } = STRIP_HEIGHT_MM;
  if (!(heightMm >= least && heightMm <= most)) {
    return `The strip is held from ${least} to ${most} mm above the core.`;
  }
  return null;
}
