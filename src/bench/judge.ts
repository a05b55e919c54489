import { type BenchEvent, isHappening } from './happening.ts';
import { breachesOf } from './interlocks.ts';
import type { Mode, Outcome } from './port.ts';
import { refusalOf } from './refusals.ts';
import type { BenchState } from './state.ts';

/**
 * What becomes of an event. The impossible is refused in every mode and is no breach. In guided work an act that would
 * break a rule is refused as well, with the reason; otherwise it goes through. Every mode reports the breaches.
 * Switching off is never refused.
 */
export function judge(state: BenchState, event: BenchEvent, mode: Mode): Outcome {
  if (isHappening(event)) return { kind: 'done', breaches: breachesOf(state, event) };
  const impossible = refusalOf(state, event);
  if (impossible !== null) return { kind: 'refused', sentence: impossible, breaches: [] };
  const breaches = breachesOf(state, event);
  const [first] = breaches;
  const switchesOff = event.type === 'selector.turn' && event.to === 'off';
  if (mode !== 'guided' || switchesOff || first === undefined) return { kind: 'done', breaches };
  const worst = breaches.find((breach) => breach.critical) ?? first;
  return { kind: 'refused', sentence: worst.sentence, breaches };
}

export function goesThrough(state: BenchState, event: BenchEvent, mode: Mode): boolean {
  return judge(state, event, mode).kind === 'done';
}
