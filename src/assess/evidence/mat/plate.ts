import { MAINS, type MainsId } from '../../../engine/drive.ts';
import {
  type BrushPlateDesign,
  type BrushPlateFault,
  brushPlateResistance,
  isInsulated,
  PLATE_HOLDERS,
  type PlateHolder,
  type PlateNode,
} from '../../../engine/parts/brushPlate.ts';
import { type PlateRemedy, remedyBrushPlate } from '../../../engine/parts/remedies.ts';
import { everydayOnMat, plateSigns } from '../../../scenario/hidden/matSigns.ts';
import type { Sign } from '../../../scenario/hidden/sign.ts';
import { remembered } from '../memory.ts';
import { type Group, type Unweighed, weighed } from './case.ts';
import { anyLog, lampReach, looksLog, megohmShown, readingLog } from './likelihood.ts';
import type { MatModel } from './model.ts';
import {
  BESIDE_TORN,
  DIRT_OHM,
  DOWN_OHM,
  DOWN_V,
  NONE_AT_HOLDER,
  OPPOSITE_RIVET,
  PLATE_ODDS,
  RIVET_OHM,
} from './priors.ts';
import { keyOf, type MatEvidence, type MatQuestion, type MatReading, type MatShown } from './reading.ts';

interface Suspect {
  readonly faults: readonly BrushPlateFault[];
  readonly odds: number;
}

function spread(odds: number, faults: readonly BrushPlateFault[]): Suspect[] {
  return faults.map((fault) => ({ faults: [fault], odds: odds / faults.length }));
}

const rivet = (holder: PlateHolder, makes: 'pressed' | 'released', ohm: number): BrushPlateFault => {
  return { kind: 'looseRivet', holder, makes, ohm };
};

/** A sort of fault at a holder: at every severity, and at a few that stand for all when something else is wrong too. */
interface Sort {
  readonly all: readonly Suspect[];
  readonly few: readonly Suspect[];
}

/** Two loose rivets that act alike read as one; two of which one makes when the other breaks are a case of their own. */
function rivets(holder: PlateHolder): Sort {
  const two = {
    faults: [rivet(holder, 'pressed', RIVET_OHM[0]!), rivet(holder, 'released', RIVET_OHM[0]!)],
    odds: PLATE_ODDS.looseRivet * OPPOSITE_RIVET,
  };
  const one = (ohms: readonly number[]) =>
    spread(
      PLATE_ODDS.looseRivet * (1 - OPPOSITE_RIVET),
      ohms.flatMap((ohm) => [rivet(holder, 'pressed', ohm), rivet(holder, 'released', ohm)]),
    );
  return { all: [...one(RIVET_OHM), two], few: [...one(RIVET_OHM.slice(0, 1)), two] };
}

/** What a holder has is at most one of every sort. */
function sorts(holder: PlateHolder): readonly [pigtail: Sort, ...between: Sort[]] {
  const torn = spread(PLATE_ODDS.brokenPigtail, [{ kind: 'brokenPigtail', holder }]);
  const pigtail: Sort = { all: torn, few: torn };
  if (!isInsulated(holder)) return [pigtail, rivets(holder)];
  const dirt = DIRT_OHM.map((ohm): BrushPlateFault => ({ kind: 'dirt', holder, ohm }));
  const down = DOWN_V.flatMap((breakdownV) =>
    DOWN_OHM.map((ohm): BrushPlateFault => ({ kind: 'insulatorDown', holder, ohm, breakdownV })),
  );
  return [
    pigtail,
    withFew(spread(PLATE_ODDS.dirt, dirt)),
    withFew(spread(PLATE_ODDS.insulatorDown, down)),
    rivets(holder),
  ];
}

/**
 * Nothing wrong, one fault, two of different sorts, the second at a few severities, or three, each at a few. Behind a
 * torn pigtail nothing is read: no third is looked for there.
 */
function suspectsAt(holder: PlateHolder): Suspect[] {
  const [pigtail, ...between] = sorts(holder);
  const torn = pigtail.all.map(({ faults, odds }) => ({ faults, odds: odds * BESIDE_TORN }));
  const pairs = between.flatMap(({ all }, nth) =>
    between.slice(nth + 1).flatMap(({ few }) => together(all, few)),
  );
  const [one, two, three] = between;
  const triples = two && three ? together(together(one!.few, two.few), three.few) : [];
  return [
    { faults: [], odds: 1 },
    ...pigtail.all,
    ...between.flatMap(({ all, few }) => [...all, ...together(torn, few)]),
    ...pairs,
    ...triples,
  ];
}

