import { bench } from './benchSetup.ts';
import { ALL_LEADS, type LeadId } from './places.ts';
import type { HandIndex } from './state.ts';

/** Dots separate levels of a state, so the leads go by these names inside the machine. */
const LEAD_STATE = {
  'ammeter.1': 'ammeter1',
  'ammeter.2': 'ammeter2',
  'lamp.1': 'lamp1',
  'lamp.2': 'lamp2',
  'tester.1': 'tester1',
  'tester.2': 'tester2',
  'drop.1': 'drop1',
  'drop.2': 'drop2',
} as const satisfies Record<LeadId, string>;

function takes(hand: HandIndex, lead: LeadId, target: string = LEAD_STATE[lead]) {
  return { guard: { type: 'takesWith', params: { hand, lead } }, target } as const;
}

function letsGo(lead: LeadId, target: string) {
  return { guard: { type: 'ofLead', params: { lead } }, target } as const;
}

function holdsLead(hand: HandIndex, lead: LeadId, joins: LeadId | null = null) {
  const on = { 'lead.holster': letsGo(lead, 'nothing'), 'lead.clamp': letsGo(lead, 'nothing') };
  return joins === null ? { on } : { on: { ...on, 'lead.take': takes(hand, joins, 'bothAmmeterLeads') } };
}

/** One hand: what it holds. */
export function handRegion(hand: HandIndex) {
  const withHand = { type: 'takesWith', params: { hand } } as const;
  const letsGoOne = [letsGo('ammeter.1', 'ammeter2'), letsGo('ammeter.2', 'ammeter1')];
  return bench.createStateConfig({
    initial: 'nothing',
    states: {
      nothing: {
        on: {
          'armature.hold': { guard: withHand, target: 'armature' },
          'strip.take': { guard: withHand, target: 'strip' },
          'lead.take': ALL_LEADS.map((lead) => takes(hand, lead)),
        },
      },
      armature: {
        on: {
          'armature.release': { guard: 'passes', target: 'nothing' },
          'armature.lift': { guard: 'passes', target: 'nothing' },
        },
      },
      strip: { on: { 'strip.hang': { guard: 'passes', target: 'nothing' } } },
      ammeter1: holdsLead(hand, 'ammeter.1', 'ammeter.2'),
      ammeter2: holdsLead(hand, 'ammeter.2', 'ammeter.1'),
      lamp1: holdsLead(hand, 'lamp.1'),
      lamp2: holdsLead(hand, 'lamp.2'),
      tester1: holdsLead(hand, 'tester.1'),
      tester2: holdsLead(hand, 'tester.2'),
      drop1: holdsLead(hand, 'drop.1'),
      drop2: holdsLead(hand, 'drop.2'),
      bothAmmeterLeads: { on: { 'lead.holster': letsGoOne, 'lead.clamp': letsGoOne } },
    },
  });
}
