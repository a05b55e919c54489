import type { PartLibrary } from '../../scenario/scenario.ts';
import { type Tried, tryOnce } from './attempt.ts';
import { readFieldTables, SEEDS } from './calibrate.ts';
import { pitchesOf } from './finiteElements.ts';
import { MAT_WORLDS } from './mat/worlds.ts';
import { BELIEVED, type Described, finiteElementWorld, MIS_SPECIFIED } from './worlds.ts';

/** One world to be tried, attempt by attempt; each seed has a third of them. */
export interface Run {
  readonly world: Described;
  tryNth(n: number): Tried;
}

/** One of each winding of the workshop. */
const TRIED = ['wave-23', 'lap-28', 'lap-24'];
const OFFSETS = [0, 0.125, 0.25, 0.5];

/** What is calibrated, each with a page of its own. */
export const SUBJECTS = ['armature', 'mat'] as const;
export type Subject = (typeof SUBJECTS)[number];

export function runsOf(subject: Subject, library: PartLibrary): Run[] {
  return subject === 'armature' ? armatureRuns(library) : matRuns(library);
}

/** Field frame and brush plate; the armature on the card has no part in them. */
function matRuns(library: PartLibrary): Run[] {
  const [armature] = library.values();
  return MAT_WORLDS.map((world) => ({ world, tryNth: (n: number) => world.tryNth(n, armature!) }));
}

function armatureRuns(library: PartLibrary): Run[] {
  const designs = [...library.values()].filter(({ id }) => TRIED.includes(id));
  const tables = readFieldTables();
  const solved = designs.filter((design) => pitchesOf(tables, design).length > 0);
  const elements = finiteElementWorld(tables);
  const seedOf = (n: number) => `${SEEDS[n % SEEDS.length]} ${n}`;
  return [
    ...[BELIEVED, ...MIS_SPECIFIED].map((world) => ({
      world,
      tryNth: (n: number) => tryOnce(world, designs[n % designs.length]!, OFFSETS, seedOf(n)),
    })),
    {
      world: elements,
      tryNth: (n: number) => {
        const design = solved[n % solved.length]!;
        return tryOnce(elements, design, pitchesOf(tables, design), seedOf(n));
      },
    },
  ];
}

export function tryRun({ tryNth }: Run, attempts: number): Tried[] {
  return Array.from({ length: attempts }, (_, n) => tryNth(n));
}
