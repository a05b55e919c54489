import type { MatPart } from '../bench/action.ts';
import { barAngleDeg } from '../bench/geometry.ts';
import type { Observation } from '../bench/observation.ts';
import { barOf, type Place } from '../bench/places.ts';
import { onArmature } from '../bench/state.ts';
import type { ArmatureView } from '../scenario/public/job.ts';
import { BENCH_LEADS, type BenchLead, type BenchSet, otherOf, setOf } from './benchLeads.ts';
import { type Layout, middle, type Rect } from './layout.ts';
import { frameContacts, frameGeometry, plateContacts, plateGeometry } from './partShape.ts';
import { onEnd, onSide, type Point, type SideGeometry, TILT_DEG } from './project.ts';
import { roundOf, type Shape } from './shapes.ts';

/** Build of a lead, px at full size: bare metal, guard and handle, from tip to tail. */
export interface LeadBuild {
  readonly bare: number;
  readonly neck: number;
  readonly handle: number;
  readonly width: number;
  readonly guard: number;
}

/** Short plain needles for the ammeter; guarded heavy handles with a few millimetres of bare tip for the lamp. */
export const LEAD_BUILD: Readonly<Record<BenchSet, LeadBuild>> = {
  ammeter: { bare: 30, neck: 6, handle: 84, width: 14, guard: 0 },
  lamp: { bare: 9, neck: 22, handle: 92, width: 25, guard: 21 },
};

export const TIP_R = 12;

/** Room under a holstered tip for the name of the set, px. */
const HOLSTER_FOOT = 24;

export interface LeadPose {
  readonly tip: Point;
  /** Direction from the tip to the tail, rad, clockwise from the right. */
  readonly angle: number;
  readonly scale: number;
  readonly behind: boolean;
}

/** Where the learner's own hand has left things that the observation does not place: a lead hovering, a tool carried. */
export interface Carried {
  readonly leads: Partial<Record<BenchLead, Point>>;
}

export interface Situation {
  readonly layout: Layout;
  readonly part: ArmatureView;
  readonly seen: Observation;
  readonly rotationDeg: number;
  readonly carried: Carried;
}

/** The part that lies on the board, or null; of two the one taken up on top. */
export function forwardPart(s: Situation): MatPart | null {
  const { mat } = s.seen;
  if (mat.brushPlate === 'forward' && s.layout.partStands.brushPlate) return 'brushPlate';
  return mat.fieldFrame === 'forward' && s.layout.partStands.fieldFrame ? 'fieldFrame' : null;
}

/** The middle of what is worked on: the part on the board, else the commutator. */
export function workPoint(s: Situation): Point {
  const { layout } = s;
  if (forwardPart(s) !== null) return middle(layout.board);
  const g = layout.side;
  return g ? { x: (g.x.riserLeft + g.x.commRight) / 2, y: g.axisY } : layout.end;
}

/** Contacts of the part that lies on the board. */
export function boardContacts(s: Situation): readonly { readonly place: Place; readonly shape: Shape }[] {
  const forward = forwardPart(s);
  if (forward === null) return [];
  const { board } = s.layout;
  const contacts: Readonly<Record<string, Shape>> =
    forward === 'fieldFrame'
      ? frameContacts(frameGeometry(board, s.seen.brushesApart))
      : plateContacts(plateGeometry(board));
  return Object.entries(contacts).map(([place, shape]) => ({ place: place as Place, shape }));
}

export function holsterOf(layout: Layout, lead: BenchLead): Rect {
  return layout.panel.holsters[BENCH_LEADS.indexOf(lead)]!;
}

/**
 * Where the cable of a lead in use comes out. On a phone the panel stands between the holsters and the part: there the
 * cable runs behind it and comes out at its upper edge, so that nothing hangs across switch and instruments; a lead that
 * is in the hand over the panel itself comes from its own holster.
 * @param tail of the lead, where it is known
 */
export function cableEnd(s: Situation, lead: BenchLead, tail?: Point): Point {
  const { layout } = s;
  const overPanel = tail !== undefined && tail.y > layout.panel.frame.y;
  if (layout.mode !== 'narrow' || overPanel || s.seen.leads[lead].at === 'holster')
    return socketOf(layout, lead);
  return grommets(layout)[BENCH_LEADS.indexOf(lead)] ?? socketOf(layout, lead);
}

