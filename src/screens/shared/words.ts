import type { PartKind } from '../../bench/action.ts';
import { capital } from '../../bench/capital.ts';
import type { Condition, Disposition, FoundPlace, TestKind } from '../../bench/paper.ts';
import type { Mode } from '../../bench/port.ts';

export { capital };

/** Which usage the screens speak; the code itself always says ground, bar, armature. */
export type Vocabulary = 'british' | 'american';

/** Trade terms where the two usages part company; keys are the code's own words. */
const TERMS = {
  ground: { british: 'earth', american: 'ground' },
  grounded: { british: 'earthed', american: 'grounded' },
  bar: { british: 'segment', american: 'bar' },
  bars: { british: 'segments', american: 'bars' },
} as const;
export type Term = keyof typeof TERMS;

export function term(key: Term, vocabulary: Vocabulary): string {
  return TERMS[key][vocabulary];
}

const BRITISH: readonly (readonly [RegExp, string])[] = [
  [/\bgrounded\b/g, 'earthed'],
  [/\bGrounded\b/g, 'Earthed'],
  [/\bground\b/g, 'earth'],
  [/\bGround\b/g, 'Earth'],
  [/\bbars\b/g, 'segments'],
  [/\bBars\b/g, 'Segments'],
  [/\bbar\b/g, 'segment'],
  [/\bBar\b/g, 'Segment'],
];

const AMERICAN: readonly (readonly [RegExp, string])[] = [
  [/\bdynamo\b/g, 'generator'],
  [/\bDynamo\b/g, 'Generator'],
];

/** Sentences from the bench are written with the code's words; this puts them into the usage the reader chose. */
export function spoken(text: string, vocabulary: Vocabulary): string {
  const swaps = vocabulary === 'british' ? BRITISH : AMERICAN;
  return swaps.reduce((said, [from, to]) => said.replace(from, to), text);
}

const CONDITION_WORDS: Readonly<Record<Condition, readonly [short: string, meaning: string]>> = {
  sound: ['Sound', 'every test the card allows came out as it should'],
  openCoil: ['Open coil', 'a coil is broken or has one end off'],
  badRiserJoint: ['Bad riser joint', 'a bar has lost its joint to the coils, or nearly'],
  grounded: ['Grounded', 'winding or commutator touches core or shaft'],
  shortedCoil: ['Shorted coil', 'turns of a coil, or two coils, touch each other'],
  bridgedBars: ['Bridged or dirty bars', 'copper, solder or carbon lies across the mica'],
  reversed: ['Reversed coil', 'a coil is joined with its ends swapped'],
  poorInsulation: ['Poor insulation', 'it leaks, but not enough to light a lamp'],
  worn: ['Worn or mechanical', 'rubbed, bent, loose, or worn past the limit'],
  notTested: ['Not tested', 'nothing can be said about it yet'],
  brokenJoint: ['Broken joint', 'a brush, its pigtail or its holder has lost its joint'],
  looseRivet: ['Loose rivet', 'it makes or breaks when the holder is pressed'],
};

/** Where a part has no bars and no winding, some of it is called otherwise. */
const ON_PART: Readonly<Record<PartKind, Partial<typeof CONDITION_WORDS>>> = {
  armature: {},
  fieldFrame: { grounded: ['Grounded', 'a coil, a brush or the terminal touches the case'] },
  brushPlate: {
    grounded: ['Grounded', 'an insulated holder touches the plate'],
    bridgedBars: ['Bridged by dirt', 'dust or metal lies across the insulation of a holder'],
  },
};

export function conditionWords(condition: Condition, part: PartKind, vocabulary: Vocabulary): string {
  return spoken((ON_PART[part][condition] ?? CONDITION_WORDS[condition])[0], vocabulary);
}

/** What a condition means, in a few words for a beginner. */
export function conditionMeaning(condition: Condition, part: PartKind, vocabulary: Vocabulary): string {
  return spoken((ON_PART[part][condition] ?? CONDITION_WORDS[condition])[1], vocabulary);
}

const DISPOSITION_WORDS: Readonly<Record<Disposition, string>> = {
  service: 'Back into service',
  cleanAndRetest: 'Clean, then test again',
  resolder: 'Resolder the joint, then test again',
  winder: 'To a specialist winder',
  replace: 'Replace the part',
};

export function dispositionWords(disposition: Disposition): string {
  return DISPOSITION_WORDS[disposition];
}

