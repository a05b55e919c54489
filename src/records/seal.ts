import type { Attempt } from '../attempt/entry.ts';
import { sha256 } from './bytes.ts';
import { canonicalText } from './canonical.ts';
import type { Subtle } from './crypto.ts';
import { firstChange, tagsOf } from './leaves.ts';

export const SEAL_FORMAT = 'slot-and-riser/seal';
export const SEAL_VERSION = 1;

/**
 * Integrity of one attempt: a chain of SHA-256 hashes over its canonical JSON, one link per log entry, each link over
 * the one before it. Whoever alters the attempt can make a new seal as well; against that the assessor signs `end`.
 */
export interface Seal {
  readonly format: typeof SEAL_FORMAT;
  readonly version: typeof SEAL_VERSION;
  /** Id of the attempt. */
  readonly attempt: string;
  /** Hash of everything but the log. */
  readonly head: string;
  /** Hash of entry n over link n - 1 (over `head` for the first). */
  readonly links: readonly string[];
  /** What the whole attempt comes to: hash over the last link and the number of entries. This is what gets signed. */
  readonly end: string;
  /** Short tags that tell which value was changed; see leaves.ts. */
  readonly tags: { readonly head: string; readonly entries: readonly string[] };
}

/** The first place at which something is not as it was sealed or signed. */
export interface Alteration {
  /** Such as `entries[17].action.byDeg` or `scenario.hidden.seed`; '' where only the whole can be named. */
  readonly path: string;
  /** Number of the log entry, or null where it is not in the log. */
  readonly entry: number | null;
  readonly sentence: string;
}

export async function sealAttempt(attempt: Attempt, subtle: Subtle): Promise<Seal> {
  const { entries, ...rest } = attempt;
  const head = await headLink(rest, subtle);
  const links: string[] = [];
  for (const entry of entries) links.push(await nextLink(links.at(-1) ?? head, entry, subtle));
  return {
    format: SEAL_FORMAT,
    version: SEAL_VERSION,
    attempt: attempt.id,
    head,
    links,
    end: await endLink(links.at(-1) ?? head, links.length, subtle),
    tags: { head: tagsOf(rest), entries: entries.map(tagsOf) },
  };
}

const headLink = (rest: unknown, subtle: Subtle) =>
  sha256(`${SEAL_FORMAT} ${SEAL_VERSION}\n${canonicalText(rest)}`, subtle);
const nextLink = (before: string, entry: unknown, subtle: Subtle) =>
  sha256(`${before}\n${canonicalText(entry)}`, subtle);
const endLink = (last: string, count: number, subtle: Subtle) => sha256(`${last}\nend ${count}`, subtle);

/** Compares an attempt with its seal. @returns the first changed place, or null when all is as it was sealed */
export async function verifySeal(attempt: Attempt, seal: Seal, subtle: Subtle): Promise<Alteration | null> {
  const { entries, ...rest } = attempt;
  const head = await headLink(rest, subtle);
  if (head !== seal.head) return changedHead(rest, seal);
  let link = head;
  for (const [n, entry] of entries.entries()) {
    if (n >= seal.links.length) return added(entries.length, seal.links.length);
    link = await nextLink(link, entry, subtle);
    if (link !== seal.links[n]) return changedEntry(entry, n, seal);
  }
  if (entries.length < seal.links.length) return missing(entries.length, seal.links.length);
  return changedSeal(attempt, seal, await endLink(link, entries.length, subtle));
}

function changedHead(rest: object, seal: Seal): Alteration {
  const path = firstChange(rest, seal.tags.head) ?? '';
  const where = path === '' ? 'what stands before the log' : path;
  return {
    path,
    entry: null,
    sentence: `This attempt was altered after it was sealed: ${where} is not as it was.`,
  };
}

function changedEntry(entry: { readonly n: number }, n: number, seal: Seal): Alteration {
  const inner = firstChange(entry, seal.tags.entries[n] ?? '') ?? '';
  const path = `entries[${n}]${inner === '' || inner.startsWith('[') ? inner : `.${inner}`}`;
  const sentence =
    entry.n === n
      ? `This attempt was altered after it was sealed: entry ${n} of the log is not as it was, at ${path}.`
      : `This attempt was altered after it was sealed: where entry ${n} of the log stood, entry ${entry.n} stands now.`;
  return { path, entry: n, sentence };
}

function added(came: number, sealed: number): Alteration {
  const sentence = `This attempt was altered after it was sealed: it had ${sealed} log entries, and ${came} came.`;
  return { path: `entries[${sealed}]`, entry: sealed, sentence };
}

function missing(came: number, sealed: number): Alteration {
  const sentence = `This attempt was altered after it was sealed: it had ${sealed} log entries, and only ${came} came.`;
  return { path: `entries[${came}]`, entry: came, sentence };
}

/** The attempt agrees with every link; what is left is the seal's own end, tags and name. */
function changedSeal(attempt: Attempt, seal: Seal, end: string): Alteration | null {
  const { entries, ...rest } = attempt;
  const tagsAgree =
    seal.tags.head === tagsOf(rest) &&
    seal.tags.entries.length === entries.length &&
    entries.every((entry, n) => seal.tags.entries[n] === tagsOf(entry));
  if (seal.end === end && seal.attempt === attempt.id && tagsAgree) return null;
  const path = seal.end !== end ? 'seal.end' : tagsAgree ? 'seal.attempt' : 'seal.tags';
  return {
    path,
    entry: null,
    sentence: `The attempt is as it was sealed, but its seal was altered at ${path}.`,
  };
}
