import { readFileSync } from 'node:fs';
import type { ArmatureDesign } from '../../../../src/engine/parts/armature.ts';

/** The armatures of the workshop. */
export function armature(id: 'wave-23' | 'lap-28' | 'lap-24' | 'lap-28e' | 'wave-23f'): ArmatureDesign {
  const file = new URL(`../../../../scenarios/parts/${id}.json`, import.meta.url);
  return JSON.parse(readFileSync(file, 'utf8')) as ArmatureDesign;
}

export const ALL_TESTS = ['look', 'spaced', 'neighbour', 'ground', 'strip'] as const;
