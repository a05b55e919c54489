import { resistanceBetween } from '../../../engine/circuit/resistors.ts';
import { MAINS, type MainsId } from '../../../engine/drive.ts';
import { underFeed } from '../../../engine/instruments/millivoltDrop.ts';
import {
  type FieldFrameDesign,
  type FieldFrameFault,
  fieldFrameResistors,
} from '../../../engine/parts/fieldFrame.ts';
import { everydayOnMat, fieldSigns } from '../../../scenario/hidden/matSigns.ts';
import { type Group, type Unweighed, weighed } from './case.ts';
import { anyLog, dropLog, lampLog, lampReach, looksLog, megohmLog } from './likelihood.ts';
import {
  ANOTHER,
  FIELD_ODDS,
  GROUND_FRACTION,
  GROUND_OHM,
  JOINT_OHM,
  JOINT_OPEN,
  NONE_OF_THESE,
  SHORT_OHM,
  SHORT_SHARE,
  WEAK_OHM,
} from './priors.ts';
import type { MatDrop, MatEvidence, MatReading } from './reading.ts';

/**
 * The field frame: what is wrong with the winding times what is wrong with its insulation. A single way to the case
 * changes nothing between other places, and of a fault of the winding only a break changes what reaches the case: so
 * each reading asks one of the two, and the product is exact.
 */

type Faults = readonly FieldFrameFault[];
interface Suspect {
  readonly faults: Faults;
  readonly odds: number;
}

const SOUND: Suspect = { faults: [], odds: 1 };

function spread(odds: number, faults: Faults): Suspect[] {
  return faults.map((fault) => ({ faults: [fault], odds: odds / faults.length }));
}

const isBreak = (fault: FieldFrameFault) =>
  fault.kind === 'openCoil' || (fault.kind === 'brushJoint' && fault.ohm === 'open');

function windingSuspects({ coils }: FieldFrameDesign): Suspect[] {
  const each = coils.map((_, coil) => coil);
  const joints = (ohm: number | 'open') =>
    ([1, 2] as const).map((brush): FieldFrameFault => ({ kind: 'brushJoint', brush, ohm }));
  const breaks = [
    ...spread(
      FIELD_ODDS.openCoil,
      each.map((coil): FieldFrameFault => ({ kind: 'openCoil', coil })),
    ),
    ...spread(FIELD_ODDS.brushJoint * JOINT_OPEN, joints('open')),
  ];
  const shorts = each.flatMap((coil) =>
    SHORT_SHARE.map((share): FieldFrameFault => ({ kind: 'shortedTurns', coil, share, ohm: SHORT_OHM })),
  );
  const two = breaks.flatMap((one, nth) =>
    breaks.slice(nth + 1).map((other) => ({
      faults: [...one.faults, ...other.faults],
      odds: ANOTHER * one.odds * other.odds,
    })),
  );
  const poor = spread(FIELD_ODDS.brushJoint * (1 - JOINT_OPEN), JOINT_OHM.flatMap(joints));
  return [SOUND, ...breaks, ...poor, ...spread(FIELD_ODDS.shortedTurns, shorts), ...two];
}

function insulationSuspects({ coils }: FieldFrameDesign): Suspect[] {
  const each = coils.map((_, coil) => coil);
  const grounds = each.flatMap((coil) =>
    GROUND_FRACTION.flatMap((fraction) =>
      GROUND_OHM.map((ohm): FieldFrameFault => ({ kind: 'groundedCoil', coil, fraction, ohm })),
    ),
  );
  // Leakage stands at the coil's first end: coils that begin at one joint leak alike.
  const ends = each.filter((coil) => coils.findIndex(({ from }) => from === coils[coil]!.from) === coil);
  const weak = ends.flatMap((coil) =>
    WEAK_OHM.map((ohm): FieldFrameFault => ({ kind: 'weakInsulation', coil, ohm, breakdownV: null })),
  );
  return [SOUND, ...spread(FIELD_ODDS.groundedCoil, grounds), ...spread(FIELD_ODDS.weakInsulation, weak)];
}

