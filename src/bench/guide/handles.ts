import type { Place } from '../places.ts';
import { type Asked, doing, first, type GuideStep, hungUp, powered } from './step.ts';

/** Handles and cables of the lamp are looked over before they carry anything; cracked ones are not taken in the hand. */

const HANDLES: readonly Place[] = ['handle:lamp.1', 'handle:lamp.2'];

/** @returns null when both handles were seen to be sound, or new leads were put on, or the lamp is live already */
export function handlesWork(asked: Pick<Asked, 'seen' | 'watched'>): GuideStep | null {
  const { seen, watched } = asked;
  if (watched.clues.some(({ place, clue }) => HANDLES.includes(place) && clue === 'crackedHandle')) {
    return renewed(asked);
  }
  if (seen.supply === 'on' && seen.selector === 'low') return null;
  const place = HANDLES.find((one) => !watched.handlesSeen.includes(one));
  if (place === undefined) return null;
  return doing(
    { type: 'lens.look', place },
    `Look over handle and cable of lamp probe ${place.slice(-1)}.`,
    'On LOW they carry mains voltage. A crack lets fingers through to the metal.',
    place,
  );
}

function renewed(asked: Pick<Asked, 'seen' | 'watched'>): GuideStep | null {
  return first(
    () => hungUp(['lamp.1', 'lamp.2'], asked),
    () => powered('off', asked, 'Off before anyone works on the bench.'),
    () =>
      doing(
        { type: 'bench.setRight', what: 'lampLeads' },
        'Put on new lamp leads.',
        'A handle is cracked: with these nobody may touch anything on LOW.',
        'bench',
      ),
  );
}