function withFew(all: readonly Suspect[]): Sort {
  const step = Math.ceil(all.length / FEW);
  const kept = all.filter((_, nth) => nth % step === step >> 1);
  const scale = all.length / kept.length;
  return { all, few: kept.map(({ faults, odds }) => ({ faults, odds: odds * scale })) };
}
const FEW = 8;

function together(ones: readonly Suspect[], others: readonly Suspect[]): Suspect[] {
  return ones.flatMap((one) =>
    others.map((other) => ({
      faults: [...one.faults, ...other.faults],
      odds: one.odds * other.odds,
    })),
  );
}

const HOLDER_SUSPECTS = new Map(PLATE_HOLDERS.map((holder) => [holder, suspectsAt(holder)] as const));

/** What a holder may have, with the odds of it. */
export function holderSuspects(holder: PlateHolder): readonly Suspect[] {
  return HOLDER_SUSPECTS.get(holder)!;
}

/** The brush plate: its holders have nothing to do with one another, so each is weighed by itself. */
export class PlateModel implements MatModel<BrushPlateFault> {
  private readonly plate: BrushPlateDesign;
  private readonly reach: number;
  private readonly peakV: number;
  private readonly mainsId: MainsId;
  private readonly done: readonly PlateRemedy[];

  /** @param done what was cured before the readings were taken cannot be there any more */
  constructor(plate: BrushPlateDesign, mainsId: MainsId, done: readonly PlateRemedy[]) {
    this.plate = plate;
    this.mainsId = mainsId;
    this.done = done;
    this.reach = lampReach(MAINS[mainsId]);
    this.peakV = Math.SQRT2 * MAINS[mainsId].volt;
  }

  get everyFault(): readonly BrushPlateFault[] {
    return PLATE_HOLDERS.flatMap((holder) => holderSuspects(holder).flatMap(({ faults }) => faults));
  }

  groupOf({ places }: MatQuestion): number | null {
    const nth = PLATE_HOLDERS.findIndex((holder) => isAcross(places, holder));
    return nth < 0 ? null : nth;
  }

  shows(question: MatQuestion, faults: readonly BrushPlateFault[]): MatShown {
    const [a, b] = question.places as readonly [PlateNode, PlateNode];
    const pressed = question.leanedOn as PlateHolder | null;
    const at = (peakV: number) => brushPlateResistance(this.plate, faults, a, b, { pressed, peakV });
    if (question.kind === 'megohm') return megohmShown(at, question.volt);
    const ohm = at(this.peakV);
    return { kind: 'lamp', lit: ohm !== null && ohm <= this.reach };
  }

  weigh({ readings, looks, from }: MatEvidence): Group<BrushPlateFault>[] {
    return PLATE_HOLDERS.map((holder) => {
      const own = readings.filter(({ kind, places }) => kind !== 'drop' && isAcross(places, holder));
      const shown = own.map((one) => this.shownAt(holder, one));
      const cases = holderSuspects(holder).flatMap(({ faults, odds }, nth): Unweighed<BrushPlateFault>[] => {
        if (!isLeft(faults, this.done)) return [];
        const log = own.reduce((sum, one, k) => sum + readingLog(one, shown[k]![nth]!, from), 0);
        return [{ faults, odds, log: log + looksLog(signsOf(faults), everydayOnMat, looks) }];
      });
      return weighed([...cases, { faults: null, odds: NONE_AT_HOLDER, log: anyLog(own) }]);
    });
  }

  /** What a question across one holder would show of each of its suspects; the same for every plate of a kind. */
  private shownAt(holder: PlateHolder, question: MatQuestion): readonly MatShown[] {
    const key = `${this.plate.id} ${this.mainsId} ${holder} ${keyOf(question)}`;
    return remembered(SHOWN, key, SHOWN_AT_MOST, () =>
      holderSuspects(holder).map(({ faults }) => this.shows(question, faults)),
    );
  }
}

const SHOWN = new Map<string, readonly MatShown[]>();
const SHOWN_AT_MOST = 100;

const SIGNS = new WeakMap<readonly BrushPlateFault[], readonly Sign[]>();
function signsOf(faults: readonly BrushPlateFault[]): readonly Sign[] {
  const known = SIGNS.get(faults) ?? faults.flatMap(plateSigns);
  SIGNS.set(faults, known);
  return known;
}

function isLeft(faults: readonly BrushPlateFault[], done: readonly PlateRemedy[]): boolean {
  return done.every((remedy) => remedyBrushPlate(faults, remedy).length === faults.length);
}

/** Between the plate's metal and a holder; what lies between two holders is left out. */
function isAcross(places: MatReading['places'], holder: PlateHolder): boolean {
  const metal: PlateNode = 'plate:metal';
  return places.includes(metal) && places.includes(holder);
}
