import { type Action, RANGES_A } from '../../../../bench/action.ts';
import { barAngleDeg, canReach } from '../../../../bench/geometry.ts';
import { unmovedWork } from '../../../../bench/guide/guide.ts';
import { barOf, barPlace, type LeadId } from '../../../../bench/places.ts';
import { printedA } from '../../../../bench/scale.ts';
import { stepsUp } from '../../../shared/count.ts';
import { atHand } from '../atHand.ts';
import { nearestBar } from '../keys.ts';
import { standing } from '../sheetEntry.ts';
import { asStep, doing, powered, type Situation, type Step, writing } from './step.ts';

type AmmeterTest = 'spaced' | 'neighbour';
const FIRST: LeadId = 'ammeter.1';
const SECOND: LeadId = 'ammeter.2';
/** Least spacing of the spaced test, bars. */
const LEAST_SPACING = 2;

/** One ammeter pass all round, from taking the probes to the last reading. */
export function ammeterStep(test: AmmeterTest, at: Situation): Step | null {
  if (written(test, at) === at.job.armature.bars) return null;
  const why = 'HIGH is full excitation: the coils give their full voltage, and the ammeter needs it.';
  return (
    powered('high', at, why) ??
    takeStep(at) ??
    asStep(unmovedWork({ seen: at.seen, watched: at.known.watched })) ??
    placeProbes(test, at) ??
    readStep(test, at)
  );
}

function written(test: AmmeterTest, { lines, job }: Situation): number {
  return [...standing(lines, test).keys()].filter((count) => count !== null && count < job.armature.bars)
    .length;
}

function takeStep({ seen }: Situation): Step | null {
  const lead = [FIRST, SECOND].find((one) => seen.leads[one].at === 'holster');
  if (!lead) return null;
  const say = `Take ${lead === FIRST ? 'ammeter probe 1' : 'ammeter probe 2'} by its handle.`;
  return doing(
    { type: 'lead.take', lead, grip: 'handle' },
    say,
    'Two short plain needles: these belong to the ammeter. Both fit in one hand.',
  );
}

/** Both probes in the stand at the spacing the test wants. */
function placeProbes(test: AmmeterTest, at: Situation): Step | null {
  const apart = spacingNow(at);
  const wanted = wantedSpacing(test, at);
  if (wanted === 'explore') return exploreStep(at);
  if (apart !== wanted) return setStep(wanted, at);
  const loose = [FIRST, SECOND].find((lead) => at.seen.leads[lead].at === 'hand');
  if (!loose) return null;
  const why =
    'The stand keeps both tips where they are, so that every bar is read in the same place over the cradle, and your hands are free to turn.';
  return doing({ type: 'lead.clamp', lead: loose }, 'Leave the probe in the holding stand.', why);
}

/** Bars up from probe 1 to probe 2, or null when either touches none. */
function spacingNow({ seen, job }: Situation): number | null {
  const [first, second] = barsTouched(seen);
  return first === null || second === null ? null : stepsUp(first, second, job.armature.bars);
}

function barsTouched(seen: Situation['seen']): readonly [number | null, number | null] {
  const bar = (lead: LeadId) => {
    const { touches } = seen.leads[lead];
    return touches === null ? null : barOf(touches);
  };
  return [bar(FIRST), bar(SECOND)];
}

function wantedSpacing(test: AmmeterTest, at: Situation): number | 'explore' {
  if (test === 'neighbour') return 1;
  const apart = spacingNow(at);
  const begun = written('spaced', at) > 0;
  if (begun && apart !== null && apart >= LEAST_SPACING) return apart;
  if (nextToTry(at) !== null) return 'explore';
  const tried = [...at.known.spacings].filter(([spacing]) => spacing >= LEAST_SPACING);
  return tried.reduce((best, one) => (one[1] > best[1] ? one : best), [LEAST_SPACING, -1])[0];
}

/** The next spacing not tried yet that a probe can reach with the other at the front, or null. */
function nextToTry({ known, job, seen }: Situation): number | null {
  const tried = [...known.spacings.keys()].filter(
    (spacing) => spacing >= LEAST_SPACING && spacing < job.armature.bars / 2,
  );
  const next = Math.max(LEAST_SPACING - 1, ...tried) + 1;
  const front = nearestBar(seen, job.armature);
  const bar = (front + next) % job.armature.bars;
  return canReach(barAngleDeg(job.armature, bar, seen.rotationDeg)) ? next : null;
}

