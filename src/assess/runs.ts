import type { Stretch } from './film.ts';

/** Stretches one after the other in which one thing is held unchanged, told by a key; null: it is not held at all. */
export function runsOf(
  stretches: readonly Stretch[],
  keyOf: (stretch: Stretch) => string | null,
): readonly (readonly Stretch[])[] {
  const runs: Stretch[][] = [];
  let last: string | null = null;
  for (const stretch of stretches) {
    const key = keyOf(stretch);
    if (key !== null && key === last) runs.at(-1)!.push(stretch);
    else if (key !== null) runs.push([stretch]);
    last = key;
  }
  return runs;
}
