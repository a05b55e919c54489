import { TEST_VOLTS } from '../engine/instruments/insulationTester.ts';
import { type Action, type ActionType, MAT_PARTS, type MatPart, RANGES_A } from './action.ts';
import { STRIP_ARC_DEG } from './geometry.ts';
import {
  cannotSee,
  cannotTouch,
  needsArmature,
  needsForward,
  needsHand,
  needsHandFor,
  needsHoldUnder,
  needsLead,
  needsOnRail,
  needsStrip,
  needsTester,
  needsUnclipped,
} from './needs.ts';
import { type LeadId, leadSet } from './places.ts';
import { acrossPart, type VisibleState } from './state.ts';
import { cannotCure, cannotFeed, cannotGauge, cannotSetRight } from './workRefusals.ts';

type Refuse<T extends ActionType> = (
  state: VisibleState,
  action: Extract<Action, { readonly type: T }>,
) => string | null;

/** Least and greatest clear height of the strip above the core, mm. */
export const STRIP_HEIGHT_MM = { least: 0.1, most: 30 } as const;

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
    state.cradle === 'armature'
      ? 'The armature already lies in the cradle.'
      : (needsUnclipped(state, 'armature') ?? needsHand(state)),
  'armature.lift': (state, action) =>
    needsArmature(state) ?? needsUnclipped(state, 'armature') ?? needsHandFor(state, action),
  'armature.hold': (state) =>
    state.hands.includes('armature')
      ? 'A hand is on the armature already.'
      : (needsArmature(state) ?? needsHand(state)),
  'armature.release': (state) =>
    state.hands.includes('armature') ? null : 'There is no hand on the armature.',
  'armature.turn': (state, action) => {
    if (!Number.isFinite(action.byDeg)) return 'The armature cannot be turned by that much.';
    return needsArmature(state) ?? needsUnclipped(state, 'armature') ?? needsHandFor(state, action);
  },
  'lead.take': (state, action) => {
    const { at, grip } = state.leads[action.lead];
    if (at === 'hand' && grip === action.grip) return 'That lead is in the hand already.';
    return needsOnRail(state, action.lead) ?? needsHandFor(state, action);
  },
  'lead.touch': (state, { lead, place }) =>
    needsLead(state, lead) ??
    cannotTouch(state, lead, place) ??
    (state.leads[lead].touches === place ? 'The tip is there already.' : null),
  'lead.lift': (state, { lead }) => needsLead(state, lead) ?? needsContact(state, lead),
  'lead.lean': (state, { lead, on }) => {
    if (state.leads[lead].leaning === on) return on ? 'You lean on it already.' : 'Nobody leans on it.';
    return needsLead(state, lead) ?? needsContact(state, lead);
  },
  'lead.clamp': (state, { lead }) => {
    if (leadSet(lead) === 'lamp') return 'The holding stand is made for the ammeter leads only.';
    return needsLead(state, lead) ?? needsHoldUnder(state, lead);
  },
  'lead.holster': (state, { lead }) => {
    const { at } = state.leads[lead];
    if (at === 'holster') return 'That lead hangs in its holster already.';
    return needsOnRail(state, lead) ?? (at === 'hand' ? null : needsHand(state));
  },
  'strip.take': (state) =>
    state.strip.at === 'rail' ? needsHand(state) : 'The strip is in the hand already.',
  'strip.hold': (state, { angleDeg, heightMm }) =>
    needsStrip(state) ?? needsArmature(state) ?? cannotHoldThere(angleDeg, heightMm),
  'strip.away': (state) => (state.strip.at === 'core' ? null : 'The strip is not at the core.'),
  'strip.hang': needsStrip,
  'part.takeUp': (state, { part }) => cannotTakeUp(state, part) ?? needsHand(state),
  'part.putBack': (state, { part }) =>
    needsForward(state, part) ?? needsUnclipped(state, part) ?? needsHand(state),
  'brushes.part': (state) =>
    needsForward(state, 'fieldFrame') ??
    (state.brushesApart ? 'The field brushes are apart already.' : needsHand(state)),
  'brushes.join': (state) =>
    needsForward(state, 'fieldFrame') ??
    (state.brushesApart ? needsHand(state) : 'The field brushes lie together already.'),
  'gauge.read': cannotGauge,
  'remedy.do': cannotCure,
  'bench.setRight': cannotSetRight,
  'tester.volts': (state, { to }) => {
    if (!TEST_VOLTS.includes(to)) return `The insulation tester has no ${to} V setting.`;
    if (state.tester.volt === to) return `The insulation tester already stands at ${to} V.`;
    return needsTester(state) ?? needsButtonUp(state) ?? needsHand(state);
  },
  'tester.press': (state, { on }) => {
    if (state.tester.pressed === on) return on ? 'The button is down already.' : 'The button is up already.';
    return needsTester(state) ?? (on ? needsHand(state) : null);
  },
  'tester.discharge': (state) => needsTester(state) ?? needsButtonUp(state) ?? needsAcross(state),
  'drop.feed': cannotFeed,
  'prepare.check': (state, { item }) =>
    state.prepared.includes(item) ? 'That has been seen to already.' : null,
  'lens.look': (state, { place }) => cannotSee(state, place),
  'chalk.mark': (state, { bar }) => needsHand(state) ?? cannotSee(state, `bar:${bar}`),
  'sheet.write': () => null,
  'verdict.write': () => null,
  'job.handIn': () => null,
};

function needsContact(state: VisibleState, lead: LeadId): string | null {
  return state.leads[lead].touches === null ? 'That tip is not on anything.' : null;
}

function needsButtonUp({ tester }: VisibleState): string | null {
  return tester.pressed ? 'Let the button of the insulation tester go first.' : null;
}

function needsAcross(state: VisibleState): string | null {
  return acrossPart(state.leads, 'tester') === null ? 'Both clips of the tester must lie on the part.' : null;
}

function cannotTakeUp(state: VisibleState, part: MatPart): string | null {
  if (state.mat[part] === 'forward') return 'It lies in front of you already.';
  const other = MAT_PARTS.find((one) => one !== part && state.mat[one] === 'forward');
  if (state.mat[part] === 'absent') return 'There is nothing of that kind on this bench.';
  return other === undefined ? null : 'Put the other part back first: there is room for one at a time.';
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
