import { RANGES_A } from '../action.ts';
import { CARE_MINUTES } from '../memory.ts';
import type { Observation } from '../observation.ts';
import { barOf } from '../places.ts';
import { type Asked, doing, first, type GuideStep, hungUp, powered } from './step.ts';

/**
 * The ammeter before it is believed (common practice, no source): a needle that stands off zero with nothing connected
 * is set to zero, and leads through which nothing comes at several pairs of bars are changed. Tips together prove
 * nothing here: the current comes from the armature.
 */

/** Where the needle has not moved, as someone who watched would know. */
export interface MeterTrouble {
  /** It has moved with these leads on bars: from then on a needle that stays down is a finding. */
  readonly moved: boolean;
  /** Pairs of bars at which it stayed at zero, at rest on the finest range. */
  readonly nothingAt: readonly string[];
  /** Changes of the leads made since. */
  readonly repairs: number;
  readonly minutesSpent: number;
}

export const NO_METER_TROUBLE: MeterTrouble = { moved: false, nothingAt: [], repairs: 0, minutesSpent: 0 };

/** No armature reads nothing at three pairs of bars in a row. */
const ENOUGH_PAIRS = 3;
/** One step of the scale: an eye calls it zero. */
const STILL = 1 / 400;

const atZero = ({ needle }: Pick<Observation, 'needle'>) => needle.atRest && needle.deflection <= STILL;

/** The same object when nothing has changed. */
export function meterAfter(before: MeterTrouble, seen: Observation): MeterTrouble {
  const { minutesSpent } = seen;
  if (minutesSpent > before.minutesSpent) {
    const repairs = before.repairs + (isDead(before) ? 1 : 0);
    return { ...NO_METER_TROUBLE, repairs, minutesSpent };
  }
  const pair = pairRead(seen);
  if (pair === null || before.moved) return before;
  if (!atZero(seen)) return { ...before, moved: true, nothingAt: [] };
  if (seen.rangeA !== RANGES_A[0] || before.nothingAt.includes(pair)) return before;
  return { ...before, nothingAt: [...before.nothingAt, pair] };
}

/** The two bars under the tips where they should send a current through the needle, at rest; or null. */
function pairRead({ leads, needle, supply, selector }: Observation): string | null {
  if (supply !== 'on' || selector !== 'high' || !needle.atRest) return null;
  const places = [leads['ammeter.1'].touches, leads['ammeter.2'].touches];
  const bars = places.map((place) => (place === null ? null : barOf(place)));
  return bars.includes(null) || bars[0] === bars[1] ? null : bars.join();
}

const isDead = ({ nothingAt }: MeterTrouble) => nothingAt.length >= ENOUGH_PAIRS;

type Watching = Pick<Asked, 'seen' | 'watched'>;

/** What is done about leads that carry nothing; null while there is nothing the matter with them. */
export function deadMeterWork(asked: Watching): GuideStep | null {
  const { meter } = asked.watched;
  if (!isDead(meter)) return null;
  return first(
    () => hungUp(['ammeter.1', 'ammeter.2'], asked),
    () => powered('off', asked, 'Off before anyone works on the bench.'),
    () => (meter.repairs === 0 ? newLeads() : null),
    () => ({
      do: 'Tell whoever looks after the bench.',
      because: 'The leads are new, and still nothing comes through: nothing can be read on this ammeter.',
      act: null,
      highlight: null,
    }),
  );
}

function newLeads(): GuideStep {
  return doing(
    { type: 'bench.setRight', what: 'ammeterLeads' },
    'Put on new ammeter leads.',
    `The needle moved nowhere, and no armature is open everywhere: the leads carry nothing. It takes about ${CARE_MINUTES.ammeterLeads} minutes.`,
    'bench',
  );
}

/** A needle that has never moved yet is no finding: a finer range first, then other bars. */
export function unmovedWork({ seen, watched }: Watching): GuideStep | null {
  if (watched.meter.moved || pairRead(seen) === null || !atZero(seen)) return null;
  const finer = RANGES_A[RANGES_A.indexOf(seen.rangeA) - 1];
  if (finer === undefined) return null;
  return doing(
    { type: 'range.turn', to: finer },
    `Turn the ammeter down to ${finer} A.`,
    'The needle has not moved. Before that means anything, see whether a finer range shows a current.',
    'range',
  );
}

/** A needle that stands off zero with nothing connected is set before it is read. */
export function zeroWork({ seen }: Pick<Asked, 'seen'>): GuideStep | null {
  const { leads, needle } = seen;
  const connected = leads['ammeter.1'].touches !== null && leads['ammeter.2'].touches !== null;
  if (connected || !needle.atRest || needle.deflection <= STILL) return null;
  return first(
    () => hungUp(['ammeter.1', 'ammeter.2'], { seen }),
    () =>
      powered(
        'off',
        { seen },
        'The needle stands off zero with nothing connected. Off to work on the bench.',
      ),
    () =>
      doing(
        { type: 'bench.setRight', what: 'ammeterZero' },
        'Set the ammeter to zero.',
        'The needle stands off zero with nothing connected: that much would be added to every reading.',
        'bench',
      ),
  );
}
