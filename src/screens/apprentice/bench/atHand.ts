import type { BrushIndex, GaugeKind, PartKind } from '../../../bench/action.ts';
import { barAt, type CommutatorGeometry } from '../../../bench/geometry.ts';
import { MAT_TESTS, type MatLampTest, type MatPlace, type MatTest } from '../../../bench/matTests.ts';
import type { Observation } from '../../../bench/observation.ts';
import type { TestKind, TestVolt } from '../../../bench/paper.ts';
import { barOf, type LeadSet, type Place, type PlatePlace, partOf } from '../../../bench/places.ts';
import { acrossPart } from '../../../bench/state.ts';
import { partOfBrush } from '../../../bench/touched.ts';
import { countFromChalk, spacing, stepsUp } from '../../shared/count.ts';

/** Which test is under way and where, as far as anyone standing there can tell. */
export interface AtHand {
  readonly test: TestKind;
  /** Bars from the chalk, or null. */
  readonly count: number | null;
  /** Left out: the armature. */
  readonly part?: PartKind;
  readonly place?: MatPlace;
  readonly gauge?: GaugeKind;
  readonly brush?: BrushIndex;
  readonly testVolt?: TestVolt;
}

/**
 * Reads test and place off what is in sight: what the gauge or the lens was last put to, the bars under the probes, the
 * brush or holder under the lamp, where clips and strip are.
 * @returns null when nothing is being tested
 */
export function atHand(seen: Observation, geometry: CommutatorGeometry): AtHand | null {
  const from = (bar: number) => countFromChalk(bar, seen.chalkedBar, geometry.bars);
  return (
    gaugeTest(seen) ??
    lookTest(seen, from) ??
    meterTest(seen, geometry.bars, from) ??
    lampTest(seen, from) ??
    testerTest(seen) ??
    dropTest(seen, geometry.bars, from) ??
    stripTest(seen, geometry, from)
  );
}

type Counting = (bar: number) => number | null;

function gaugeTest({ gauge: view }: Observation): AtHand | null {
  if (view === null) return null;
  const { gauge, brush } = view;
  if (brush === null) return { test: 'gauges', count: null, gauge };
  return { test: 'gauges', count: null, gauge, brush, part: partOfBrush(brush) };
}

function lookTest({ look }: Observation, from: Counting): AtHand | null {
  if (!look) return null;
  const looked = barOf(look.place);
  return { test: 'look', count: looked === null ? null : from(looked), ...named(partOf(look.place)) };
}

function meterTest(seen: Observation, bars: number, from: Counting): AtHand | null {
  const pair = barsUnder(seen, 'ammeter');
  if (!pair) return null;
  const [first, second] = pair;
  if (spacing(first, second, bars) > 1) return { test: 'spaced', count: from(first) };
  return { test: 'neighbour', count: from(lower(first, second, bars)) };
}

function lampTest(seen: Observation, from: Counting): AtHand | null {
  const ends = endsOf(seen, 'lamp');
  for (const [test, { from: common, to }] of Object.entries(MAT_TESTS) as [MatTest, MatLampTest][]) {
    const place = to.find((one) => ends.includes(one));
    if (place && ends.includes(common)) return { test, count: null, place };
  }
  const onSteel = ends.some((place) => place === 'shaft' || place === 'core');
  const bar = ends.map(touchedBar).find((found) => found !== null) ?? null;
  return onSteel && bar !== null ? { test: 'ground', count: from(bar) } : null;
}

/** Both clips of the insulation tester on one part; on a brush plate the holder is named. */
function testerTest(seen: Observation): AtHand | null {
  const part = acrossPart(seen.leads, 'tester');
  if (part === null) return null;
  const holder = endsOf(seen, 'tester').find(isHolder);
  const place = holder && isHolder(holder) ? { place: holder } : {};
  return { test: 'megohm', count: null, ...named(part), ...place, testVolt: seen.tester.volt };
}

function dropTest(seen: Observation, bars: number, from: Counting): AtHand | null {
  const part = acrossPart(seen.leads, 'drop');
  if (part === null) return null;
  const pair = barsUnder(seen, 'drop');
  if (pair) return { test: 'millivolt', count: from(lower(...pair, bars)) };
  const place = endsOf(seen, 'drop').find(isBranchOrHolder);
  const at = place && isBranchOrHolder(place) ? { place } : {};
  return { test: 'millivolt', count: null, ...named(part), ...at };
}

function stripTest(
  { strip, rotationDeg }: Observation,
  geometry: CommutatorGeometry,
  from: Counting,
): AtHand | null {
  if (strip.at !== 'core' || strip.angleDeg === null) return null;
  return { test: 'strip', count: from(barAt(geometry, strip.angleDeg, rotationDeg)) };
}

function named(part: PartKind | null): { readonly part?: PartKind } {
  return part === null || part === 'armature' ? {} : { part };
}

function endsOf({ leads }: Observation, set: LeadSet): readonly (Place | null)[] {
  return [leads[`${set}.1`].touches, leads[`${set}.2`].touches];
}

function barsUnder(seen: Observation, set: LeadSet): readonly [number, number] | null {
  const [first, second] = endsOf(seen, set).map(touchedBar) as [number | null, number | null];
  return first === null || second === null || first === second ? null : [first, second];
}

/** Of two neighbouring bars, the one the pair is named by. */
function lower(first: number, second: number, bars: number): number {
  return stepsUp(first, second, bars) === 1 ? first : second;
}

function touchedBar(place: Place | null): number | null {
  return place === null ? null : barOf(place);
}

function isHolder(place: Place | null): place is PlatePlace {
  return place?.startsWith('plate:') === true && place !== 'plate:metal';
}

function isBranchOrHolder(place: Place | null): place is MatPlace {
  return isHolder(place) || place === 'field:brush1' || place === 'field:brush2';
}
