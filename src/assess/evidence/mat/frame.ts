import { resistanceBetween } from '../../../engine/circuit/resistors.ts';
import { MAINS, type MainsId } from '../../../engine/drive.ts';
import { seeMillivolts, underFeed } from '../../../engine/instruments/millivoltDrop.ts';
import {
  type FieldFrameDesign,
  type FieldFrameFault,
  fieldFrameResistors,
} from '../../../engine/parts/fieldFrame.ts';
import { everydayOnMat, fieldSigns } from '../../../scenario/hidden/matSigns.ts';
import type { Sign } from '../../../scenario/hidden/sign.ts';
import { logSum } from '../beyond.ts';
import { remembered } from '../memory.ts';
import type { Source } from '../reading.ts';
import { type Group, weighed } from './case.ts';
import {
  type Faults,
  halfStepOn,
  insulationSuspects,
  isBreak,
  type Suspect,
  windingPairs,
  windingSuspects,
} from './frameSuspects.ts';
import { anyLog, dropShown, lampReach, looksLog, megohmShown, readingLog } from './likelihood.ts';
import type { MatModel } from './model.ts';
import { ANOTHER, NONE_OF_THESE } from './priors.ts';
import { keyOf, type MatEvidence, type MatQuestion, type MatReading, type MatShown } from './reading.ts';

/**
 * The field frame: what is wrong with the winding times what is wrong with its insulation. A single way to the case
 * changes nothing between other places, and of a fault of the winding only a break changes what reaches the case: so
 * each reading asks one of the two, and the product is exact.
 */
export class FrameModel implements MatModel<FieldFrameFault> {
  private readonly winding: readonly Suspect[];
  private readonly insulation: readonly Suspect[];
  private readonly pairs: readonly Suspect[];
  private readonly frame: FieldFrameDesign;
  private readonly reach: number;
  private readonly peakV: number;
  private readonly mainsId: MainsId;

  constructor(frame: FieldFrameDesign, mainsId: MainsId) {
    this.frame = frame;
    this.mainsId = mainsId;
    this.pairs = windingPairs(frame);
    this.winding = windingSuspects(frame);
    this.insulation = insulationSuspects(frame);
    this.reach = lampReach(MAINS[mainsId]);
    this.peakV = Math.SQRT2 * MAINS[mainsId].volt;
  }

  get everyFault(): readonly FieldFrameFault[] {
    return [...this.winding, ...this.pairs, ...this.insulation].flatMap(({ faults }) => faults);
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
    const toCase = readings.filter(reachesCase);
    const others = readings.filter((one) => !reachesCase(one));
    const laid = (suspects: readonly Suspect[], logs: Float64Array): Laid[] =>
      lumped(
        suspects.map(({ faults, odds }, nth) => {
          return {
            faults,
            odds,
            log: logs[nth]! + looksLog(signsOf(faults), everydayOnMat, looks),
          };
        }),
      );
    const behind = new Map<string, Laid[]>();
    const insulationBehind = (breaks: Faults) =>
      remembered(behind, JSON.stringify(breaks), Infinity, () =>
        laid(
          this.insulation,
          logsOf(this.insulation, toCase, from, (one) => this.leaks(one, breaks)),
        ),
      );
    const winding = [
      ...laid(
        this.winding,
        logsOf(this.winding, others, from, (one) => this.shown(one)),
      ),
      ...laid(
        this.pairs,
        logsOf(this.pairs, others, from, (one) => this.shownOfPairs(one)),
      ),
    ];
    const insulation = insulationBehind([]);
    const most = winding.reduce((top, { odds, log }) => Math.max(top, Math.log(odds) + log), -Infinity);
    const cases = winding.flatMap((one) => {
      // What is hardly possible whatever the insulation does is not looked into further.
      const hardly = Math.log(one.odds) + one.log < most - HARDLY;
      if (hardly) return insulation.map((two) => beside(one, { ...two, log: -HARDLY }));
      return insulationBehind(one.faults.filter(isBreak)).map((two) => beside(one, two));
    });
    // What is on no list is in the winding, in the insulation or in both; the other is as listed.
    const none = meanLog([
      { odds: 1, log: anyLog(others) + meanLog(insulation) },
      { odds: 1, log: anyLog(toCase) + meanLog(winding) },
      { odds: 1, log: anyLog(readings) },
    ]);
    return [weighed([...cases, { faults: null, odds: NONE_OF_THESE, log: none }])];
  }

  private shown(question: MatQuestion): readonly MatShown[] {
    return this.known(`winding ${keyOf(question)}`, () =>
      this.winding.map(({ faults }) => this.shows(question, faults)),
    );
  }

  private leaks(question: MatQuestion, breaks: Faults): readonly MatShown[] {
    return this.known(`insulation ${keyOf(question)} ${JSON.stringify(breaks)}`, () =>
      this.insulation.map(({ faults }) => this.shows(question, [...breaks, ...faults])),
    );
  }

