import type { FoundPlace, TestKind } from '../../bench/paper.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import type { Shown } from './shown.ts';

/**
 * Places a learner may rightly name for one fault, with what each is worth. Derived from what the tests show, so it is
 * never finer than they can tell: on a wave winding a faulty coil shows at as many pairs of bars as there are pole
 * pairs, and any of them is a right answer; a lamp that lights says nothing of where.
 */
export interface PlaceClass {
  /** Pairs by their first bar. */
  readonly pairs: ReadonlyMap<number, number>;
  readonly bars: ReadonlyMap<number, number>;
  /** Branches of a field frame and holders of a brush plate, by `placeName`; left out: none. */
  readonly named?: ReadonlyMap<string, number>;
  /** What leaving the place open is worth. */
  readonly somewhere: number;
}

/** No place can be told. */
export const NOWHERE: PlaceClass = { pairs: new Map(), bars: new Map(), somewhere: 1 };

/** Pairs that have fallen nearly as far as the lowest cannot be told from it. */
const NEARLY_LOWEST = 0.8;

/** Pairs of neighbouring bars whose reading stands out as far as the furthest does. */
export function markedPairs({ neighbour, band }: Pick<Shown, 'neighbour' | 'band'>): number[] {
  return standing(neighbour, band.neighbour);
}

/** Places of a round of readings that stand out of it as far as the furthest does. */
export function standing(deviations: readonly number[], band: number): number[] {
  const most = Math.max(...deviations.map((d) => Math.abs(d)));
  if (most <= band) return [];
  return deviations.flatMap((d, bar) => (Math.abs(d) >= NEARLY_LOWEST * most ? [bar] : []));
}

const map = (bars: readonly number[], worth: number) => bars.map((bar) => [bar, worth] as const);

/** Of a fault between two bars: the pairs that show it, its own pair, and half for one bar of it. */
function betweenBars(first: number, marked: readonly number[], design: ArmatureDesign): PlaceClass {
  const own = [first, (first + 1) % design.bars];
  return {
    pairs: new Map([...map(marked, 1), [first, 1]]),
    bars: new Map(map(own, 0.5)),
    somewhere: 0,
  };
}

/** Of a coil: the pairs that show it; for a lap winding those are its own bars. */
function ofCoil(coil: number, pairs: readonly number[], design: ArmatureDesign): PlaceClass {
  const end = (coil + design.commutatorPitch + design.bars) % design.bars;
  const bars = map([coil, end], 0.5);
  return { pairs: new Map(map(pairs, 1)), bars: new Map(bars), somewhere: pairs.length === 0 ? 1 : 0 };
}

/** Of a joint: the bar itself, and half for a pair with that bar in it. */
function ofJoint(bar: number, design: ArmatureDesign): PlaceClass {
  const before = (bar - 1 + design.bars) % design.bars;
  return { pairs: new Map(map([bar, before], 0.5)), bars: new Map([[bar, 1]]), somewhere: 0 };
}

/** Tests that count bars. The strip finds slots, the lamp tells no place. */
const COUNTING: readonly TestKind[] = ['neighbour', 'spaced', 'millivolt'];

/** @param marked pairs of neighbouring bars that stand out in the readings the job allows */
export function placeOf(
  fault: ArmatureFault,
  marked: readonly number[],
  design: ArmatureDesign,
  tests: readonly TestKind[],
): PlaceClass {
  if (!COUNTING.some((test) => tests.includes(test))) return NOWHERE;
  switch (fault.kind) {
    case 'riserJoint':
      return fault.form === 'oneEnd' ? oneEnd(fault.bar, marked, design) : ofJoint(fault.bar, design);
    case 'bridgedBars':
      return betweenBars(fault.bar, marked, design);
    case 'openCoil':
    case 'turnShort':
    case 'reversedCoil':
      return ofCoil(fault.coil, marked, design);
    case 'coilShort':
      return { ...ofCoil(fault.topCoil, marked, design), somewhere: 1 };
    default:
      return NOWHERE;
  }
}

/** A coil end off its bar: right as the coil the readings show, and as the bar it came off. */
function oneEnd(bar: number, marked: readonly number[], design: ArmatureDesign): PlaceClass {
  const coil = ofCoil(bar, marked, design);
  return { ...coil, bars: new Map([...coil.bars, [bar, 1]]) };
}

/** A branch or a holder as `PlaceClass` lists it; null for places counted in bars. */
function placeName(place: FoundPlace): string | null {
  if (place.kind === 'branch') return branchName(place.brush);
  return place.kind === 'holder' ? place.holder : null;
}

export function branchName(brush: 1 | 2): string {
  return `branch ${brush}`;
}

/** Of places that have names: those that are right, and what leaving them open is worth. */
export function namedPlace(names: readonly string[], somewhere: number): PlaceClass {
  return { pairs: new Map(), bars: new Map(), named: new Map(names.map((name) => [name, 1])), somewhere };
}

/** What a place is worth; bars are counted from the chalked one. */
export function placeWorth(
  place: FoundPlace,
  chalked: number | null,
  right: PlaceClass,
  bars: number,
): number {
  if (place.kind === 'somewhere') return right.somewhere;
  const name = placeName(place);
  if (name !== null) return right.named?.get(name) ?? 0;
  if (chalked === null || (place.kind !== 'bar' && place.kind !== 'pair')) return 0;
  const at = (((chalked + place.count) % bars) + bars) % bars;
  return (place.kind === 'pair' ? right.pairs : right.bars).get(at) ?? 0;
}
