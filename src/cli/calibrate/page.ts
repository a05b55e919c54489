import { capital } from '../../bench/capital.ts';
import type { Calibration } from './calibrate.ts';
import { SEEDS } from './calibrate.ts';
import { LEARNERS } from './learners.ts';
import { MAT_LEARNERS } from './mat/learners.ts';
import { type Bin, holds, isRead, JUDGED_FROM, logScore } from './reliability.ts';
import type { Subject } from './runs.ts';
import type { Described } from './worlds.ts';

const TITLES: Readonly<Record<Subject, string>> = {
  armature: 'the evidence engine: armature',
  mat: 'the evidence engine: field frame and brush plate',
};

/** What was found out about the worlds that are not as believed. */
const REASONS: Readonly<Record<Subject, readonly string[]>> = {
  armature: [
    '',
    'The engine lists faults of one sort (joints, shorts, open coils, reversed coils) up to four at once, and what comes together of two sorts; three sorts at once are on no list, nor are grounds inside coils, which it takes to be at the nearer bar, nor two coils that touch others. Coils grounded inside pass for a short in one coil: a good deal of what is said too surely in the last bin.',
    '',
    'Most of what is still said too modestly in the second bin comes from learners who have read part of the bars only. Their readings leave much to what was believed before, and in these worlds no part is without fault. *Several alike, told so* shows how much of it that is: the same parts and readings, the engine told beforehand that faults come together; it is nearly right about the unlikely then, and too sure of what it holds likely.',
  ],
  mat: [
    '',
    'What does not hold are worlds in which no part has one fault alone. Of a field frame with shorts or bad joints, whoever has only a lamp or an insulation tester sees nothing, and is told that it is probably sound: so most parts that come are. Two loose rivets of which one makes when the other breaks are rare to the engine and in half of the plates with several faults; often no reading tells them from one common fault.',
  ],
};

/**
 * The published page: what was said against what came true, world by world.
 * @param missing worlds the run has not come to, where it was broken off
 */
export function calibrationPage(
  subject: Subject,
  all: readonly Calibration[],
  missing: readonly Described[] = [],
): string {
  const failed = all.reduce((sum, one) => sum + one.failed.length, 0);
  const judged = all.flatMap(({ bins }) => bins).filter(({ count }) => count >= JUDGED_FROM).length;
  return `${[
    `# Calibration of ${TITLES[subject]}`,
    '',
    `Printed by \`npm run -s calibrate -- ${subject}\`. Parts are drawn as often as the engine believes they come to the bench, scripted learners of varied skill read what they read, and things are said of each part: for each bin of the tables the claim whose probability comes nearest to its middle. If the engine is right about itself, of all claims it calls 80 % likely about 80 % are true.`,
    '',
    `A bin counts attempts: no attempt is in it twice. Bins with fewer than ${JUDGED_FROM} attempts are shown and not judged. A bin holds when the mean of what was said lies within the 95 % interval of what came true (Wilson's score), or no further beyond it than the limit stated for that world. In the worlds that are not as believed the engine cannot be quite right.`,
    '',
    'Where every part has something more than the engine believes, how often a claim is true that no reading speaks of is a matter of how the parts were drawn. There only claims are judged that readings have made twice or half as likely, in odds, as before the first of them; what is left is shown below the table.',
    '',
    `Seeds: ${SEEDS.join(', ')}. ${judged} bins are judged, ${failed === 0 ? 'and all of them hold' : `and ${failed} of them do not hold`}.`,
    ...(missing.length > 0
      ? ['', `The run was broken off. Not tried in it: ${missing.map(({ name }) => name).join(', ')}.`]
      : []),
    ...(new Set(all.map(({ tried }) => tried.length)).size > 1
      ? [
          '',
          'The run was ended before its time: the worlds have different numbers of attempts, some too few to judge.',
        ]
      : []),
    ...REASONS[subject],
    ...all.flatMap(section),
  ].join('\n')}\n`;
}

function section(one: Calibration): string[] {
  const { world, tried, bins, unread, logScore: score } = one;
  return [
    '',
    `## ${capital(world.name)}`,
    '',
    `${capital(world.what)}. ${tried.length} attempts; limit beyond the interval ${percent(world.tolerance)}.`,
    '',
    '| said | attempts | mean said | came true | 95 % interval | |',
    '| --- | --: | --: | --: | --- | --- |',
    ...bins.map((bin) => binRow(bin, world.tolerance)),
    '',
    ...(unread.length === 0 ? [] : [unreadLine(unread), '']),
    `Mean log score ${score.toFixed(3)} nats (${seedScores(one)}). Likeliest claim judged proven: ${provenOf(one)}.`,
  ];
}

function binRow(bin: Bin, tolerance: number): string {
  const verdict = bin.count < JUDGED_FROM ? 'too few' : holds(bin, tolerance) ? 'holds' : '**does not hold**';
  return `| ${percent(bin.from)} to ${percent(bin.to)} | ${bin.count} | ${percent(bin.said)} | ${percent(bin.right)} | ${percent(bin.low)} to ${percent(bin.high)} | ${verdict} |`;
}

function unreadLine(unread: readonly Bin[]): string {
  const rows = unread.flatMap(({ count, said, right }) =>
    count === 0 ? [] : [`${count} said ${percent(said)}, true ${percent(right)}`],
  );
  return `Not judged, as no reading speaks of it: ${rows.join('; ')}.`;
}

function seedScores({ tried, world }: Calibration): string {
  return SEEDS.map((seed, k) => {
    const all = tried.filter((_, n) => n % SEEDS.length === k).flatMap((one) => one.said);
    const said = world.byPriors ? all : all.filter(isRead);
    return `${seed} ${logScore(said).toFixed(3)}`;
  }).join(', ');
}

function provenOf({ tried }: Calibration): string {
  const names = new Set([...LEARNERS, ...MAT_LEARNERS].map(({ name }) => name));
  return [...names]
    .flatMap((name) => {
      const own = tried.filter(({ learner }) => learner === name);
      return own.length === 0
        ? []
        : `${name} ${own.filter(({ judgement }) => judgement === 'proven').length} of ${own.length}`;
    })
    .join(', ');
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
