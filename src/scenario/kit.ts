import { MAT_PARTS, type PartKind } from '../bench/action.ts';
import type { Kit } from '../bench/kit.ts';
import type { TestKind } from '../bench/paper.ts';
import type { Scenario } from './scenario.ts';

/** The lamp test of each part that comes before its insulation tester. */
const GROUND_TEST: Readonly<Record<PartKind, TestKind>> = {
  armature: 'ground',
  fieldFrame: 'fieldInsulation',
  brushPlate: 'plateInsulation',
};

/** What stands about the bench for a job. A cracked handle is there to be seen, so it is part of it. */
export function kitOf({ public: shown, hidden }: Scenario): Kit {
  return {
    mat: MAT_PARTS.filter((part) => shown.parts.includes(part)),
    tester: shown.tests.includes('megohm'),
    drop: shown.tests.includes('millivolt'),
    lampFirst: shown.parts.filter((part) => shown.tests.includes(GROUND_TEST[part])),
    cracked: (hidden.bench?.faults ?? []).flatMap((fault) =>
      fault.kind === 'crackedHandle' ? [fault.lead] : [],
    ),
  };
}