const reachesCase = ({ places }: MatReading) => places.includes('field:case');

export function weighFrame(
  frame: FieldFrameDesign,
  mainsId: MainsId,
  { readings, looks, from }: MatEvidence,
): Group<FieldFrameFault>[] {
  const asks = new Asks(frame, mainsId, from);
  const ofCase = readings.filter(reachesCase);
  const others = readings.filter((reading) => !reachesCase(reading));
  const looked = (faults: Faults) => looksLog(faults.flatMap(fieldSigns), everydayOnMat, looks);
  const winding = windingSuspects(frame).map((suspect) => ({
    ...suspect,
    log: asks.log(others, suspect.faults) + looked(suspect.faults),
  }));
  const insulation = insulationSuspects(frame).map((suspect) => ({
    ...suspect,
    look: looked(suspect.faults),
  }));
  const most = winding.reduce((top, { odds, log }) => Math.max(top, Math.log(odds) + log), -Infinity);
  const cases = winding.flatMap((one): Unweighed<FieldFrameFault>[] => {
    // What is hardly possible whatever the insulation does is not looked into further.
    const hardly = Math.log(one.odds) + one.log < most - HARDLY;
    const leaks = hardly ? null : asks.leaks(ofCase, one.faults.filter(isBreak), insulation);
    return insulation.map((two, nth) => ({
      faults: [...one.faults, ...two.faults],
      odds: one.odds * two.odds * (one.faults.length > 0 && two.faults.length > 0 ? ANOTHER : 1),
      log: leaks === null ? one.log - HARDLY : one.log + two.look + leaks[nth]!,
    }));
  });
  return [weighed([...cases, { faults: null, odds: NONE_OF_THESE, log: anyLog(readings) }])];
}
const HARDLY = Math.log(1e7);

/** What readings a frame with some faults would give; the same question is worked out once. */
class Asks {
  private readonly frame: FieldFrameDesign;
  private readonly from: MatEvidence['from'];
  private readonly leakLogs = new Map<string, Float64Array>();
  private readonly reach: number;
  private readonly peakV: number;

  constructor(frame: FieldFrameDesign, mainsId: MainsId, from: MatEvidence['from']) {
    this.frame = frame;
    this.from = from;
    this.reach = lampReach(MAINS[mainsId]);
    this.peakV = Math.SQRT2 * MAINS[mainsId].volt;
  }

  log(readings: readonly MatReading[], faults: Faults): number {
    return readings.reduce((sum, reading) => sum + this.one(reading, faults), 0);
  }

  /** How well each state of the insulation explains readings to the case, behind some breaks of the winding. */
  leaks(readings: readonly MatReading[], breaks: Faults, insulation: readonly Suspect[]): Float64Array {
    const key = JSON.stringify(breaks);
    const known = this.leakLogs.get(key);
    if (known !== undefined) return known;
    const logs = Float64Array.from(insulation, ({ faults }) => this.log(readings, [...breaks, ...faults]));
    this.leakLogs.set(key, logs);
    return logs;
  }

  private one(reading: MatReading, faults: Faults): number {
    const [a, b] = reading.places;
    const at = (peakV: number) => resistanceBetween(this.resistors(reading, faults, peakV), a, b);
    switch (reading.kind) {
      case 'lamp':
        return lampLog(reading, at(this.peakV), this.reach, this.from);
      case 'megohm':
        return megohmLog(reading, at, this.from);
      case 'drop':
        return dropLog(reading, this.drop(reading, faults), this.from);
    }
  }

  private drop(reading: MatDrop, faults: Faults): number | null {
    const [from, to] = reading.feed;
    const { at } = underFeed(this.resistors(reading, faults, 0), from, to);
    const [high, low] = reading.places.map((place) => at.get(place));
    return high === undefined || low === undefined ? null : high - low;
  }

  private resistors({ brushesApart }: MatReading, faults: Faults, peakV: number) {
    return fieldFrameResistors(this.frame, faults, { brushesTouching: !brushesApart, peakV });
  }
}
