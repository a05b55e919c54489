import type { PartKind } from '../../src/bench/action.ts';
import type { Condition, Verdict } from '../../src/bench/paper.ts';
import type { BrushPlateFaultKind } from '../../src/engine/parts/brushPlate.ts';
import type { FieldFrameFaultKind } from '../../src/engine/parts/fieldFrame.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';

/** What each fault of field frame and brush plate may be called, by the trade's words alone (common practice, no source). */
const FIELD: Readonly<Record<FieldFrameFaultKind, readonly Condition[]>> = {
  openCoil: ['openCoil', 'brokenJoint'],
  brushJoint: ['brokenJoint', 'openCoil'],
  groundedCoil: ['grounded'],
  weakInsulation: ['poorInsulation', 'grounded'],
  // One branch drops less than the other: a burnt pigtail on that other one speaks for a joint.
  shortedTurns: ['shortedCoil', 'brokenJoint'],
};
const PLATE: Readonly<Record<BrushPlateFaultKind, readonly Condition[]>> = {
  // Beside a darkened insulator, and until it is cleaned off, dirt is as good as a breakdown.
  dirt: ['bridgedBars', 'poorInsulation', 'grounded'],
  looseRivet: ['looseRivet'],
  insulatorDown: ['grounded', 'poorInsulation', 'bridgedBars'],
  brokenPigtail: ['brokenJoint'],
};

/** Names that fit each hidden fault of a part on the mat, fault by fault. */
export function fittingNames({ hidden }: Scenario, part: PartKind): readonly (readonly Condition[])[] {
  if (part === 'fieldFrame') return (hidden.fieldFrame?.faults ?? []).map(({ kind }) => FIELD[kind]);
  return part === 'brushPlate' ? (hidden.brushPlate?.faults ?? []).map(({ kind }) => PLATE[kind]) : [];
}

/** Whether a verdict names what is hidden in a part of the mat, no more and no less; wear is the gauges' business. */
export function namesTheHidden(scenario: Scenario, { part, findings }: Verdict): boolean {
  const said = findings.map(({ condition }) => condition).filter((one) => one !== 'sound' && one !== 'worn');
  const fits = fittingNames(scenario, part);
  return said.length === fits.length && fits.every((names) => said.some((one) => names.includes(one)));
}
