import { RANGES_A, type RangeA } from '../../bench/action.ts';
import type { SheetLine } from '../../bench/paper.ts';
import { barPlace } from '../../bench/places.ts';
import { scaleCurrent } from '../../engine/instruments/ammeter.ts';
import { setRight } from './benchCare.ts';
import type { Hands } from './hands.ts';
import type { Amps } from './notes.ts';

/** Straight in front of the person working. */
const FRONT_DEG = -90;
/** Between the front and the bottom: where neighbouring bars of a four-pole armature read well. */
const BELOW_FRONT_DEG = -45;
/** Spacings that can be reached with one probe in front, degrees. */
const WIDEST_DEG = 112;

function readAmps(hands: Hands): number {
  const { needle, rangeA } = hands.restNeedle();
  return scaleCurrent(needle.deflection, rangeA);
}

/** The range is turned with a free hand while the probes are off the bars. */
function setRange(hands: Hands, to: RangeA): void {
  if (hands.see().rangeA !== to) hands.do({ type: 'range.turn', to });
}

/** The lowest range that holds a reading with some room. */
function rangeFor(amps: number): RangeA {
  return RANGES_A.find((full) => amps < 0.92 * full) ?? 100;
}

/** Both probes in one hand, the highest range first so that the needle is spared, and power on HIGH. */
function begin(hands: Hands): void {
  setRange(hands, 100);
  hands.all({ type: 'selector.turn', to: 'high' }, { type: 'lead.take', lead: 'ammeter.1', grip: 'handle' });
  hands.do({ type: 'lead.take', lead: 'ammeter.2', grip: 'handle' });
}

function end(hands: Hands): void {
  hands.all({ type: 'lead.holster', lead: 'ammeter.1' }, { type: 'lead.holster', lead: 'ammeter.2' });
  hands.do({ type: 'selector.turn', to: 'off' });
}

/** Puts the probes on two bars and reads on the range that suits. */
function put(hands: Hands, first: number, second: number): number {
  hands.do({ type: 'lead.touch', lead: 'ammeter.1', place: barPlace(first) });
  hands.do({ type: 'lead.touch', lead: 'ammeter.2', place: barPlace(second) });
  return readAmps(hands);
}

function lift(hands: Hands): void {
  hands.all({ type: 'lead.lift', lead: 'ammeter.1' }, { type: 'lead.lift', lead: 'ammeter.2' });
}

/** Reads at every bar, the armature turned under the probes; a bar that drives the needle over gets a higher range. */
function pass(hands: Hands, write: (amps: Amps, rangeA: RangeA) => SheetLine): Amps[] {
  const bars = hands.job.armature.bars;
  const readings: Amps[] = [];
  for (let turned = 0; turned < bars; turned += 1) {
    if (turned > 0) hands.nextBar();
    hands.keepCool();
    const amps = { bar: barUnder(hands), readingA: readSpared(hands) };
    readings.push(amps);
    hands.do({ type: 'sheet.write', line: write(amps, hands.see().rangeA) });
  }
  return readings;
}

/** A needle on its stop is taken to the next range at once. */
function readSpared(hands: Hands): number {
  let reading = readAmps(hands);
  while (hands.see().needle.pegged) {
    const higher = RANGES_A.find((full) => full > hands.see().rangeA);
    if (higher === undefined) return reading;
    const place = hands.see().leads['ammeter.2'].touches!;
    hands.do({ type: 'lead.lift', lead: 'ammeter.2' });
    setRange(hands, higher);
    hands.do({ type: 'lead.touch', lead: 'ammeter.2', place });
    reading = readAmps(hands);
  }
  return reading;
}

function barUnder(hands: Hands): number {
  return Number(hands.see().leads['ammeter.1'].touches!.split(':')[1]);
}

/** Below this no armature reads anywhere near the largest spacing: the leads themselves carry nothing, A. */
const NOTHING_A = 0.5;

/** The largest reading and its spacing; leads that read nothing at any spacing are changed first. */
function largestSpacing(hands: Hands): { spacing: number; readingA: number } {
  const found = stepApart(hands);
  if (found.readingA > NOTHING_A) return found;
  changeLeads(hands);
  return stepApart(hands);
}

function changeLeads(hands: Hands): void {
  end(hands);
  setRight(hands, 'ammeterLeads');
  begin(hands);
}

/** Steps the second probe away from the first, bar by bar, and finds the spacing with the largest reading. */
function stepApart(hands: Hands): { spacing: number; readingA: number } {
  const { bars } = hands.job.armature;
  const first = hands.barAt(FRONT_DEG);
  const widest = Math.floor((WIDEST_DEG * bars) / 360);
  hands.do({ type: 'lead.touch', lead: 'ammeter.1', place: barPlace(first) });
  let best = { spacing: 2, readingA: 0 };
  const inReach = hands.barsInReach();
  for (let spacing = 2; spacing <= widest; spacing += 1) {
    const second = (first + spacing) % bars;
    if (!inReach.includes(second)) break;
    hands.do({ type: 'lead.touch', lead: 'ammeter.2', place: barPlace(second) });
    const readingA = readAmps(hands);
    if (readingA > best.readingA) best = { spacing, readingA };
  }
  lift(hands);
  return best;
}

/** The spaced pass at the spacing with the largest reading. */
export function spacedTest(hands: Hands, chalked: number): Amps[] {
  const { bars } = hands.job.armature;
  begin(hands);
  const { spacing, readingA } = largestSpacing(hands);
  setRange(hands, rangeFor(readingA));
  const first = hands.barAt(FRONT_DEG);
  put(hands, first, (first + spacing) % bars);
  const readings = pass(hands, lineOf('spaced', chalked, bars));
  end(hands);
  return readings;
}

/** The neighbouring pass; leads that read nothing at either of two pairs are changed first. */
export function neighbourTest(hands: Hands, chalked: number): Amps[] {
  const { bars } = hands.job.armature;
  begin(hands);
  let most = betterOfTwo(hands);
  if (most <= NOTHING_A) {
    changeLeads(hands);
    most = betterOfTwo(hands);
  }
  setRange(hands, rangeFor(most));
  const first = firstOfPair(hands);
  put(hands, first, (first + 1) % bars);
  const readings = pass(hands, lineOf('neighbour', chalked, bars));
  end(hands);
  return readings;
}

/** The bar to begin with, so that the pair's middle lies where neighbouring bars read well. */
function firstOfPair(hands: Hands): number {
  const { bars, poles } = hands.job.armature;
  return hands.barAt((poles === 2 ? FRONT_DEG : BELOW_FRONT_DEG) - 180 / bars);
}

/** Two pairs are tried for the range, so that one bad pair does not decide it. */
function betterOfTwo(hands: Hands): number {
  const one = tryPair(hands);
  hands.nextBar();
  hands.nextBar();
  return Math.max(one, tryPair(hands));
}

function tryPair(hands: Hands): number {
  const first = firstOfPair(hands);
  const readingA = put(hands, first, (first + 1) % hands.job.armature.bars);
  lift(hands);
  return readingA;
}

function lineOf(test: 'spaced' | 'neighbour', chalked: number, bars: number) {
  return ({ bar, readingA }: Amps, rangeA: RangeA): SheetLine => ({
    test,
    count: (bar - chalked + bars) % bars,
    readingA: Number(readingA.toPrecision(3)),
    rangeA,
  });
}
