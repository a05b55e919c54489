import { barAngleDeg, type CommutatorGeometry } from './geometry.ts';
import type { Observation } from './observation.ts';
import { ALL_LEADS, barOf, type LeadId, type Place } from './places.ts';

/** What of an observation the name of a place depends on. */
export type SeenFrom = Pick<Observation, 'chalkedBar' | 'rotationDeg'>;

export const LEAD_WORDS: Readonly<Record<LeadId, string>> = {
  'ammeter.1': 'ammeter probe 1',
  'ammeter.2': 'ammeter probe 2',
  'lamp.1': 'lamp probe 1',
  'lamp.2': 'lamp probe 2',
  'tester.1': 'tester clip 1',
  'tester.2': 'tester clip 2',
  'drop.1': 'millivolt clip 1',
  'drop.2': 'millivolt clip 2',
};

const OTHER_PLACES: Readonly<Record<string, string>> = {
  shaft: 'the shaft',
  core: 'the core',
  lampBulb: 'the bulb of the test lamp',
  'field:terminal': 'the motor terminal',
  'field:brush1': 'field brush 1',
  'field:brush2': 'field brush 2',
  'field:case': 'the case',
  'plate:metal': 'the bare plate',
  'plate:insulated1': 'insulated holder 1',
  'plate:insulated2': 'insulated holder 2',
  'plate:earthed1': 'grounded holder 1',
  'plate:earthed2': 'grounded holder 2',
};

/** A place as someone at the bench would point it out: bars carry no numbers and are counted from the chalk. */
export function placeWords(geometry: CommutatorGeometry, seen: SeenFrom, place: Place): string {
  const bar = barOf(place);
  if (bar !== null) {
    const words = barWords(geometry, seen, bar);
    return place.startsWith('riser') ? `the riser of ${words}` : words;
  }
  const lead = ALL_LEADS.find((id) => place.endsWith(`:${id}`));
  if (lead === undefined) return OTHER_PLACES[place] ?? place;
  return place.startsWith('tip:')
    ? `the tip of ${LEAD_WORDS[lead]}`
    : `handle and cable of ${LEAD_WORDS[lead]}`;
}

/** "the chalked bar", "bar 6 on from the chalk", or where the bar lies when none is chalked. */
export function barWords(geometry: CommutatorGeometry, seen: SeenFrom, bar: number): string {
  if (seen.chalkedBar === null) {
    return `the bar ${angleWords(barAngleDeg(geometry, bar, seen.rotationDeg))}`;
  }
  const count = (((bar - seen.chalkedBar) % geometry.bars) + geometry.bars) % geometry.bars;
  return count === 0 ? 'the chalked bar' : `bar ${count} on from the chalk`;
}

/** Where an angle from the bottom lies for the person in front of the bench. */
export function angleWords(angleDeg: number): string {
  const round = Math.round(((((angleDeg + 180) % 360) + 360) % 360) - 180);
  const fromBottom = Math.abs(round);
  if (fromBottom === 0) return 'at the bottom';
  if (fromBottom === 180) return 'at the top';
  const side = round < 0 ? 'on the near side' : 'on the far side';
  if (fromBottom === 90) return `${side}, level`;
  return fromBottom > 90 ? `${side}, ${fromBottom - 90}° up` : `${side}, ${90 - fromBottom}° down`;
}
