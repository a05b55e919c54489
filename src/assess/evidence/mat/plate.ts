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
import { anyLog, lampLog, lampReach, looksLog, megohmLog } from './likelihood.ts';
import { DIRT_OHM, DOWN_OHM, DOWN_V, NONE_AT_HOLDER, PLATE_ODDS, RIVET_OHM } from './priors.ts';
import type { MatEvidence, MatReading } from './reading.ts';

/** The brush plate: its holders have nothing to do with one another, so each is weighed by itself. */

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

/** @param done what was cured before these readings were taken cannot be there any more */
export function weighPlate(
  plate: BrushPlateDesign,
  mainsId: MainsId,
  evidence: MatEvidence,
  done: readonly PlateRemedy[],
): Group<BrushPlateFault>[] {
  const mains = MAINS[mainsId];
  const reach = lampReach(mains);
  return PLATE_HOLDERS.map((holder) => {
    const own = evidence.readings.filter(({ places }) => isAcross(places, holder));
    const logOf = (faults: readonly BrushPlateFault[]) => own.reduce((sum, one) => sum + of(one, faults), 0);
    const of = (reading: MatReading, faults: readonly BrushPlateFault[]) => {
      const pressed = reading.leanedOn as PlateHolder | null;
      const at = (peakV: number) =>
        brushPlateResistance(plate, faults, 'plate:metal', holder, { pressed, peakV });
      if (reading.kind === 'lamp') return lampLog(reading, at(Math.SQRT2 * mains.volt), reach, evidence.from);
      return reading.kind === 'megohm' ? megohmLog(reading, at, evidence.from) : 0;
    };
    const looked = (faults: readonly BrushPlateFault[]) =>
      looksLog(faults.flatMap(plateSigns), everydayOnMat, evidence.looks);
    const left = HOLDER_SUSPECTS.get(holder)!.filter(({ faults }) => isLeft(faults, done));
    const cases: Unweighed<BrushPlateFault>[] = left.map(({ faults, odds }) => ({
      faults,
      odds,
      log: logOf(faults) + looked(faults),
    }));
    return weighed([...cases, { faults: null, odds: NONE_AT_HOLDER, log: anyLog(own) }]);
  });
}

function isLeft(faults: readonly BrushPlateFault[], done: readonly PlateRemedy[]): boolean {
  return done.every((remedy) => remedyBrushPlate(faults, remedy).length === faults.length);
}

/** Between the plate's metal and a holder; what lies between two holders is left out. */
function isAcross(places: MatReading['places'], holder: PlateHolder): boolean {
  const metal: PlateNode = 'plate:metal';
  return places.includes(metal) && places.includes(holder);
}
