import { type Resistor, resistanceBetween } from '../circuit/resistors.ts';
import { leakageOhm } from './fieldFrame.ts';

/**
 * A brush plate as a network of resistors: two holders insulated from the plate, two earthed ones joined to it.
 * A probe on a holder's place rests on its brush, so holder joint and pigtail are in the path.
 */

/** What a probe can reach. */
export type PlateNode =
  | 'plate:metal'
  | 'plate:insulated1'
  | 'plate:insulated2'
  | 'plate:earthed1'
  | 'plate:earthed2';
export type PlateHolder = Exclude<PlateNode, 'plate:metal'>;
export type InsulatedHolder = 'plate:insulated1' | 'plate:insulated2';

export interface BrushPlateDesign {
  readonly id: string;
  readonly name: string;
  /** Brush to holder through its pigtail, ohm. */
  readonly pigtailOhm: number;
  /** Earthed holder to plate through its rivets, ohm. */
  readonly rivetOhm: number;
  /** Sound insulation of one insulated holder to the plate, ohm. */
  readonly insulationOhm: number;
}

/** The brush plate of the bench. Invented figures. */
export const FOUR_HOLDERS: BrushPlateDesign = {
  id: 'plate-four-holders',
  name: 'Starter brush plate, two insulated and two earthed holders',
  pigtailOhm: 0.5e-3,
  rivetOhm: 0.1e-3,
  insulationOhm: 500e6,
};

/** Brush plates a job can be about, by id. */
export const JOB_PLATES: ReadonlyMap<string, BrushPlateDesign> = new Map([[FOUR_HOLDERS.id, FOUR_HOLDERS]]);

/** Faults of a brush plate. */
export type BrushPlateFault =
  /** Packed dirt and carbon across the insulation of a holder. */
  | { readonly kind: 'dirt'; readonly holder: InsulatedHolder; readonly ohm: number }
  /**
   * A loose rivet. On an insulated holder it touches the plate, on an earthed one it holds the joint; either way it
   * makes only while the holder is pressed, or only while it is left alone.
   */
  | {
      readonly kind: 'looseRivet';
      readonly holder: PlateHolder;
      readonly makes: 'pressed' | 'released';
      readonly ohm: number;
    }
  /** The insulator itself has broken down; with a `breakdownV` (peak) it still holds below that voltage. */
  | {
      readonly kind: 'insulatorDown';
      readonly holder: InsulatedHolder;
      readonly ohm: number;
      readonly breakdownV: number | null;
    }
  | { readonly kind: 'brokenPigtail'; readonly holder: PlateHolder };

export type BrushPlateFaultKind = BrushPlateFault['kind'];

export interface BrushPlateHow {
  /** The holder under a finger or a firmly held probe, or null. */
  readonly pressed: PlateHolder | null;
  /** Peak voltage of the test between holder and plate, V. */
  readonly peakV: number;
}

export const PLATE_HOLDERS: readonly PlateHolder[] = [
  'plate:insulated1',
  'plate:insulated2',
  'plate:earthed1',
  'plate:earthed2',
];

export function isInsulated(holder: PlateHolder): holder is InsulatedHolder {
  return holder === 'plate:insulated1' || holder === 'plate:insulated2';
}

/** Resistance between two places of the plate, ohm; null where nothing joins them. */
export function brushPlateResistance(
  design: BrushPlateDesign,
  faults: readonly BrushPlateFault[],
  a: PlateNode,
  b: PlateNode,
  how: BrushPlateHow,
): number | null {
  // Each holder hangs on the plate alone: the others change nothing.
  const asked = PLATE_HOLDERS.filter((holder) => holder === a || holder === b);
  return resistanceBetween(
    asked.flatMap((holder) => holderResistors(design, faults, holder, how)),
    a,
    b,
  );
}

/** The plate with its faults applied, as resistors. The body of a holder is a node of its own, behind its brush. */
export function brushPlateResistors(
  design: BrushPlateDesign,
  faults: readonly BrushPlateFault[],
  how: BrushPlateHow,
): readonly Resistor[] {
  return PLATE_HOLDERS.flatMap((holder) => holderResistors(design, faults, holder, how));
}

function holderResistors(
  design: BrushPlateDesign,
  faults: readonly BrushPlateFault[],
  holder: PlateHolder,
  how: BrushPlateHow,
): readonly Resistor[] {
  const own = faults.filter((f) => f.holder === holder);
  const body = `body:${holder}`;
  const list: Resistor[] = own.some((f) => f.kind === 'brokenPigtail')
    ? []
    : [{ a: holder, b: body, ohm: design.pigtailOhm }];
  const paths = isInsulated(holder) ? leaks(design, own, how) : joints(design, own, how);
  return [...list, ...paths.map((ohm) => ({ a: body, b: 'plate:metal', ohm }))];
}

/** Every path from an insulated holder to the plate, ohm. */
function leaks(design: BrushPlateDesign, own: readonly BrushPlateFault[], how: BrushPlateHow): number[] {
  const bad = own.flatMap((f) => {
    if (f.kind === 'dirt') return [f.ohm];
    // A fault of the insulator without a breakdown voltage conducts at any voltage.
    if (f.kind === 'insulatorDown') {
      return f.breakdownV !== null && how.peakV <= f.breakdownV ? [] : [leakageOhm(f, how.peakV)];
    }
    return f.kind === 'looseRivet' && rivetMakes(f, how) ? [f.ohm] : [];
  });
  return [design.insulationOhm, ...bad];
}

/** The joint of an earthed holder, ohm: its rivets, or a loose one that makes or breaks. */
function joints(design: BrushPlateDesign, own: readonly BrushPlateFault[], how: BrushPlateHow): number[] {
  const loose = own.filter((f) => f.kind === 'looseRivet');
  if (loose.length === 0) return [design.rivetOhm];
  return loose.every((f) => rivetMakes(f, how)) ? [loose.reduce((sum, f) => sum + f.ohm, 0)] : [];
}

function rivetMakes(
  rivet: { readonly holder: PlateHolder; readonly makes: 'pressed' | 'released' },
  how: BrushPlateHow,
): boolean {
  return (how.pressed === rivet.holder) === (rivet.makes === 'pressed');
}
