import type { Mode } from '../../bench/port.ts';
import type { MainsId } from '../../engine/drive.ts';

/** Kinds of job the generator makes. `leak`: insulation gone weak; `two`: two faults that can be told apart. */
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

export const DIFFICULTIES = ['easy', 'medium', 'hard'] as const;
/** How plainly the tests show what is the matter. */
export type Difficulty = (typeof DIFFICULTIES)[number];

/** What is asked of the generator; what is left out is left to the seed. */
export interface Wish {
  /** The same seed and wish give the same job everywhere. */
  readonly seed: string | number;
  readonly part?: string;
  readonly family?: Family;
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
