import type { CommutatorGeometry } from '../../../bench/geometry.ts';
import type { Observation } from '../../../bench/observation.ts';
import { LEAD_IDS } from '../../../bench/places.ts';
import { capital } from '../../shared/words.ts';
import { LEAD_NAMES, placeWords } from './places.ts';

/** What eyes get from the bench, one sentence per thing, and no more than eyes would get. */
export function senses(seen: Observation, geometry: CommutatorGeometry): readonly string[] {
  return [contacts(seen, geometry), needle(seen), lamp(seen), heat(seen)].filter((line) => line !== '');
}

function contacts(seen: Observation, geometry: CommutatorGeometry): string {
  const on = LEAD_IDS.flatMap((lead) => {
    const place = seen.leads[lead].touches;
    return place ? [`${LEAD_NAMES[lead]} on ${placeWords(place, seen, geometry)}`] : [];
  });
  return on.length ? `${capital(on.join('; '))}.` : '';
}

function needle({ needle: { deflection, pegged, atRest }, rangeA }: Observation): string {
  if (pegged) return `Needle hard against the end of the ${rangeA} A scale.`;
  if (!atRest) return 'Needle moving.';
  if (deflection < 0.005) return '';
  const value = deflection * rangeA;
  const step = rangeA / 20;
  const low = Math.floor(value / step) * step;
  const near = value - low < step / 2 ? low : low + step;
  return `Needle between ${tidy(low)} and ${tidy(low + step)} A, nearer ${tidy(near)}.`;
}

function tidy(value: number): string {
  return String(Number(value.toFixed(2)));
}

function lamp({ lamp: { glow } }: Observation): string {
  if (glow === 0) return '';
  return glow <= 2 ? 'Lamp glows dull red.' : glow <= 5 ? 'Lamp is lit, not full.' : 'Lamp is bright.';
}

function heat({ growlerHeat }: Observation): string {
  if (growlerHeat === 'hot') return 'The growler winding is hot.';
  return growlerHeat === 'tooHotToTouch' ? 'The growler winding is too hot to touch.' : '';
}
