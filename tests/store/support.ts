import type { Attempt, Entry } from '../../src/attempt/entry.ts';
import type { AttemptHead } from '../../src/store/attemptStore.ts';
import type { Readers } from '../../src/store/store.ts';

/** The store keeps what it is given and looks at ids and numbers only; these stand for whole attempts. */
export const head = {
  format: 'slot-and-riser/attempt',
  version: 1,
  id: 'a-1',
  mode: 'practice',
  learner: '',
  startedAt: '2026-01-05T08:00:00.000Z',
  scenario: { public: { id: 'q-0000', card: { unit: 'Dynamo' } } },
  endMs: 0,
} as unknown as AttemptHead;

export const entry = (n: number) =>
  ({ n, atMs: n * 100, action: { type: 'armature.hold' } }) as unknown as Entry;

export const attempt = (id: string, entries: number): Attempt => ({
  ...head,
  id,
  entries: Array.from({ length: entries }, (_, n) => entry(n)),
});

/** Readers that accept whatever has an id or a format. */
export const readers: Readers = {
  attempt: (input) => {
    const { id } = input as Attempt;
    return typeof id === 'string'
      ? { ok: true, value: input as Attempt }
      : { ok: false, issues: [{ path: 'id', sentence: 'Expected text, but nothing came.' }] };
  },
  job: (input) => ({ ok: true, value: input }),
  record: (input) => ({ ok: true, value: input }),
  draft: (input) => ({ ok: true, value: input }),
};
