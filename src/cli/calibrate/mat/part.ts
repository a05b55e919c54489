import {
  type Faults,
  insulationSuspects,
  windingPairs,
  windingSuspects,
} from '../../../assess/evidence/mat/frameSuspects.ts';
import { holderSuspects } from '../../../assess/evidence/mat/plate.ts';
import { ANOTHER, SOME_JOINT_STEP, SOME_SHARE_STEP } from '../../../assess/evidence/mat/priors.ts';
import {
  type BrushPlateFault,
  type InsulatedHolder,
  isInsulated,
  PLATE_HOLDERS,
  type PlateHolder,
} from '../../../engine/parts/brushPlate.ts';
import type { FieldFrameDesign, FieldFrameFault } from '../../../engine/parts/fieldFrame.ts';
import { type Draw, pick, pickWeighted } from '../part.ts';

/** Field frames and brush plates drawn as often as the engine believes such parts come to the bench. */

export type MatFault = FieldFrameFault | BrushPlateFault;

/** Winding and insulation by their odds, severities anywhere between those listed. */
export function drawFrame(frame: FieldFrameDesign, draw: Draw): FieldFrameFault[] {
  const winding = [...windingSuspects(frame), ...windingPairs(frame)];
  const insulation = insulationSuspects(frame);
  const sum = (list: readonly { readonly odds: number }[]) => list.reduce((all, { odds }) => all + odds, 0);
  const [w, i] = [sum(winding) - 1, sum(insulation) - 1];
  const state = pickWeighted(draw, [1, w, i, w * i * ANOTHER]);
  const one = (list: readonly { readonly faults: Faults; readonly odds: number }[]) =>
    list[
      pickWeighted(
        draw,
        list.map(({ faults, odds }) => (faults.length === 0 ? 0 : odds)),
      )
    ]!.faults;
  const ofWinding = state & 1 ? one(winding) : [];
  const steps = ofWinding.length > 1 ? PAIR_STEPS : STEPS;
  return [
    ...ofWinding.map((fault) => between(fault, draw, steps)),
    ...(state & 2 ? one(insulation) : []).map((fault) => between(fault, draw, STEPS)),
  ];
}

/** Holder by holder. */
export function drawPlate(draw: Draw): BrushPlateFault[] {
  return PLATE_HOLDERS.flatMap((holder) => {
    const list = holderSuspects(holder);
    const { faults } =
      list[
        pickWeighted(
          draw,
          list.map(({ odds }) => odds),
        )
      ]!;
    return faults.map((fault) => between(fault, draw, STEPS));
  });
}

/** Steps between neighbours on the engine's lists, as factors; of a share of turns, as a difference. */
interface Steps {
  readonly ohm: Readonly<Record<MatFault['kind'], number>>;
  readonly share: number;
}
const STEPS: Steps = {
  ohm: {
    brushJoint: 1.08,
    openCoil: 1,
    shortedTurns: 1,
    groundedCoil: 10,
    weakInsulation: 1.3,
    dirt: 1.3,
    insulatorDown: 1.3,
    looseRivet: 10,
    brokenPigtail: 1,
  },
  share: 0.025,
};
/** Where two faults of a winding stand side by side. */
const PAIR_STEPS: Steps = { ohm: { ...STEPS.ohm, brushJoint: SOME_JOINT_STEP }, share: SOME_SHARE_STEP };

function between<F extends MatFault>(fault: F, draw: Draw, { ohm, share }: Steps): F {
  return moved(fault, ohm[fault.kind] ** (draw() - 0.5), share * (draw() - 0.5), draw);
}

/** Every severity up to twice as hard or soft, beyond its list or at its edges. */
export function offRange<F extends MatFault>(faults: readonly F[], draw: Draw): F[] {
  return faults.map((fault) => moved(fault, 2 ** (2 * draw() - 1), 0.3 * (draw() - 0.5), draw));
}

function moved<F extends MatFault>(fault: F, factor: number, byShare: number, draw: Draw): F {
  const ohm = 'ohm' in fault && fault.ohm !== 'open' ? { ohm: fault.ohm * factor } : {};
  if (fault.kind === 'shortedTurns')
    return { ...fault, share: Math.max(0.01, Math.min(0.98, fault.share + byShare)) };
  return fault.kind === 'groundedCoil' ? { ...fault, ...ohm, fraction: draw() } : { ...fault, ...ohm };
}