  /** Milliohms more or less change a drop and nothing else. */
  private shownOfPairs(question: MatQuestion): readonly MatShown[] {
    return this.known(`pairs ${keyOf(question)}`, () => {
      if (question.kind !== 'drop') {
        const sound = this.shows(question, []);
        return this.pairs.map(() => sound);
      }
      return this.pairs.map(({ faults }) => {
        const one = seeMillivolts(this.drop(question, faults)).millivolts;
        const on = seeMillivolts(this.drop(question, halfStepOn(faults))).millivolts;
        return { kind: 'drop', millivolts: one, blur: Math.abs(on - one) * OF_HALF_STEP };
      });
    });
  }

  /** The same for every frame of a kind on one mains. */
  private known(of: string, make: () => readonly MatShown[]): readonly MatShown[] {
    return remembered(SHOWN, `${this.frame.id} ${this.mainsId} ${of}`, SHOWN_AT_MOST, make);
  }

  private drop({ feed, places, ...how }: MatQuestion & { kind: 'drop' }, faults: Faults): number | null {
    const all = this.resistors(how, faults, 0);
    // Where the feed finds a way, what leaks to the case is nothing against it.
    const own = faults.some(isBreak) ? all : all.filter(({ a, b }) => a !== CASE && b !== CASE);
    const { at } = underFeed(feed.includes(CASE) || places.includes(CASE) ? all : own, ...feed);
    const [high, low] = places.map((place) => at.get(place));
    return high === undefined || low === undefined ? null : high - low;
  }

  private resistors({ brushesApart }: Pick<MatQuestion, 'brushesApart'>, faults: Faults, peakV: number) {
    return fieldFrameResistors(this.frame, faults, { brushesTouching: !brushesApart, peakV });
  }
}

const SHOWN = new Map<string, readonly MatShown[]>();
const SHOWN_AT_MOST = 200;
/** Standard deviation of what lies evenly within half a step either way, of that half step. */
const OF_HALF_STEP = 1 / Math.sqrt(3);
const HARDLY = Math.log(1e7);
const CASE = 'field:case';
const reachesCase = ({ places }: MatQuestion) => places.includes(CASE);

/** A suspect with how well it explains what was read. */
interface Laid extends Suspect {
  readonly log: number;
}

function logsOf(
  { length }: readonly Suspect[],
  readings: readonly MatReading[],
  from: Source,
  shownOf: (reading: MatReading) => readonly MatShown[],
): Float64Array {
  const sums = new Float64Array(length);
  for (const reading of readings) {
    const shown = shownOf(reading);
    for (let nth = 0; nth < length; nth++) sums[nth]! += readingLog(reading, shown[nth]!, from);
  }
  return sums;
}

function beside(one: Laid, two: Laid): Laid {
  return {
    faults: [...one.faults, ...two.faults],
    odds: one.odds * two.odds * (one.faults.length > 0 && two.faults.length > 0 ? ANOTHER : 1),
    log: one.log + two.log,
  };
}

/** Logarithm of the mean likelihood. */
function meanLog(all: readonly Pick<Laid, 'odds' | 'log'>[]): number {
  const odds = all.reduce((sum, one) => sum + one.odds, 0);
  return logSum(all.map((one) => Math.log(one.odds) + one.log)) - Math.log(odds);
}

/**
 * Neighbouring severities that the readings do not tell apart, or that are far from what they say, taken as one that
 * the middle stands for.
 */
function lumped(all: readonly Laid[]): Laid[] {
  const most = all.reduce((top, { log }) => Math.max(top, log), -Infinity);
  const lumps: Laid[][] = [];
  for (const one of all) {
    const [last, first] = [lumps.at(-1), lumps.at(-1)?.[0]];
    const joins =
      last !== undefined && first !== undefined && last.length < LUMP && sortOf(first) === sortOf(one);
    if (joins && isOne(first, one, most)) last.push(one);
    else lumps.push([one]);
  }
  return lumps.map((lump) => ({
    faults: lump[lump.length >> 1]!.faults,
    odds: lump.reduce((sum, { odds }) => sum + odds, 0),
    log: meanLog(lump),
  }));
}

function isOne(one: Laid, two: Laid, most: number): boolean {
  return Math.abs(one.log - two.log) < NO_TELLING || Math.max(one.log, two.log) < most - FAR;
}
const LUMP = 4;
/** Logarithms of how well things are explained: nearer than the first is alike, this much worse is far. */
const NO_TELLING = 0.3;
const FAR = 9;

/** The places and kinds of its faults; a break is a kind of its own. */
function sortOf({ faults }: Suspect): string {
  const known =
    SORTS.get(faults) ??
    faults
      .map((fault) => {
        const at = fault.kind === 'brushJoint' ? fault.brush : fault.coil;
        return `${fault.kind} ${at} ${isBreak(fault)} ${'breakdownV' in fault ? fault.breakdownV : ''}`;
      })
      .join();
  SORTS.set(faults, known);
  return known;
}
const SORTS = new WeakMap<Faults, string>();

const SIGNS = new WeakMap<Faults, readonly Sign[]>();
function signsOf(faults: Faults): readonly Sign[] {
  const known = SIGNS.get(faults) ?? faults.flatMap(fieldSigns);
  SIGNS.set(faults, known);
  return known;
}
