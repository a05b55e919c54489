import type { TestVolt } from '../engine/instruments/insulationTester.ts';
import type { RemedyKind } from '../engine/parts/remedies.ts';
import type { SheetLine, Verdict } from './paper.ts';
import type { LeadId, Place } from './places.ts';

export type Selector = 'off' | 'low' | 'high';
/** Full-scale current of the ammeter, A. */
export const RANGES_A = [3, 15, 30, 100] as const;
export type RangeA = (typeof RANGES_A)[number];
export const PART_KINDS = ['armature', 'fieldFrame', 'brushPlate'] as const;
export type PartKind = (typeof PART_KINDS)[number];
/** Parts that stand on the mat and come forward when taken up. */
export const MAT_PARTS = ['fieldFrame', 'brushPlate'] as const;
export type MatPart = (typeof MAT_PARTS)[number];
export type Grip = 'handle' | 'tip';
/** What of the bench itself can be put right: bulb, a set of leads, the zero of the ammeter. */
export const BENCH_CARES = ['lamp', 'lampLeads', 'ammeterLeads', 'ammeterZero'] as const;
export type BenchCare = (typeof BENCH_CARES)[number];
export const GAUGES = ['diameter', 'runOut', 'undercut', 'brushLength'] as const;
export type GaugeKind = (typeof GAUGES)[number];
/** Brushes in the order they are gauged: field brushes 1 and 2, then those of earthed holders 1 and 2. */
export const BRUSHES = [0, 1, 2, 3] as const;
export type BrushIndex = (typeof BRUSHES)[number];
/** What is seen to before power. */
export const PREPARATIONS = [
  'ringsOff',
  'eyeProtection',
  'dryFloor',
  'secondPerson',
  'emergencyStop',
  'protectedSupply',
  'testLabel',
  'leadsSound',
] as const;
export type Preparation = (typeof PREPARATIONS)[number];

/**
 * Everything a person can do at the bench. An action is physical and cannot be undone; each is stamped with simulated
 * time by the session and kept in the attempt's log, refused ones included.
 */
export type Action =
  | { readonly type: 'selector.turn'; readonly to: Selector }
  | { readonly type: 'range.turn'; readonly to: RangeA }
  /** Lay the armature in the cradle. */
  | { readonly type: 'armature.place' }
  /** Lift the armature out of the cradle onto the mat. */
  | { readonly type: 'armature.lift' }
  /** Lay a free hand on the armature, as one does to turn it. */
  | { readonly type: 'armature.hold' }
  | { readonly type: 'armature.release' }
  /** Turn the armature in the cradle by hand; positive is the sense in which bar numbers rise, degrees. */
  | { readonly type: 'armature.turn'; readonly byDeg: number }
  /** Take a lead from its holster or the holding stand into a hand. */
  | { readonly type: 'lead.take'; readonly lead: LeadId; readonly grip: Grip }
  /** Put the tip of a held lead on metal. */
  | { readonly type: 'lead.touch'; readonly lead: LeadId; readonly place: Place }
  /** Take the tip off the metal, the lead staying in the hand. */
  | { readonly type: 'lead.lift'; readonly lead: LeadId }
  /** Lean on a held lead whose tip touches something, or ease off: a loose rivet makes or breaks. */
  | { readonly type: 'lead.lean'; readonly lead: LeadId; readonly on: boolean }
  /**
   * Leave a touching ammeter lead in the holding stand: the station stays, the bars pass under it. The leads of
   * insulation tester and millivoltmeter are clipped on where they touch.
   */
  | { readonly type: 'lead.clamp'; readonly lead: LeadId }
  /** Put a lead back into its holster. */
  | { readonly type: 'lead.holster'; readonly lead: LeadId }
  | { readonly type: 'strip.take' }
  /** Hold the strip lengthwise just above the core: angle from the bottom 65..295 degrees, height above the iron, mm. */
  | { readonly type: 'strip.hold'; readonly angleDeg: number; readonly heightMm: number }
  /** Take the strip away from the core, still in the hand. */
  | { readonly type: 'strip.away' }
  | { readonly type: 'strip.hang' }
  /** Bring a part forward on the mat, or put it back. */
  | { readonly type: 'part.takeUp'; readonly part: MatPart }
  | { readonly type: 'part.putBack'; readonly part: MatPart }
  /** Keep the two field brushes apart, or let them lie against one another. */
  | { readonly type: 'brushes.part' }
  | { readonly type: 'brushes.join' }
  | { readonly type: 'lens.look'; readonly place: Place }
  /** Measure; `brush` with a brush length only. */
  | { readonly type: 'gauge.read'; readonly gauge: GaugeKind; readonly brush?: BrushIndex }
  /** Cure something; `bar` with a riser to be resoldered only. */
  | { readonly type: 'remedy.do'; readonly remedy: RemedyKind; readonly bar?: number }
  /** Put the bench's own fault right. */
  | { readonly type: 'bench.setRight'; readonly what: BenchCare }
  | { readonly type: 'tester.volts'; readonly to: TestVolt }
  /** Press the insulation tester's button, or let it go. */
  | { readonly type: 'tester.press'; readonly on: boolean }
  /** Empty what the insulation tester has charged, through its own two leads. */
  | { readonly type: 'tester.discharge' }
  /** Clamp the steady feed of the millivolt-drop test on two pieces of metal, or take it off. */
  | { readonly type: 'drop.feed'; readonly at: readonly [Place, Place] | null }
  | { readonly type: 'prepare.check'; readonly item: Preparation }
  | { readonly type: 'chalk.mark'; readonly bar: number }
  | { readonly type: 'sheet.write'; readonly line: SheetLine }
  | { readonly type: 'verdict.write'; readonly verdict: Verdict }
  /** Hand the job in. */
  | { readonly type: 'job.handIn' };

export type ActionType = Action['type'];

/** Such acts come with every frame for as long as a hand goes on. */
export function isStream({ type }: Action): boolean {
  return type === 'armature.turn' || type === 'strip.hold';
}
