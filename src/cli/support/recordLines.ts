import type { Mark, Marks } from '../../assess/mark.ts';
import { type AssessorRecord, pointsAfter, totalAfter } from '../../records/record.ts';
import type { Check } from '../../records/verify.ts';

/** What an assessor's record says, line by line. */
export function recordLines(record: AssessorRecord): string[] {
  const outcome = record.outcome === 'competent' ? 'competent' : 'not yet competent';
  return [
    `Record ${record.id}: ${record.learner.name} is ${outcome}, in the judgement of ${record.assessor}, ${record.signedAt}`,
    ...record.evidence.flatMap((item) => [
      `Attempt ${item.attempt}: ${tidy(totalAfter(record, item))} of ${tidy(item.marks.of)} after the assessor’s changes`,
      ...(item.supervision === undefined ? [] : [item.supervision]),
      ...item.marks.marks.flatMap((mark) => changeLines(record, item.attempt, mark)),
    ]),
    `Key: ${record.signedWith.fingerprint}`,
  ];
}

function changeLines(record: AssessorRecord, attempt: string, mark: Mark): string[] {
  const reasons = record.changes.filter((one) => one.attempt === attempt && one.mark === mark.id);
  if (reasons.length === 0) return [];
  const stands = `${tidy(mark.earned)} became ${tidy(pointsAfter(record, attempt, mark))} of ${tidy(mark.of)}`;
  return [`${mark.title}: ${stands}. ${reasons.map(({ reason }) => reason).join(' ')}`];
}

const WORDS: Readonly<Record<Check['verdict'], string>> = {
  holds: 'Holds',
  broken: 'Altered',
  unknown: 'Cannot be told',
};

export function checkLines(checks: readonly Check[]): string[] {
  return checks.map(({ what, verdict, where, sentence }) => {
    const at = verdict === 'broken' && where !== '' ? ` (${where})` : '';
    return `${WORDS[verdict]}, ${what}${at}: ${sentence}`;
  });
}

/** The first mark in the record that is not what its attempt comes to; empty when all are. */
export function strayMarks(record: AssessorRecord, attempt: string, again: Marks): string[] {
  const signed = record.evidence.find((item) => item.attempt === attempt)?.marks;
  if (signed === undefined) return [];
  const stray = signed.marks.find(
    (mark) => again.marks.find(({ id }) => id === mark.id)?.earned !== mark.earned,
  );
  const missing = again.marks.find(({ id }) => !signed.marks.some((mark) => mark.id === id));
  const id = stray?.id ?? missing?.id;
  if (id === undefined) return [];
  const points = (marks: Marks) => marks.marks.find((mark) => mark.id === id)?.earned ?? 'nothing';
  const title = (stray ?? missing)!.title;
  return [
    `The record’s marks are not what the attempt comes to: “${title}” is ${points(signed)} in the record, and ${points(again)} computed anew.`,
  ];
}

const tidy = (value: number) => String(Number(value.toFixed(1)));
