import type { Condition } from '../../attempt/condition.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import type { Expected } from './expected.ts';

type Work = Condition['done'];

/** Saw and lathe take out whatever can bridge two bars: a short that is left after them is in the winding. */
const IN_THE_WINDING: Expected = {
  conditions: { shortedCoil: 1, bridgedBars: 0.5 },
  dispositions: { winder: 1, replace: 0.5 },
  weight: 3,
};
/** A riser made anew that changes nothing leaves the coil. */
const IN_THE_COIL: Expected = {
  conditions: { openCoil: 1, badRiserJoint: 0.5 },
  dispositions: { winder: 1, replace: 0.5 },
  weight: 3,
};

/** What a fault that is still there may be called once work at the bench has ruled its likenesses out. */
export function afterWork(
  expected: Expected,
  fault: ArmatureFault,
  done: Work,
  design: ArmatureDesign,
): Expected {
  const cut = done.some(({ remedy }) => remedy === 'undercut' || remedy === 'skimAndPolish');
  if (cut && (fault.kind === 'turnShort' || fault.kind === 'coilShort')) return IN_THE_WINDING;
  if (fault.kind !== 'openCoil') return expected;
  const end = (fault.coil + design.commutatorPitch + design.bars) % design.bars;
  const soldered = (bar: number) => done.some((work) => work.remedy === 'resolderRiser' && work.bar === bar);
  return soldered(fault.coil) && soldered(end) ? IN_THE_COIL : expected;
}
