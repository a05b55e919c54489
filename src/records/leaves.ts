import { canonicalText } from './canonical.ts';

/**
 * A hash says that something changed and not where. Beside each hash stand therefore short tags of every single value
 * in it, in canonical order, four hexadecimal digits each. They only point at the place: integrity rests on the hash.
 */
interface Leaf {
  /** Such as `action.byDeg` or `faults[0].ohm`. */
  readonly path: string;
  readonly text: string;
}

export function tagsOf(value: unknown): string {
  return leavesOf(value).map(tagOf).join('');
}

/**
 * Path of the first value that is not as it was tagged; null where every tag agrees.
 * A value that was taken away shows at the place of the one that moved up, or as '' at the very end.
 */
export function firstChange(value: unknown, tags: string): string | null {
  const leaves = leavesOf(value);
  const changed = leaves.findIndex((leaf, nth) => tagOf(leaf) !== tags.slice(nth * 4, nth * 4 + 4));
  if (changed >= 0) return leaves[changed]!.path;
  return leaves.length * 4 === tags.length ? null : '';
}

function leavesOf(value: unknown): Leaf[] {
  const found: Leaf[] = [];
  // A stack and not recursion: a hostile file may be nested deeper than the call stack.
  const waiting: { readonly path: string; readonly value: unknown }[] = [{ path: '', value }];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const inner = innerOf(next.value, next.path);
    if (inner === null) found.push({ path: next.path, text: canonicalText(next.value) });
    else waiting.push(...inner.reverse());
  }
  return found;
}

/** What lies inside a list or object that holds anything; null for a value that stands for itself. */
function innerOf(value: unknown, path: string): { path: string; value: unknown }[] | null {
  if (value === null || typeof value !== 'object') return null;
  if (Array.isArray(value))
    return value.length === 0 ? null : value.map((item, nth) => ({ path: `${path}[${nth}]`, value: item }));
  const keys = Object.keys(value)
    .filter((key) => (value as Record<string, unknown>)[key] !== undefined)
    .sort();
  if (keys.length === 0) return null;
  return keys.map((key) => ({
    path: path === '' ? key : `${path}.${key}`,
    value: (value as Record<string, unknown>)[key],
  }));
}

/** FNV-1a of path and value over 32 bits, folded to 16. */
function tagOf(leaf: Leaf): string {
  let hash = 0x811c9dc5;
  const text = `${leaf.path}=${leaf.text}`;
  for (let n = 0; n < text.length; n++) hash = Math.imul(hash ^ text.charCodeAt(n), 0x01000193);
  return ((hash ^ (hash >>> 16)) & 0xffff).toString(16).padStart(4, '0');
}
