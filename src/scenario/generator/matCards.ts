import type { PartKind } from '../../bench/action.ts';
import type { JobCard } from '../public/job.ts';
import { CUSTOMERS, STARTERS } from './cards.ts';
import { type Chance, pick } from './wish.ts';

/** Cards for field frame, brush plate and whole starters. Every complaint fits every fault, and parts in order too. */
const COMPLAINTS = [
  'Cranks more slowly than it used to. Battery and cables were changed last week and made little difference.',
  'Blew the main fuse once in the rain; since then it cranks, but nobody trusts it.',
  'Stood outside over winter with the cover off and has not been right since.',
  'Some mornings it turns at once and some mornings it wants three tries.',
  'Smelt hot on the last run. It has been apart before: the screws are chewed.',
  'Nothing wrong that anyone can name: it is in for its yearly look before the season.',
  'Bought second-hand in a box of parts. Nobody knows its story.',
  'Tested by somebody in a hurry, who wrote nothing down and has gone home.',
  'The driver strikes the case with a hammer, and it goes. The driver retires in May.',
] as const;

const NAMES: Readonly<Record<PartKind, string>> = {
  armature: 'armature',
  fieldFrame: 'field frame',
  brushPlate: 'brush plate',
};
const UNITS: Readonly<Record<string, string>> = {
  armature: 'Armature',
  fieldFrame: 'Field frame',
  brushPlate: 'Brush plate',
};

/** "armature, field frame and brush plate" */
function listed(about: readonly PartKind[]): string {
  const names = about.map((part) => NAMES[part]);
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

function request(about: readonly PartKind[], curedHere: boolean): string {
  const them = about.length > 1 ? 'them' : 'it';
  const each = about.length > 1 ? 'say of each' : 'say';
  if (curedHere) {
    return `Test and measure the ${listed(about)}, put right what can be put right here, test ${them} again, and ${each} what happens to it next.`;
  }
  return `Test the ${listed(about)} and ${each} what happens to it next.`;
}

export function matCard(about: readonly PartKind[], curedHere: boolean, chance: Chance): JobCard {
  const unit = about.length > 1 ? 'Starter motor' : UNITS[about[0]!]!;
  return {
    unit: `${unit}, ${pick(chance, STARTERS)}`,
    broughtInBy: pick(chance, CUSTOMERS),
    complaint: pick(chance, COMPLAINTS),
    askedFor: request(about, curedHere),
  };
}
