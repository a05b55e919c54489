import canonicalize from 'canonicalize';

/**
 * The one way of writing a value as JSON (RFC 8785), so that the same content always has the same hash however a file
 * was laid out. What JSON cannot hold is written as JSON would keep it: a value out of memory and the same value read
 * back from its file come out alike. Never throws for a value read from JSON.
 */
export function canonicalText(value: unknown): string {
  try {
    return canonicalize(value) ?? 'null';
  } catch {
    // RFC 8785 has no form for a lone half of a surrogate pair, which a text cut in two can leave behind.
    return canonicalize(mended(value)) ?? 'null';
  }
}

function mended(value: unknown): unknown {
  if (typeof value === 'string') return value.replace(/\p{Surrogate}/gu, '\ufffd');
  if (typeof value === 'number') return Number.isFinite(value) ? value : null;
  if (Array.isArray(value)) return value.map(mended);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [mended(key), mended(inner)]));
}
