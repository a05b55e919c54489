import { readFileSync } from 'node:fs';
import type { PartKind } from '../../src/bench/action.ts';
import type { TestKind } from '../../src/bench/paper.ts';
import type { Mode } from '../../src/bench/port.ts';
import type { MainsId } from '../../src/engine/drive.ts';
import type { ArmatureDesign } from '../../src/engine/parts/armature.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { type BrushPlateFault, FOUR_HOLDERS } from '../../src/engine/parts/brushPlate.ts';
import type { FieldFrameFault } from '../../src/engine/parts/fieldFrame.ts';
import { TWO_BRANCHES } from '../../src/engine/parts/fieldFrameDesigns.ts';
import type { Wear } from '../../src/engine/parts/wear.ts';
import type { BenchFault } from '../../src/scenario/hidden/benchFault.ts';
import { parsePartText } from '../../src/scenario/parse.ts';
import type { Limits } from '../../src/scenario/public/job.ts';
import {
  type PartLibrary,
  SCENARIO_VERSION,
  type Scenario,
  type ScenarioHidden,
} from '../../src/scenario/scenario.ts';

export type PartId = 'wave-23' | 'lap-28' | 'lap-24';

/** A part type as the scenarios use it. */
export function partType(id: PartId): ArmatureDesign {
  const parsed = parsePartText(readFileSync(`scenarios/parts/${id}.json`, 'utf8'));
  if (!parsed.ok) throw new Error(parsed.issues.map((issue) => issue.sentence).join(' '));
  return parsed.value;
}

export const PARTS: PartLibrary = new Map(
  (['wave-23', 'lap-28', 'lap-24'] as const).map((id) => [id, partType(id)]),
);

export interface JobOptions {
  readonly part?: PartId;
  readonly faults?: readonly ArmatureFault[];
  /** What is to be judged; left out: the armature. */
  readonly parts?: readonly PartKind[];
  readonly frame?: string;
  readonly fieldFaults?: readonly FieldFrameFault[];
  readonly plateFaults?: readonly BrushPlateFault[];
  readonly benchFaults?: readonly BenchFault[];
  readonly wear?: Partial<Wear>;
  readonly limits?: Partial<Limits>;
  /** Left out: the tests the parts have on the growler. */
  readonly tests?: readonly TestKind[];
  readonly supplyReference?: ScenarioHidden['supplyReference'];
  readonly mode?: Mode;
  readonly mains?: MainsId;
  readonly seed?: number;
  readonly startRotationDeg?: number;
}

const TESTS_OF: Readonly<Record<PartKind, readonly TestKind[]>> = {
  armature: ['spaced', 'neighbour', 'ground', 'strip'],
  fieldFrame: ['fieldContinuity', 'fieldInsulation'],
  brushPlate: ['plateInsulation', 'plateEarthed'],
};

/** A job of the training workshop with any parts and any faults. */
export function job({
  part = 'wave-23',
  faults = [],
  mode = 'practice',
  mains = '230V50Hz',
  seed = 7,
  startRotationDeg = 0,
  parts = ['armature'],
  ...more
}: JobOptions = {}): Scenario {
  return {
    format: 'slot-and-riser/scenario',
    version: SCENARIO_VERSION,
    public: {
      id: 'q-test',
      workshop: 'Quarry Road Training Workshop',
      card: { unit: 'Starter', broughtInBy: 'The stores', complaint: 'Slow.', askedFor: 'Test it.' },
      mains,
      parts,
      armature: part,
      ...(parts.includes('fieldFrame') ? { fieldFrame: more.frame ?? TWO_BRANCHES.id } : {}),
      ...(parts.includes('brushPlate') ? { brushPlate: FOUR_HOLDERS.id } : {}),
      tests: more.tests ?? ['look', ...parts.flatMap((one) => TESTS_OF[one])],
      ...(more.limits ? { limits: more.limits } : {}),
      mode,
      minutes: null,
    },
    hidden: {
      armature: { faults },
      ...(more.fieldFaults ? { fieldFrame: { faults: more.fieldFaults } } : {}),
      ...(more.plateFaults ? { brushPlate: { faults: more.plateFaults } } : {}),
      ...(more.benchFaults ? { bench: { faults: more.benchFaults } } : {}),
      ...(more.wear ? { wear: more.wear } : {}),
      startRotationDeg,
      seed,
      supplyReference: more.supplyReference ?? 'floating',
    },
  };
}