/** What a part has beside anything else in a world of its own. */
export interface More<F> {
  readonly faults: readonly F[];
  /** States of one fault that comes and goes: any of them may stand while a reading is taken. */
  readonly restless?: readonly F[];
}

const short = (coil: number, draw: Draw): FieldFrameFault => {
  return { kind: 'shortedTurns', coil, share: 0.1 + 0.6 * draw(), ohm: 2e-5 };
};
const joint = (brush: 1 | 2, draw: Draw): FieldFrameFault => {
  return { kind: 'brushJoint', brush, ohm: 1e-3 * (1 + 20 * draw()) };
};

/** Two things at once: two shorts, a short with a bad joint, both joints bad; or insulation that gives way. */
export function severalInFrame({ coils }: FieldFrameDesign, draw: Draw): More<FieldFrameFault> {
  const first = Math.floor(draw() * coils.length);
  const faults = pick(draw, [
    () => [short(first, draw), short((first + 1) % coils.length, draw)],
    () => [short(first, draw), joint(pick(draw, [1, 2]), draw)],
    () => [joint(1, draw), joint(2, draw)],
    (): FieldFrameFault[] => [
      { kind: 'weakInsulation', coil: first, ohm: 5e7, breakdownV: 150 + 150 * draw() },
    ],
  ])();
  return { faults };
}

/** Two shorts and a bad joint, a joint that comes and goes, or a leak that is tenfold another at every reading. */
export function unlistedInFrame({ coils }: FieldFrameDesign, draw: Draw): More<FieldFrameFault> {
  const coil = Math.floor(draw() * coils.length);
  const brush = pick(draw, [1, 2] as const);
  return pick(draw, [
    (): More<FieldFrameFault> => ({
      faults: [short(coil, draw), short((coil + 1) % coils.length, draw), joint(brush, draw)],
    }),
    (): More<FieldFrameFault> => ({
      faults: [],
      restless: [1e-3, 5e-3, 25e-3, 'open' as const].map((ohm) => ({ kind: 'brushJoint', brush, ohm })),
    }),
    (): More<FieldFrameFault> => ({
      faults: [],
      restless: [2e4, 2e5, 2e6].map((ohm) => ({ kind: 'weakInsulation', coil, ohm, breakdownV: null })),
    }),
  ])();
}

const rivet = (holder: PlateHolder, makes: 'pressed' | 'released', ohm = 0.05): BrushPlateFault => {
  return { kind: 'looseRivet', holder, makes, ohm };
};
const dirtAndDown = (holder: InsulatedHolder, draw: Draw): BrushPlateFault[] => [
  { kind: 'dirt', holder, ohm: 5e3 * (1 + 20 * draw()) },
  { kind: 'insulatorDown', holder, ohm: 1e6, breakdownV: 250 + 100 * draw() },
];

/** Two rivets of one holder, or three things wrong with one insulated holder. */
export function severalOnPlate(draw: Draw): More<BrushPlateFault> {
  const any = pick(draw, PLATE_HOLDERS);
  const insulated = pick(draw, INSULATED);
  const faults = pick(draw, [
    [rivet(any, 'pressed'), rivet(any, 'released')],
    [...dirtAndDown(insulated, draw), rivet(insulated, 'pressed')],
  ]);
  return { faults };
}

/** A rivet that makes as it likes, one tarnished far beyond those listed, or four things wrong with one holder. */
export function unlistedOnPlate(draw: Draw): More<BrushPlateFault> {
  const any = pick(draw, PLATE_HOLDERS);
  const makes = pick(draw, MAKES);
  const insulated = pick(draw, INSULATED);
  return pick(draw, [
    (): More<BrushPlateFault> => ({ faults: [], restless: MAKES.map((one) => rivet(any, one)) }),
    (): More<BrushPlateFault> => ({ faults: [rivet(any, makes, 2e4 * 10 ** draw())] }),
    (): More<BrushPlateFault> => ({
      faults: [...dirtAndDown(insulated, draw), ...MAKES.map((one) => rivet(insulated, one))],
    }),
  ])();
}
const INSULATED = PLATE_HOLDERS.filter(isInsulated);
const MAKES = ['pressed', 'released'] as const;
