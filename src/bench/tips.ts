import { barAngleDeg, barAt, type CommutatorGeometry } from './geometry.ts';
import type { BenchEvent } from './happening.ts';
import type { Kit } from './kit.ts';
import type { LeadView } from './observation.ts';
import {
  ALL_LEADS,
  barOf,
  barPlace,
  isClip,
  type LeadId,
  leadSet,
  type Place,
  partOf,
  type TipPlace,
} from './places.ts';
import { onArmature, onPart } from './state.ts';

/**
 * Where every lead is, how it is gripped, and the metal under its tip. `stationDeg` is fixed in space, so bars can pass
 * under it.
 */
export type Tips = Readonly<Record<LeadId, LeadView>>;

const HUNG: LeadView = { at: 'holster', grip: null, touches: null, stationDeg: null, leaning: false };
/** Every lead where it hangs; those of tools the job has not got are not there. */
export function tipsHung({ tester, drop }: Pick<Kit, 'tester' | 'drop'>): Tips {
  const has = { ammeter: true, lamp: true, tester, drop };
  const hung = (lead: LeadId): LeadView => (has[leadSet(lead)] ? HUNG : { ...HUNG, at: 'absent' });
  return Object.fromEntries(ALL_LEADS.map((lead) => [lead, hung(lead)])) as Record<LeadId, LeadView>;
}

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
      return withTip(tips, event.lead, { ...HUNG, at: 'hand', grip: event.grip });
    case 'lead.touch':
      return touch(tips, event.lead, event.place, { geometry, rotationDeg });
    case 'lead.lean':
      return { ...tips, [event.lead]: { ...tips[event.lead], leaning: event.on } };
    case 'lead.lift':
      return withTip(tips, event.lead, off(tips[event.lead]));
    case 'lead.clamp':
      return { ...tips, [event.lead]: leftAt(tips[event.lead], isClip(event.lead) ? 'clip' : 'stand') };
    case 'lead.holster':
      return withTip(tips, event.lead, HUNG);
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

function leftAt(tip: LeadView, at: 'clip' | 'stand'): LeadView {
  return { ...tip, at, grip: null, leaning: false };
}

/** The same lead with its tip in the air. */
function off({ at, grip }: LeadView): LeadView {
  return { ...HUNG, at, grip };
}

function withTip(tips: Tips, lead: LeadId, tip: LeadView): Tips {
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

function lose(tips: Tips, which: (tip: LeadView) => boolean): Tips {
  return mapTips(tips, (tip) => (which(tip) ? off(tip) : tip));
}

/** The very same tips where none of them changes: rules ask after every act, and most acts move no tip. */
function mapTips(tips: Tips, change: (tip: LeadView) => LeadView): Tips {
  let changed: Record<LeadId, LeadView> | null = null;
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
