import type { ArmatureDesign } from '../engine/parts/armature.ts';
import type { ArmatureFault } from '../engine/parts/armatureFault.ts';
import type { Issue } from './scenario.ts';

/**
 * What a fault lays claim to. Two faults that claim the same thing contradict one another: a coil cannot be open and
 * reversed, one bar cannot have two kinds of joint, and a bridge is there once or not at all.
 */
function claims(fault: ArmatureFault, design: ArmatureDesign): string[] {
  const endingAt = (bar: number) => (bar - design.commutatorPitch + 2 * design.bars) % design.bars;
  switch (fault.kind) {
    case 'openCoil':
    case 'reversedCoil':
    case 'turnShort':
      return [`coil ${fault.coil}`];
    case 'riserJoint':
      if (fault.form === 'bar') return [`the joint at bar ${fault.bar}`];
      if (fault.form === 'oneEnd') return [`the joint at bar ${fault.bar}`, `coil ${fault.bar}`];
      return [`the joint at bar ${fault.bar}`, `coil ${fault.bar}`, `coil ${endingAt(fault.bar)}`];
    case 'bridgedBars':
      return [`the gap between bar ${fault.bar} and the next`];
    case 'coilShort':
      return [`the contact of coils ${fault.topCoil} and ${fault.bottomCoil}`];
    case 'groundedBar':
      return [`the insulation of bar ${fault.bar}`, 'ground'];
    case 'groundedCoil':
      return [`the insulation of coil ${fault.coil}`, 'ground'];
    case 'weakInsulation':
      return ['the insulation of the whole winding'];
    case 'dirtyCommutator':
      return ['the commutator surface'];
  }
}

/** A second ground elsewhere is a fault of its own; weak insulation beside a ground says nothing that is true. */
function clash(first: readonly string[], second: readonly string[]): string | null {
  const shared = first.find((claim) => claim !== 'ground' && second.includes(claim));
  if (shared !== undefined) return shared;
  const whole = 'the insulation of the whole winding';
  const pair = [...first, ...second];
  return pair.includes(whole) && pair.includes('ground') ? 'the insulation, weak and gone at once' : null;
}

/** Finds pairs of faults that cannot both be true of one armature. */
export function contradictions(faults: readonly ArmatureFault[], design: ArmatureDesign): Issue[] {
  return faults.flatMap((fault, later) => {
    const earlier = faults.findIndex((other) => clash(claims(other, design), claims(fault, design)) !== null);
    if (earlier >= later || earlier < 0) return [];
    const over = clash(claims(faults[earlier]!, design), claims(fault, design));
    const sentence = `Expected faults that can be true together, but this one and faults[${earlier}] both decide ${over}.`;
    return [{ path: `hidden.armature.faults[${later}]`, sentence }];
  });
}