/** Holes in the upper edge of a phone's panel, one for each lead, at the near end: there the leads come from. */
export function grommets({ panel, endBox }: Layout): Point[] {
  return BENCH_LEADS.map((_, i) => ({ x: endBox.x + 9 + i * 12, y: panel.frame.y + 3 }));
}

/** A part brought forward lies over what is on the armature; on a phone it covers it whole. */
export function isCovered(s: Situation, lead: BenchLead): boolean {
  return forwardPart(s) !== null && onArmature(s.seen.leads[lead].touches);
}

/** Leads that can be seen and taken hold of. */
export function leadsInSight(s: Situation): readonly BenchLead[] {
  return s.layout.mode === 'narrow' ? BENCH_LEADS.filter((lead) => !isCovered(s, lead)) : BENCH_LEADS;
}

/** Socket in the upper edge of the panel where a lead's cable comes out. */
export function socketOf(layout: Layout, lead: BenchLead): Point {
  const h = holsterOf(layout, lead);
  return { x: h.x + h.w * 0.84, y: layout.mode === 'narrow' ? h.y - 1 : layout.panel.frame.y + 5 };
}

export function leadScale(layout: Layout, lead: BenchLead): number {
  const room = holsterOf(layout, lead).h - HOLSTER_FOOT - (layout.mode === 'narrow' ? 34 : 4);
  const most = layout.mode === 'narrow' ? 0.6 : 1.08;
  return Math.min(most, room / leadLength(lead));
}

export function holsteredPose(layout: Layout, lead: BenchLead): LeadPose {
  const h = holsterOf(layout, lead);
  return {
    tip: { x: h.x + h.w * 0.46, y: h.y + h.h - HOLSTER_FOOT },
    angle: -Math.PI / 2,
    scale: leadScale(layout, lead),
    behind: false,
  };
}

const spread = (lead: BenchLead) => (lead.endsWith('1') ? -1 : 1);

/** Station of a place on the round of the commutator, degrees, or null where it has none. */
export function stationOf(s: Situation, lead: BenchLead): number | null {
  const view = s.seen.leads[lead];
  const bar = view.touches === null ? null : barOf(view.touches);
  if (bar === null) return null;
  if (view.at === 'stand' && view.stationDeg !== null) return view.stationDeg;
  return barAngleDeg(s.part, bar, s.rotationDeg);
}

/** Where on the main view the tip of a lead rests when it touches a place. */
function sideTip(
  s: Situation,
  lead: BenchLead,
  place: Place,
): (Point & { t: number; facing: number }) | null {
  const g = s.layout.side;
  if (!g) return null;
  const station = stationOf(s, lead);
  if (station !== null) {
    const along = g.x.commLeft + (g.x.commRight - g.x.commLeft) * (lead.endsWith('1') ? 0.42 : 0.66);
    const p = onSide(g.axisY, along, g.r.comm, station);
    return { ...p, t: Math.cos(((station + TILT_DEG) * Math.PI) / 180) };
  }
  if (place === 'core') {
    const p = onSide(
      g.axisY,
      g.x.coreLeft + (g.x.coreRight - g.x.coreLeft) * (lead.endsWith('1') ? 0.55 : 0.8),
      g.r.core,
      -142,
    );
    return { ...p, t: -0.9 };
  }
  if (place === 'shaft') {
    const p = onSide(g.axisY, g.x.commRight + (g.x.shaftRight - g.x.commRight) * 0.7, g.r.shaft, -130);
    // Up or down in the gap before the end view, which it would cover otherwise.
    return { ...p, t: 2.4 * spread(lead) };
  }
  return null;
}

/** Where on the end view the tip of a lead rests, with the direction outwards. */
export function endTip(s: Situation, lead: BenchLead): { tip: Point; angle: number } | null {
  const g = s.layout.end;
  const { touches } = s.seen.leads[lead];
  if (touches === null) return null;
  const station = stationOf(s, lead);
  const outward = (deg: number) =>
    Math.atan2(Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180));
  if (station !== null) {
    return { tip: onEnd(g, g.comm * 0.9, station), angle: outward(station) + spread(lead) * 0.1 };
  }
  const bearing = spread(lead) < 0 ? -128 : -152;
  if (touches === 'core') return { tip: onEnd(g, g.core * 0.97, bearing), angle: outward(bearing) };
  if (touches === 'shaft') return { tip: onEnd(g, g.shaft * 0.5, bearing), angle: outward(bearing + 14) };
  return null;
}

