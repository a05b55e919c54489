/** What was made for a key, or made now; the oldest is forgotten when there are too many. */
export function remembered<K, T>(known: Map<K, T>, key: K, most: number, make: () => T): T {
  const found = known.get(key);
  if (found !== undefined) return found;
  if (known.size >= most) known.delete(known.keys().next().value as K);
  const fresh = make();
  known.set(key, fresh);
  return fresh;
}
