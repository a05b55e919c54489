import { type Condition, zeroOffset } from '../../attempt/condition.ts';
import { PREPARATIONS, type Preparation } from '../../bench/action.ts';
import { scaleCurrent } from '../../engine/instruments/ammeter.ts';
import type { BenchFault } from '../../scenario/hidden/benchFault.ts';
import { acts } from '../film.ts';
import { isLampTest, needsGrowler } from '../lampTests.ts';
import type { Worked } from '../worked.ts';
import { type Criterion, type JobCard, type Judgement, notShown, someOf } from './criterion.ts';

/** The bench itself: what is wrong with it found and put right, and what is seen to before power. */

const faultsOf = ({ conditions }: Worked) => conditions[0]!.bench;
const usesLamp = ({ tests }: Pick<JobCard, 'tests'>) => tests.some(isLampTest);
const usesMeter = ({ tests }: Pick<JobCard, 'tests'>) =>
  tests.includes('spaced') || tests.includes('neighbour');

const onLamp = (fault: BenchFault) =>
  fault.kind === 'blownLamp' || (fault.kind !== 'ammeterZero' && fault.lead.startsWith('lamp'));

/** A needle pressed against its lower stop looks like one that stands at zero: nobody can be asked to notice. */
const canBeSeen = (fault: BenchFault) => fault.kind !== 'ammeterZero' || fault.offset > 0;

/** Faults of the bench that the tests of the job meet with. */
function metWith(worked: Worked): readonly BenchFault[] {
  const met = (fault: BenchFault) => (onLamp(fault) ? usesLamp(worked) : usesMeter(worked));
  return faultsOf(worked).filter((fault) => canBeSeen(fault) && met(fault));
}

/** Entry by which a fault of the bench was gone, or null. */
function rightSince({ conditions }: Worked, fault: BenchFault): number | null {
  const after = conditions.findIndex(({ bench }) => !bench.includes(fault));
  return after < 0 ? null : after - 1;
}

const benchSetRight: Criterion = {
  id: 'benchSetRight',
  title: 'What is wrong with the bench itself found and put right',
  applies: (card) => usesLamp(card) || usesMeter(card),
  arises: (worked) => metWith(worked).length > 0,
  judge(worked) {
    const judged = metWith(worked).map((fault) => judgeFault(worked, fault));
    const share = judged.reduce((sum, one) => sum + one.share, 0) / judged.length;
    const worst = judged.reduce((low, one) => (one.share < low.share ? one : low));
    return { share, sentence: worst.sentence, entries: someOf(judged.flatMap(({ entries }) => entries)) };
  },
};

function judgeFault(worked: Worked, fault: BenchFault): Judgement {
  if (fault.kind === 'crackedHandle') return judgeHandle(worked, fault);
  if (fault.kind === 'ammeterZero') return judgeZero(worked, fault);
  return onLamp(fault) ? judgeDeadLamp(worked, fault) : judgeDeadMeter(worked, fault);
}

/** A lamp that does not light with its tips together is put right before anything is tested with it. */
function judgeDeadLamp(worked: Worked, fault: BenchFault): Judgement {
  const right = rightSince(worked, fault);
  const dead = worked.readings.lamp.filter(
    ({ entry, selector }) => selector === 'low' && (right === null || entry < right),
  );
  const entries = someOf([...dead.map(({ entry }) => entry), ...(right === null ? [] : [right])]);
  if (right === null)
    return {
      share: 0,
      sentence: 'The lamp could not light, and it was not put right: dark meant nothing.',
      entries,
    };
  if (dead.length > 0) {
    const sentence = 'The part was tested with a lamp that could not light before it was put right.';
    return { share: 0.5, sentence, entries };
  }
  const sentence = 'The lamp would not prove; it was put right before anything was tested with it.';
  return { share: 1, sentence, entries };
}

function judgeDeadMeter(worked: Worked, fault: BenchFault): Judgement {
  const right = rightSince(worked, fault);
  const entries = someOf(right === null ? worked.readings.ammeter.map(({ entry }) => entry) : [right]);
  return right === null
    ? { share: 0, sentence: 'Nothing came through the ammeter leads, and they were not put right.', entries }
    : { share: 1, sentence: 'The ammeter leads read nothing anywhere; they were put right.', entries };
}

