import type { PartKind, Selector } from './action.ts';
import type { BenchEvent } from './happening.ts';
import { barOf, leadSet, type Place } from './places.ts';
import { type BenchState, supplyOf } from './state.ts';
import { lampTipsOnPart, tipsAfter } from './tips.ts';

/** Excitation after an event that goes through; `off` also when cut-out or isolation keeps the bench dead. */
export function powerAfter(state: BenchState, event: BenchEvent): Selector {
  const selector = event.type === 'selector.turn' ? event.to : state.selector;
  const cutOut = event.type === 'bench.tripped' ? 'tripped' : state.cutOut;
  return supplyOf(state.stage, cutOut, selector) === 'on' ? selector : 'off';
}

/** An event that puts both live lamp tips on metal of the parts, or makes tips that lie there live. */
export function makesLampTest(state: BenchState, event: BenchEvent): boolean {
  const acts =
    event.type === 'selector.turn' || (event.type === 'lead.touch' && leadSet(event.lead) === 'lamp');
  if (!acts || powerAfter(state, event) !== 'low') return false;
  return lampTipsOnPart(tipsAfter(state.leads, event, state)).length === 2;
}

/** The part an event tests for ground with the lamp, or null. */
export function lampGroundTest(state: BenchState, event: BenchEvent): PartKind | null {
  if (!makesLampTest(state, event)) return null;
  const tips = tipsAfter(state.leads, event, state);
  return groundedBetween(tips['lamp.1'].touches!, tips['lamp.2'].touches!);
}

/** The part whose insulation lies between two places, or null. */
function groundedBetween(one: Place, other: Place): PartKind | null {
  const pair = [one, other];
  const has = (test: (place: Place) => boolean) => pair.some(test);
  if (has((place) => place === 'core' || place === 'shaft') && has((place) => barOf(place) !== null)) {
    return 'armature';
  }
  if (has((place) => place === 'field:case') && pair.every((place) => place.startsWith('field:'))) {
    return 'fieldFrame';
  }
  const plate =
    has((place) => place === 'plate:metal') && has((place) => place.startsWith('plate:insulated'));
  return plate ? 'brushPlate' : null;
}
