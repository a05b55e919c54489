import type { Worn } from '../../assess/diagnosis/wornTruth.ts';
import type { PartKind } from '../../bench/action.ts';
import type { SheetLine, TestKind } from '../../bench/paper.ts';
import type { Mode } from '../../bench/port.ts';
import type { Difficulty } from '../../scenario/generate.ts';
import type { ArmatureView, BrushPlateView, FieldFrameView } from '../../scenario/public/job.ts';
import type { Parsed, Scenario, ScenarioPublic } from '../../scenario/scenario.ts';
import type { Safe } from '../shared/keepSafe.ts';

type Hidden = Scenario['hidden'];
/** One thing wrong with an armature, as a scenario holds it. */
export type Fault = Hidden['armature']['faults'][number];
export type FieldFault = NonNullable<Hidden['fieldFrame']>['faults'][number];
export type PlateFault = NonNullable<Hidden['brushPlate']>['faults'][number];
export type BenchFault = NonNullable<Hidden['bench']>['faults'][number];

/** Something the matter with a part of the job, wear beyond the card's limits included. */
export type PartFinding =
  | { readonly part: 'armature'; readonly fault: Fault }
  | { readonly part: 'fieldFrame'; readonly fault: FieldFault }
  | { readonly part: 'brushPlate'; readonly fault: PlateFault }
  | { readonly part: PartKind; readonly fault: Worn };

/** A part type as it lies open: what anyone can see, and how its coils lie. */
export interface PartType {
  readonly view: ArmatureView;
  /** Turns of one coil. */
  readonly turns: number;
  /** Slots in which the two sides of each coil lie. Length bars. */
  readonly coils: readonly { readonly topSlot: number; readonly bottomSlot: number }[];
  readonly difficulties: readonly Difficulty[];
}

/** One job made here, in the list. */
export interface MadeJob {
  readonly id: string;
  readonly unit: string;
  readonly mode: Mode;
  readonly partName: string;
  /** Faults hidden in its parts and in the bench. */
  readonly faults: number;
  /** Wall clock of the last change, ISO 8601. */
  readonly changedAt: string;
}

/** What a careful hand writes down of field frame, brush plate, rail tools and gauges, beside a sound part. */
export interface LineEffect {
  /** The line as it would be written, without its result. */
  readonly about: SheetLine;
  readonly sound: Partial<SheetLine>;
  readonly shows: Partial<SheetLine>;
}

/** What proving and looking show of the bench itself. */
export interface BenchEffect {
  readonly what: string;
  readonly sound: string;
  readonly shows: string;
}

/** What one test shows of the part as it lies there, contact scatter off. */
export interface TestEffect {
  readonly test: TestKind;
  readonly seen: boolean;
  /** Places that stand out, out of how many. */
  readonly places: number;
  readonly of: number;
  readonly unit: 'bars' | 'pairs' | 'slots' | 'places';
  /** Ammeter tests: the deviation furthest from a sound part, as a share (-1: nothing flows); null elsewhere. */
  readonly strongest: number | null;
}

/** From what shows plainly to what the allowed tests cannot show at all. */
export type Hardness = Difficulty | 'beyond' | 'sound';

export interface Effects {
  readonly tests: readonly TestEffect[];
  readonly lines: readonly LineEffect[];
  /** Empty for a bench in good order. */
  readonly bench: readonly BenchEffect[];
  /** Each fault by itself, with the allowed tests that find it. Several grounds are one finding, under the first. */
  readonly foundBy: readonly (PartFinding & { readonly tests: readonly TestKind[] })[];
  /** Other winding faults that all the allowed tests together can hardly tell from the hidden ones. */
  readonly lookalikes: number;
  readonly hardness: Hardness;
  /** Why, in one sentence. */
  readonly because: string;
}

export interface FileOut {
  readonly name: string;
  readonly text: string;
}

/** What is asked of a set for a class. */
export interface SetWish {
  readonly seed: string;
  /** Benches in use, 1..60. */
  readonly seats: number;
  /** Benches in one row: the one behind counts as a neighbour too. */
  readonly perRow: number;
  /** What everybody judges. */
  readonly about: readonly PartKind[];
  /** Armature everybody gets, to be judged or to lie in the cradle. */
  readonly part: string;
  readonly difficulty: Difficulty;
  readonly mains: ScenarioPublic['mains'];
  readonly mode: Mode;
}

/** Everything the instructor's screens ask of the rest. Errors of a person come back as issues, never as throws. */
export interface InstructorDesk {
  /** Part types by id, in the order they are offered. */
  readonly partTypes: readonly PartType[];
  readonly safe: Safe;
  readonly frameTypes: readonly FieldFrameView[];
  readonly plateTypes: readonly BrushPlateView[];
  jobs(): Promise<Parsed<readonly MadeJob[]>>;
  /** Puts a sound part with an empty card on the shelf. @returns the new job's id */
  begin(part: string): Promise<Parsed<string>>;
  job(id: string): Promise<Parsed<{ readonly scenario: Scenario; readonly revision: number }>>;
  /** What is wrong with a job as it stands, every problem with its path. */
  check(draft: Scenario): Parsed<Scenario>;
  /** Solves the part as it lies there: off the main thread where there is one. */
  effects(scenario: Scenario): Promise<Parsed<Effects>>;
  /**
   * How many readings prove the armature's faults, each the one that tells most; null where no number of them does.
   * Takes some seconds.
   */
  readingsToProve(scenario: Scenario): Promise<Parsed<number | null>>;
  /** @returns the new revision */
  save(scenario: Scenario, since: number): Promise<Parsed<number>>;
  /** @returns the copy's id */
  duplicate(id: string): Promise<Parsed<string>>;
  remove(id: string): Promise<Parsed<null>>;
  /** The job as a file to hand out; its name says nothing. */
  file(scenario: Scenario): Parsed<FileOut>;
  /** Takes a job file in. @returns its id here, a new one when that id is taken */
  open(file: File): Promise<Parsed<string>>;
  /** Jobs for a class, one for each bench in turn; the same wish gives the same set. Nothing is kept yet. */
  makeSet(wish: SetWish): Parsed<readonly Scenario[]>;
  keepAll(scenarios: readonly Scenario[]): Promise<Parsed<null>>;
}
