import { REMEDY_MINUTES } from '../engine/parts/remedies.ts';
import type { Action, BenchCare, PartKind } from './action.ts';
import type { BenchEvent } from './happening.ts';
import { lampGroundTest } from './lampTests.ts';
import { type LeadSet, leadSet, type PanelLead } from './places.ts';
import { acrossPart, type BenchState, type Memory } from './state.ts';
import { tipsAfter } from './tips.ts';
import { touchedPart } from './touched.ts';

/** Time a practised hand takes for the bench itself, minutes. Figures ours. */
export const CARE_MINUTES: Readonly<Record<BenchCare, number>> = {
  lamp: 2,
  lampLeads: 6,
  ammeterLeads: 6,
  ammeterZero: 1,
};

/** Minutes an act takes by the book beside the time that runs. */
export function minutesOf(action: Action): number {
  if (action.type === 'remedy.do') return REMEDY_MINUTES[action.remedy];
  return action.type === 'bench.setRight' ? CARE_MINUTES[action.what] : 0;
}

/** Memory after an act that goes through; `state` is the bench before it. The same memory where nothing is added. */
export function memoryAfter(state: BenchState, action: Action): Memory {
  const { memory } = state;
  const next: Memory = {
    charged: chargedAfter(state, action),
    lampTested: added(memory.lampTested, lampGroundTest(state, action)),
    cracked: crackedAfter(memory.cracked, action),
    minutesSpent: memory.minutesSpent + minutesOf(action),
    prepared: added(memory.prepared, action.type === 'prepare.check' ? action.item : null),
  };
  const same = (Object.keys(next) as (keyof Memory)[]).every((key) => next[key] === memory[key]);
  return same ? memory : next;
}

function added<T>(list: readonly T[], item: T | null): readonly T[] {
  return item === null || list.includes(item) ? list : [...list, item];
}

/** A part stays charged until it is discharged, or until a hand or another lead does it the hard way. */
function chargedAfter(state: BenchState, action: Action): PartKind | null {
  const { charged } = state.memory;
  const pressed = pressedAfter(state, action);
  const across = pressed ? acrossPart(tipsAfter(state.leads, action, state), 'tester') : null;
  if (across !== null) return across;
  if (action.type === 'tester.discharge') return null;
  return charged !== null && emptiesCharge(action, charged) ? null : charged;
}

/** The tester's button after an event. */
export function pressedAfter({ tester }: Pick<BenchState, 'tester'>, event: BenchEvent): boolean {
  return event.type === 'tester.press' ? event.on : tester.pressed;
}

/** A hand on the part, or a lead that is not the tester's own. */
export function emptiesCharge(action: Action, part: PartKind): boolean {
  return touchedPart(action) === part && !(action.type === 'lead.touch' && leadSet(action.lead) === 'tester');
}

function crackedAfter(cracked: readonly PanelLead[], action: Action): readonly PanelLead[] {
  if (action.type !== 'bench.setRight' || !SETS.has(action.what)) return cracked;
  const set = SETS.get(action.what);
  return cracked.some((lead) => leadSet(lead) === set)
    ? cracked.filter((lead) => leadSet(lead) !== set)
    : cracked;
}
const SETS: ReadonlyMap<BenchCare, LeadSet> = new Map([
  ['lampLeads', 'lamp'],
  ['ammeterLeads', 'ammeter'],
]);
