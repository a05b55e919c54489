import type { Breach, Outcome } from '../bench/port.ts';
import { touchCurrent } from '../engine/instruments/touch.ts';
import type { PartOnBench } from './part.ts';

/** Rules whose breach puts a body on live metal. */
const LIVE: ReadonlySet<string> = new Set(['liveTip', 'liveMetal']);

/**
 * Puts what went through the body into the breach of an act that was done. It is not worked out for one that was
 * refused: nothing happened, and the figure would tell whether the winding floats.
 */
export function withTouch(outcome: Outcome, part: PartOnBench): Outcome {
  if (outcome.kind === 'refused' || !outcome.breaches.some(isLive)) return outcome;
  const breaches = outcome.breaches.map((breach) => (isLive(breach) ? touched(breach, part) : breach));
  return { ...outcome, breaches };
}

function isLive({ interlock }: Breach): boolean {
  return LIVE.has(interlock);
}

function touched(breach: Breach, { lamp, mains, hidden }: PartOnBench): Breach {
  const { currentA, effect } = touchCurrent({
    lamp,
    volt: mains.volt,
    hz: mains.hz,
    reference: hidden.supplyReference,
    // A second hand on the other probe would have stopped the attempt before: the way is to earthed metal.
    way: 'toEarth',
  });
  return { ...breach, touch: { currentA: Number(currentA.toPrecision(3)), effect } };
}
