import { BRUSHES, type PartKind } from '../bench/action.ts';
import type { TestKind } from '../bench/paper.ts';
import { barOf, type Place } from '../bench/places.ts';
import { partOfBrush } from '../bench/touched.ts';
import type { ArmatureDesign } from '../engine/parts/armature.ts';
import { PART_OF_TEST } from '../scenario/checkParts.ts';
import { isMatTest, joins, matPass } from './matPasses.ts';
import { groundPass, neighbourPass, STRIP_ZONES, spacedPass, stripPass } from './passes.ts';
import type { DropReading } from './railReadings.ts';
import type { Readings } from './readings.ts';

/** How much of each test was done, whatever it showed. */

/** Tests of the card that say something of a part. Nobody measures the drop over a brush plate's bare joints. */
export function testsOf(part: PartKind, tests: readonly TestKind[]): TestKind[] {
  return tests.filter((test) => {
    const own = PART_OF_TEST[test];
    return own === undefined ? test !== 'millivolt' || part !== 'brushPlate' : own === part;
  });
}

/** A test so far. */
export interface Done {
  /** 0..1 */
  readonly share: number;
  readonly entries: readonly number[];
}

/** How much of a test other than looking was done on a part, by what was touched and seen to settle. */
export function doneOf(test: TestKind, part: PartKind, readings: Readings, design: ArmatureDesign): Done {
  if (isMatTest(test)) {
    const tried = matPass(readings.lamp, test);
    return all(tried.map(({ share, entries }) => ({ share, entries })));
  }
  switch (test) {
    case 'spaced':
      return bars(spacedPass(readings.ammeter, design).readings, design);
    case 'neighbour':
      return bars(neighbourPass(readings.ammeter, design).readings, design);
    case 'ground':
      return ground(readings, design);
    case 'strip':
      return strip(readings, design);
    case 'megohm':
      return megohm(part, readings);
    case 'millivolt':
      return millivolt(part, readings, design);
    case 'gauges':
      return gauges(part, readings);
    default:
      return { share: 0, entries: [] };
  }
}

function all(parts: readonly Done[]): Done {
  const share = parts.reduce((sum, one) => sum + one.share, 0) / parts.length;
  return { share, entries: parts.flatMap(({ entries }) => entries) };
}

const once = (readings: readonly { readonly entry: number }[]): Done => ({
  share: readings.length > 0 ? 1 : 0,
  entries: readings.map(({ entry }) => entry),
});

function bars(readings: readonly { readonly entry: number }[], { bars: of }: ArmatureDesign): Done {
  return { share: readings.length / of, entries: readings.map(({ entry }) => entry) };
}

/** One bar that lights settles it; dark ones must all have been tried. */
function ground(readings: Readings, design: ArmatureDesign): Done {
  const tested = [...groundPass(readings.lamp).values()];
  const lit = tested.filter((reading) => reading.lit);
  return lit.length > 0 ? once(lit) : bars(tested, design);
}

function strip(readings: Readings, design: ArmatureDesign): Done {
  const felt = stripPass(readings.strip, design).reduce((sum, zone) => sum + zone.size, 0);
  const used = readings.strip.filter(({ excited }) => excited);
  return { share: felt / (design.slots * STRIP_ZONES.length), entries: used.map(({ entry }) => entry) };
}

/** Between what must not be joined: shaft or core and any bar, case and winding, plate and each insulated holder. */
function megohm(part: PartKind, { megohm: readings }: Readings): Done {
  const settled = readings.filter((reading) => reading.settled && reading.part === part);
  const across = (one: (place: Place) => boolean, other: (place: Place) => boolean) =>
    once(settled.filter(({ places: [a, b] }) => (one(a) && other(b)) || (one(b) && other(a))));
  const is = (place: Place) => (at: Place) => at === place;
  switch (part) {
    case 'armature':
      return across(
        (place) => place === 'shaft' || place === 'core',
        (place) => barOf(place) !== null,
      );
    case 'fieldFrame':
      return across(is('field:case'), (place) => place !== 'field:case');
    case 'brushPlate':
      return all([
        across(is('plate:metal'), is('plate:insulated1')),
        across(is('plate:metal'), is('plate:insulated2')),
      ]);
  }
}

function millivolt(part: PartKind, { drop }: Readings, design: ArmatureDesign): Done {
  const readings = drop.filter((reading) => reading.part === part);
  if (part === 'armature') {
    const pairs = new Map(readings.flatMap((reading) => neighbours(reading, design)));
    return { share: pairs.size / design.bars, entries: [...pairs.values()] };
  }
  const branch = (brush: Place) =>
    once(
      readings.filter(
        ({ places, feed }) => joins(places, 'field:terminal', brush) && joins(feed, 'field:terminal', brush),
      ),
    );
  return all([branch('field:brush1'), branch('field:brush2')]);
}

/** The first bar of two that lie side by side, with the entry of the reading. */
function neighbours({ places: [one, two], entry }: DropReading, { bars: of }: ArmatureDesign) {
  const [a, b] = [barOf(one), barOf(two)];
  if (a === null || b === null) return [];
  if ((a + 1) % of === b) return [[a, entry] as const];
  return (b + 1) % of === a ? [[b, entry] as const] : [];
}

const COMMUTATOR = ['diameter', 'runOut', 'undercut'] as const;

function gauges(part: PartKind, { gauges: readings }: Readings): Done {
  if (part === 'armature') {
    return all(COMMUTATOR.map((gauge) => once(readings.filter((reading) => reading.gauge === gauge))));
  }
  const own = BRUSHES.filter((brush) => partOfBrush(brush) === part);
  return all(own.map((brush) => once(readings.filter((reading) => reading.brush === brush))));
}
