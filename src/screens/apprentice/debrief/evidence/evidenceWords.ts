import { type DropReading, isBeyondScale } from '../../../../assess/evidence/reading.ts';
import type {
  ArmatureNext,
  EvidenceStory,
  JudgedStory,
  KindStory,
  NextStory,
  StoryMoved,
  StoryPlace,
  StoryPossibility,
  StoryStep,
} from '../../../../assess/evidence/story/shape.ts';
import { barOf, isMatPlace, type Place } from '../../../../bench/places.ts';
import { CLUE_WORDS } from '../../../../bench/words.ts';
import { countFromChalk } from '../../../shared/count.ts';
import { matPlaceWords } from '../../../shared/lineWords.ts';
import { conditionWords, countWords, spoken, type Vocabulary } from '../../../shared/words.ts';
import { matNextWords, matReadingWords } from './matReadingWords.ts';

/** How bars are called: from the chalk, or by the bench's own numbers when nothing was chalked. */
export interface Calling extends Pick<EvidenceStory, 'part' | 'bars' | 'chalkedBar'> {
  readonly vocabulary: Vocabulary;
}

type KindCalling = Pick<Calling, 'part' | 'vocabulary'>;

export function barCalled(bar: number, { chalkedBar, bars }: Calling): string {
  const count = countFromChalk(bar, chalkedBar, bars);
  return count === null ? `bench no. ${bar}` : countWords(count);
}

function whatWords(what: StoryPossibility['what'], { part, vocabulary }: KindCalling): string {
  if (what === 'nothing') return 'Nothing these tests can show';
  if (what === 'dirty') return spoken('Dirty commutator', vocabulary);
  if (what === 'noneOfThese') return 'Something not on the list';
  return conditionWords(what, part, vocabulary);
}

/** "Open coil or broken joint", where no allowed test tells one from the other. */
export function kindWords({ what, alike }: Pick<KindStory, 'what' | 'alike'>, calling: KindCalling): string {
  const others = alike.map((one) => lower(whatWords(one, calling)));
  return [whatWords(what, calling), ...others].join(' or ');
}

/** "open coil from chalk + 4", "grounded at insulated holder 1" */
function possibilityWords({ what, alike, place }: StoryMoved['possibility'], calling: Calling): string {
  const words = lower(kindWords({ what, alike: alike ?? [] }, calling));
  if (place === null) return words;
  switch (place.kind) {
    case 'bar':
      return `${words} at ${barCalled(place.at, calling)}`;
    case 'coil':
      return `${words} from ${barCalled(place.at, calling)}`;
    case 'pair':
      return `${words} after ${barCalled(place.at, calling)}`;
    case 'branch':
      return `${words} in ${markWords(place, calling)}`;
    case 'holder':
      return `${words} at ${markWords(place, calling)}`;
  }
}

/** Where a verdict says it lies. */
export function markWords(mark: StoryPlace, calling: Calling): string {
  switch (mark.kind) {
    case 'bar':
    case 'coil':
      return barCalled(mark.at, calling);
    case 'pair':
      return `${barCalled(mark.at, calling)} and the next`;
    case 'branch':
      return mark.brushes.length > 1 ? 'either branch' : `the branch to field brush ${mark.brushes[0]}`;
    case 'holder':
      return matPlaceWords(mark.holder, calling.vocabulary);
  }
}

const lower = (words: string) => words.charAt(0).toLowerCase() + words.slice(1);

/** Kinds once each with how many places: "open coil at 5 places, reversed coil from chalk + 4". */
export function movedWords(moved: readonly StoryMoved[], calling: Calling): string {
  const kinds = [...new Set(moved.map(({ possibility }) => possibility.what))];
  const words = kinds.map((kind) => {
    const own = moved.filter(({ possibility }) => possibility.what === kind);
    return own.length === 1
      ? possibilityWords(own[0]!.possibility, calling)
      : `${lower(whatWords(kind, calling))} at ${own.length} places`;
  });
  return words.join(', ');
}

