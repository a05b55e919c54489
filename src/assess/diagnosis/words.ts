import type { Condition, Disposition, FoundPlace } from '../../bench/paper.ts';

export const CONDITION_WORDS: Readonly<Record<Condition, string>> = {
  sound: 'sound',
  openCoil: 'open coil',
  badRiserJoint: 'bad riser joint',
  grounded: 'grounded',
  shortedCoil: 'shorted coil',
  bridgedBars: 'bridged or dirty bars',
  reversed: 'reversed coil',
  poorInsulation: 'poor insulation',
  worn: 'worn or mechanical',
  notTested: 'not tested',
};

export const DISPOSITION_WORDS: Readonly<Record<Disposition, string>> = {
  service: 'back into service',
  cleanAndRetest: 'clean and retest',
  resolder: 'resolder the joint',
  winder: 'to a specialist winder',
  replace: 'replace',
};

export function placeWords(place: FoundPlace): string {
  if (place.kind === 'somewhere') return 'no place';
  return place.kind === 'bar' ? `bar ${place.count}` : `bars ${place.count} and ${place.count + 1}`;
}

/** "a, b and c" */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** Answers worth the full mark, in words. */
export function fullAnswers<T extends string>(
  credit: Partial<Record<T, number>>,
  words: Record<T, string>,
): string {
  const full = (Object.keys(credit) as T[]).filter((answer) => credit[answer] === 1);
  return full.map((answer) => words[answer]).join(' or ');
}
