import type { TestVolt } from '../engine/instruments/insulationTester.ts';
import type {
  BrushIndex,
  GaugeKind,
  Grip,
  MatPart,
  PartKind,
  Preparation,
  RangeA,
  Selector,
} from './action.ts';
import type { LeadId, Place } from './places.ts';

/**
 * What a person at a real bench could see, hear or feel at one moment, and nothing else: quantised to what an eye
 * resolves, with the same keys whatever the fault. Scene, sound and the apprentice's screens know only this.
 */
export interface Observation {
  /** Simulated time, ms since the attempt began. */
  readonly atMs: number;
  readonly selector: Selector;
  /** Pilot light and cut-out flag on the bench panel. `isolated`: stopped after a critical act. */
  readonly supply: 'off' | 'on' | 'cutOut' | 'isolated';
  readonly rangeA: RangeA;
  readonly cradle: 'empty' | 'armature';
  /** Rotation of the armature, degrees in [0, 360), to 0.1. */
  readonly rotationDeg: number;
  readonly hands: readonly [HandView, HandView];
  readonly leads: Readonly<Record<LeadId, LeadView>>;
  readonly needle: NeedleView;
  readonly lamp: LampView;
  readonly strip: StripView;
  readonly hum: HumView;
  /** What a hand near the growler winding feels. */
  readonly growlerHeat: 'cool' | 'warm' | 'hot' | 'tooHotToTouch';
  /** What the nose and eye get from an overheated winding of the part. */
  readonly partHeat: 'cool' | 'warm' | 'hot' | 'smoking';
  readonly chalkedBar: number | null;
  /** What the lens last showed, or null when it is on the rail. */
  readonly look: LookView | null;
  /** Where field frame and brush plate are; `absent`: not part of this job. */
  readonly mat: Readonly<Record<MatPart, MatView>>;
  /** The two field brushes are kept apart. */
  readonly brushesApart: boolean;
  /** What the gauge last showed, or null when it is on the rail. */
  readonly gauge: GaugeView | null;
  readonly tester: TesterView;
  readonly drop: DropView;
  /** Minutes that remedies and repairs have taken beside the time that has run, by the workshop's book. */
  readonly minutesSpent: number;
  /** What was seen to before power, in the order it was. */
  readonly prepared: readonly Preparation[];
  /** Parts a remedy at this bench has taken below the card's limit. */
  readonly scrapped: readonly PartKind[];
  /** Set when a critical act has stopped the attempt. */
  readonly stopped: { readonly sentence: string } | null;
}

export interface HandView {
  /** What the hand holds. */
  readonly holds: 'nothing' | 'armature' | 'strip' | LeadId | 'bothAmmeterLeads';
}

export interface LeadView {
  /** `clip`: left clipped on where it touches; `absent`: not on the rail for this job. */
  readonly at: 'holster' | 'hand' | 'stand' | 'clip' | 'absent';
  /** How it is held while in a hand, else null. */
  readonly grip: Grip | null;
  /** The metal its tip is on right now (under the stand: the bar that happens to lie there), or null. */
  readonly touches: Place | null;
  /** Angle from the bottom of the point touched on the commutator, degrees, or null. */
  readonly stationDeg: number | null;
  /** Someone leans on it. */
  readonly leaning: boolean;
}

export type MatView = 'absent' | 'away' | 'forward';

export interface GaugeView {
  readonly gauge: GaugeKind;
  readonly brush: BrushIndex | null;
  /** What an eye reads: diameter and brush length to 0.1 and 0.5, run-out to 0.01, undercut to 0.05 mm. */
  readonly mm: number;
}

export interface TesterView {
  readonly at: 'absent' | 'rail';
  readonly volt: TestVolt;
  readonly pressed: boolean;
  /** What the display shows in three figures, or null when the button is up. */
  readonly megohms: number | null;
  /** The display shows that the reading lies beyond its scale. */
  readonly over: boolean;
  /** The warning light: more than a harmless voltage stands between the tester's leads. */
  readonly charged: boolean;
  /** Its switch lies on discharge: nothing it has charged is left. */
  readonly discharged: boolean;
}

export interface DropView {
  readonly at: 'absent' | 'rail';
  /** Where the feed is clamped, or null. */
  readonly feed: readonly [Place, Place] | null;
  /** What the feed's own meter shows, A. */
  readonly feedA: number;
  /** What the millivoltmeter shows, mV, or null when its leads are not both on one part. */
  readonly millivolts: number | null;
  readonly over: boolean;
}

export interface NeedleView {
  /** Deflection as a fraction of full scale, 0..1.03, in steps of 1/400. */
  readonly deflection: number;
  readonly pegged: boolean;
  readonly atRest: boolean;
}

export interface LampView {
  /** Brightness an eye sees: 0 dark, 1 dull red, up to 8 full. */
  readonly glow: number;
}

export interface StripView {
  readonly at: 'rail' | 'hand' | 'core';
  readonly angleDeg: number | null;
  readonly heightMm: number | null;
  /** Pull felt: 0 none, 1 just felt, 2 plain, 3 strong, 4 snapped on to the iron. */
  readonly pull: number;
  /** Vibration at twice mains frequency: 0 still .. 8 rattling. */
  readonly buzz: number;
}

export interface HumView {
  /** Loudness 0 silent .. 20, from the growler winding current. */
  readonly level: number;
  /** Twice mains frequency, Hz. */
  readonly pitchHz: number;
  /** Share of rattle in the hum 0..10: the open, unloaded cradle growls harshest. */
  readonly harshness: number;
}

export interface LookView {
  readonly place: Place;
  /** Clues in plain words, from a closed list; empty: nothing to see. */
  readonly sees: readonly Clue[];
}

export const CLUES = [
  'brightSolder',
  'solderThrown',
  'burntBarEdge',
  'metalAcrossMica',
  'carbonAcrossMica',
  'charredInsulation',
  'rubbedCore',
  'dirt',
  'wornSurface',
  'looseRivet',
  'brokenPigtail',
  'burntPigtail',
  'charredFieldCoil',
  'looseFieldCoil',
  'darkenedInsulator',
  'crackedHandle',
  'frayedCable',
  'brokenFilament',
  'blackenedBulb',
] as const;
export type Clue = (typeof CLUES)[number];
