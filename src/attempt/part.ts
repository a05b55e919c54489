import type { CommutatorGeometry } from '../bench/geometry.ts';
import type { Kit } from '../bench/kit.ts';
import { type ArmatureSolver, createArmatureSolver } from '../engine/armatureBench.ts';
import { MAINS, type Mains, type MainsId } from '../engine/drive.ts';
import { type Ammeter, makeAmmeter } from '../engine/instruments/ammeter.ts';
import { benchLamp, type LampType } from '../engine/instruments/lamp.ts';
import { COPPER_DENSITY } from '../engine/instruments/thermal.ts';
import { seeded } from '../engine/math/random.ts';
import type { ArmatureDesign } from '../engine/parts/armature.ts';
import type { ArmatureFault } from '../engine/parts/armatureFault.ts';
import { type BrushPlateDesign, FOUR_HOLDERS, JOB_PLATES } from '../engine/parts/brushPlate.ts';
import type { FieldFrameDesign } from '../engine/parts/fieldFrame.ts';
import { JOB_FRAMES, TWO_BRANCHES } from '../engine/parts/fieldFrameDesigns.ts';
import { barZeroDeg, coilCopperVolume } from '../engine/parts/winding.ts';
import { kitOf } from '../scenario/kit.ts';
import type { Limits } from '../scenario/public/job.ts';
import { limitsOf } from '../scenario/public/limits.ts';
import type { Scenario, ScenarioHidden } from '../scenario/scenario.ts';

/** What lies on the bench and what the bench is made of: all that stays the same during an attempt. */
export interface PartOnBench {
  readonly design: ArmatureDesign;
  readonly frame: FieldFrameDesign;
  readonly plate: BrushPlateDesign;
  readonly geometry: CommutatorGeometry;
  readonly kit: Kit;
  readonly limits: Limits;
  readonly hidden: ScenarioHidden;
  readonly mainsId: MainsId;
  readonly mains: Mains;
  readonly solver: ArmatureSolver;
  /** The ammeter with its zero set right. */
  readonly ammeter: Ammeter;
  readonly lamp: LampType;
  /** Copper that takes up the loss of each coil, kg. */
  readonly coilKg: readonly number[];
}

export function putOnBench(scenario: Scenario, design: ArmatureDesign): PartOnBench {
  const { public: shown, hidden } = scenario;
  const mains = MAINS[shown.mains];
  return {
    design,
    // Where the job has none of its kind, nobody can touch it.
    frame: JOB_FRAMES.get(shown.fieldFrame ?? '') ?? TWO_BRANCHES,
    plate: JOB_PLATES.get(shown.brushPlate ?? '') ?? FOUR_HOLDERS,
    geometry: { bars: design.bars, barZeroDeg: barZeroDeg(design) },
    kit: kitOf(scenario),
    limits: limitsOf(shown, design),
    hidden,
    mainsId: shown.mains,
    mains,
    solver: createArmatureSolver(design),
    ammeter: makeAmmeter(seeded(`ammeter ${hidden.seed}`)),
    lamp: benchLamp(mains.volt),
    coilKg: coilMasses(design, hidden.armature.faults),
  };
}

/** Shorted turns carry nearly all of their coil's loss, and only their own copper takes it up. */
function coilMasses(design: ArmatureDesign, faults: readonly ArmatureFault[]): number[] {
  const whole = COPPER_DENSITY * coilCopperVolume(design);
  return Array.from({ length: design.bars }, (_, coil) => {
    const short = faults.find((fault) => fault.kind === 'turnShort' && fault.coil === coil);
    return short?.kind === 'turnShort' ? (whole * short.turns) / design.turns : whole;
  });
}
