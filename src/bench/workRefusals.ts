import { isArmatureRemedy } from '../engine/parts/remedies.ts';
import type { Action, ActionType, BenchCare, BrushIndex } from './action.ts';
import {
  cannotReachMetal,
  needsArmatureOut,
  needsBothHands,
  needsClear,
  needsDrop,
  needsForward,
  needsHand,
} from './needs.ts';
import { ALL_LEADS, type LeadSet, leadSet, partOf } from './places.ts';
import { isMatPart, type VisibleState } from './state.ts';
import { partOfBrush } from './touched.ts';

/** What hands cannot do with gauges, remedies, feed clamps and the bench itself. */

type Act<T extends ActionType> = Extract<Action, { readonly type: T }>;

export function cannotGauge(state: VisibleState, { gauge, brush }: Act<'gauge.read'>): string | null {
  if (gauge !== 'brushLength') {
    if (brush !== undefined) return 'A brush is named with a brush length only.';
    return needsArmatureOut(state) ?? needsHand(state);
  }
  return brush === undefined
    ? 'Say which brush is measured.'
    : (brushNotHere(state, brush) ?? needsHand(state));
}

function brushNotHere(state: VisibleState, brush: BrushIndex): string | null {
  const part = partOfBrush(brush);
  return isMatPart(part) ? needsForward(state, part) : null;
}

export function cannotCure(state: VisibleState, { remedy, bar }: Act<'remedy.do'>): string | null {
  const named = cannotName(state, remedy === 'resolderRiser', bar);
  if (named !== null) return named;
  if (isArmatureRemedy(remedy)) return needsClear(state, 'armature') ?? needsBothHands(state);
  return needsForward(state, 'brushPlate') ?? needsClear(state, 'brushPlate') ?? needsBothHands(state);
}

function cannotName({ geometry }: VisibleState, needsBar: boolean, bar: number | undefined): string | null {
  if (!needsBar) return bar === undefined ? null : 'A bar is named with a riser to be resoldered only.';
  if (bar === undefined) return 'Say which riser is to be resoldered.';
  return bar < geometry.bars ? null : 'The commutator has no such bar.';
}

/** The bulb, a set of leads or the zero. With power on it can be done, and must not be: that is a rule's business. */
export function cannotSetRight(state: VisibleState, { what }: Act<'bench.setRight'>): string | null {
  const off = state.selector === 'off' || (state.supply === 'on' && what !== 'ammeterZero');
  if (!off) return 'Turn the selector to OFF first.';
  const set = SET_OF[what];
  const inUse = ALL_LEADS.some((lead) => leadSet(lead) === set && state.leads[lead].at !== 'holster');
  return inUse ? 'Hang both leads of that set up first.' : needsHand(state);
}
const SET_OF: Readonly<Partial<Record<BenchCare, LeadSet>>> = { lampLeads: 'lamp', ammeterLeads: 'ammeter' };

export function cannotFeed(state: VisibleState, { at }: Act<'drop.feed'>): string | null {
  if (at === null) {
    return needsDrop(state) ?? (state.drop.feed === null ? 'The feed is off already.' : needsHand(state));
  }
  const [one, other] = at;
  const part = partOf(one);
  if (part === null || part !== partOf(other)) return 'Both feed clamps go on metal of the same part.';
  if (one === other) return 'The feed needs two different places.';
  const unreached = cannotReachMetal(state, one, true) ?? cannotReachMetal(state, other, true);
  return needsDrop(state) ?? unreached ?? needsHand(state);
}
