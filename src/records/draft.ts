import * as z from 'zod/mini';
import type { Parsed } from '../scenario/scenario.ts';
import { issuesFrom } from '../scenario/sentences.ts';
import type { CriteriaSet } from './criteria.ts';
import {
  type AssessorRecord,
  type Decision,
  type EvidenceItem,
  type EvidenceRule,
  RECORD_FORMAT,
  RECORD_VERSION,
} from './record.ts';
import type { UnsignedRecord } from './recordRules.ts';
import { recordParts } from './recordSchema.ts';
import { withSupervision } from './supervision.ts';

export const DRAFT_FORMAT = 'slot-and-riser/record-draft';
export const DRAFT_VERSION = 1;

/** A record an assessor is working on: their own part of it. The evidence is joined to it when it is signed. */
export interface Draft {
  readonly format: typeof DRAFT_FORMAT;
  readonly version: typeof DRAFT_VERSION;
  readonly id: string;
  /** Ids of the attempts it is about. */
  readonly attempts: readonly string[];
  readonly learner: AssessorRecord['learner'];
  readonly changes: AssessorRecord['changes'];
  readonly remarks: AssessorRecord['remarks'];
  readonly adjustments: AssessorRecord['adjustments'];
  readonly supervisedBy: string;
  readonly criteria: AssessorRecord['criteria'];
  readonly rulesOfEvidence: Readonly<Record<EvidenceRule, boolean>>;
  /** Null until the assessor has decided. */
  readonly outcome: Decision | null;
  readonly assessor: string;
}

export interface DraftStart {
  readonly id: string;
  readonly attempts: readonly string[];
  readonly learner: string;
  readonly assessor: string;
  readonly criteria: CriteriaSet;
}

export function startDraft({ id, attempts, learner, assessor, criteria }: DraftStart): Draft {
  return {
    format: DRAFT_FORMAT,
    version: DRAFT_VERSION,
    id,
    attempts,
    learner: { name: learner, identifiedBy: '', declaration: null },
    changes: [],
    remarks: [],
    adjustments: [],
    supervisedBy: '',
    criteria: judgementsFor(criteria),
    rulesOfEvidence: { validity: false, sufficiency: false, authenticity: false, currency: false },
    outcome: null,
    assessor,
  };
}

/** Criteria nobody has judged yet. */
export function judgementsFor(set: CriteriaSet): Draft['criteria'] {
  return {
    set: `${set.title} (${set.source})`,
    judgements: set.criteria.map(({ id, title, marks }) => ({
      criterion: id,
      title,
      marks,
      met: 'notSeen',
      note: '',
    })),
  };
}

/** The record a draft comes to over its evidence; issues when nothing was decided. */
export function recordOf(draft: Draft, evidence: readonly EvidenceItem[]): Parsed<UnsignedRecord> {
  const { attempts: _, outcome, ...rest } = draft;
  if (outcome === null) {
    const sentence = 'Expected “competent” or “not yet”, but nothing was decided.';
    return { ok: false, issues: [{ path: 'outcome', sentence }] };
  }
  const supervised = evidence.map((item) => withSupervision(item, draft.supervisedBy));
  return {
    ok: true,
    value: { ...rest, format: RECORD_FORMAT, version: RECORD_VERSION, evidence: supervised, outcome },
  };
}

const schema = z.strictObject({
  format: z.literal(DRAFT_FORMAT),
  version: z.literal(DRAFT_VERSION),
  id: recordParts.id,
  attempts: z.array(recordParts.id).check(z.minLength(1), z.maxLength(200)),
  learner: recordParts.learner,
  changes: recordParts.changes,
  remarks: recordParts.remarks,
  adjustments: recordParts.adjustments,
  supervisedBy: recordParts.name,
  criteria: recordParts.criteria,
  rulesOfEvidence: recordParts.rulesOfEvidence,
  outcome: z.nullable(recordParts.outcome),
  assessor: recordParts.name,
});

/** Reads a draft already taken from JSON. */
export function parseDraft(input: unknown): Parsed<Draft> {
  const read = schema.safeParse(input);
  return read.success ? { ok: true, value: read.data } : { ok: false, issues: issuesFrom(read.error, input) };
}
