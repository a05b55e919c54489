import type { CommutatorGeometry } from '../bench/geometry.ts';
import { type ArmatureSolver, createArmatureSolver } from '../engine/armatureBench.ts';
import { MAINS, type Mains, type MainsId } from '../engine/drive.ts';
import { type Ammeter, makeAmmeter } from '../engine/instruments/ammeter.ts';
import { benchLamp, type LampType } from '../engine/instruments/lamp.ts';
import { COPPER_DENSITY } from '../engine/instruments/thermal.ts';
import { seeded } from '../engine/math/random.ts';
import type { ArmatureDesign } from '../engine/parts/armature.ts';
import type { ArmatureFault } from '../engine/parts/armatureFault.ts';
import { barZeroDeg, coilCopperVolume } from '../engine/parts/winding.ts';
import type { Scenario, ScenarioHidden } from '../scenario/scenario.ts';

/** What lies on the bench and what the bench is made of: all that stays the same during an attempt. */
export interface PartOnBench {
  readonly design: ArmatureDesign;
  readonly geometry: CommutatorGeometry;
  readonly faults: readonly ArmatureFault[];
  readonly hidden: ScenarioHidden;
  readonly mainsId: MainsId;
  readonly mains: Mains;
  readonly solver: ArmatureSolver;
  readonly ammeter: Ammeter;
  readonly lamp: LampType;
  /** Whether probes meet dirt on the bars. */
  readonly dirty: boolean;
  /** Copper that takes up the loss of each coil, kg. */
  readonly coilKg: readonly number[];
}

export function putOnBench({ public: shown, hidden }: Scenario, design: ArmatureDesign): PartOnBench {
  const { faults } = hidden.armature;
  const mains = MAINS[shown.mains];
  return {
    design,
    geometry: { bars: design.bars, barZeroDeg: barZeroDeg(design) },
    faults,
    hidden,
    mainsId: shown.mains,
    mains,
    solver: createArmatureSolver(design),
    ammeter: makeAmmeter(seeded(`ammeter ${hidden.seed}`)),
    lamp: benchLamp(mains.volt),
    dirty: faults.some((fault) => fault.kind === 'dirtyCommutator'),
    coilKg: coilMasses(design, faults),
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
