import type { Clue } from '../../bench/observation.ts';
import type { TestKind } from '../../bench/paper.ts';
import type { Place } from '../../bench/places.ts';
import { MAINS, type Mains } from '../../engine/drive.ts';
import { FEED_A, FEED_MOST_V, seeMillivolts } from '../../engine/instruments/millivoltDrop.ts';
import {
  type FieldFrameDesign,
  type FieldFrameFault,
  type FieldNode,
  fieldFrameResistance,
} from '../../engine/parts/fieldFrame.ts';
import { JOB_FRAMES } from '../../engine/parts/fieldFrameDesigns.ts';
import { limitsOf } from '../../scenario/public/limits.ts';
import { DROP_BAND, readsPoor } from './armatureTools.ts';
import { type Expected, fieldExpected } from './expected.ts';
import { asOne, type PartAt, shownAt, type TrueFinding } from './finding.ts';
import { branchName, NOWHERE, namedPlace, type PlaceClass } from './place.ts';
import { lampLit } from './shown.ts';

const BRUSHES = [1, 2] as const;
type Brush = (typeof BRUSHES)[number];
type Pair = readonly [boolean, boolean];

/** What the tests show on one field frame, brushes kept apart. */
interface FieldShown {
  /** Lamp from terminal to each brush, and from case to each brush. */
  readonly continuity: Pair;
  readonly grounded: Pair;
  /** Drop over the one branch by that over the other, as a multiple of what a sound frame of this kind has. */
  readonly dropRatio: number;
}

function fieldShown(frame: FieldFrameDesign, faults: readonly FieldFrameFault[], mains: Mains): FieldShown {
  const peakV = Math.SQRT2 * mains.volt;
  const ohm = (from: FieldNode, brush: Brush, volt: number, list = faults) =>
    fieldFrameResistance(frame, list, from, `field:brush${brush}`, { brushesTouching: false, peakV: volt });
  const lit = (from: FieldNode, brush: Brush) => lampLit(ohm(from, brush, peakV), mains);
  const drop = (brush: Brush, list: readonly FieldFrameFault[]) =>
    millivolts(ohm('field:terminal', brush, 0, list));
  return {
    continuity: [lit('field:terminal', 1), lit('field:terminal', 2)],
    grounded: [lit('field:case', 1), lit('field:case', 2)],
    dropRatio: drop(1, faults) / drop(2, faults) / (drop(1, []) / drop(2, [])),
  };
}

/** Into a break the feed drives nothing and all its voltage stands across it: beyond the scale. */
function millivolts(ohm: number | null): number {
  return seeMillivolts(ohm === null ? FEED_MOST_V : ohm * FEED_A).millivolts;
}

/** The branch whose lamp or drop stands out, by brush; null: both alike. */
function branchOf(shown: FieldShown): Brush | null {
  const [one, two] = shown.continuity;
  if (one !== two) return one ? 2 : 1;
  return null;
}

/** Whether two branches so far apart could be shorted turns in the lower as well as a bad joint in the higher. */
function eitherBranch({ continuity, dropRatio }: FieldShown): boolean {
  return continuity[0] && continuity[1] && dropRatio > 0.5 && dropRatio < 2;
}

function toldBy(
  { scenario, design }: PartAt,
  frame: FieldFrameDesign,
  fault: FieldFrameFault,
  shown: FieldShown,
): TestKind[] {
  const { tests } = scenario.public;
  const { insulationMohm } = limitsOf(scenario.public, design);
  const leaks = () =>
    readsPoor(
      (peakV) =>
        fieldFrameResistance(frame, [fault], 'field:case', 'field:brush1', { brushesTouching: true, peakV }),
      insulationMohm,
    );
  const tells: Partial<Record<TestKind, () => boolean>> = {
    fieldContinuity: () => shown.continuity.includes(false),
    fieldInsulation: () => shown.grounded.includes(true),
    millivolt: () => Math.abs(shown.dropRatio - 1) > DROP_BAND,
    megohm: leaks,
  };
  return tests.filter((test) => tells[test]?.() === true);
}

