import { resistanceBetween } from '../../../engine/circuit/resistors.ts';
import { MAINS, type MainsId } from '../../../engine/drive.ts';
import { underFeed } from '../../../engine/instruments/millivoltDrop.ts';
import {
  type FieldFrameDesign,
  type FieldFrameFault,
  fieldFrameResistors,
} from '../../../engine/parts/fieldFrame.ts';
import { everydayOnMat, fieldSigns } from '../../../scenario/hidden/matSigns.ts';
import { remembered } from '../memory.ts';
import type { Source } from '../reading.ts';
import { type Group, type Unweighed, weighed } from './case.ts';
import { type Faults, insulationSuspects, isBreak, type Suspect, windingSuspects } from './frameSuspects.ts';
import { anyLog, dropShown, lampReach, looksLog, megohmShown, readingLog } from './likelihood.ts';
import type { MatModel } from './model.ts';
import { ANOTHER, NONE_OF_THESE } from './priors.ts';
import type { MatEvidence, MatQuestion, MatReading, MatShown } from './reading.ts';

/**
 * The field frame: what is wrong with the winding times what is wrong with its insulation. A single way to the case
 * changes nothing between other places, and of a fault of the winding only a break changes what reaches the case: so
 * each reading asks one of the two, and the product is exact.
 */
export class FrameModel implements MatModel<FieldFrameFault> {
  private readonly winding: readonly Suspect[];
  private readonly insulation: readonly Suspect[];
  private readonly frame: FieldFrameDesign;
  private readonly reach: number;
  private readonly peakV: number;
  /** What each reading would be: by suspect of the winding or of the insulation, whichever it asks, behind some breaks. */
  private readonly known = new Map<MatReading, Map<string, MatShown[]>>();

  constructor(frame: FieldFrameDesign, mainsId: MainsId) {
    this.frame = frame;
    this.winding = windingSuspects(frame);
    this.insulation = insulationSuspects(frame);
    this.reach = lampReach(MAINS[mainsId]);
    this.peakV = Math.SQRT2 * MAINS[mainsId].volt;
  }

  groupOf(): number {
    return 0;
  }

  shows(question: MatQuestion, faults: Faults): MatShown {
    const [a, b] = question.places;
    const at = (peakV: number) => resistanceBetween(this.resistors(question, faults, peakV), a, b);
    switch (question.kind) {
      case 'lamp': {
        const ohm = at(this.peakV);
        return { kind: 'lamp', lit: ohm !== null && ohm <= this.reach };
      }
      case 'megohm':
        return megohmShown(at, question.volt);
      case 'drop':
        return dropShown(this.drop(question, faults));
    }
  }

  weigh({ readings, looks, from }: MatEvidence): Group<FieldFrameFault>[] {
    const looked = (faults: Faults) => looksLog(faults.flatMap(fieldSigns), everydayOnMat, looks);
    const others = readings.filter((reading) => !reachesCase(reading));
    const logs = this.logs(others, this.winding, [], from);
    const winding = this.winding.map((suspect, nth) => ({
      ...suspect,
      log: logs[nth]! + looked(suspect.faults),
    }));
    const insulation = this.insulation.map((suspect) => ({ ...suspect, look: looked(suspect.faults) }));
    const leaksBehind = this.leaksBehind(readings.filter(reachesCase), from);
    const most = winding.reduce((top, { odds, log }) => Math.max(top, Math.log(odds) + log), -Infinity);
    const cases = winding.flatMap((one): Unweighed<FieldFrameFault>[] => {
      // What is hardly possible whatever the insulation does is not looked into further.
      const hardly = Math.log(one.odds) + one.log < most - HARDLY;
      const leaks = hardly ? null : leaksBehind(one.faults.filter(isBreak));
      return insulation.map((two, nth) => ({
        faults: [...one.faults, ...two.faults],
        odds: one.odds * two.odds * (one.faults.length > 0 && two.faults.length > 0 ? ANOTHER : 1),
        log: leaks === null ? one.log - HARDLY : one.log + two.look + leaks[nth]!,
      }));
    });
    return [weighed([...cases, { faults: null, odds: NONE_OF_THESE, log: anyLog(readings) }])];
  }

  /** How well each state of the insulation explains readings to the case, by the breaks of the winding before it. */
  private leaksBehind(readings: readonly MatReading[], from: Source): (breaks: Faults) => Float64Array {
    const known = new Map<string, Float64Array>();
    return (breaks) =>
      remembered(known, JSON.stringify(breaks), Infinity, () =>
        this.logs(readings, this.insulation, breaks, from),
      );
  }

  /** How well readings are explained by each of some suspects beside some breaks. */
  private logs(
    readings: readonly MatReading[],
    suspects: readonly Suspect[],
    breaks: Faults,
    from: Source,
  ): Float64Array {
    const sums = new Float64Array(suspects.length);
    const key = JSON.stringify(breaks);
    for (const reading of readings) {
      const known = remembered(this.known, reading, Infinity, () => new Map<string, MatShown[]>());
      const shown = remembered(known, key, Infinity, () =>
        suspects.map(({ faults }) => this.shows(reading, [...breaks, ...faults])),
      );
      for (let nth = 0; nth < sums.length; nth++) sums[nth]! += readingLog(reading, shown[nth]!, from);
    }
    return sums;
  }

  private drop({ feed, places, ...how }: MatQuestion & { kind: 'drop' }, faults: Faults): number | null {
    const { at } = underFeed(this.resistors(how, faults, 0), ...feed);
    const [high, low] = places.map((place) => at.get(place));
    return high === undefined || low === undefined ? null : high - low;
  }

  private resistors({ brushesApart }: Pick<MatQuestion, 'brushesApart'>, faults: Faults, peakV: number) {
    return fieldFrameResistors(this.frame, faults, { brushesTouching: !brushesApart, peakV });
  }
}

const HARDLY = Math.log(1e7);
const reachesCase = ({ places }: MatQuestion) => places.includes('field:case');
