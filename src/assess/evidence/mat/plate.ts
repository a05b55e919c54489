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
import { type Group, type Unweighed, weighed } from './case.ts';
import { anyLog, lampReach, looksLog, megohmShown, readingLog } from './likelihood.ts';
import type { MatModel } from './model.ts';
import { DIRT_OHM, DOWN_OHM, DOWN_V, NONE_AT_HOLDER, PLATE_ODDS, RIVET_OHM } from './priors.ts';
import type { MatEvidence, MatQuestion, MatReading, MatShown } from './reading.ts';

interface Suspect {
  readonly faults: readonly BrushPlateFault[];
  readonly odds: number;
}

function spread(odds: number, faults: readonly BrushPlateFault[]): Suspect[] {
  return faults.map((fault) => ({ faults: [fault], odds: odds / faults.length }));
}

function rivets(holder: PlateHolder): Suspect[] {
  const faults = (['pressed', 'released'] as const).flatMap((makes) =>
    RIVET_OHM.map((ohm): BrushPlateFault => ({ kind: 'looseRivet', holder, makes, ohm })),
  );
  return spread(PLATE_ODDS.looseRivet, faults);
}

/** Lists of faults of one sort each; what a holder has is at most one of every list. */
function sorts(holder: PlateHolder): Suspect[][] {
  const pigtail: Suspect[] = spread(PLATE_ODDS.brokenPigtail, [{ kind: 'brokenPigtail', holder }]);
  if (!isInsulated(holder)) return [pigtail, rivets(holder)];
  const dirt = DIRT_OHM.map((ohm): BrushPlateFault => ({ kind: 'dirt', holder, ohm }));
  const down = DOWN_V.flatMap((breakdownV) =>
    DOWN_OHM.map((ohm): BrushPlateFault => ({ kind: 'insulatorDown', holder, ohm, breakdownV })),
  );
  return [pigtail, rivets(holder), spread(PLATE_ODDS.dirt, dirt), spread(PLATE_ODDS.insulatorDown, down)];
}

/** Nothing wrong, one fault, or two of different sorts, of which the second is taken at a few severities. */
function suspectsAt(holder: PlateHolder): Suspect[] {
  const lists = sorts(holder);
  const pairs = lists.flatMap((list, nth) =>
    lists.slice(nth + 1).flatMap((others) => list.flatMap((one) => few(others).map((two) => both(one, two)))),
  );
  return [{ faults: [], odds: 1 }, ...lists.flat(), ...pairs];
}

function few(list: readonly Suspect[]): Suspect[] {
  const step = Math.ceil(list.length / FEW);
  const kept = list.filter((_, nth) => nth % step === 0);
  return kept.map(({ faults, odds }) => ({ faults, odds: (odds * list.length) / kept.length }));
}
const FEW = 8;

function both(one: Suspect, two: Suspect): Suspect {
  return { faults: [...one.faults, ...two.faults], odds: one.odds * two.odds };
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
  private readonly done: readonly PlateRemedy[];

  /** @param done what was cured before the readings were taken cannot be there any more */
  constructor(plate: BrushPlateDesign, mainsId: MainsId, done: readonly PlateRemedy[]) {
    this.plate = plate;
    this.done = done;
    this.reach = lampReach(MAINS[mainsId]);
    this.peakV = Math.SQRT2 * MAINS[mainsId].volt;
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
      const logOf = (faults: readonly BrushPlateFault[]) =>
        own.reduce((sum, one) => sum + readingLog(one, this.shows(one, faults), from), 0) +
        looksLog(faults.flatMap(plateSigns), everydayOnMat, looks);
      const left = holderSuspects(holder).filter(({ faults }) => isLeft(faults, this.done));
      const cases: Unweighed<BrushPlateFault>[] = left.map(({ faults, odds }) => ({
        faults,
        odds,
        log: logOf(faults),
      }));
      return weighed([...cases, { faults: null, odds: NONE_AT_HOLDER, log: anyLog(own) }]);
    });
  }
}

function isLeft(faults: readonly BrushPlateFault[], done: readonly PlateRemedy[]): boolean {
  return done.every((remedy) => remedyBrushPlate(faults, remedy).length === faults.length);
}

/** Between the plate's metal and a holder; what lies between two holders is left out. */
function isAcross(places: MatReading['places'], holder: PlateHolder): boolean {
  const metal: PlateNode = 'plate:metal';
  return places.includes(metal) && places.includes(holder);
}
