import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { JobCard } from '../public/job.ts';
import { type Chance, type Family, pick } from './wish.ts';

/**
 * Job cards of the Quarry Road Training Workshop. People are named by what they do, machines by what they are used for.
 * Each complaint fits several faults and most fit a sound part as well: a card never gives the fault away.
 */
export const STARTERS = [
  'hire-fleet tipper',
  'baler from a farm up the lane',
  'forest skidder',
  'school minibus',
  'quarry dumper',
  'fish-market fork truck',
  'snow plough of the road depot',
  'vineyard tractor',
  'breakdown truck',
  'harbour crane',
  'mobile library',
  'cattle lorry',
  'ferry tender',
  'ballast tamper',
  'hop-picking machine',
  'brewery dray lorry',
  'street sweeper',
  'log splitter',
  'potato harvester',
  'coal-yard loader',
  'pilot boat',
  'airfield tug',
  'cider-press tractor',
  'road roller',
  'saw-mill carriage',
  'travelling crane',
  'milk tanker',
  'reservoir workboat',
  'stone-crusher set',
  'beach tractor of the lifeboat',
  'hedge-cutter tractor',
  'parish gravedigger',
] as const;
const DYNAMOS = [
  'vintage tractor',
  'fairground lighting set',
  'canal maintenance boat',
  'standby set of a village hall',
  'threshing-day portable engine',
  'shepherd’s lighting plant',
  'old fire pump',
  'lifeboat-station winch',
  'cinema standby set',
  'heritage-line railcar',
  'mountain-hut lighting plant',
  'steam launch',
] as const;
export const CUSTOMERS = [
  'The owner, by hand cart',
  'A fitter from the yard across the road',
  'The night foreman',
  'A driver on the way home',
  'The caretaker',
  'A farmer between two jobs',
  'The storekeeper of the depot',
  'A retired engineer who looks after it',
  'The chief mechanic, by the parts van',
  'A neighbour of the workshop',
] as const;

interface Complaint {
  readonly text: string;
  readonly fits: readonly Family[];
}
const ANY: readonly Family[] = [
  'sound',
  'open',
  'joint',
  'bridge',
  'short',
  'ground',
  'reversed',
  'dirty',
  'leak',
  'two',
];

const STARTER_COMPLAINTS: readonly Complaint[] = [
  {
    text: 'Cranks more slowly than it used to. Battery and cables were changed last week and made little difference.',
    fits: ['sound', 'bridge', 'short', 'ground', 'joint', 'reversed', 'two', 'dirty'],
  },
  {
    text: 'Some mornings nothing but a click. Rocked a little in gear, it goes the next time.',
    fits: ['sound', 'open', 'joint', 'dirty', 'two'],
  },
  {
    text: 'Sparks can be seen through the cover band, and the brushes never last long.',
    fits: ['open', 'joint', 'dirty', 'reversed', 'two', 'bridge'],
  },
  {
    text: 'Draws the lights right down when it turns and is too warm to touch after three tries.',
    fits: ['bridge', 'short', 'ground', 'sound', 'reversed', 'two'],
  },
  {
    text: 'Stood outside over winter with the cover off and has not been right since.',
    fits: ['sound', 'ground', 'dirty', 'leak', 'bridge', 'two'],
  },
  { text: 'Nothing wrong that anyone can name: it is in for its yearly look before the season.', fits: ANY },
  {
    text: 'Turns well when cold and barely at all after an hour’s work. It has been apart before: the screws are chewed.',
    fits: ['sound', 'joint', 'open', 'short', 'bridge', 'two'],
  },
  {
    text: 'Blew the main fuse once in the rain; since then it cranks, but nobody trusts it.',
    fits: ['sound', 'ground', 'leak', 'bridge', 'short', 'two'],
  },
  {
    text: 'Rewound by somebody unknown a year ago and never as lively as the one it replaced.',
    fits: ['sound', 'reversed', 'joint', 'open', 'short', 'leak'],
  },
  {
    text: 'Chatters and stops half-way round. The driver has been parking on hills.',
    fits: ['sound', 'open', 'joint', 'dirty', 'bridge', 'two', 'ground'],
  },
  { text: 'Bought second-hand in a box of parts. Nobody knows its story.', fits: ANY },
];
const DYNAMO_COMPLAINTS: readonly Complaint[] = [
  {
    text: 'The charge lamp flickers at tick-over and never quite goes out. A new belt is on.',
    fits: ['sound', 'open', 'joint', 'bridge', 'short', 'dirty', 'two'],
  },
  {
    text: 'Charges well below what it should, at any speed. The regulator was changed for a known good one.',
    fits: ['open', 'bridge', 'short', 'reversed', 'ground', 'sound', 'two'],
  },
  {
    text: 'Smelt hot on the last run and has charged badly ever since.',
    fits: ['short', 'bridge', 'ground', 'reversed', 'open', 'two'],
  },
  {
    text: 'Sparks all the way round the brushes; it was cleaned at home with whatever was on the bench.',
    fits: ['dirty', 'bridge', 'joint', 'open', 'two'],
  },
  {
    text: 'The shed flooded up to the bearings and it has been drying on a shelf since.',
    fits: ['sound', 'ground', 'leak', 'dirty', 'two'],
  },
  { text: 'Nothing wrong that anyone can name: it is in for its yearly look before the season.', fits: ANY },
  { text: 'Came with the machine as a spare. Nobody knows whether it ever ran.', fits: ANY },
];
const REQUESTS = [
  'Test the armature and write up what you find.',
  'Test the armature and say what happens to it next.',
  'Say whether the armature can go back in.',
  'Test the armature; save the old one if it can be saved.',
] as const;

/** A card for a part with faults of a family: a starter for four poles and more, a dynamo for two. */
export function cardFor(family: Family, chance: Chance, design: ArmatureDesign): JobCard {
  const dynamo = design.poles === 2;
  const machine = dynamo ? pick(chance, DYNAMOS) : pick(chance, STARTERS);
  const complaints = (dynamo ? DYNAMO_COMPLAINTS : STARTER_COMPLAINTS).filter(({ fits }) =>
    fits.includes(family),
  );
  return {
    unit: `${dynamo ? 'Dynamo' : 'Starter motor'}, ${machine}`,
    broughtInBy: pick(chance, CUSTOMERS),
    complaint: pick(chance, complaints).text,
    askedFor: pick(chance, REQUESTS),
  };
}
