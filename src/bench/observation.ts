import type { Grip, RangeA, Selector } from './action.ts';
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
  /** Set when a critical act has stopped the attempt. */
  readonly stopped: { readonly sentence: string } | null;
}

export interface HandView {
  /** What the hand holds. */
  readonly holds: 'nothing' | 'armature' | 'strip' | LeadId | 'bothAmmeterLeads';
}

export interface LeadView {
  readonly at: 'holster' | 'hand' | 'stand';
  /** How it is held while in a hand, else null. */
  readonly grip: Grip | null;
  /** The metal its tip is on right now (under the stand: the bar that happens to lie there), or null. */
  readonly touches: Place | null;
  /** Angle from the bottom of the point touched on the commutator, degrees, or null. */
  readonly stationDeg: number | null;
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
] as const;
export type Clue = (typeof CLUES)[number];
