import type { MatQuestion, MatReading } from '../../../../assess/evidence/mat/reading.ts';
import { isMatPlace, type Place } from '../../../../bench/places.ts';
import { matPlaceWords } from '../../../shared/lineWords.ts';
import type { Vocabulary } from '../../../shared/words.ts';

/** Readings of field frame and brush plate in words: those taken, and the one to take next. */

/** "Lamp, case and field brush 1: dark" */
export function matReadingWords(reading: MatReading, vocabulary: Vocabulary): string {
  const at = `${between(reading, vocabulary)}${handsWords(reading)}`;
  switch (reading.kind) {
    case 'lamp':
      return `Lamp, ${at}: ${reading.lit ? 'lit' : 'dark'}`;
    case 'megohm':
      return `Insulation tester at ${reading.volt} V, ${at}: ${reading.megohms === 'over' ? 'beyond the scale' : `${reading.megohms} MΩ`}`;
    case 'drop':
      return `Millivolt drop, ${at}: ${reading.millivolts} mV`;
  }
}

function between({ places }: MatQuestion, vocabulary: Vocabulary): string {
  return places.map((place) => named(place, vocabulary)).join(' and ');
}

const named = (place: Place, vocabulary: Vocabulary) =>
  isMatPlace(place) ? matPlaceWords(place, vocabulary) : place;

/** What of the hands changes what may be read. */
function handsWords({ places, leanedOn, brushesApart }: MatQuestion): string {
  if (leanedOn !== null) return ', leaned on';
  const field = places.some((place) => place.startsWith('field:brush'));
  return field && !brushesApart ? ', brushes touching' : '';
}

/** The reading that would tell most, as something to go and do. */
export function matNextWords(question: MatQuestion, vocabulary: Vocabulary): string {
  const [from, to] = question.places.map((place) => named(place, vocabulary));
  switch (question.kind) {
    case 'lamp': {
      const lean = question.leanedOn === null ? '' : ', and lean on it';
      const apart = question.brushesApart ? ', brushes apart' : '';
      return `Put the lamp from the ${from} to ${to}${lean}${apart}, proved before and after`;
    }
    case 'megohm':
      return `Put the insulation tester from the ${from} to ${to}`;
    case 'drop':
      return `Feed the branch from the ${from} to ${to} and read its drop`;
  }
}
