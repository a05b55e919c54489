import type { Issue } from '../scenario/scenario.ts';
import { type AssessorRecord, EVIDENCE_RULES, type EvidenceItem, type MarkChange } from './record.ts';

/** All of a record but what comes with the signature. */
export type UnsignedRecord = Omit<AssessorRecord, 'signedAt' | 'signedWith' | 'limits'>;

/** Why a record cannot be signed as it stands, each with its place; empty when it can. */
export function recordIssues(record: UnsignedRecord): Issue[] {
  return [
    ...wordIssues(record),
    ...evidenceIssues(record),
    ...record.changes.flatMap((change, nth) => changeIssues(record, change, nth)),
    ...outcomeIssues(record),
  ];
}

function wordIssues(record: UnsignedRecord): Issue[] {
  const needed = [
    ['assessor', record.assessor, 'Expected the assessor’s name, but nothing came.'],
    ['learner.name', record.learner.name, 'Expected the learner’s name, but nothing came.'],
    [
      'learner.identifiedBy',
      record.learner.identifiedBy,
      'Expected how you know who the learner is, but nothing came.',
    ],
    ...(record.evidence.some(({ mode }) => mode === 'assessed')
      ? ([
          ['supervisedBy', record.supervisedBy, 'Expected who supervised, or “nobody”, but nothing came.'],
        ] as const)
      : []),
  ] as const;
  return needed.filter(([, text]) => text.trim() === '').map(([path, , sentence]) => ({ path, sentence }));
}

function evidenceIssues(record: UnsignedRecord): Issue[] {
  if (record.evidence.length === 0)
    return [{ path: 'evidence', sentence: 'Expected at least one attempt as evidence, but none came.' }];
  const ids = record.evidence.map((item) => item.attempt);
  return ids.flatMap((id, nth) =>
    ids.indexOf(id) === nth
      ? []
      : [{ path: `evidence[${nth}].attempt`, sentence: `Expected each attempt once, but ${id} came again.` }],
  );
}

function changeIssues(record: UnsignedRecord, change: MarkChange, nth: number): Issue[] {
  const path = `changes[${nth}]`;
  const item = record.evidence.find((one) => one.attempt === change.attempt);
  const mark = item?.marks.marks.find((one) => one.id === change.mark);
  if (mark === undefined) {
    const sentence = `Expected a mark of the evidence, but ${change.mark} of attempt ${change.attempt} came.`;
    return [{ path: `${path}.mark`, sentence }];
  }
  const issues: Issue[] = [];
  if (change.reason.trim() === '')
    issues.push({
      path: `${path}.reason`,
      sentence: `Expected a reason for “${mark.title}”, but nothing came.`,
    });
  if (!(change.to >= 0 && change.to <= mark.of))
    issues.push({ path: `${path}.to`, sentence: `Expected 0 to ${mark.of} points, but ${change.to} came.` });
  return issues;
}

const stopped = (item: EvidenceItem) => item.marks.stoppedBy !== null;

/** Marks never become competence by themselves, and a critical act never becomes evidence of it. */
function outcomeIssues(record: UnsignedRecord): Issue[] {
  if (record.outcome === 'notYet') return [];
  const issues: Issue[] = [];
  if (record.evidence.length > 0 && record.evidence.every(stopped))
    issues.push({
      path: 'outcome',
      sentence: 'Expected “not yet”: every attempt here was stopped by a critical act, but “competent” came.',
    });
  for (const rule of EVIDENCE_RULES)
    if (!record.rulesOfEvidence[rule])
      issues.push({
        path: `rulesOfEvidence.${rule}`,
        sentence: `Expected the ${rule} of the evidence affirmed before “competent”, but it was not.`,
      });
  if (record.learner.declaration === null)
    issues.push({
      path: 'learner.declaration',
      sentence: 'Expected the learner’s declaration before “competent”, but none was given.',
    });
  return issues;
}
