import type { PartKind, Selector } from './action.ts';
import type { BenchEvent } from './happening.ts';
import { powerAfter } from './lampTests.ts';
import { pressedAfter } from './memory.ts';
import type { Place } from './places.ts';
import { acrossPart, type BenchState } from './state.ts';
import { type Tips, tipsAfter } from './tips.ts';

/** The bench as far as rules on standing conditions need it: as it is, or as it will be after an event. */
export interface Standing {
  readonly power: Selector;
  readonly tips: Tips;
  readonly handOnArmature: boolean;
  readonly stripOverCore: boolean;
  readonly cradled: boolean;
  readonly feed: readonly [Place, Place] | null;
  readonly pressed: boolean;
  /** The part that the pressed tester's leads both lie on. */
  readonly tested: PartKind | null;
}

/** A standing condition counts as broken by the act that brings it about, not by every act that follows. */
export function becomes(
  state: BenchState,
  event: BenchEvent,
  condition: (bench: Standing) => boolean,
): boolean {
  return condition(after(state, event)) && !condition(before(state));
}

function before(state: BenchState): Standing {
  return {
    power: state.supply === 'on' ? state.selector : 'off',
    tips: state.leads,
    handOnArmature: state.hands.includes('armature'),
    stripOverCore: state.strip.at === 'core',
    cradled: state.cradle === 'armature',
    feed: state.drop.feed,
    ...testing(state.tester.pressed, state.leads),
  };
}

/** Every rule asks for the bench after the same event: the last answer is kept. */
let lastAfter: {
  readonly state: BenchState;
  readonly event: BenchEvent;
  readonly standing: Standing;
} | null = null;
function after(state: BenchState, event: BenchEvent): Standing {
  if (lastAfter?.state !== state || lastAfter.event !== event)
    lastAfter = { state, event, standing: standingAfter(state, event) };
  return lastAfter.standing;
}

function standingAfter(state: BenchState, event: BenchEvent): Standing {
  const held = state.hands.includes('armature');
  const tips = tipsAfter(state.leads, event, state);
  return {
    power: powerAfter(state, event),
    tips,
    handOnArmature: event.type === 'armature.hold' || (held && event.type !== 'armature.release'),
    stripOverCore: event.type === 'strip.hold' || (state.strip.at === 'core' && !isStripAction(event)),
    cradled:
      event.type === 'armature.place' || (state.cradle === 'armature' && event.type !== 'armature.lift'),
    feed: event.type === 'drop.feed' ? event.at : state.drop.feed,
    ...testing(pressedAfter(state, event), tips),
  };
}

function testing(pressed: boolean, tips: Tips): Pick<Standing, 'pressed' | 'tested'> {
  return { pressed, tested: pressed ? acrossPart(tips, 'tester') : null };
}

function isStripAction(event: BenchEvent): boolean {
  return event.type === 'strip.away' || event.type === 'strip.hang';
}

export function stripOverLow({ power, stripOverCore }: Standing): boolean {
  return power === 'low' && stripOverCore;
}