/** Where the main view's armature lies and how large: in the cradle, or small on the mat. */
export interface ArmatureLie extends Point {
  readonly scale: number;
  /** What is scaled about: the middle of the armature as the cradle has it. */
  readonly centre: Point;
}

export function armatureLie({ mat }: Layout, g: SideGeometry, inCradle: boolean): ArmatureLie {
  const centre = { x: (g.x.shaftLeft + g.x.shaftRight) / 2, y: g.axisY };
  if (inCradle) return { ...centre, scale: 1, centre };
  const scale = Math.min((mat.w - 26) / (g.x.shaftRight - g.x.shaftLeft), (mat.h - 26) / (2 * g.r.core));
  return { ...middle(mat), scale, centre };
}

function restingInHand(s: Situation, lead: BenchLead): LeadPose {
  const scale = leadScale(s.layout, lead);
  const kept = s.carried.leads[lead];
  const lamp = setOf(lead) === 'lamp' ? 1 : 0;
  const g = s.layout.side;
  const fallback = g
    ? {
        x: g.x.commLeft + g.r.core * (lead.endsWith('1') ? 0.25 : 0.78) + lamp * 12,
        y: g.axisY + g.r.core * (lead.endsWith('1') ? 1.16 : 0.98) + lamp * 10,
      }
    : {
        // Between the jaws' names, clear of stand and tools.
        x: s.layout.end.x + spread(lead) * (16 + lamp * 10),
        y: s.layout.end.y + s.layout.end.core * 1.32,
      };
  const angle = g ? 0.55 + spread(lead) * 0.16 : Math.PI / 2 - spread(lead) * 0.25;
  return { tip: kept ?? fallback, angle, scale, behind: false };
}

/** A lead on a contact of the part that lies forward comes in from below, and from where its cable comes out. */
function onBoard(s: Situation, lead: BenchLead, place: Place): LeadPose | null {
  const contact = boardContacts(s).find((each) => each.place === place);
  if (!contact) return null;
  const { x, y } = roundOf(contact.shape);
  const scale = leadScale(s.layout, lead);
  const fromRight = 1.08 - spread(lead) * 0.1;
  // No handle reaches out of the picture.
  const room = (s.layout.width - 16 - x) / (leadLength(lead) * scale);
  return {
    tip: { x: x + spread(lead) * 3, y },
    angle: s.layout.side ? Math.max(fromRight, Math.acos(Math.min(1, room))) : 2.28 - spread(lead) * 0.2,
    scale,
    behind: false,
  };
}

function touchingPose(s: Situation, lead: BenchLead, place: Place): LeadPose | null {
  const scale = leadScale(s.layout, lead);
  if (place === `tip:${otherOf(lead)}`) {
    const other = leadPose(s, otherOf(lead), true);
    return { tip: other.tip, angle: other.angle + Math.PI * 0.62, scale, behind: false };
  }
  const board = onBoard(s, lead, place);
  if (board) return board;
  if (!s.layout.side) {
    const end = endTip(s, lead);
    return end && { ...end, scale: scale * 0.92, behind: false };
  }
  const p = sideTip(s, lead, place);
  if (!p) return null;
  return {
    tip: { x: p.x, y: p.y },
    angle: Math.atan2(p.t * 0.95 + spread(lead) * 0.14, 0.8),
    scale,
    behind: p.facing < 0,
  };
}

/** How a lead lies: in its holster, in a hand, on metal or in the stand. */
export function leadPose(s: Situation, lead: BenchLead, alone = false): LeadPose {
  const view = s.seen.leads[lead];
  if (view.at === 'holster') return holsteredPose(s.layout, lead);
  const touching = view.touches !== null && !(alone && view.touches.startsWith('tip:'));
  const posed = touching ? touchingPose(s, lead, view.touches!) : null;
  return posed ?? restingInHand(s, lead);
}

/** Point of a posed lead at a distance from its tip, px at full size. */
export function alongLead(pose: LeadPose, distance: number): Point {
  return {
    x: pose.tip.x + Math.cos(pose.angle) * distance * pose.scale,
    y: pose.tip.y + Math.sin(pose.angle) * distance * pose.scale,
  };
}

export function leadTail(pose: LeadPose, lead: BenchLead): Point {
  return alongLead(pose, leadLength(lead));
}

/** From tip to tail, px at full size. */
function leadLength(lead: BenchLead): number {
  const { bare, neck, handle } = LEAD_BUILD[setOf(lead)];
  return bare + neck + handle;
}
