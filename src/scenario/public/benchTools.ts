import type { Control } from '../../bench/controlActs.ts';
import type { Job } from './job.ts';

/** A thing beside the growler that is worked with as a whole. */
export type Tool = Extract<
  Control,
  'preparation' | 'fieldFrame' | 'brushPlate' | 'tester' | 'drop' | 'gauges' | 'remedies' | 'bench'
>;

/** Tools a job has a use for, in the order the work calls for them: words, tray and picture show these and no more. */
export function toolsOf({ parts, tests }: Pick<Job, 'parts' | 'tests'>): readonly Tool[] {
  const has: Readonly<Record<Tool, boolean>> = {
    preparation: true,
    fieldFrame: parts.includes('fieldFrame'),
    brushPlate: parts.includes('brushPlate'),
    tester: tests.includes('megohm'),
    drop: tests.includes('millivolt'),
    gauges: tests.includes('gauges'),
    remedies: parts.includes('armature') || parts.includes('brushPlate'),
    bench: true,
  };
  return (Object.keys(has) as Tool[]).filter((tool) => has[tool]);
}