function judgeHandle(worked: Worked, fault: BenchFault & { readonly kind: 'crackedHandle' }): Judgement {
  const held = worked.film.broken.filter(({ breach }) => breach.interlock === 'crackedHandle');
  const done = held.filter(({ refused }) => !refused);
  const entries = someOf(held.map(({ entry }) => entry));
  const right = rightSince(worked, fault);
  if (done.length > 0) return { share: 0, sentence: done[0]!.breach.sentence, entries };
  if (held.length > 0)
    return { share: 0.5, sentence: `The bench had to stop you: ${held[0]!.breach.sentence}`, entries };
  if (right !== null)
    return {
      share: 1,
      sentence: 'A cracked handle was put right before it was held live.',
      entries: [right],
    };
  const unused = 'A handle was cracked; it was not held live, and not put right either.';
  return { share: 0.5, sentence: unused, entries: [] };
}

/** The needle's zero is set, or every reading is taken with the offset in mind. */
function judgeZero(worked: Worked, fault: BenchFault): Judgement {
  const settled = worked.readings.ammeter.filter((reading) => reading.settled);
  const right = rightSince(worked, fault);
  const off = settled.filter(({ entry }) => right === null || entry < right);
  const entries = someOf(off.map(({ entry }) => entry));
  if (right !== null && off.length === 0)
    return { share: 1, sentence: 'The needle was set to zero before it was read.', entries: [right] };
  if (readsCorrected(worked))
    return {
      share: 1,
      sentence: 'The needle stood off zero, and the readings were written down corrected.',
      entries,
    };
  if (right !== null)
    return {
      share: 0.5,
      sentence: 'The needle was set to zero only after readings had been taken.',
      entries: [...entries, right],
    };
  return {
    share: 0,
    sentence: 'The needle stood off zero, and every reading was taken as it stood.',
    entries,
  };
}

/** Whether most of the currents written down are nearer to what flowed than to what the needle showed. */
function readsCorrected({ readings, sheet, conditions }: Worked): boolean {
  const corrected = sheet.flatMap(({ line, entry }) => {
    const reading = readings.ammeter.filter((one) => one.settled && one.entry < entry).at(-1);
    if (line.readingA === undefined || reading === undefined) return [];
    const shown = (off: number) => scaleCurrent(reading.deflection - off, reading.rangeA);
    const offset = zeroOffset(conditions[reading.entry + 1] as Condition);
    if (offset === 0) return [];
    const wrong = Math.abs(line.readingA - shown(0));
    return [Math.abs(line.readingA - shown(offset)) < wrong];
  });
  return corrected.filter(Boolean).length > corrected.length / 2;
}

/** Eye protection is for solder and turnings. */
const ONLY_FOR_WORK: Preparation = 'eyeProtection';
const HOT_WORK: readonly string[] = ['resolderRiser', 'skimAndPolish', 'undercut'];

function neededBefore({ remedies }: Worked): readonly Preparation[] {
  const hot = remedies.some(({ remedy }) => HOT_WORK.includes(remedy));
  return PREPARATIONS.filter((item) => hot || item !== ONLY_FOR_WORK);
}

const prepared: Criterion = {
  id: 'prepared',
  title: 'Everything seen to before power',
  applies: ({ tests }) => tests.some(needsGrowler),
  judge(worked) {
    const checks = acts(worked.film, 'prepare.check');
    const { firstPower } = worked;
    const early = checks.filter(({ n }) => firstPower === null || n < firstPower.n);
    const needed = neededBefore(worked);
    const seenTo = needed.filter((item) => early.some(({ action }) => action.item === item));
    if (seenTo.length === 0) return notShown('Nothing of what comes before power was seen to before it.');
    const entries = someOf(early.map(({ n }) => n));
    const sentence =
      seenTo.length === needed.length
        ? 'Everything that comes before power was seen to before it.'
        : `${seenTo.length} of ${needed.length} things were seen to before power.`;
    return { share: seenTo.length / needed.length, sentence, entries };
  },
};

export const BENCH_CARE: readonly Criterion[] = [prepared, benchSetRight];