/** One reading: what was done, and what it showed. */
export function readingWords({ reading, ampere }: StoryStep, calling: Calling): string {
  const { vocabulary } = calling;
  if ('leanedOn' in reading) return matReadingWords(reading, vocabulary);
  switch (reading.kind) {
    case 'meter': {
      const [a, b] = reading.bars;
      const shown = ampere === null ? 'beyond the scale' : `${Number(ampere.toPrecision(3))} A`;
      return `Ammeter, ${barCalled(a, calling)} and ${barCalled(b, calling)}: ${shown}`;
    }
    case 'lamp': {
      const [a, b] = reading.places.map((place) => placeCalled(place, calling));
      return spoken(`Lamp, ${a} and ${b}: ${reading.shows}`, vocabulary);
    }
    case 'strip':
      return `Strip, ${Math.round(reading.angleDeg)}° from the bottom: ${reading.pull > 0 ? 'pulled' : 'still'}`;
    case 'stripPass':
      return `Strip, ${reading.places.length} places: ${reading.felt ? 'pulled somewhere' : 'still'}`;
    case 'megohm': {
      const [a, b] = reading.places.map((place) => placeCalled(place, calling));
      const shown = reading.megohms === 'over' ? 'beyond the scale' : `${reading.megohms} MΩ`;
      return spoken(`Insulation tester at ${reading.volt} V, ${a} and ${b}: ${shown}`, vocabulary);
    }
    case 'drop':
      return dropWords(reading, calling);
    case 'look': {
      const sees = reading.sees.map((clue) => CLUE_WORDS[clue]).join(', ') || 'nothing to remark';
      return spoken(`Lens, ${placeCalled(reading.place, calling)}: ${sees}`, vocabulary);
    }
  }
}

/** Where the current is fed goes without saying when it is fed at the same bars. */
function dropWords(reading: DropReading, calling: Calling): string {
  const { bars, feed, millivolts } = reading;
  const [a, b] = bars;
  const shown = isBeyondScale(reading) ? 'beyond the scale' : `${millivolts} mV`;
  const along = feed.includes(a) && feed.includes(b);
  const fed = along ? '' : `, fed at ${barCalled(feed[0], calling)} and ${barCalled(feed[1], calling)}`;
  return `Millivolt drop, ${barCalled(a, calling)} and ${barCalled(b, calling)}${fed}: ${shown}`;
}

function placeCalled(place: Place, calling: Calling): string {
  const bar = barOf(place);
  if (bar === null) return isMatPlace(place) ? matPlaceWords(place, calling.vocabulary) : place;
  const called = barCalled(bar, calling);
  return place.startsWith('riser') ? `riser of ${called}` : called;
}

/** The reading that would tell most, as something to go and do. */
export function nextWords(next: NextStory, calling: Calling): string {
  return 'question' in next
    ? matNextWords(next.question, calling.vocabulary)
    : armatureNextWords(next, calling);
}

function armatureNextWords({ test, bars, angleDeg }: ArmatureNext, calling: Calling): string {
  if (test === 'ground')
    return spoken('Put the lamp from the shaft to any bar, proved before and after', calling.vocabulary);
  if (test === 'strip')
    return `Hold the strip ${Math.round(angleDeg!)}° from the bottom with ${barCalled(bars![0], calling)} in line with it`;
  if (test === 'megohm')
    return spoken('Put the insulation tester from the shaft to any bar, armature out', calling.vocabulary);
  const [a, b] = bars!.map((bar) => barCalled(bar, calling));
  if (test === 'millivolt') return `Feed ${a} and ${b} and read the drop between them`;
  return `Put the ammeter across ${a} and ${b}`;
}

/** Title of a judgement, and what it means. */
export function judgementWords(story: JudgedStory): readonly [title: string, meaning: string] {
  switch (story.judgement) {
    case 'proven':
      return ['Proven.', 'Your readings leave hardly anything else, neither in kind nor in place.'];
    case 'rightNotProven':
      return [
        'Right, but not yet proven.',
        story.missed > 0
          ? 'What you named is there. Something else that these tests can show is there as well, and is not named.'
          : 'What you named is there, but your readings leave other things open: so far it is a good guess.',
      ];
    case 'contradicted':
      return [
        'Against your own readings.',
        'What you named is hardly possible after what you read yourself.',
      ];
    case 'wrong':
      return [
        'Not what it was.',
        'Your readings do not rule out what you named, but the part had something else.',
      ];
  }
}
