import type { PartKind } from '../bench/action.ts';
import type { Clue } from '../bench/observation.ts';
import type { TestKind } from '../bench/paper.ts';
import type { BarPlace, BenchPlace, FieldPlace, PlatePlace, RiserPlace } from '../bench/places.ts';
import type { Mode } from '../bench/port.ts';
import type { MainsId } from '../engine/drive.ts';
import type { ArmatureDesign } from '../engine/parts/armature.ts';
import type { ArmatureFault } from '../engine/parts/armatureFault.ts';
import type { BrushPlateFault } from '../engine/parts/brushPlate.ts';
import type { FieldFrameFault } from '../engine/parts/fieldFrame.ts';
import type { Wear } from '../engine/parts/wear.ts';
import type { BenchFault } from './hidden/benchFault.ts';
import type { JobCard, Limits } from './public/job.ts';
import type { Rubric } from './public/rubric.ts';

export const SCENARIO_FORMAT = 'slot-and-riser/scenario';
export const SCENARIO_VERSION = 3;

/**
 * The half anyone may see; the file's `public` object. `armature` names a part type from scenarios/parts: an armature
 * lies in the cradle whatever the job is about, and where none is to be judged it is the workshop's own sound one.
 */
export interface ScenarioPublic {
  readonly id: string;
  readonly workshop: string;
  readonly card: JobCard;
  readonly mains: MainsId;
  /** What is to be judged, each part once. */
  readonly parts: readonly PartKind[];
  readonly armature: string;
  /** Id of a field frame or brush plate: there exactly when it is among the parts. */
  readonly fieldFrame?: string;
  readonly brushPlate?: string;
  readonly tests: readonly TestKind[];
  readonly mode: Mode;
  readonly minutes: number | null;
  /** The card's own limits; those it does not name are the usual ones (public/limits.ts). */
  readonly limits?: Partial<Limits>;
  /** What the attempt is marked by; left out: the built-in rubric. */
  readonly rubric?: Rubric;
}

/** Where the lens can be put. */
export type LensPlace = BarPlace | RiserPlace | 'shaft' | 'core' | FieldPlace | PlatePlace | BenchPlace;

/** Something the lens shows that has nothing to do with any fault: an old repair, honest wear, a smear. */
export interface FalseLead {
  readonly place: LensPlace;
  readonly clue: Clue;
}

/** The half the apprentice's screens cannot name; the file's `hidden` object. */
export interface ScenarioHidden {
  readonly armature: { readonly faults: readonly ArmatureFault[] };
  readonly fieldFrame?: { readonly faults: readonly FieldFrameFault[] };
  readonly brushPlate?: { readonly faults: readonly BrushPlateFault[] };
  /** What is wrong with the bench itself; left out: nothing. */
  readonly bench?: { readonly faults: readonly BenchFault[] };
  /** Where commutator and brushes differ from parts in good order. */
  readonly wear?: Partial<Wear>;
  /** Rotation the armature lies at when it is first placed, degrees. */
  readonly startRotationDeg: number;
  /** Seed of contact scatter. */
  readonly seed: number;
  /** Whether the lamp's isolated winding floats or has found earth: cannot be seen. */
  readonly supplyReference: 'floating' | 'earthed';
  /** Clues put there on purpose beside what the faults themselves show (see hidden/looks.ts). */
  readonly falseLeads?: readonly FalseLead[];
}

export interface Scenario {
  readonly format: typeof SCENARIO_FORMAT;
  readonly version: typeof SCENARIO_VERSION;
  readonly public: ScenarioPublic;
  readonly hidden: ScenarioHidden;
}

/** Part types by id, from scenarios/parts: handed in by whoever reads files. */
export type PartLibrary = ReadonlyMap<string, ArmatureDesign>;

/** One thing wrong with a file: where, and one sentence with what was expected and what came. */
export interface Issue {
  /** Path such as `hidden.armature.faults[0].bar`, or '' for the whole file. */
  readonly path: string;
  readonly sentence: string;
}
export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly Issue[] };
