import type { Attempt } from '../attempt/entry.ts';
import type { Issue, Parsed } from '../scenario/scenario.ts';
import type { AttemptStore } from './attemptStore.ts';

/** What a list shows of a thing on a shelf. */
export interface Kept {
  readonly id: string;
  readonly title: string;
  /** Wall clock of the last change, ISO 8601. */
  readonly changedAt: string;
  /** Counts the changes: 1 when it was first put here. */
  readonly revision: number;
}

export interface Thing {
  readonly id: string;
  readonly title: string;
  readonly changedAt: string;
  readonly value: unknown;
}

/** Things with a name that are kept whole: jobs made here, records, drafts. Whoever reads one parses it. */
export interface Shelf {
  list(): Promise<readonly Kept[]>;
  read(id: string): Promise<Kept & Thing>;
  /**
   * Keeps a thing. Refused when someone has changed it since: what they wrote stays.
   * @param since  revision it was read at; 0 for one that is new here
   * @returns its new revision
   */
  put(thing: Thing, since: number): Promise<number>;
  remove(id: string): Promise<void>;
}

/** A key this browser knows: one's own, with which it can sign, or someone else's, to recognise it by. */
export interface KeptKey {
  readonly fingerprint: string;
  readonly owner: string;
  /** SubjectPublicKeyInfo, hexadecimal. */
  readonly publicKey: string;
  readonly madeAt: string;
  /** Null for someone else's key. It cannot be read out, so it is in no export either. */
  readonly privateKey: CryptoKey | null;
}

export interface KeyShelf {
  list(): Promise<readonly KeptKey[]>;
  /** Refused when the key is already here. */
  add(key: KeptKey): Promise<void>;
  rename(fingerprint: string, owner: string): Promise<void>;
  remove(fingerprint: string): Promise<void>;
}

/** Parsers for what lies in a file of everything; each names what is wrong with its own kind. */
export interface Readers {
  attempt(input: unknown): Parsed<Attempt>;
  job(input: unknown): Parsed<unknown>;
  record(input: unknown): Parsed<unknown>;
  draft(input: unknown): Parsed<unknown>;
}

export interface TakenIn {
  readonly added: number;
  /** Already here, just the same. */
  readonly already: number;
  /** What was left out, and why; the rest was taken in. */
  readonly leftOut: readonly Issue[];
}

/** Everything that is kept: this browser now, a server later. Same promise as `AttemptStore`: resolved means on disk. */
export interface Store extends AttemptStore {
  /** Scenarios made by an instructor. */
  readonly jobs: Shelf;
  /** Signed records. */
  readonly records: Shelf;
  /** Records an assessor has begun and not signed. */
  readonly drafts: Shelf;
  readonly keys: KeyShelf;
  /** All of it as the text of one file; the private halves of keys excepted, which nobody can read. */
  everything(takenAt: string): Promise<string>;
  /** Takes in such a file at one stroke. What is here already is never overwritten. */
  takeIn(text: string, readers: Readers): Promise<Parsed<TakenIn>>;
}
