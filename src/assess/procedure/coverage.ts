import type { PartKind } from '../../bench/action.ts';
import type { TestKind } from '../../bench/paper.ts';
import { acts } from '../film.ts';
import { STRIP_ZONES, spacingOf } from '../passes.ts';
import { listed } from '../words.ts';
import { atLeast, type Criterion, type JobCard, type Judgement, notShown, someOf } from './criterion.ts';

const allows =
  (test: TestKind) =>
  ({ tests }: JobCard) =>
    tests.includes(test);

interface Covered {
  readonly count: number;
  readonly bars: number;
  readonly what: string;
  readonly entries: readonly number[];
}

/** Judges how many of the bars a pass covered. @param least  percent below which nothing is earned */
function covered({ count, bars, what, entries }: Covered, least: number): Judgement {
  const sentence =
    count === bars
      ? `${what} at all ${bars} bars.`
      : `${what} at ${count} of ${bars} bars: the rest were not tested.`;
  return atLeast(least, { share: count / bars, sentence, entries: someOf(entries) });
}

const neighbour: Criterion = {
  id: 'neighbourPass',
  title: 'Neighbouring bars read all the way round',
  applies: allows('neighbour'),
  judge({ neighbour: { readings }, film }, least) {
    if (readings.length === 0)
      return notShown(
        'No settled ammeter reading between neighbouring bars on HIGH, at a place where the needle moves.',
      );
    const entries = readings.map(({ entry }) => entry);
    const what = 'Neighbouring bars were read in one place over the cradle';
    return covered({ count: readings.length, bars: film.design.bars, what, entries }, least);
  },
};

const spaced: Criterion = {
  id: 'spacedPass',
  title: 'Spaced readings taken all the way round',
  applies: allows('spaced'),
  judge({ spaced: { readings, spacing }, film }, least) {
    if (readings.length === 0)
      return notShown('No settled ammeter reading on HIGH with the probes two or more bars apart.');
    const entries = readings.map(({ entry }) => entry);
    const what = `Bars ${spacing} apart were read in one place over the cradle`;
    return covered({ count: readings.length, bars: film.design.bars, what, entries }, least);
  },
};

const spacedLargest: Criterion = {
  id: 'spacedLargest',
  title: 'The spacing with the largest reading looked for',
  applies: allows('spaced'),
  /** @param leastTried  spacings that must have been tried before one of them can be called the largest */
  judge({ readings, spaced: { readings: pass }, film }, leastTried) {
    const bars = film.design.bars;
    const first = pass[0];
    if (first === undefined) return notShown('There was no spaced pass to choose a spacing for.');
    const before = readings.ammeter.filter(
      (r) => r.settled && spacingOf(r, bars) > 1 && r.entry <= first.entry,
    );
    const entries = someOf(before.map(({ entry }) => entry));
    const tried = new Set(before.map((reading) => spacingOf(reading, bars))).size;
    if (tried < leastTried)
      return {
        share: 0,
        sentence: 'The probes were not stepped apart to find the largest reading first.',
        entries,
      };
    return { share: 1, sentence: `Before the pass ${tried} spacings were tried.`, entries };
  },
};

const ground: Criterion = {
  id: 'groundPass',
  title: 'Every bar tested to shaft or core with the lamp',
  applies: allows('ground'),
  judge({ ground: tested, film }, least) {
    if (tested.size === 0)
      return notShown('No lamp reading on LOW from shaft or core to a bar, held long enough to see.');
    const entries = [...tested.values()].map(({ entry }) => entry);
    const what = 'The lamp was put to shaft or core';
    return covered({ count: tested.size, bars: film.design.bars, what, entries }, least);
  },
};

const strip: Criterion = {
  id: 'stripPass',
  title: 'Strip over a full turn, on both sides and at the top',
  applies: allows('strip'),
  judge({ strip: zones, readings, film }, least) {
    const slots = film.design.slots;
    const felt = zones.map((zone) => zone.size);
    const total = felt.reduce((sum, count) => sum + count, 0);
    if (total === 0)
      return notShown('The strip was never held just above the core, clear of the jaws, on HIGH.');
    const missing = STRIP_ZONES.filter((_, nth) => felt[nth]! < slots).map(
      ({ name }) =>
        `${felt[STRIP_ZONES.findIndex((zone) => zone.name === name)]} of ${slots} slots on the ${name}`,
    );
    const sentence =
      missing.length === 0
        ? 'Every slot passed under the strip on both sides and at the top.'
        : `Only ${missing.join(', ')} passed under the strip: a short can hide where it was not held.`;
    const entries = readings.strip.filter((reading) => reading.excited).map(({ entry }) => entry);
    const share = total / (slots * STRIP_ZONES.length);
    return atLeast(least, { share, sentence, entries: someOf(entries) });
  },
};

/** What there is to see on each part, by how its places begin. */
const LOOKED_AT: Readonly<Record<PartKind, readonly string[]>> = {
  armature: ['riser:', 'bar:', 'core'],
  fieldFrame: ['field:case', 'field:brush1', 'field:brush2'],
  brushPlate: ['plate:insulated1', 'plate:insulated2', 'plate:earthed1', 'plate:earthed2'],
};
const LOOK_WORDS: Readonly<Record<PartKind, string>> = {
  armature: 'risers, bars and core',
  fieldFrame: 'field case and both field brushes',
  brushPlate: 'all four holders',
};

const looked: Criterion = {
  id: 'lookedFirst',
  title: 'Part looked over before power',
  applies: allows('look'),
  judge({ film, firstPower, parts }) {
    const looks = acts(film, 'lens.look').filter(({ n }) => firstPower === null || n < firstPower.n);
    const wanted = parts.flatMap((part) => LOOKED_AT[part]);
    const seen = wanted.filter((kind) => looks.some(({ action }) => action.place.startsWith(kind)));
    const entries = someOf(looks.map(({ n }) => n));
    if (seen.length === 0)
      return notShown('The part was not looked at under the lens before the bench was switched on.');
    const words = listed(parts.map((part) => LOOK_WORDS[part]));
    if (seen.length === wanted.length)
      return {
        share: 1,
        sentence: `${words[0]!.toUpperCase()}${words.slice(1)} were looked at before the bench was switched on.`,
        entries,
      };
    const sentence = `Only part of it was looked at before power: look at ${words}.`;
    return { share: seen.length / wanted.length, sentence, entries };
  },
};

export const COVERAGE: readonly Criterion[] = [looked, spaced, spacedLargest, neighbour, ground, strip];
