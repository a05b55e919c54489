import type { SheetLine, Verdict } from './paper.ts';
import type { LeadId, Place } from './places.ts';

export type Selector = 'off' | 'low' | 'high';
/** Full-scale current of the ammeter, A. */
export const RANGES_A = [3, 15, 30, 100] as const;
export type RangeA = (typeof RANGES_A)[number];
export type PartKind = 'armature' | 'fieldFrame' | 'brushPlate';
export type Grip = 'handle' | 'tip';

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
  /** Leave a touching ammeter lead in the holding stand: the station stays, the bars pass under it. */
  | { readonly type: 'lead.clamp'; readonly lead: LeadId }
  /** Put a lead back into its holster. */
  | { readonly type: 'lead.holster'; readonly lead: LeadId }
  | { readonly type: 'strip.take' }
  /** Hold the strip lengthwise just above the core: angle from the bottom 65..295 degrees, height above the iron, mm. */
  | { readonly type: 'strip.hold'; readonly angleDeg: number; readonly heightMm: number }
  /** Take the strip away from the core, still in the hand. */
  | { readonly type: 'strip.away' }
  | { readonly type: 'strip.hang' }
  | { readonly type: 'lens.look'; readonly place: Place }
  | { readonly type: 'chalk.mark'; readonly bar: number }
  | { readonly type: 'sheet.write'; readonly line: SheetLine }
  | { readonly type: 'verdict.write'; readonly verdict: Verdict }
  /** Hand the job in. */
  | { readonly type: 'job.handIn' };

export type ActionType = Action['type'];
