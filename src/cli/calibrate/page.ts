import { capital } from '../../bench/capital.ts';
import type { Calibration } from './calibrate.ts';
import { SEEDS } from './calibrate.ts';
import { LEARNERS } from './learners.ts';
import { type Bin, holds, JUDGED_FROM, logScore } from './reliability.ts';
import type { World } from './worlds.ts';

/**
 * The published page: what was said against what came true, world by world.
 * @param missing worlds the run has not come to, where it was broken off
 */
export function calibrationPage(all: readonly Calibration[], missing: readonly World[] = []): string {
  const failed = all.reduce((sum, one) => sum + one.failed.length, 0);
  const judged = all.flatMap(({ bins }) => bins).filter(({ count }) => count >= JUDGED_FROM).length;
  return `${[
    '# Calibration of the evidence engine',
    '',
    'Printed by `npm run -s calibrate`. Parts are drawn as often as the engine believes they come to the bench, scripted learners of varied skill read what they read, and things are said of each part: for each bin of the tables the claim whose probability comes nearest to its middle. If the engine is right about itself, of all claims it calls 80 % likely about 80 % are true.',
    '',
    `A bin counts attempts: no attempt is in it twice. Bins with fewer than ${JUDGED_FROM} attempts are shown and not judged. A bin holds when the mean of what was said lies within the 95 % interval of what came true (Wilson's score), or no further beyond it than the limit stated for that world. In the worlds after the first the engine cannot be quite right: they are other than it believes.`,
    '',
    `Seeds: ${SEEDS.join(', ')}. ${judged} bins are judged, ${failed === 0 ? 'and all of them hold' : `and ${failed} of them do not hold`}.`,
    ...(missing.length > 0
      ? ['', `The run was broken off. Not tried in it: ${missing.map(({ name }) => name).join(', ')}.`]
      : []),
    ...all.flatMap(section),
  ].join('\n')}\n`;
}

function section(one: Calibration): string[] {
  const { world, tried, bins, logScore: score } = one;
  return [
    '',
    `## ${world.name.charAt(0).toUpperCase()}${world.name.slice(1)}`,
    '',
    `${capital(world.what)}. ${tried.length} attempts; limit beyond the interval ${percent(world.tolerance)}.`,
    '',
    '| said | attempts | mean said | came true | 95 % interval | |',
    '| --- | --: | --: | --: | --- | --- |',
    ...bins.map((bin) => binRow(bin, world.tolerance)),
    '',
    `Mean log score ${score.toFixed(3)} nats (${seedScores(one)}). Likeliest claim judged proven: ${provenOf(one)}.`,
  ];
}

function binRow(bin: Bin, tolerance: number): string {
  const verdict = bin.count < JUDGED_FROM ? 'too few' : holds(bin, tolerance) ? 'holds' : '**does not hold**';
  return `| ${percent(bin.from)} to ${percent(bin.to)} | ${bin.count} | ${percent(bin.said)} | ${percent(bin.right)} | ${percent(bin.low)} to ${percent(bin.high)} | ${verdict} |`;
}

function seedScores({ tried }: Calibration): string {
  return SEEDS.map((seed, k) => {
    const said = tried.filter((_, n) => n % SEEDS.length === k).flatMap((one) => one.said);
    return `${seed} ${logScore(said).toFixed(3)}`;
  }).join(', ');
}

function provenOf({ tried }: Calibration): string {
  return LEARNERS.map(({ name }) => {
    const own = tried.filter(({ learner }) => learner === name);
    return `${name} ${own.filter(({ judgement }) => judgement === 'proven').length} of ${own.length}`;
  }).join(', ');
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
