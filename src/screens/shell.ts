import type { EvidenceStory } from '../assess/evidence/story/shape.ts';
import type { Marks } from '../assess/mark.ts';
import type { Attempt } from '../attempt/entry.ts';
import type { RemedyDone } from '../bench/guide/guide.ts';
import type { SheetLine, Verdict } from '../bench/paper.ts';
import type { BenchPort, Breach } from '../bench/port.ts';
import type { Job } from '../scenario/public/job.ts';
import type { Issue, Parsed } from '../scenario/scenario.ts';
import type { GuideLevel } from './apprentice/bench/guide/Guide.tsx';
import type { MountScene, SceneWishes } from './apprentice/bench/mountScene.ts';
import type { AssessorDesk } from './assessor/desk.ts';
import type { InstructorDesk } from './instructor/desk.ts';
import type { Vocabulary } from './shared/words.ts';

/** What a person has chosen about the screens; kept on this machine, never part of an attempt. */
export interface Settings {
  readonly vocabulary: Vocabulary;
  readonly muted: boolean;
  /** `system`: as the operating system asks; `still`: no motion, whatever it asks. */
  readonly motion: 'system' | 'still';
  /** Only jobs of this supply are listed. */
  readonly mains: Job['mains'] | 'all';
  /** Whether the panel of keys and words stands open under the bench. */
  readonly wordsPanel: 'open' | 'closed';
  /** How much the guide says in guided work; falls to `short` by itself once a guided job has been handed in. */
  readonly guide: GuideLevel;
  /** Name put on the record of the next attempt; may be empty. */
  readonly learner: string;
}

export const FIRST_SETTINGS: Settings = {
  vocabulary: 'british',
  muted: false,
  motion: 'system',
  mains: 'all',
  wordsPanel: 'closed',
  guide: 'full',
  learner: '',
};

export interface AttemptSummary {
  readonly id: string;
  readonly state: 'running' | 'handedIn' | 'stopped';
  /** Wall clock at the start, ISO 8601. */
  readonly startedAt: string;
  /** Simulated time at the bench so far, ms. */
  readonly endMs: number;
  /** Marks, once finished. */
  readonly earned: number | null;
  readonly of: number | null;
}

export interface JobSummary {
  readonly job: Job;
  /** Attempts kept on this machine, newest first. */
  readonly attempts: readonly AttemptSummary[];
}

/** Something stored or opened that could not be read: where, and what was wrong with it. Nothing of it is lost. */
export interface StoredProblem {
  /** Name of the file or of the stored attempt. */
  readonly where: string;
  readonly issues: readonly Issue[];
  /** The text as it was found, to be saved before anything else is tried; null when there is none. */
  readonly text: string | null;
}

/** A running attempt, ready to be worked on. */
export interface OpenBench {
  readonly job: Job;
  readonly port: BenchPort;
  /** Lines already on the test sheet, oldest first: the log's `sheet.write` acts that were done. */
  readonly written: readonly SheetLine[];
  /** The last verdict written on each part. */
  readonly verdicts: readonly Verdict[];
  /** Remedies done so far, in order. */
  readonly remedies: readonly RemedyDone[];
  readonly mountScene: MountScene;
  readonly setMuted: (muted: boolean) => void;
  /** Calls back with one caption per sound, muted or not; returns the way to stop. */
  readonly captions: (listener: (line: string) => void) => () => void;
  /**
   * Calls back with breaches that come about by time alone (left on, overheated), which no act reports; returns the
   * way to stop. Shown in practice only.
   */
  readonly overhear: (listener: (breach: Breach) => void) => () => void;
  /** Called once when the learner leaves the bench; the attempt stays and can be resumed. */
  readonly close: () => void;
}

/** One pass of ammeter readings: own, sound and true values by bar, A rms. */
export interface PassReadings {
  readonly test: 'spaced' | 'neighbour';
  /** For instance `5 bars apart, first probe at the front`. */
  readonly caption: string;
  /** Index is the count from the chalk (bench's own bar number when nothing was chalked); null: not read. */
  readonly own: readonly (number | null)[];
  readonly sound: readonly number[];
  readonly truth: readonly number[];
}

/** One line of a test that is not read on the ammeter: own entries, a sound part, this part before and after work. */
export interface ToldByTest {
  /** The line without its result. */
  readonly about: SheetLine;
  /** What was written for it, oldest first. */
  readonly own: readonly SheetLine[];
  readonly sound: Partial<SheetLine>;
  readonly cameIn: Partial<SheetLine>;
  /** Left out when no remedy was done. */
  readonly afterWork?: Partial<SheetLine>;
}

export interface DebriefData {
  readonly job: Job;
  readonly attempt: Attempt;
  readonly marks: Marks;
  /** Passes that can be charted; empty when no ammeter test belonged to the job. */
  readonly passes: readonly PassReadings[];
  /** Lamp on field frame and brush plate, insulation tester, drop of the field branches, gauges. */
  readonly told: readonly ToldByTest[];
}

/** Everything the screens ask of the rest of the product. Errors of a person come back as issues, never as throws. */
export interface Desk {
  /** Jobs on the board with the attempts kept here. */
  jobs(): Promise<readonly JobSummary[]>;
  /** Starts an attempt. @returns its id */
  begin(jobId: string, learner: string): Promise<Parsed<string>>;
  /** Has the bench's picture made for a job whose card is being read. @param size it will have, CSS px */
  setOut(
    job: Job,
    size: { readonly width: number; readonly height: number },
    wishes: Pick<SceneWishes, 'vocabulary' | 'still'>,
  ): void;
  bench(attemptId: string): Promise<Parsed<OpenBench>>;
  /** Only for attempts handed in or stopped. */
  debrief(attemptId: string): Promise<Parsed<DebriefData>>;
  /** What the readings of a finished attempt prove, one story for each part they can say something of. Takes a while. */
  evidence(attemptId: string): Promise<Parsed<readonly EvidenceStory[]>>;
  /** Takes in a file of an attempt. @returns its id and state */
  importFile(file: File): Promise<Parsed<AttemptSummary>>;
  /** The attempt as a file to keep or hand over. */
  exportAttempt(attemptId: string): Promise<Parsed<{ readonly name: string; readonly text: string }>>;
  /** The assessor's side, fetched when it is first asked for. */
  assessor(): Promise<AssessorDesk>;
  /** The instructor's side, likewise. */
  instructor(): Promise<InstructorDesk>;
  saveSettings(settings: Settings): void;
}

export interface ShellProps {
  readonly desk: Desk;
  readonly settings: Settings;
  /** The board as it stands when the app starts. */
  readonly board: readonly JobSummary[];
  /**
   * What could not be read or kept, at the start or later: render again with a new array to add to it. An entry is
   * shown until it is put away.
   */
  readonly problems: readonly StoredProblem[];
}
