import type { Grip } from './action.ts';
import { barAngleDeg, barAt, type CommutatorGeometry } from './geometry.ts';
import type { BenchEvent } from './happening.ts';
import {
  ALL_LEADS,
  barOf,
  barPlace,
  type LeadId,
  leadSet,
  type Place,
  partOf,
  type TipPlace,
} from './places.ts';
import { onArmature, onPart } from './state.ts';

/** How a lead is gripped, and the metal under its tip. `stationDeg` is fixed in space, so bars can pass under it. */
export interface Tip {
  readonly grip: Grip | null;
  readonly touches: Place | null;
  readonly stationDeg: number | null;
  readonly leaning: boolean;
}
export type Tips = Readonly<Record<LeadId, Tip>>;

const FREE: Tip = { grip: null, touches: null, stationDeg: null, leaning: false };
export const TIPS_HOLSTERED = Object.fromEntries(ALL_LEADS.map((lead) => [lead, FREE])) as Record<
  LeadId,
  Tip
>;

/** What turning needs to know. */
export interface Turned {
  readonly geometry: CommutatorGeometry;
  readonly rotationDeg: number;
}

/** Rotation after turning by an angle, degrees in [0, 360), to a thousandth so that turns add up alike everywhere. */
export function turnedBy(rotationDeg: number, byDeg: number): number {
  const turned = (((rotationDeg + byDeg) % 360) + 360) % 360;
  return (Math.round(turned * 1000) / 1000) % 360;
}

/**
 * Grips and contacts after an event that goes through.
 *
 * Two tips put together touch each other; the pair parts as soon as either moves. A tip on a bar stays at its station
 * when the armature turns, whether the stand or a hand keeps it there, and meets the bar whose middle comes nearest.
 */
export function tipsAfter(tips: Tips, event: BenchEvent, { geometry, rotationDeg }: Turned): Tips {
  switch (event.type) {
    case 'lead.take':
      return withTip(tips, event.lead, { ...FREE, grip: event.grip });
    case 'lead.touch':
      return touch(tips, event.lead, event.place, { geometry, rotationDeg });
    case 'lead.lean':
      return { ...tips, [event.lead]: { ...tips[event.lead], leaning: event.on } };
    case 'lead.lift':
      return withTip(tips, event.lead, { ...FREE, grip: tips[event.lead].grip });
    case 'lead.clamp':
      return { ...tips, [event.lead]: { ...tips[event.lead], grip: null, leaning: false } };
    case 'lead.holster':
      return withTip(tips, event.lead, FREE);
    case 'armature.turn':
      return turnUnder(tips, geometry, turnedBy(rotationDeg, event.byDeg));
    case 'armature.place':
    case 'armature.lift':
      return lose(tips, (tip) => onArmature(tip.touches));
    case 'part.putBack':
      return lose(tips, (tip) => tip.touches !== null && partOf(tip.touches) === event.part);
    default:
      return tips;
  }
}

function withTip(tips: Tips, lead: LeadId, tip: Tip): Tips {
  const parted = lose(tips, (other) => other.touches === `tip:${lead}`);
  return { ...parted, [lead]: tip };
}

function touch(tips: Tips, lead: LeadId, place: Place, { geometry, rotationDeg }: Turned): Tips {
  const bar = barOf(place);
  const stationDeg = bar === null ? null : barAngleDeg(geometry, bar, rotationDeg);
  const moved = withTip(tips, lead, { ...tips[lead], touches: place, stationDeg, leaning: false });
  const other = ALL_LEADS.find((id) => place === `tip:${id}`);
  if (other === undefined || moved[other].touches !== null) return moved;
  const back: TipPlace = `tip:${lead}`;
  return { ...moved, [other]: { ...moved[other], touches: back } };
}

function turnUnder(tips: Tips, geometry: CommutatorGeometry, rotationDeg: number): Tips {
  return mapTips(tips, (tip) => {
    if (tip.stationDeg === null || tip.touches === null) return tip;
    const bar = barAt(geometry, tip.stationDeg, rotationDeg);
    const touches = tip.touches.startsWith('riser') ? (`riser:${bar}` as const) : barPlace(bar);
    return touches === tip.touches ? tip : { ...tip, touches };
  });
}

function lose(tips: Tips, which: (tip: Tip) => boolean): Tips {
  return mapTips(tips, (tip) => (which(tip) ? { ...FREE, grip: tip.grip } : tip));
}

/** The very same tips where none of them changes: rules ask after every act, and most acts move no tip. */
function mapTips(tips: Tips, change: (tip: Tip) => Tip): Tips {
  let changed: Record<LeadId, Tip> | null = null;
  for (const lead of ALL_LEADS) {
    const tip = change(tips[lead]);
    if (tip === tips[lead]) continue;
    changed ??= { ...tips };
    changed[lead] = tip;
  }
  return changed ?? tips;
}

/** Lamp tips on metal of the part: both are needed for a test. */
export function lampTipsOnPart(tips: Tips): LeadId[] {
  return ALL_LEADS.filter((lead) => {
    const { touches } = tips[lead];
    return leadSet(lead) === 'lamp' && onPart(touches);
  });
}
