import type { PartKind } from '../../../bench/action.ts';
import type { Condition, TestKind } from '../../../bench/paper.ts';
import type { PlateHolder } from '../../../engine/parts/brushPlate.ts';
import type { Judgement } from '../judge.ts';
import type { MatQuestion, MatReading } from '../mat/reading.ts';
import type { Possibility, PossiblePlace } from '../possibilities.ts';
import type { Reading, Source } from '../reading.ts';

/** What the readings of an attempt had to say of one part, as plain data to draw and to tell; alike for every part. */
export interface EvidenceStory {
  readonly part: PartKind;
  readonly from: Source;
  /** Of the armature. */
  readonly bars: number;
  /** Bar that carried the chalk in the end, or null. */
  readonly chalkedBar: number | null;
  /** The last verdict on the part, weighed; null when none was written. */
  readonly judged: JudgedStory | null;
  /** Kinds of fault, those likeliest in the end first. */
  readonly kinds: readonly KindStory[];
  readonly steps: readonly StoryStep[];
  /** Possibilities before anything was read. */
  readonly openBefore: number;
  /** The reading that would tell most after all these, with the share of the doubt it is expected to settle; null: no reading would. */
  readonly next: NextStory | null;
  /** Entries of sheet lines that say something else than the instruments showed. */
  readonly differing: readonly number[];
  /** A remedy was done: readings after it are of another part and left out. */
  readonly endedByRemedy: boolean;
}

export interface JudgedStory {
  readonly judgement: Judgement;
  readonly findings: readonly FindingStory[];
  /** Faults the allowed tests can show that no finding names. */
  readonly missed: number;
}

/** One finding of the verdict: what it claims, whether that is so, and how likely the readings make it. */
export interface FindingStory {
  readonly claim: { readonly condition: Condition; readonly mark: StoryPlace | null };
  readonly right: boolean;
  readonly condition: number;
  readonly place: number;
  readonly before: { readonly condition: number; readonly place: number };
}

/** Where something is possible: on the commutator, in branches of the field frame that cannot be told apart, at a holder. */
export type StoryPlace =
  | PossiblePlace
  | { readonly kind: 'branch'; readonly brushes: readonly (1 | 2)[] }
  | { readonly kind: 'holder'; readonly holder: PlateHolder };

/** One thing the part may have; what the allowed tests cannot tell apart is one. */
export interface StoryPossibility extends Pick<Possibility, 'id' | 'what' | 'chance'> {
  /** Other faults that are the same to those tests, where they have a name of their own. */
  readonly alike?: readonly Condition[];
  readonly place: StoryPlace | null;
}

export interface StoryMoved {
  readonly possibility: Omit<StoryPossibility, 'chance'>;
  readonly from: number;
  readonly to: number;
}

/** One kind of fault, from before the first reading to after the last. */
export interface KindStory {
  readonly what: StoryPossibility['what'];
  readonly alike: readonly Condition[];
  /** Chance that the part has it somewhere: before anything was read, then after each reading. */
  readonly chances: readonly number[];
  /** Places at which it is possible, before anything was read and in the end; null for kinds without places. */
  readonly places: readonly [before: number, after: number] | null;
}

export interface StoryStep {
  readonly reading: Reading | MatReading;
  /** Current of an ammeter reading, A; null for other readings and beyond the scale. */
  readonly ampere: number | null;
  readonly ruledOut: readonly StoryMoved[];
  readonly raised: readonly StoryMoved[];
  /** Possibilities left. */
  readonly open: number;
  /** By how much it lessened the doubt, bits; below zero where it raised some. */
  readonly settled: number;
}

/** A reading that could still be taken. */
export type NextStory = ArmatureNext | MatNext;

export interface ArmatureNext {
  readonly test: Exclude<TestKind, 'look'>;
  /** Ammeter and drop: the two bars. Strip: the bar in line with it, twice. Lamp and insulation tester: null. */
  readonly bars: readonly [number, number] | null;
  /** Place of the strip, degrees from the bottom. */
  readonly angleDeg: number | null;
  /** 0..1 */
  readonly share: number;
}

export interface MatNext {
  readonly question: MatQuestion;
  /** 0..1 */
  readonly share: number;
}
