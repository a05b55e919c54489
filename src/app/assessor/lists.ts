import { parseSigned } from '../../records/evidenceFile.ts';
import type { SignedRecord } from '../../records/sign.ts';
import type { Parsed } from '../../scenario/scenario.ts';
import type { FinishedAttempt } from '../../screens/assessor/desk.ts';
import type { Store } from '../../store/store.ts';
import { right } from './answers.ts';

export async function finished(store: Store): Promise<FinishedAttempt[]> {
  const [attempts, signed] = await Promise.all([store.list(), signedRecords(store)]);
  const records = signed.ok ? signed.value.map(({ record }) => record) : [];
  return attempts.flatMap(({ id, learner, scenarioId, unit, mode, startedAt, endMs, result }) => {
    if (result === null) return [];
    const own = records
      .filter((record) => record.evidence.some(({ attempt }) => attempt === id))
      .sort((one, other) => other.signedAt.localeCompare(one.signedAt))[0];
    return {
      ...{ id, learner, mode, startedAt, endMs },
      jobId: scenarioId,
      job: unit ?? scenarioId,
      ...result,
      record: own === undefined ? null : { id: own.id, outcome: own.outcome, assessor: own.assessor },
    };
  });
}

export async function signedRecords(store: Store): Promise<Parsed<SignedRecord[]>> {
  const signed: SignedRecord[] = [];
  for (const { id } of await store.records.list()) {
    const read = parseSigned((await store.records.read(id)).value);
    if (!read.ok) return read;
    signed.push(read.value);
  }
  return right(signed);
}
