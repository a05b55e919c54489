import type { PartKind } from '../../bench/action.ts';
import type { TestKind } from '../../bench/paper.ts';
import type { Mode } from '../../bench/port.ts';
import type { MainsId } from '../../engine/drive.ts';

/** What the job card says. */
export interface JobCard {
  /** Short name of the unit, for the list of jobs. */
  readonly unit: string;
  readonly broughtInBy: string;
  readonly complaint: string;
  readonly askedFor: string;
}

/** What anyone can see of an armature: enough to draw it, reach it and count on it. Lengths m, angles degrees. */
export interface ArmatureView {
  readonly typeId: string;
  readonly name: string;
  readonly winding: 'lap' | 'wave';
  readonly poles: number;
  readonly slots: number;
  readonly bars: number;
  readonly coilsPerSlot: number;
  /** Equaliser connections can be seen behind the commutator; left out: there are none. */
  readonly equalised?: boolean;
  readonly barZeroDeg: number;
  readonly outerRadius: number;
  readonly shaftRadius: number;
  readonly stackLength: number;
  readonly commutatorRadius: number;
  readonly slotMouth: number;
}

/** What can be seen of a field frame: how its coils are joined, from node to node. */
export interface FieldFrameView {
  readonly typeId: string;
  readonly name: string;
  readonly coils: readonly { readonly from: string; readonly to: string }[];
  readonly links: readonly { readonly from: string; readonly to: string }[];
}

export interface BrushPlateView {
  readonly typeId: string;
  readonly name: string;
}

/** Limits a part is judged by: least diameter, most run-out, least depth and length, mm; least insulation, megohms. */
export interface Limits {
  readonly commutatorDiameterMm: number;
  readonly runOutMm: number;
  readonly undercutMm: number;
  readonly brushLengthMm: number;
  readonly insulationMohm: number;
}

/** The public half of a scenario, as the apprentice's screens know it. */
export interface Job {
  readonly id: string;
  readonly workshop: string;
  readonly card: JobCard;
  readonly mains: MainsId;
  /** What is to be judged. */
  readonly parts: readonly PartKind[];
  /** The armature in the cradle: the part to be judged, or the workshop's own sound one. */
  readonly armature: ArmatureView;
  readonly fieldFrame: FieldFrameView | null;
  readonly brushPlate: BrushPlateView | null;
  readonly tests: readonly TestKind[];
  readonly mode: Mode;
  /** Simulated minutes allowed, or null. */
  readonly minutes: number | null;
  readonly limits: Limits;
}
