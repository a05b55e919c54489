import type { BrushPlateFault } from './brushPlate.ts';
import type { FieldFrameDesign, FieldFrameFault } from './fieldFrame.ts';
import type { Objection } from './windingRules.ts';

/** Refuses a fault this field frame cannot have, with the reason; paths are relative to the fault. */
export function checkFieldFault(frame: FieldFrameDesign, fault: FieldFrameFault): Objection[] {
  if (!('coil' in fault) || fault.coil < frame.coils.length) return [];
  const last = frame.coils.length - 1;
  const sentence = `Expected a coil from 0 to ${last} (this frame has ${frame.coils.length}), but ${fault.coil} came.`;
  return [{ path: 'coil', sentence }];
}

/** What a fault lays claim to: two of one list that claim the same contradict one another. */
export function fieldClaim(fault: FieldFrameFault): string {
  return fault.kind === 'brushJoint'
    ? `the joint of field brush ${fault.brush}`
    : `${CLAIMS[fault.kind]} ${fault.coil}`;
}
const CLAIMS = {
  openCoil: 'the copper of coil',
  shortedTurns: 'the copper of coil',
  groundedCoil: 'the insulation of coil',
  weakInsulation: 'the insulation of coil',
} as const;

export function plateClaim({ kind, holder }: BrushPlateFault): string {
  return `${PLATE_CLAIMS[kind]} of ${holder.slice('plate:'.length)}`;
}
const PLATE_CLAIMS: Readonly<Record<BrushPlateFault['kind'], string>> = {
  dirt: 'the dirt',
  looseRivet: 'the rivet',
  insulatorDown: 'the insulator',
  brokenPigtail: 'the pigtail',
};
