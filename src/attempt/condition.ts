import type { Action, BenchCare, PartKind } from '../bench/action.ts';
import { type LeadSet, leadSet, type PanelLead } from '../bench/places.ts';
import type { ArmatureFault } from '../engine/parts/armatureFault.ts';
import type { BrushPlateFault } from '../engine/parts/brushPlate.ts';
import type { FieldFrameFault } from '../engine/parts/fieldFrame.ts';
import { isArmatureRemedy, remedyArmature, remedyBrushPlate } from '../engine/parts/remedies.ts';
import { freshWear, type Wear, wornBy } from '../engine/parts/wear.ts';
import type { BenchFault } from '../scenario/hidden/benchFault.ts';
import type { Since } from '../scenario/hidden/looks.ts';
import type { Limits } from '../scenario/public/job.ts';
import type { ScenarioHidden } from '../scenario/scenario.ts';

/** What is the matter with parts and bench at one moment: what a job hides, less what has been cured since. */
export interface Condition {
  readonly armature: readonly ArmatureFault[];
  readonly fieldFrame: readonly FieldFrameFault[];
  readonly brushPlate: readonly BrushPlateFault[];
  readonly bench: readonly BenchFault[];
  readonly wear: Wear;
  /** Remedies done, in order. */
  readonly done: Since['done'];
  /** Parts that work at this bench has taken below the card's limit. */
  readonly scrapped: readonly PartKind[];
}

export function firstCondition(hidden: ScenarioHidden, commutatorRadiusM: number): Condition {
  return {
    armature: hidden.armature.faults,
    fieldFrame: hidden.fieldFrame?.faults ?? [],
    brushPlate: hidden.brushPlate?.faults ?? [],
    bench: hidden.bench?.faults ?? [],
    wear: { ...freshWear(commutatorRadiusM), ...hidden.wear },
    done: [],
    scrapped: [],
  };
}

/** The condition after an act that goes through; the same one where it changes nothing. */
export function conditionAfter(condition: Condition, action: Action, limits: Limits): Condition {
  if (action.type === 'remedy.do') return cured(condition, action, limits);
  if (action.type !== 'bench.setRight') return condition;
  const bench = condition.bench.filter((fault) => !setsRight(action.what, fault));
  return bench.length === condition.bench.length ? condition : { ...condition, bench };
}

function cured(
  condition: Condition,
  { remedy, bar }: Extract<Action, { type: 'remedy.do' }>,
  limits: Limits,
): Condition {
  const done = [...condition.done, { remedy, bar: bar ?? null }];
  if (!isArmatureRemedy(remedy)) {
    return { ...condition, done, brushPlate: remedyBrushPlate(condition.brushPlate, remedy) };
  }
  const wear = wornBy(condition.wear, remedy);
  const spoilt = remedy === 'skimAndPolish' && wear.commutatorDiameterMm < limits.commutatorDiameterMm;
  const armature = remedyArmature(condition.armature, remedy, bar);
  return { ...condition, done, armature, wear, scrapped: spoilt ? ['armature'] : condition.scrapped };
}

function setsRight(what: BenchCare, fault: BenchFault): boolean {
  switch (fault.kind) {
    case 'blownLamp':
      return what === 'lamp';
    case 'ammeterZero':
      return what === 'ammeterZero';
    default:
      return SET_OF[leadSet(fault.lead)] === what;
  }
}
const SET_OF: Readonly<Partial<Record<LeadSet, BenchCare>>> = { lamp: 'lampLeads', ammeter: 'ammeterLeads' };

/** What the lens needs to know of the work done. */
export function sinceThen({ armature, fieldFrame, brushPlate, bench, done }: Condition): Since {
  return { left: new Set<unknown>([...armature, ...fieldFrame, ...brushPlate, ...bench]), done };
}

export function isBlown({ bench }: Condition): boolean {
  return bench.some((fault) => fault.kind === 'blownLamp');
}

/** Whether nothing comes through a lead. */
export function isBroken({ bench }: Condition, lead: PanelLead): boolean {
  return bench.some((fault) => fault.kind === 'brokenLead' && fault.lead === lead);
}

/** Deflection of the ammeter with no current, fraction of full scale. */
export function zeroOffset({ bench }: Condition): number {
  return bench.reduce((sum, fault) => (fault.kind === 'ammeterZero' ? sum + fault.offset : sum), 0);
}

/** Whether probes meet dirt on the bars. */
export function isDirty({ armature }: Condition): boolean {
  return armature.some((fault) => fault.kind === 'dirtyCommutator');
}
