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
  readonly barZeroDeg: number;
  readonly outerRadius: number;
  readonly shaftRadius: number;
  readonly stackLength: number;
  readonly commutatorRadius: number;
  readonly slotMouth: number;
}

/** The public half of a scenario, as the apprentice's screens know it. */
export interface Job {
  readonly id: string;
  readonly workshop: string;
  readonly card: JobCard;
  readonly mains: MainsId;
  readonly part: PartKind;
  readonly armature: ArmatureView;
  readonly tests: readonly TestKind[];
  readonly mode: Mode;
  /** Simulated minutes allowed, or null. */
  readonly minutes: number | null;
}
