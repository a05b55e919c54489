import type { FieldFrameDesign, FieldFrameFault } from '../../../engine/parts/fieldFrame.ts';
import {
  ANOTHER,
  FIELD_ODDS,
  GIVING,
  GIVING_OHM,
  GIVING_V,
  GROUND_FRACTION,
  GROUND_OHM,
  JOINT_OHM,
  JOINT_OPEN,
  SHORT_OHM,
  SHORT_SHARE,
  SOME_JOINT_OHM,
  SOME_JOINT_STEP,
  SOME_SHARE,
  SOME_SHARE_STEP,
  WEAK_OHM,
} from './priors.ts';

/** What a field frame may have, winding and insulation apart, each with its odds against no fault. */

export type Faults = readonly FieldFrameFault[];
export interface Suspect {
  readonly faults: Faults;
  readonly odds: number;
}

const SOUND: Suspect = { faults: [], odds: 1 };

function spread(odds: number, faults: Faults): Suspect[] {
  return faults.map((fault) => ({ faults: [fault], odds: odds / faults.length }));
}

export const isBreak = (fault: FieldFrameFault) =>
  fault.kind === 'openCoil' || (fault.kind === 'brushJoint' && fault.ohm === 'open');

/** The same list for every model of one frame. */
export const windingSuspects = onceForEach(listWinding);
export const insulationSuspects = onceForEach(listInsulation);

function onceForEach(list: (frame: FieldFrameDesign) => readonly Suspect[]) {
  const known = new WeakMap<FieldFrameDesign, readonly Suspect[]>();
  return (frame: FieldFrameDesign): readonly Suspect[] => {
    const found = known.get(frame) ?? list(frame);
    known.set(frame, found);
    return found;
  };
}

function listWinding({ coils }: FieldFrameDesign): Suspect[] {
  const each = coils.map((_, coil) => coil);
  const joints = (...ohms: readonly (number | 'open')[]) =>
    ([1, 2] as const).flatMap((brush) =>
      ohms.map((ohm): FieldFrameFault => ({ kind: 'brushJoint', brush, ohm })),
    );
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
  const two = breaks.flatMap((one, nth) => together([one], breaks.slice(nth + 1)));
  const poor = spread(FIELD_ODDS.brushJoint * (1 - JOINT_OPEN), joints(...JOINT_OHM));
  return [SOUND, ...breaks, ...poor, ...spread(FIELD_ODDS.shortedTurns, shorts), ...two];
}

/** Two things wrong with the winding that both still conduct: in different coils, at both joints, or one of each. */
export const windingPairs = onceForEach(listPairs);

function listPairs({ coils }: FieldFrameDesign): Suspect[] {
  const each = coils.map((_, coil) => coil);
  const shorts = each.map((coil) =>
    SOME_SHARE.map((share): FieldFrameFault => ({ kind: 'shortedTurns', coil, share, ohm: SHORT_OHM })),
  );
  const joints = ([1, 2] as const).map((brush) =>
    SOME_JOINT_OHM.map((ohm): FieldFrameFault => ({ kind: 'brushJoint', brush, ohm })),
  );
  const places = [
    ...shorts.map((faults) => spread(FIELD_ODDS.shortedTurns / coils.length, faults)),
    ...joints.map((faults) => spread((FIELD_ODDS.brushJoint * (1 - JOINT_OPEN)) / 2, faults)),
  ];
  return places.flatMap((one, nth) => places.slice(nth + 1).flatMap((other) => together(one, other)));
}

function together(ones: readonly Suspect[], others: readonly Suspect[]): Suspect[] {
  return ones.flatMap((one) =>
    others.map((other) => ({
      faults: [...one.faults, ...other.faults],
      odds: ANOTHER * one.odds * other.odds,
    })),
  );
}

/** A pair with every severity half a step of its list harder. */
export function halfStepOn(faults: Faults): Faults {
  return faults.map((fault) => {
    if (fault.kind === 'shortedTurns') return { ...fault, share: fault.share + SOME_SHARE_STEP / 2 };
    if (fault.kind !== 'brushJoint' || fault.ohm === 'open') return fault;
    return { ...fault, ohm: fault.ohm * Math.sqrt(SOME_JOINT_STEP) };
  });
}

function listInsulation({ coils }: FieldFrameDesign): Suspect[] {
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
  const giving = ends.flatMap((coil) =>
    GIVING_V.flatMap((breakdownV) =>
      GIVING_OHM.map((ohm): FieldFrameFault => ({ kind: 'weakInsulation', coil, ohm, breakdownV })),
    ),
  );
  return [
    SOUND,
    ...spread(FIELD_ODDS.groundedCoil, grounds),
    ...spread(FIELD_ODDS.weakInsulation * (1 - GIVING), weak),
    ...spread(FIELD_ODDS.weakInsulation * GIVING, giving),
  ];
}
