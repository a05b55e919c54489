import type { Attempt, Entry } from '../attempt/entry.ts';
import type { Issue, Parsed } from '../scenario/scenario.ts';
import type { AttemptResult } from './attemptStore.ts';
import { addEntries } from './browserAttempts.ts';
import { type Database, durably, everyEntryOf, type ShelfName, type Writing } from './database.ts';
import {
  EVERYTHING_FORMAT,
  EVERYTHING_VERSION,
  type Everything,
  parseEverything,
  sameJson,
} from './everything.ts';
import type { Readers, TakenIn, Thing } from './store.ts';

const SHELVES = ['jobs', 'records', 'drafts'] as const satisfies readonly ShelfName[];
const ALL = ['attempts', 'entries', ...SHELVES, 'keys'] as const;
type All = Writing<(typeof ALL)[number][]>;

/** All of it at one instant: one transaction, so that no half of an act is caught. */
export async function everything(db: Database, takenAt: string): Promise<string> {
  const tx = db.transaction([...ALL], 'readonly');
  const heads = await tx.objectStore('attempts').getAll();
  const attempts: Everything['attempts'] = [];
  for (const { result, ...head } of heads) {
    const entries = await tx.objectStore('entries').getAll(everyEntryOf(head.id));
    attempts.push({ attempt: { ...head, entries }, result });
  }
  const shelf = async (name: ShelfName) =>
    (await tx.objectStore(name).getAll()).map(({ revision: _, ...thing }): Thing => thing);
  const file = {
    format: EVERYTHING_FORMAT,
    version: EVERYTHING_VERSION,
    takenAt,
    attempts,
    jobs: await shelf('jobs'),
    records: await shelf('records'),
    drafts: await shelf('drafts'),
    keys: (await tx.objectStore('keys').getAll()).map(({ privateKey: _, ...key }) => key),
  };
  return JSON.stringify(file);
}

/** Takes in a file of everything: what is sound and new is kept, all of it or nothing; the rest is named. */
export async function takeIn(db: Database, text: string, readers: Readers): Promise<Parsed<TakenIn>> {
  const parsed = parseEverything(text);
  if (!parsed.ok) return parsed;
  const leftOut: Issue[] = [];
  const sound = soundOnly(parsed.value, readers, leftOut);
  const tally = { added: 0, already: 0 };
  await durably(db, [...ALL], async (tx) => {
    const note = (fate: Fate, place: string, what: string) => {
      if (fate === 'differs') leftOut.push({ path: place, sentence: differs(what) });
      else tally[fate] += 1;
    };
    for (const { at, attempt, result } of sound.attempts)
      note(await takeAttempt(tx, attempt, result), at, attemptWords(attempt));
    for (const { name, at, thing } of sound.things)
      note(await takeThing(tx, name, thing), at, `“${thing.title}”`);
    for (const [nth, key] of parsed.value.keys.entries())
      note(await takeKey(tx, key), `keys[${nth}]`, `the key of ${key.owner}`);
  });
  return { ok: true, value: { ...tally, leftOut } };
}

const differs = (what: string) =>
  `Something else of the same name is here already and was kept: ${what}, as it is in the file, was left out.`;
const attemptWords = ({ learner, startedAt }: Attempt) =>
  `the attempt of ${learner.trim() || 'a learner without a name'} begun ${startedAt}`;
type Fate = 'added' | 'already' | 'differs';

interface Sound {
  readonly attempts: {
    readonly at: string;
    readonly attempt: Attempt;
    readonly result: AttemptResult | null;
  }[];
  readonly things: { readonly at: string; readonly name: ShelfName; readonly thing: Thing }[];
}

/** Keeps what its reader accepts; what is wrong with the rest goes on the list, with its place in the file. */
function soundOnly(file: Everything, readers: Readers, leftOut: Issue[]): Sound {
  const accepted = <T>(read: (input: unknown) => Parsed<T>, input: unknown, at: string): boolean => {
    const parsed = read(input);
    if (!parsed.ok)
      leftOut.push(
        ...parsed.issues.map(({ path, sentence }) => ({ path: path ? `${at}.${path}` : at, sentence })),
      );
    return parsed.ok;
  };
  const readerOf = { jobs: readers.job, records: readers.record, drafts: readers.draft };
  return {
    attempts: file.attempts.flatMap(({ attempt, result }, nth) => {
      const at = `attempts[${nth}].attempt`;
      return accepted(readers.attempt, attempt, at) ? [{ at, attempt: attempt as Attempt, result }] : [];
    }),
    things: SHELVES.flatMap((name) =>
      file[name].flatMap((thing, nth) => {
        const at = `${name}[${nth}].value`;
        return accepted(readerOf[name], thing.value, at) ? [{ at, name, thing }] : [];
      }),
    ),
  };
}

async function takeAttempt(tx: All, attempt: Attempt, result: AttemptResult | null): Promise<Fate> {
  const { entries, ...head } = attempt;
  const kept = await tx.objectStore('attempts').get(head.id);
  if (kept !== undefined) {
    const log: Entry[] = await tx.objectStore('entries').getAll(everyEntryOf(head.id));
    return sameJson({ ...kept, entries: log }, { ...head, result, entries }) ? 'already' : 'differs';
  }
  await tx.objectStore('attempts').add({ ...head, result });
  await addEntries(tx, head.id, entries);
  return 'added';
}

async function takeThing(tx: All, name: ShelfName, thing: Thing): Promise<Fate> {
  const kept = await tx.objectStore(name).get(thing.id);
  if (kept !== undefined) return sameJson(kept.value, thing.value) ? 'already' : 'differs';
  await tx.objectStore(name).add({ ...thing, revision: 1 });
  return 'added';
}

/** A key from a file can be recognised by and not signed with; one that is here with its private half stays as it is. */
async function takeKey(tx: All, key: Everything['keys'][number]): Promise<Fate> {
  const kept = await tx.objectStore('keys').get(key.fingerprint);
  if (kept !== undefined) return kept.publicKey === key.publicKey ? 'already' : 'differs';
  await tx.objectStore('keys').add({ ...key, privateKey: null });
  return 'added';
}
