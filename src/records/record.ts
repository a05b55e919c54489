import type { Marks } from '../assess/mark.ts';

export const RECORD_FORMAT = 'slot-and-riser/assessor-record';
export const RECORD_VERSION = 1;

/** One attempt as the assessor had it: which it was, what it hashed to, and what the rubric made of it. */
export interface EvidenceItem {
  /** Id of the attempt. */
  readonly attempt: string;
  /** `end` of its seal: ties this record to every single log entry. */
  readonly seal: string;
  /** Id of the job, and the short name of the unit on its card. */
  readonly jobId: string;
  readonly job: string;
  readonly startedAt: string;
  readonly mode: 'guided' | 'practice' | 'assessed';
  /** Marks as they were computed; changes stand beside them and never inside. */
  readonly marks: Marks;
  /** What had been changed in the rubric the marks come from, one sentence each; empty for the built-in rubric. */
  readonly rubricChanges: readonly string[];
  /** Whether playing the log again gave the same observations; a sentence with the first divergence where not. */
  readonly replay: { readonly agreed: boolean; readonly sentence: string };
  /** Who watched an assessed attempt at a bench in the learner's browser, as one sentence; left out elsewhere. */
  readonly supervision?: string;
}

/** A mark the assessor sets otherwise than the rubric did. */
export interface MarkChange {
  readonly attempt: string;
  readonly mark: string;
  readonly from: number;
  readonly to: number;
  readonly reason: string;
  /** Wall clock, ISO 8601. */
  readonly at: string;
}

/** Something the assessor saw or heard themselves. */
export interface Remark {
  readonly at: string;
  readonly text: string;
  /** The place in a log it is about, or null. */
  readonly about: { readonly attempt: string; readonly entry: number } | null;
}

export interface Learner {
  readonly name: string;
  /** How the assessor knows who this is. */
  readonly identifiedBy: string;
  /** The learner's own declaration that this is their work; null when none was given. */
  readonly declaration: { readonly text: string; readonly at: string } | null;
}

/** One line of the assessor's own criteria, judged on the evidence. */
export interface CriterionJudgement {
  readonly criterion: string;
  readonly title: string;
  /** Ids of the marks that speak to it. */
  readonly marks: readonly string[];
  readonly met: 'met' | 'notYet' | 'notSeen';
  readonly note: string;
}

/**
 * The four things an assessor asks of evidence.
 * @source references.md E12: rules of evidence, Australian Standards for RTOs 2015, table 1.8-2
 */
export const EVIDENCE_RULES = ['validity', 'sufficiency', 'authenticity', 'currency'] as const;
export type EvidenceRule = (typeof EVIDENCE_RULES)[number];

export type Decision = 'competent' | 'notYet';

/** What an assessor signs: one person, one or more of their attempts, one decision. */
export interface AssessorRecord {
  readonly format: typeof RECORD_FORMAT;
  readonly version: typeof RECORD_VERSION;
  readonly id: string;
  readonly learner: Learner;
  readonly evidence: readonly EvidenceItem[];
  readonly changes: readonly MarkChange[];
  readonly remarks: readonly Remark[];
  /** Reasonable adjustments made for the learner, one sentence each. */
  readonly adjustments: readonly string[];
  /** Who was in the room while the bench, and with it the fault, was on the learner's machine; '' where nobody asks. */
  readonly supervisedBy: string;
  readonly criteria: { readonly set: string; readonly judgements: readonly CriterionJudgement[] };
  readonly rulesOfEvidence: Readonly<Record<EvidenceRule, boolean>>;
  readonly outcome: Decision;
  readonly assessor: string;
  readonly signedAt: string;
  /** Key the record is signed with; the fingerprint is what people compare. */
  readonly signedWith: { readonly publicKey: string; readonly fingerprint: string };
  /** What the signature cannot stop, printed with the record. */
  readonly limits: readonly string[];
}

/** Points of one mark after the assessor's changes; the last change counts. */
export function pointsAfter(
  record: Pick<AssessorRecord, 'changes'>,
  attempt: string,
  mark: { readonly id: string; readonly earned: number },
): number {
  const last = record.changes.findLast((change) => change.attempt === attempt && change.mark === mark.id);
  return last?.to ?? mark.earned;
}

/** Sum of an attempt's marks after the assessor's changes. */
export function totalAfter(
  record: Pick<AssessorRecord, 'changes'>,
  item: Pick<EvidenceItem, 'attempt' | 'marks'>,
): number {
  return item.marks.marks.reduce((sum, mark) => sum + pointsAfter(record, item.attempt, mark), 0);
}

/** What a signed record proves no more than; these sentences are part of what is signed. */
export const LIMITS: readonly string[] = [
  'The bench, and with it the fault, was on the learner’s machine: someone with the skill could have read it there.',
  'The signature shows that this record has not changed since it was signed. It cannot show that the attempt was not changed before it was first sealed.',
  'Anyone can make a key and sign with any name: compare the fingerprint with one the assessor gave you in another way.',
  'Whoever can use the assessor’s browser can sign as the assessor. Times come from the clocks of the machines.',
];
