import type { Breach, Outcome } from '../bench/port.ts';
import type { BenchState } from '../bench/state.ts';
import { touchCurrent } from '../engine/instruments/touch.ts';
import type { PartOnBench } from './part.ts';

/** Rules whose breach puts a body on live metal. */
const LIVE: ReadonlySet<string> = new Set(['liveTip', 'liveMetal']);

/**
 * Puts what went through the body into the breach of an act that was done. It is not worked out for one that was
 * refused: nothing happened, and the figure would tell whether the winding floats.
 * @param after the bench as the act left it
 */
export function withTouch(outcome: Outcome, part: PartOnBench, after: BenchState): Outcome {
  if (outcome.kind === 'refused' || !outcome.breaches.some(isLive)) return outcome;
  const breaches = outcome.breaches.map((breach) => (isLive(breach) ? touched(breach, part, after) : breach));
  return { ...outcome, breaches };
}

function isLive({ interlock }: Breach): boolean {
  return LIVE.has(interlock);
}

function touched(breach: Breach, { lamp, mains, hidden }: PartOnBench, { leads }: BenchState): Breach {
  const tips = (['lamp.1', 'lamp.2'] as const).filter((lead) => leads[lead].grip === 'tip').length;
  const { currentA, effect } = touchCurrent({
    lamp,
    volt: mains.volt,
    hz: mains.hz,
    reference: hidden.supplyReference,
    way: tips === 2 ? 'acrossProbes' : 'toEarth',
  });
  return { ...breach, touch: { currentA: Number(currentA.toPrecision(3)), effect } };
}
