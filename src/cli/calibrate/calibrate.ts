import { readFileSync } from 'node:fs';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { issueLines, readLibrary } from '../support/files.ts';
import { type Tried, tryOnce } from './attempt.ts';
import { type FieldTables, pitchesOf } from './finiteElements.ts';
import { LEARNERS } from './learners.ts';
import { type Bin, binsOf, holds, JUDGED_FROM, logScore } from './reliability.ts';
import { BELIEVED, finiteElementWorld, MIS_SPECIFIED, type World } from './worlds.ts';

/** Seeds of the runs that are printed; each is a third of the attempts. */
export const SEEDS = ['anvil', 'bellows', 'crucible'] as const;
/** Attempts in each world: enough that every bin is judged. */
const ATTEMPTS = 2400;
/** Shares of a slot pitch at which the armature may come to lie. */
const OFFSETS = [0, 0.125, 0.25, 0.5];

/** One world's attempts with what they show. */
export interface Calibration {
  readonly world: World;
  readonly tried: readonly Tried[];
  readonly bins: readonly Bin[];
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
  const bins = binsOf(tried);
  return {
    world,
    tried,
    bins,
    failed: bins.filter((bin) => bin.count >= JUDGED_FROM && !holds(bin, world.tolerance)),
    logScore: logScore(tried),
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

/** `npm run calibrate`: prints a reliability table for every world; fails when a judged bin lies outside its limit. */
export function calibrate(words: readonly string[], print: (line: string) => void): number {
  const share = words.length === 0 ? 1 : Number(words[0]);
  if (!(share > 0 && share <= 100) || words.length > 1) {
    print(`Expected nothing or a factor for the number of attempts, but "${words.join(' ')}" came.`);
    return 2;
  }
  const library = readLibrary();
  if (!library.ok) {
    issueLines('scenarios', library.issues).forEach(print);
    return 1;
  }
  const designs = [...library.value.values()].filter(({ id }) => TRIED.includes(id));
  const tables = readFieldTables();
  const runs: [World, readonly ArmatureDesign[], (design: ArmatureDesign) => readonly number[], number][] = [
    [BELIEVED, designs, () => OFFSETS, ATTEMPTS],
    ...MIS_SPECIFIED.map((world): (typeof runs)[number] => [world, designs, () => OFFSETS, ATTEMPTS]),
    [
      finiteElementWorld(tables),
      designs.filter((design) => pitchesOf(tables, design).length > 0),
      (design) => pitchesOf(tables, design),
      ATTEMPTS,
    ],
  ];
  let failed = 0;
  for (const [world, parts, offsetsOf, attempts] of runs) {
    const found = calibrateWorld(world, parts, offsetsOf, Math.round(share * attempts));
    for (const line of reportLines(found)) print(line);
    failed += found.failed.length;
  }
  print(
    failed === 0 ? 'Every judged bin lies within its limit.' : `${failed} bins lie outside their limits.`,
  );
  return failed === 0 ? 0 : 1;
}
/** One of each winding of the workshop. */
const TRIED = ['wave-23', 'lap-28', 'lap-24'];

export function reportLines({ world, tried, bins, logScore: score }: Calibration): string[] {
  const rows = bins.map((bin) => {
    const judged = bin.count < JUDGED_FROM ? 'too few' : holds(bin, world.tolerance) ? 'holds' : 'FAILS';
    const cells = [
      `${percent(bin.from)}-${percent(bin.to)}`,
      String(bin.count),
      percent(bin.said),
      percent(bin.right),
      `${percent(bin.low)}-${percent(bin.high)}`,
      judged,
    ];
    return cells.map((cell, k) => cell.padStart(WIDTHS[k]!)).join(' ');
  });
  const proven = LEARNERS.map(({ name }) => {
    const own = tried.filter(({ learner }) => learner === name);
    return `${name} ${own.filter(({ judgement }) => judgement === 'proven').length}/${own.length}`;
  });
  const seeds = SEEDS.map((seed, k) => {
    const own = tried.filter((_, n) => n % SEEDS.length === k);
    return `${seed} ${logScore(own).toFixed(3)}`;
  });
  return [
    '',
    `${world.name}: ${world.what}; ${tried.length} attempts, limit ${percent(world.tolerance)} beyond the interval`,
    HEADINGS.map((heading, k) => heading.padStart(WIDTHS[k]!)).join(' '),
    ...rows,
    `log score ${score.toFixed(3)} (${seeds.join(', ')})`,
    `proven: ${proven.join(', ')}`,
  ];
}
const HEADINGS = ['said', 'attempts', 'mean', 'right', '95 % interval', ''];
const WIDTHS = [11, 9, 7, 7, 15, 8];

function percent(share: number): string {
  return `${(100 * share).toFixed(1)}%`;
}