/** Whether a broken coil and a broken joint look the same under the lamp of this frame. */
function looksLikeOther(
  frame: FieldFrameDesign,
  fault: FieldFrameFault,
  shown: FieldShown,
  mains: Mains,
): boolean {
  const others: readonly FieldFrameFault[] =
    fault.kind === 'openCoil'
      ? BRUSHES.map((brush) => ({ kind: 'brushJoint', brush, ohm: 'open' }))
      : frame.coils.map((_, coil) => ({ kind: 'openCoil', coil }));
  return others.some((other) => {
    const { continuity } = fieldShown(frame, [other], mains);
    return continuity[0] === shown.continuity[0] && continuity[1] === shown.continuity[1];
  });
}

const JOINT_SIGNS: readonly Clue[] = ['brokenPigtail', 'burntPigtail'];

function looks({ scenario }: PartAt): boolean {
  return scenario.public.tests.includes('look');
}

/** Whether the lens shows one of some signs at one of some places, and the job allows looking. */
function seen(at: PartAt, places: readonly Place[], signs: readonly Clue[]): boolean {
  if (!looks(at)) return false;
  return places.some((place) => shownAt(at, place).some((clue) => signs.includes(clue)));
}

/**
 * Whether a broken joint and what is wrong inside a coil can be taken for one another. The lens decides where the
 * joint shows its sign; a scorched wrapping decides for the coil.
 */
function alike(at: PartAt, frame: FieldFrameDesign, fault: FieldFrameFault, shown: FieldShown): boolean {
  const mains = MAINS[at.scenario.public.mains];
  const joints: readonly Place[] = ['field:brush1', 'field:brush2'];
  switch (fault.kind) {
    case 'openCoil':
      return looksLikeOther(frame, fault, shown, mains) && (!looks(at) || seen(at, joints, JOINT_SIGNS));
    case 'brushJoint':
      if (seen(at, [`field:brush${fault.brush}`], JOINT_SIGNS)) return false;
      return eitherBranch(shown) || looksLikeOther(frame, fault, shown, mains);
    case 'shortedTurns':
      return eitherBranch(shown) && !seen(at, ['field:case'], ['charredFieldCoil']);
    default:
      return false;
  }
}

function placeIn(fault: FieldFrameFault, shown: FieldShown, same: boolean, dropped: boolean): PlaceClass {
  if (fault.kind === 'groundedCoil' || fault.kind === 'weakInsulation') return NOWHERE;
  const dark = branchOf(shown);
  if (dark !== null) return namedPlace([branchName(dark)], 0);
  if (!dropped) return NOWHERE;
  if (same) return namedPlace(BRUSHES.map(branchName), 0);
  const first = fault.kind === 'shortedTurns' ? shown.dropRatio < 1 : shown.dropRatio > 1;
  return namedPlace([branchName(first ? 1 : 2)], 0);
}

/** Faults that the lamp or the tester cannot count, and breaks that lie in one and the same branch. */
function keyOf({ fault, place }: TrueFinding<FieldFrameFault>): string | null {
  if (fault.kind === 'groundedCoil' || fault.kind === 'weakInsulation') return 'ground';
  if (fault.kind === 'shortedTurns') return null;
  return `break ${[...(place.named?.keys() ?? [])].join(' ')}`;
}

/** The faults of the field frame, each judged by what it shows alone. Nothing done at this bench cures one. */
export function fieldTruth(at: PartAt): TrueFinding<FieldFrameFault>[] {
  return asOne(
    at.condition.fieldFrame.flatMap((fault) => fieldFinding(at, fault) ?? []),
    keyOf,
  );
}

/** One fault by itself; null where the job has no field frame. */
export function fieldFinding(at: PartAt, fault: FieldFrameFault): TrueFinding<FieldFrameFault> | null {
  const frame = JOB_FRAMES.get(at.scenario.public.fieldFrame ?? '');
  if (frame === undefined) return null;
  const shown = fieldShown(frame, [fault], MAINS[at.scenario.public.mains]);
  const told = toldBy(at, frame, fault, shown);
  const same = alike(at, frame, fault, shown);
  const expected: Expected = fieldExpected(fault, same);
  const place = placeIn(fault, shown, same, told.includes('millivolt'));
  return { fault, expected, place, toldBy: told, cured: false };
}
