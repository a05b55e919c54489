import type { Place } from '../../bench/places.ts';
import { forwardPart, leadsInSight, type Situation } from '../pose.ts';
import { roundOf } from '../shapes.ts';
import {
  barSpots,
  bars,
  benchSurfaces,
  contacts,
  leadSpots,
  shaftAndCore,
  surfacesForLens,
  tipSpot,
} from './metal.ts';
import type { PlaceSpot, Spot, SpotView } from './spot.ts';
import { stripSpots } from './stripSpots.ts';
import { armatureSpots, holsterSpots, hungSpots, panelSpots, partSpots, toolSpots } from './targets.ts';

/** Where a place lies now, in every view that shows it. */
export function placeSpots(s: Situation, place: Place): PlaceSpot[] {
  const tips = leadsInSight(s).map((lead) => tipSpot(s, lead));
  return [...surfacesForLens(s), ...tips].filter((spot) => spot.place === place);
}

/** Every touchable thing with a middle and the radius of the round that fits in it, CSS px of the host. */
export function allPlaces(s: Situation): { id: string; x: number; y: number; r: number; view: SpotView }[] {
  const spots: Spot[] = [
    ...leadSpots(s),
    ...bars(s),
    ...Array.from({ length: s.part.bars }, (_, bar) => barSpots(s, bar, 'riser')).flat(),
    ...shaftAndCore(s),
    ...leadsInSight(s).map((lead) => tipSpot(s, lead)),
    ...panelSpots(s),
    ...holsterSpots(s),
    ...toolSpots(s),
    ...hungSpots(s),
    ...armatureSpots(s),
    ...partSpots(s),
    ...contacts(s),
    ...benchSurfaces(s),
    ...(forwardPart(s) === null ? stripSpots(s) : []),
  ];
  return spots.map(({ id, shape, view }) => ({ id, view, ...roundOf(shape) }));
}