const TEST_WORDS: Readonly<Record<TestKind, string>> = {
  look: 'Looking over',
  spaced: 'Open circuit, spaced bars',
  neighbour: 'Open circuit, neighbouring bars',
  ground: 'Ground',
  strip: 'Short circuit, with the strip',
  fieldContinuity: 'Field continuity, terminal to each brush',
  fieldInsulation: 'Field insulation, case to each brush',
  plateInsulation: 'Insulated holders to the plate',
  plateEarthed: 'Grounded brushes to the plate',
  megohm: 'Insulation tester',
  millivolt: 'Millivolt drop',
  gauges: 'Gauges',
};

export function testWords(test: TestKind, vocabulary: Vocabulary): string {
  return spoken(TEST_WORDS[test], vocabulary);
}

const LAMP_TESTS: ReadonlySet<TestKind> = new Set([
  'ground',
  'fieldContinuity',
  'fieldInsulation',
  'plateInsulation',
  'plateEarthed',
]);

/** What is entered in the result column of one test, for headings and labels. */
export function testResultWords(test: TestKind): string {
  if (test === 'spaced' || test === 'neighbour') return 'Reading';
  if (LAMP_TESTS.has(test)) return 'Lamp';
  if (test === 'megohm') return 'Megohms';
  if (test === 'millivolt') return 'Millivolts';
  if (test === 'gauges') return 'Millimetres';
  return test === 'strip' ? 'Strip' : 'Seen';
}

const MODE_WORDS: Readonly<Record<Mode, readonly [name: string, meaning: string]>> = {
  guided: ['Guided', 'The bench refuses what is dangerous and says why.'],
  practice: ['Practice', 'The bench warns you and lets it happen, as a mentor would.'],
  assessed: ['Assessed', 'The bench keeps quiet. Everything you do is on the record.'],
};

export function modeWords(mode: Mode): string {
  return MODE_WORDS[mode][0];
}

export function modeMeaning(mode: Mode): string {
  return MODE_WORDS[mode][1];
}

const MAINS_WORDS = { '230V50Hz': '230 V, 50 Hz', '120V60Hz': '120 V, 60 Hz' } as const;

export function mainsWords(mains: keyof typeof MAINS_WORDS): string {
  return MAINS_WORDS[mains];
}

const SURE_STEPS: readonly (readonly [upTo: number, words: string])[] = [
  [0.1, 'a guess'],
  [0.35, 'more doubt than belief'],
  [0.6, 'about even'],
  [0.8, 'fairly sure'],
  [0.95, 'sure'],
  [1, 'as good as certain'],
];

/** Words for how sure a learner says they are. @param sure 0..1 */
export function sureWords(sure: number): string {
  return SURE_STEPS.find(([upTo]) => sure <= upTo)?.[1] ?? 'as good as certain';
}

const PART_WORDS: Readonly<Record<PartKind, string>> = {
  armature: 'Armature',
  fieldFrame: 'Field frame',
  brushPlate: 'Brush plate',
};

export function partWords(part: PartKind): string {
  return PART_WORDS[part];
}

/** Parts of a job in one line, as a card names them. */
export function partList(parts: readonly PartKind[]): string {
  return capital(parts.map(partWords).join(', ').toLowerCase());
}

export function foundPlaceWords(place: FoundPlace, bars: number, vocabulary: Vocabulary): string {
  if (place.kind === 'somewhere') return 'no place named';
  if (place.kind === 'branch') return `the branch that ends at field brush ${place.brush}`;
  if (place.kind === 'holder') return spoken(holderWords(place.holder), vocabulary);
  if (place.kind === 'bar') return spoken(countPhrase(place.count), vocabulary);
  const next = countPhrase((place.count + 1) % bars);
  return spoken(`between ${countPhrase(place.count)} and ${next}`, vocabulary);
}

/** A brush holder in a sentence. */
function holderWords(holder: Extract<FoundPlace, { kind: 'holder' }>['holder']): string {
  const kind = holder.startsWith('plate:insulated') ? 'insulated' : 'grounded';
  return `${kind} holder ${holder.slice(-1)}`;
}

/** A bar as the learner counts it, short enough for a table: the chalked one is 0. */
export function countWords(count: number): string {
  return count === 0 ? 'chalk' : `chalk + ${count}`;
}

/** The same in a sentence. */
export function countPhrase(count: number): string {
  return count === 0 ? 'the chalked bar' : `bar ${count} on from the chalk`;
}
