import type { PartKind } from '../bench/action.ts';
import type { Condition, Disposition, TestKind } from '../bench/paper.ts';

const CONDITION_WORDS: Readonly<Record<Condition, string>> = {
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
  brokenJoint: 'broken joint',
  looseRivet: 'loose rivet',
};

/** What conditions of a part are called; a brush plate has no bars that could be bridged. */
export function conditionsOn(part: PartKind): Readonly<Record<Condition, string>> {
  return part === 'brushPlate' ? { ...CONDITION_WORDS, bridgedBars: 'bridged by dirt' } : CONDITION_WORDS;
}

export const DISPOSITION_WORDS: Readonly<Record<Disposition, string>> = {
  service: 'back into service',
  cleanAndRetest: 'clean and retest',
  resolder: 'resolder the joint',
  winder: 'to a specialist winder',
  replace: 'replace',
};

/** A part at the head of a mark's title. */
export const PART_TITLES: Readonly<Record<PartKind, string>> = {
  armature: 'Armature',
  fieldFrame: 'Field frame',
  brushPlate: 'Brush plate',
};

/** A part in a sentence. */
export const PART_WORDS: Readonly<Record<PartKind, string>> = {
  armature: 'the armature',
  fieldFrame: 'the field frame',
  brushPlate: 'the brush plate',
};

/** A test as it is named in a sentence. */
export const TEST_WORDS: Readonly<Record<TestKind, string>> = {
  look: 'looking',
  spaced: 'spaced readings',
  neighbour: 'neighbouring readings',
  ground: 'the ground test',
  strip: 'the strip test',
  fieldContinuity: 'field continuity',
  fieldInsulation: 'field insulation',
  plateInsulation: 'the insulated holders',
  plateEarthed: 'the earthed brushes',
  megohm: 'the insulation tester',
  millivolt: 'the millivolt drop',
  gauges: 'the gauges',
};

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

/** A chance in words; never quite all or nothing. @param share 0..1 */
export const percentWords = (share: number): string =>
  share >= 0.995 ? 'over 99 %' : share < 0.005 ? 'under 1 %' : `${Math.round(share * 100)} %`;
