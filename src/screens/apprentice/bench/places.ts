import {
  barAngleDeg,
  type CommutatorGeometry,
  canReach,
  REACH_CENTRE_DEG,
  wrapDeg,
} from '../../../bench/geometry.ts';
import type { Observation } from '../../../bench/observation.ts';
import { barOf, type LeadId, type Place } from '../../../bench/places.ts';
import { countFromChalk } from '../../shared/count.ts';
import { countWords } from '../../shared/words.ts';

export const LEAD_NAMES: Readonly<Record<LeadId, string>> = {
  'ammeter.1': 'ammeter probe 1',
  'ammeter.2': 'ammeter probe 2',
  'lamp.1': 'lamp probe 1',
  'lamp.2': 'lamp probe 2',
};

/** Bars within reach, from the one nearest the person outwards. */
export function reachableBars(seen: Observation, geometry: CommutatorGeometry): readonly number[] {
  const angle = (bar: number) => barAngleDeg(geometry, bar, seen.rotationDeg);
  return Array.from({ length: geometry.bars }, (_, bar) => bar)
    .filter((bar) => canReach(angle(bar)))
    .sort((a, b) => fromFront(angle(a)) - fromFront(angle(b)));
}

function fromFront(angleDeg: number): number {
  return Math.abs(wrapDeg(angleDeg - REACH_CENTRE_DEG));
}

/** A bar as someone at the bench would point it out: counted from the chalk, or by where it lies. */
export function barWords(bar: number, seen: Observation, geometry: CommutatorGeometry): string {
  const count = countFromChalk(bar, seen.chalkedBar, geometry.bars);
  if (count !== null) return count === 0 ? 'the chalked bar' : `bar ${countWords(count)}`;
  return `the bar ${lieWords(barAngleDeg(geometry, bar, seen.rotationDeg))}`;
}

/** Where an angle from the bottom lies for the person in front of the bench. */
export function lieWords(angleDeg: number): string {
  const off = Math.round(wrapDeg(angleDeg - REACH_CENTRE_DEG));
  if (Math.abs(off) <= 5) return 'nearest you';
  return `${Math.abs(off)}° ${off > 0 ? 'below' : 'above'} the nearest point`;
}

export function placeWords(place: Place, seen: Observation, geometry: CommutatorGeometry): string {
  const bar = barOf(place);
  if (bar !== null) {
    const words = barWords(bar, seen, geometry);
    return place.startsWith('riser') ? `riser of ${words}` : words;
  }
  if (place.startsWith('tip:')) return `tip of ${LEAD_NAMES[place.slice(4) as LeadId]}`;
  return OTHER_PLACES[place] ?? place;
}

const OTHER_PLACES: Readonly<Record<string, string>> = {
  shaft: 'the shaft',
  core: 'the core',
  'field:terminal': 'the motor terminal',
  'field:brush1': 'field brush 1',
  'field:brush2': 'field brush 2',
  'field:case': 'the case',
  'plate:metal': 'the bare plate',
  'plate:insulated1': 'insulated holder 1',
  'plate:insulated2': 'insulated holder 2',
  'plate:earthed1': 'grounded brush 1',
  'plate:earthed2': 'grounded brush 2',
};
