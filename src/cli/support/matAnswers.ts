import { lampLit } from '../../assess/diagnosis/shown.ts';
import { MAINS, type MainsId } from '../../engine/drive.ts';
import {
  seeMegohms,
  TEST_VOLTS,
  type TestVolt,
  terminalVolt,
} from '../../engine/instruments/insulationTester.ts';
import { FEED_A, seeMillivolts } from '../../engine/instruments/millivoltDrop.ts';
import {
  type BrushPlateDesign,
  type BrushPlateFault,
  brushPlateResistance,
  isInsulated,
  PLATE_HOLDERS,
  type PlateHolder,
} from '../../engine/parts/brushPlate.ts';
import {
  type FieldFrameDesign,
  type FieldFrameFault,
  type FieldNode,
  fieldFrameResistance,
} from '../../engine/parts/fieldFrame.ts';

/** What every test shows on field frame and brush plate, computed from their networks of resistors. */

type Ohm = (peakV: number) => number | null;
type Megohms = Readonly<Record<TestVolt, number | 'over'>>;

export interface FieldAnswers {
  readonly lamp: readonly {
    readonly from: FieldNode;
    readonly to: FieldNode;
    readonly lit: boolean;
    /** With the two field brushes lying against one another. */
    readonly lit_brushes_touching: boolean;
  }[];
  readonly megohms: readonly ({ readonly to: FieldNode } & Megohms)[];
  readonly drop_mV: readonly { readonly to: FieldNode; readonly mV: Drop }[];
}

export interface PlateAnswers {
  readonly lamp: readonly {
    readonly holder: PlateHolder;
    readonly lit: boolean;
    readonly lit_leant_on: boolean;
  }[];
  readonly megohms: readonly ({ readonly holder: PlateHolder } & Megohms)[];
}

const BRUSHES = ['field:brush1', 'field:brush2'] as const;

/** What the tester's display comes to rest at; weak insulation may give way to the voltage that stands on it. */
export function megohmsOf(ohm: Ohm): Megohms {
  const at = (volt: TestVolt): number | 'over' => {
    const found = ohm(terminalVolt(volt, ohm(0)));
    const seen = seeMegohms(found ?? Number.POSITIVE_INFINITY);
    return seen.over ? 'over' : seen.megohms;
  };
  return Object.fromEntries(TEST_VOLTS.map((volt) => [volt, at(volt)])) as Megohms;
}

export function fieldAnswers(
  frame: FieldFrameDesign,
  faults: readonly FieldFrameFault[],
  mainsId: MainsId,
): FieldAnswers {
  const mains = MAINS[mainsId];
  const ohm = (from: FieldNode, to: FieldNode, peakV: number, brushesTouching = false) =>
    fieldFrameResistance(frame, faults, from, to, { brushesTouching, peakV });
  const lit = (from: FieldNode, to: FieldNode, touching: boolean) =>
    lampLit(ohm(from, to, Math.SQRT2 * mains.volt, touching), mains);
  return {
    lamp: (['field:terminal', 'field:case'] as const).flatMap((from) =>
      BRUSHES.map((to) => ({
        from,
        to,
        lit: lit(from, to, false),
        lit_brushes_touching: lit(from, to, true),
      })),
    ),
    megohms: BRUSHES.map((to) => ({ to, ...megohmsOf((peakV) => ohm('field:case', to, peakV)) })),
    drop_mV: BRUSHES.map((to) => ({ to, mV: dropOf(ohm('field:terminal', to, 0)) })),
  };
}

type Drop = number | 'over' | 'no current';

/** The feed's own meter shows no current into a break, whatever leaks past it. */
const BREAK_OHM = 100;

function dropOf(ohm: number | null): Drop {
  if (ohm === null || ohm > BREAK_OHM) return 'no current';
  return dropShown(ohm * FEED_A);
}

/** What the millivoltmeter shows of a drop, V; null: no current flows. */
export function dropShown(volt: number | null): Drop {
  if (volt === null) return 'no current';
  const seen = seeMillivolts(volt);
  return seen.over ? 'over' : seen.millivolts;
}

export function plateAnswers(
  plate: BrushPlateDesign,
  faults: readonly BrushPlateFault[],
  mainsId: MainsId,
): PlateAnswers {
  const mains = MAINS[mainsId];
  const ohm = (holder: PlateHolder, peakV: number, pressed = false) =>
    brushPlateResistance(plate, faults, 'plate:metal', holder, { pressed: pressed ? holder : null, peakV });
  const lit = (holder: PlateHolder, pressed: boolean) =>
    lampLit(ohm(holder, Math.SQRT2 * mains.volt, pressed), mains);
  return {
    lamp: PLATE_HOLDERS.map((holder) => ({
      holder,
      lit: lit(holder, false),
      lit_leant_on: lit(holder, true),
    })),
    megohms: PLATE_HOLDERS.filter(isInsulated).map((holder) => ({
      holder,
      ...megohmsOf((peakV) => ohm(holder, peakV)),
    })),
  };
}
