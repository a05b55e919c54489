import type { BrushIndex } from '../../bench/action.ts';
import { PANEL_LEADS, type PanelLead } from '../../bench/places.ts';
import type { FieldFrameView } from '../../scenario/public/job.ts';
import type { BenchFault, FieldFault, PlateFault } from './desk.ts';

/** What lies open on the desk beside an armature. */
export type Other = 'fieldFrame' | 'brushPlate' | 'bench';
export type OtherFault = FieldFault | PlateFault | BenchFault;
export type OtherKind = OtherFault['kind'];

/** A place of field frame, brush plate or bench where faults can live, by a key such as `coil:2` or `plate:earthed1`. */
export type OtherSpot = string;

export type Holder = PlateFault['holder'];
export const HOLDERS: readonly Holder[] = [
  'plate:insulated1',
  'plate:insulated2',
  'plate:earthed1',
  'plate:earthed2',
];

export function spotsOf(other: Other, frame: FieldFrameView | null): readonly OtherSpot[] {
  switch (other) {
    case 'fieldFrame':
      return [...(frame?.coils ?? []).map((_, coil) => `coil:${coil}`), 'brush:1', 'brush:2'];
    case 'brushPlate':
      return HOLDERS;
    case 'bench':
      return ['lamp', 'ammeter', ...PANEL_LEADS];
  }
}

/** Kinds of fault that fit a place. */
export function otherKindsAt(spot: OtherSpot): readonly OtherKind[] {
  if (spot.startsWith('coil:')) return ['openCoil', 'shortedTurns', 'groundedCoil', 'weakInsulation'];
  if (spot.startsWith('brush:')) return ['brushJoint'];
  if (spot.startsWith('plate:insulated')) return ['dirt', 'insulatorDown', 'looseRivet', 'brokenPigtail'];
  if (spot.startsWith('plate:')) return ['looseRivet', 'brokenPigtail'];
  if (spot === 'lamp') return ['blownLamp'];
  return spot === 'ammeter' ? ['ammeterZero'] : ['brokenLead', 'crackedHandle'];
}

export function otherSpotOf(fault: OtherFault): OtherSpot {
  if ('coil' in fault) return `coil:${fault.coil}`;
  if ('brush' in fault) return `brush:${fault.brush}`;
  if ('holder' in fault) return fault.holder;
  if ('lead' in fault) return fault.lead;
  return fault.kind === 'blownLamp' ? 'lamp' : 'ammeter';
}

/** A fault of a kind at a place, plain to be seen: the severities can be changed from there. */
export function newOtherFault(kind: OtherKind, spot: OtherSpot): OtherFault {
  const nth = Number(spot.slice(spot.indexOf(':') + 1));
  const holder = spot as Holder;
  const insulated = spot as 'plate:insulated1' | 'plate:insulated2';
  const lead = spot as PanelLead;
  switch (kind) {
    case 'openCoil':
      return { kind, coil: nth };
    case 'shortedTurns':
      return { kind, coil: nth, share: 0.4, ohm: 1e-5 };
    case 'groundedCoil':
      return { kind, coil: nth, fraction: 0.5, ohm: 2 };
    case 'weakInsulation':
      return { kind, coil: nth, ohm: 200e3, breakdownV: null };
    case 'brushJoint':
      return { kind, brush: nth as 1 | 2, ohm: 'open' };
    case 'dirt':
      return { kind, holder: insulated, ohm: 300 };
    case 'insulatorDown':
      return { kind, holder: insulated, ohm: 100, breakdownV: null };
    case 'looseRivet':
      return { kind, holder, makes: 'pressed', ohm: spot.startsWith('plate:insulated') ? 1 : 0.01 };
    case 'brokenPigtail':
      return { kind, holder };
    case 'blownLamp':
      return { kind };
    case 'ammeterZero':
      return { kind, offset: 0.05 };
    case 'brokenLead':
    case 'crackedHandle':
      return { kind, lead };
  }
}

/** Range of a resistance that can be chosen here, ohm. */
export const OTHER_OHMS: Readonly<Partial<Record<OtherKind, readonly [least: number, most: number]>>> = {
  shortedTurns: [1e-6, 1e-2],
  groundedCoil: [0.1, 5000],
  weakInsulation: [1e4, 1e8],
  brushJoint: [1e-4, 10],
  dirt: [10, 1e7],
  insulatorDown: [1, 1e6],
  looseRivet: [1e-3, 1000],
};

/** Gauged lengths that a job can set, in the order of `brushLengthsMm`: field brushes, then earthed holders. */
export const WORN_BRUSHES: readonly BrushIndex[] = [0, 1, 2, 3];
