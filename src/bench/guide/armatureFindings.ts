import type { ArmatureRemedy } from '../../engine/parts/remedies.ts';
import type { SheetLine } from '../paper.ts';
import type { Called } from './remedyWork.ts';
import type { Asked } from './step.ts';

/** What the lines about an armature call for. */

/** A reading below this share of the usual one has dropped out, or lies plainly low. Read by eye in practice; the shares are ours. */
const DROPPED_OUT = 1 / 3;
const PLAINLY_LOW = 4 / 5;
/** Taken off the radius beside the run-out itself when a commutator is skimmed, mm. */
const SKIM_MM = 0.1;

export function armatureRemedy(asked: Asked): Called | null {
  return riserCalled(asked) ?? bridgeCalled(asked) ?? gaugeCalled(asked);
}

/** Both pairs of one bar have fallen away: its riser joint. */
function riserCalled(asked: Asked): Called | null {
  const { bars } = asked.job.armature;
  const low = pairsBelow(DROPPED_OUT, asked.lines);
  const before = low.length === 2 ? low.find((count) => low.includes((count + 1) % bars)) : undefined;
  if (before === undefined || asked.seen.chalkedBar === null) return null;
  const bar = (asked.seen.chalkedBar + before + 1) % bars;
  const tried = asked.remedies.some((done) => done.remedy === 'resolderRiser' && done.bar === bar);
  return tried
    ? null
    : {
        remedy: 'resolderRiser',
        bar,
        because: 'Both pairs at one bar have fallen away: the bar has lost its joint. Solder cures that.',
      };
}

const BRIDGE_ORDER: readonly (readonly [ArmatureRemedy, because: string])[] = [
  [
    'brushBetweenBars',
    'Carbon or copper between bars looks like a short. A brush takes carbon out, and no armature is condemned for a bit of dirt.',
  ],
  [
    'undercut',
    'The brush did not cure it. What is wedged in the groove, copper too, comes out with the saw.',
  ],
  ['skimAndPolish', 'It is still there. What is smeared over the surface comes off on the lathe.'],
];

/**
 * A pair that lies low, or a strip that pulls where no pair was read: clean between the bars, each step as far as it
 * takes. A strip alone is not believed against even readings: near a jaw, and on an equalised winding, it pulls anyhow.
 */
function bridgeCalled(asked: Asked): Called | null {
  const pulls = asked.lines.some(
    ({ test, strip }) => test === 'strip' && strip !== undefined && strip !== 'still',
  );
  const read = asked.lines.some(({ test }) => test === 'neighbour');
  const low = pairsBelow(PLAINLY_LOW, asked.lines).length > 0;
  if (read ? !low : !pulls) return null;
  const steps = pulls ? BRIDGE_ORDER : BRIDGE_ORDER.slice(0, 1);
  const next = steps.find(([remedy]) => !asked.remedies.some((done) => done.remedy === remedy));
  if (next === undefined || (next[0] === 'skimAndPolish' && !canBeSkimmed(asked))) return null;
  return { remedy: next[0], because: next[1] };
}

function gaugeCalled(asked: Asked): Called | null {
  const { limits } = asked.job;
  const runOut = measured('runOut', asked.lines);
  if (runOut !== null && runOut > limits.runOutMm && canBeSkimmed(asked)) {
    return {
      remedy: 'skimAndPolish',
      because: 'It runs out by more than the card allows: turned true, it no longer throws its brushes off.',
    };
  }
  const depth = measured('undercut', asked.lines);
  if (depth === null || depth >= limits.undercutMm) return null;
  return {
    remedy: 'undercut',
    because: 'The mica lies less deep than the card asks for: left so, it lifts the brushes.',
  };
}

/** Whether a skim leaves the diameter above the card's limit, as far as the gauges were read. */
function canBeSkimmed({ lines, job }: Asked): boolean {
  const diameter = measured('diameter', lines);
  if (diameter === null) return true;
  const off = 2 * (SKIM_MM + (measured('runOut', lines) ?? 0));
  return diameter - off >= job.limits.commutatorDiameterMm;
}

function measured(gauge: NonNullable<SheetLine['gauge']>, lines: readonly SheetLine[]): number | null {
  return lines.findLast((line) => line.test === 'gauges' && line.gauge === gauge)?.millimetres ?? null;
}

/** Counts of the neighbouring pairs read below a share of the usual reading. */
function pairsBelow(share: number, lines: readonly SheetLine[]): readonly number[] {
  const readings = new Map<number, number>();
  for (const { test, count, readingA } of lines) {
    if (test === 'neighbour' && count !== null && readingA !== undefined) readings.set(count, readingA);
  }
  const sorted = [...readings.values()].sort((a, b) => a - b);
  const usual = sorted[Math.floor(sorted.length / 2)] ?? 0;
  return [...readings].filter(([, reading]) => reading < share * usual).map(([count]) => count);
}
