import { evidenceFile, type SealedAttempt } from '../../records/evidenceFile.ts';
import { sealAttempt } from '../../records/seal.ts';
import type { SignedRecord } from '../../records/sign.ts';
import { attemptsCsv, logCsv, marksCsv, recordCsv } from '../../records/tables.ts';
import { attemptStatements, recordStatements } from '../../records/xapi.ts';
import type { Parsed, PartLibrary } from '../../scenario/scenario.ts';
import type { AttemptForm, FileOut, FinishedAttempt, RecordForm } from '../../screens/assessor/desk.ts';
import { askOf } from '../assessing/assessing.ts';
import { right } from './answers.ts';
import type { Kept, KeptAttempt } from './kept.ts';

export const listFile = (attempts: readonly FinishedAttempt[]): FileOut => ({
  name: 'attempts.csv',
  text: attemptsCsv(attempts.map(rowOf)),
});

const rowOf = (attempt: FinishedAttempt) => ({
  ...attempt,
  minutes: Math.round(attempt.endMs / 6000) / 10,
  outcome: attempt.record?.outcome ?? null,
});

const json = (value: unknown) => `${JSON.stringify(value, null, 1)}\n`;

export async function recordFile(
  signed: SignedRecord,
  form: RecordForm,
  kept: Kept,
): Promise<Parsed<FileOut>> {
  const name = `record-${signed.record.id.slice(0, 8)}`;
  if (form === 'table') return right({ name: `${name}.csv`, text: recordCsv(signed.record) });
  const attempts: SealedAttempt[] = [];
  for (const { attempt: id } of signed.record.evidence) {
    const read = await kept(id);
    if (!read.ok) return read;
    const { asKept } = read.value;
    attempts.push({ attempt: asKept, seal: await sealAttempt(asKept, crypto.subtle) });
  }
  if (form === 'evidence') return right({ name: `${name}.json`, text: json(evidenceFile(attempts, signed)) });
  const marks = new Map(signed.record.evidence.map((item) => [item.attempt, item.marks]));
  const statements = [
    ...attempts.flatMap(({ attempt }) => attemptStatements(attempt, marks.get(attempt.id)!)),
    ...recordStatements(signed.record),
  ];
  return right({ name: `${name}-statements.json`, text: json(statements) });
}

export async function attemptFile(
  { attempt, asKept }: KeptAttempt,
  form: AttemptForm,
  parts: PartLibrary,
): Promise<FileOut> {
  const name = `attempt-${attempt.id.slice(0, 8)}`;
  const marks = async () => (await askOf('debrief', attempt, parts)).marks;
  switch (form) {
    case 'sealed': {
      const seal = await sealAttempt(asKept, crypto.subtle);
      return { name: `${name}.json`, text: json(evidenceFile([{ attempt: asKept, seal }], null)) };
    }
    case 'log':
      return { name: `${name}-log.csv`, text: logCsv(attempt) };
    case 'marks':
      return { name: `${name}-marks.csv`, text: marksCsv(attempt.id, await marks()) };
    case 'statements':
      return {
        name: `${name}-statements.json`,
        text: json(attemptStatements(attempt, await marks())),
      };
  }
}