function exploreStep(at: Situation): Step {
  const next = nextToTry(at) ?? LEAST_SPACING;
  if (spacingNow(at) === next) {
    return { say: 'Let the needle come to rest and keep the reading in mind.', why: EXPLORE_WHY, act: null };
  }
  return setStep(next, at);
}

const EXPLORE_WHY =
  'Step the second probe away bar by bar: the spacing with the largest reading shows a bad joint best. On a four-pole armature it is about a quarter of the commutator.';

/** Puts probe 1 on the bar nearest the person and probe 2 so many bars on. */
function setStep(apart: number, at: Situation): Step {
  const { seen, job } = at;
  const front = nearestBar(seen, job.armature);
  const [first] = barsTouched(seen);
  const inStand = [FIRST, SECOND].find((lead) => seen.leads[lead].at === 'stand');
  if (inStand)
    return doing(
      { type: 'lead.take', lead: inStand, grip: 'handle' },
      'Take the probe out of the stand.',
      'It has to go to another bar.',
    );
  if (first !== front)
    return touchStep(
      FIRST,
      front,
      'Set probe 1 on the bar nearest you.',
      'Begin where you can see and count.',
    );
  const why =
    apart === 1
      ? 'Neighbouring bars have one coil between them: this pass looks at coil after coil.'
      : EXPLORE_WHY;
  const say =
    apart === 1 ? 'Set probe 2 on the next bar down.' : `Set probe 2 on the bar ${apart} further down.`;
  return touchStep(SECOND, (front + apart) % job.armature.bars, say, why);
}

function touchStep(lead: LeadId, bar: number, say: string, why: string): Step {
  return doing({ type: 'lead.touch', lead, place: barPlace(bar) }, say, why);
}

/** Range, rest, write, turn: once for every bar. */
function readStep(test: AmmeterTest, at: Situation): Step {
  const { seen, job, lines } = at;
  const range = rangeStep(test, at);
  if (range) return range;
  const here = atHand(seen, job.armature);
  const count = here?.test === test ? here.count : null;
  if (count !== null && standing(lines, test).has(count))
    return turnStep(
      at,
      'The probes stay, the bars pass under them: a difference is then in the bar and not in the place.',
    );
  if (!seen.needle.atRest)
    return { say: 'Let the needle come to rest.', why: 'A moving needle has no reading.', act: null };
  if (!at.known.watched.meter.moved)
    return turnStep(
      at,
      'The needle has not moved yet. See whether it does at other bars before that is called a finding.',
    );
  const why = 'Every bar gets its reading. What counts is the bar that differs from the rest.';
  return writing(test, 'Read the needle and write the line.', why);
}

function turnStep({ job }: Situation, why: string): Step {
  const turn: Action = { type: 'armature.turn', byDeg: 360 / job.armature.bars };
  return doing(turn, 'Turn the armature by one bar, top towards you.', why);
}

/** Before the first line the range that fits; after it only a needle at its stop is a reason to change. */
function rangeStep(test: AmmeterTest, at: Situation): Step | null {
  const { needle, rangeA } = at.seen;
  const index = RANGES_A.indexOf(rangeA);
  if (needle.pegged && index < RANGES_A.length - 1) {
    return doing(
      { type: 'range.turn', to: RANGES_A[index + 1]! },
      'Turn the ammeter to the next range up.',
      'The needle is against its stop: that is no reading, and it bends needles.',
    );
  }
  const lower = RANGES_A[index - 1];
  const fits = lower !== undefined && needle.atRest && printedA(needle, rangeA) < 0.9 * lower;
  if (!fits || written(test, at) > 0) return null;
  return doing(
    { type: 'range.turn', to: lower },
    `Turn the ammeter down to ${lower} A.`,
    'The further up the scale, the finer the reading. Start high, then come down.',
  );
}

/** Ammeter probes put away once no ammeter test is left. */
export function holsterAmmeter({ seen }: Situation): Step | null {
  const lead = [FIRST, SECOND].find((one) => seen.leads[one].at !== 'holster');
  if (!lead) return null;
  return doing(
    { type: 'lead.holster', lead },
    'Put the ammeter probe back into its holster.',
    'One set of leads at a time: mixing them up is how meters and people get hurt.',
  );
}
