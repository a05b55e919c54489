import type { TestKind } from '../bench/paper.ts';
import { MAT_TEST_KINDS } from './matPasses.ts';

const LAMP_TESTS: readonly TestKind[] = ['ground', ...MAT_TEST_KINDS];
const GROWLER_TESTS: readonly TestKind[] = ['spaced', 'neighbour', 'strip', ...LAMP_TESTS];

export function isLampTest(test: TestKind): boolean {
  return LAMP_TESTS.includes(test);
}

/** Whether the growler must be on for it. */
export function needsGrowler(test: TestKind): boolean {
  return GROWLER_TESTS.includes(test);
}
