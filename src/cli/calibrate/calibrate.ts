import { readFileSync } from 'node:fs';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { type Tried, tryOnce } from './attempt.ts';
import type { FieldTables } from './finiteElements.ts';
import { type Bin, binsOf, holds, isRead, JUDGED_FROM, logScore } from './reliability.ts';
import type { Described, World } from './worlds.ts';

/** Seeds of the runs that are published; each has a third of the attempts. */
export const SEEDS = ['anvil', 'bellows', 'crucible'] as const;

/** One world's attempts with what they show. */
export interface Calibration {
  readonly world: Described;
  readonly tried: readonly Tried[];
  readonly bins: readonly Bin[];
  /** What readings have hardly spoken of, in a world whose parts come otherwise than believed; shown, not judged. */
  readonly unread: readonly Bin[];
  /** Judged bins whose chances lie beyond the interval and the limit. */
  readonly failed: readonly Bin[];
  readonly logScore: number;
}

export function calibrateWorld(
  world: World,
  designs: readonly ArmatureDesign[],
  offsetsOf: (design: ArmatureDesign) => readonly number[],
  attempts: number,
  seeds: readonly string[] = SEEDS,
): Calibration {
  const tried = Array.from({ length: attempts }, (_, n) => {
    const design = designs[n % designs.length]!;
    return tryOnce(world, design, offsetsOf(design), `${seeds[n % seeds.length]} ${n}`);
  });
  return summed(world, tried);
}

/** A table of what was said in one world. */
export function summed(world: Described, tried: readonly Tried[]): Calibration {
  const all = tried.flatMap((one) => one.said);
  const said = world.byPriors ? all : all.filter(isRead);
  const bins = binsOf(said);
  return {
    world,
    tried,
    bins,
    unread: world.byPriors ? [] : binsOf(all.filter((one) => !isRead(one))),
    failed: bins.filter((bin) => bin.count >= JUDGED_FROM && !holds(bin, world.tolerance)),
    logScore: logScore(said),
  };
}

/** Data of the finite-element reference, kept with the tests that use it. */
export function readFieldTables(): FieldTables {
  const file = new URL('../../../tests/reference/data/fem-inductance.json', import.meta.url);
  const { cases } = JSON.parse(readFileSync(file, 'utf8')) as {
    cases: { armature: string; theta_in_slot_pitches: number; M_H_per_m: number[][] }[];
  };
  return cases
    .filter(({ armature }) => armature === 'A_wave23')
    .map((one) => ({
      bars: 23,
      columns: 1,
      pitches: one.theta_in_slot_pitches,
      matrix: one.M_H_per_m,
    }));
}
