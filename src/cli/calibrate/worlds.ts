import type { Priors } from '../../assess/evidence/priors.ts';
import { type ArmatureSolver, createArmatureSolver } from '../../engine/armatureBench.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { type FieldTables, finiteElementMeter } from './finiteElements.ts';
import {
  ALIKE,
  type Draw,
  type DrawnPart,
  drawPart,
  offRange,
  THREE,
  UNLISTED,
  withAnother,
} from './part.ts';

/** Currents of the ammeter by some other reckoning than the engine's, A. */
export type OtherMeter = (
  part: DrawnPart,
  rotationDeg: number,
  bars: readonly [number, number],
  loopOhm: number,
) => number;

/** What a table says of the world it is of. */
export interface Described {
  readonly name: string;
  readonly what: string;
  /** How far the share that is right may lie from what was said, beyond chance. */
  readonly tolerance: number;
  /** Whether parts have their faults as often as the engine believes: else only what readings speak of is judged. */
  readonly byPriors: boolean;
}

/** A world in which learners take readings: as the evidence engine believes it to be, or in some way not. */
export interface World extends Described {
  /** Scatter of the contacts against the bench's own. */
  readonly scatter: number;
  drawPart(design: ArmatureDesign, draw: Draw): DrawnPart;
  solver(design: ArmatureDesign): ArmatureSolver;
  readonly meter: OtherMeter | null;
  /** What the engine is told of this world beforehand; null: it believes what it always does. */
  readonly told: Pick<Priors, 'another' | 'alike'> | null;
}

/** Limits stated for the world as believed, and for the others, where the engine cannot be quite right. */
export const BELIEVED_TOLERANCE = 0.03;
export const OTHER_TOLERANCE = 0.12;

/** One solver for each armature: what it works out once serves every part of the kind. */
function solvers(make: (design: ArmatureDesign) => ArmatureSolver): World['solver'] {
  const known = new Map<string, ArmatureSolver>();
  return (design) => {
    const found = known.get(design.id) ?? make(design);
    known.set(design.id, found);
    return found;
  };
}

export const BELIEVED: World = {
  name: 'as believed',
  what: 'parts by the priors, severities between those listed, the bench as it is',
  scatter: 1,
  tolerance: BELIEVED_TOLERANCE,
  byPriors: true,
  drawPart,
  solver: solvers((design) => createArmatureSolver(design)),
  meter: null,
  told: null,
};

const other = (name: string, what: string, change: Partial<World>): World => ({
  ...BELIEVED,
  tolerance: OTHER_TOLERANCE,
  name,
  what,
  ...change,
});

export const MIS_SPECIFIED: readonly World[] = [
  other('scatter × 1.5', 'contacts half as unsteady again as believed', { scatter: 1.5 }),
  other('off the grid', 'severities beyond and at the edges of those listed', {
    drawPart: (design, draw) => offRange(drawPart(design, draw), draw),
  }),
  other('several alike', 'beside anything else two grounds, two shorted coils or three bad joints', {
    byPriors: false,
    drawPart: (design, draw) => withAnother(drawPart(design, draw), draw, ALIKE),
  }),
  other('several alike, told so', 'the same parts and readings, the engine told that faults come together', {
    byPriors: false,
    drawPart: (design, draw) => withAnother(drawPart(design, draw), draw, ALIKE),
    told: { another: 0.7, alike: 4 },
  }),
  other(
    'three together',
    'beside anything else two coils grounded inside, three bridges, or a joint, a bridge and a reversed coil',
    {
      byPriors: false,
      drawPart: (design, draw) => withAnother(drawPart(design, draw), draw, THREE),
    },
  ),
  other(
    'outside the set',
    'beside anything else what is on no list: two coils grounded inside, two that touch the coils below them, a joint, a bridge and a reversed coil, or a joint, an open and a shorted coil',
    {
      byPriors: false,
      drawPart: (design, draw) => withAnother(drawPart(design, draw), draw, UNLISTED),
    },
  ),
];

/** @param tables inductances by finite elements, for the armatures there are such for */
export function finiteElementWorld(tables: FieldTables): World {
  return other('finite elements', 'inductances by finite elements instead of the network', {
    meter: finiteElementMeter(tables),
  });
}
