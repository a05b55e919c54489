import fc from 'fast-check';

/**
 * Checks a property with a seed that is printed, passed or failed; SEED in the environment repeats a run,
 * RUNS multiplies how many are made. What failed once stays as a named test with its seed.
 */
export function holds<T extends [unknown, ...unknown[]]>(
  name: string,
  runs: number,
  property: fc.IPropertyWithHooks<T>,
): void {
  const seed = process.env.SEED ? Number(process.env.SEED) : Math.floor(Math.random() * 2 ** 31);
  const numRuns = runs * Number(process.env.RUNS ?? 1);
  console.info(`${name}: seed ${seed}, ${numRuns} runs`);
  fc.assert(property, { numRuns, seed });
}
