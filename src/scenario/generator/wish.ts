import type { PartKind } from '../../bench/action.ts';
import type { Mode } from '../../bench/port.ts';
import type { MainsId } from '../../engine/drive.ts';

/** Kinds of armature the generator makes. `leak`: insulation gone weak; `two`: two faults that can be told apart. */
export const FAMILIES = [
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
] as const;
export type Family = (typeof FAMILIES)[number];

/** Kinds of field frame: a broken coil, a bad brush joint, a coil gone to the case, weak insulation, shorted turns. */
export const FRAME_FAMILIES = ['sound', 'open', 'joint', 'ground', 'leak', 'short', 'two'] as const;
export type FrameFamily = (typeof FRAME_FAMILIES)[number];

/** Kinds of brush plate: packed dirt, a rivet that moves, a broken-down insulator, a torn pigtail, a leak. */
export const PLATE_FAMILIES = ['sound', 'dirt', 'rivet', 'breakdown', 'pigtail', 'leak', 'two'] as const;
export type PlateFamily = (typeof PLATE_FAMILIES)[number];

/** What can be the matter with the bench itself. */
export const BENCH_FAMILIES = ['lamp', 'lampLead', 'handle', 'ammeterLead', 'zero'] as const;
export type BenchFamily = (typeof BENCH_FAMILIES)[number];

/** What the gauges can find against the card's limits. */
export const WEAR_FAMILIES = ['shallow', 'runsOut', 'thin', 'shortBrush'] as const;
export type WearFamily = (typeof WEAR_FAMILIES)[number];

export const DIFFICULTIES = ['easy', 'medium', 'hard'] as const;
/** How plainly the tests show what is the matter. */
export type Difficulty = (typeof DIFFICULTIES)[number];

/** What is asked of the generator; what is left out is left to the seed, but for what says otherwise. */
export interface Wish {
  /** The same seed and wish give the same job everywhere. */
  readonly seed: string | number;
  /** What is to be judged; left out: the armature. */
  readonly about?: readonly PartKind[];
  /** Part type of the armature, to be judged or to lie in the cradle. */
  readonly part?: string;
  readonly family?: Family;
  /** Type of the field frame. */
  readonly frame?: string;
  readonly frameFamily?: FrameFamily;
  readonly plateFamily?: PlateFamily;
  /** Left out: the bench is in order. */
  readonly bench?: BenchFamily;
  /** Left out: nothing is worn; asked for, the card asks for the gauges too. */
  readonly wear?: WearFamily;
  /** The card asks for the gauges and leaves it to the bench to cure what it can; left out: no. */
  readonly curedHere?: boolean;
  readonly difficulty?: Difficulty;
  readonly mains?: MainsId;
  readonly mode?: Mode;
}

/** Even draws from [0, 1). */
export type Chance = () => number;

export function pick<T>(chance: Chance, from: readonly T[]): T {
  const one = from[Math.floor(chance() * from.length)];
  if (one === undefined) throw new RangeError('nothing to choose from');
  return one;
}

/** A figure between two, evenly by its logarithm, to two digits: as a person would write it. */
export function figure(chance: Chance, least: number, most: number): number {
  return Number((least * (most / least) ** chance()).toPrecision(2));
}

export interface Range {
  readonly least: number;
  readonly most: number;
}
export type ByDifficulty = Readonly<Record<Difficulty, Range>>;

export function drawn(chance: Chance, { least, most }: Range): number {
  return figure(chance, least, most);
}
