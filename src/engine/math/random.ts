/**
 * Seeded random numbers. The same seed gives the same sequence on every machine; chance enters the pure folders
 * only as a seed.
 */

/** Mixes a string or number into 32 bits (FNV-1a over UTF-16 code units, then an avalanche). */
function mix(text: string, salt: number): number {
  let h = 0x811c9dc5 ^ salt;
  for (let i = 0; i < text.length; i++) {
    h ^= text.charCodeAt(i);
    h = Math.imul(h, 0x01000193);
  }
  h ^= h >>> 16;
  h = Math.imul(h, 0x85ebca6b);
  h ^= h >>> 13;
  h = Math.imul(h, 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/**
 * Small fast counter generator: 128 bits of state, 32 bits a draw.
 * @param seed any string or number; `5` and `'5'` are the same seed
 * @returns a function whose every call gives the next number, uniform in [0, 1)
 * @source sfc32 of the PractRand test suite (C. Doty-Humphrey, public domain), from memory
 */
export function seeded(seed: string | number): () => number {
  const text = String(seed);
  let a = mix(text, 0x9e3779b9);
  let b = mix(text, 0x243f6a88);
  let c = mix(text, 0xb7e15162);
  let counter = 1;
  const next = (): number => {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 0x1_0000_0000;
  };
  for (let i = 0; i < 15; i++) next();
  return next;
}
