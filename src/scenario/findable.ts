import type { Issue, Scenario } from './scenario.ts';

/** One step of the ammeter's scale as a share of it: an eye calls a needle so near to zero a needle at zero. */
const ONE_STEP = 1 / 400;

/**
 * What nobody at the bench could ever find, which a new job must not hide; one that was kept before is still read. A
 * needle below zero rests on its stop and looks like one at zero (our bench; common practice, no source).
 */
export function unfindable({ hidden }: Scenario): Issue[] {
  return (hidden.bench?.faults ?? []).flatMap((fault, nth) => {
    if (fault.kind !== 'ammeterZero' || fault.offset > ONE_STEP) return [];
    const path = `hidden.bench.faults[${nth}].offset`;
    const sentence = `Expected more than ${ONE_STEP}, since a needle at or below zero looks like a sound one on its stop and nobody could find it, but ${fault.offset} came.`;
    return [{ path, sentence }];
  });
}
