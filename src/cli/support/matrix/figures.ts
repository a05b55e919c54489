import { nominalSetup } from '../../../assess/diagnosis/shown.ts';
import { neighbourReadings, stripPulls } from '../../../engine/answers.ts';
import { type ArmatureSolver, createArmatureSolver } from '../../../engine/armatureBench.ts';
import { MAINS } from '../../../engine/drive.ts';
import type { ArmatureDesign } from '../../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../../engine/parts/armatureFault.ts';

/** Figures behind the matrix for one armature. Shares are of the sound reading. */
export interface Figures {
  readonly design: ArmatureDesign;
  /** Largest change of a neighbouring reading with one bar grounded, share. */
  readonly groundChange: number;
  /** Largest change of an open-circuit voltage between two bars with one coil open, V. */
  readonly openVoltChange: number;
  /** Lowest neighbouring reading with a coil open, a hard bridge (0.2 mΩ) and a soft one (50 mΩ), share. */
  readonly lowest: { readonly open: number; readonly hard: number; readonly soft: number };
  /** Largest pull on the strip clear of the jaws, sound, N. */
  readonly soundPullN: number;
}

const SETUP = nominalSetup(MAINS['230V50Hz']);
const OPEN: readonly ArmatureFault[] = [{ kind: 'openCoil', coil: 5 }];
const GROUND: readonly ArmatureFault[] = [{ kind: 'groundedBar', bar: 5, ohm: 0.02 }];
const bridge = (ohm: number): readonly ArmatureFault[] => [
  { kind: 'bridgedBars', bar: 5, ohm, by: 'copper' },
];

export function figuresOf(design: ArmatureDesign): Figures {
  const solver = createArmatureSolver(design);
  const sound = neighbourReadings(solver, [], SETUP);
  const shares = (faults: readonly ArmatureFault[]) =>
    neighbourReadings(solver, faults, SETUP).map((amps, bar) => amps / sound[bar]!);
  return {
    design,
    groundChange: Math.max(...shares(GROUND).map((share) => Math.abs(share - 1))),
    openVoltChange: openVoltChange(solver),
    lowest: {
      open: Math.min(...shares(OPEN)),
      hard: Math.min(...shares(bridge(0.0002))),
      soft: Math.min(...shares(bridge(0.05))),
    },
    soundPullN: Math.max(...stripPulls(solver, [], SETUP).map(({ pullN }) => Math.abs(pullN))),
  };
}

/** Over all bars against bar 0, at a rotation where no slot stands symmetrically. */
function openVoltChange(solver: ArmatureSolver): number {
  const { mains, excitation, windingC } = SETUP;
  const drive = { mains, excitation, windingC, rotationRad: 0.2, meter: null };
  const sound = solver.solve([], drive);
  const open = solver.solve(OPEN, drive);
  const changes = Array.from({ length: solver.design.bars }, (_, bar) =>
    Math.abs(open.openVolt(0, bar) - sound.openVolt(0, bar)),
  );
  return Math.max(...changes);
}
