import { RANGES_A } from '../../bench/action.ts';
import { barAngleDeg, canReach, STRIP_ARC_DEG } from '../../bench/geometry.ts';
import { barPlace, type Place } from '../../bench/places.ts';
import { BENCH_LEADS, type BenchLead, otherOf, setOf } from '../benchLeads.ts';
import { RAIL_TOOLS } from '../layout.ts';
import { selectorMark } from '../panel/selectorShape.ts';
import { alongLead, holsterOf, LEAD_BUILD, leadPose, leadTail, type Situation, TIP_R } from '../pose.ts';
import { onEnd, onSide, type Point } from '../project.ts';
import { distanceTo, roundOf, type Shape } from '../shapes.ts';

export type SpotView = 'side' | 'end' | 'panel' | 'bench';

/** Something on the canvas that can be touched, with the name the plain-words twin uses for the same thing. */
export interface Spot {
  readonly id: string;
  readonly shape: Shape;
  readonly view: SpotView;
}

/** Metal, or a surface for the lens and the chalk. */
export interface PlaceSpot extends Spot {
  readonly place: Place;
}

/** Bars nearer to the edge of the main view than this face the eye too little to be aimed at there. */
const FACING_MIN = 0.3;

function bars(s: Situation): PlaceSpot[] {
  return Array.from({ length: s.part.bars }, (_, bar) => barSpots(s, bar, 'bar')).flat();
}

/** A bar or its riser in both views, where a hand in front can get to it; on the mat it can be got to all round. */
function barSpots(s: Situation, bar: number, kind: 'bar' | 'riser'): PlaceSpot[] {
  const deg = barAngleDeg(s.part, bar, s.rotationDeg);
  if (s.seen.cradle === 'armature' && !canReach(deg)) return [];
  const place: Place = kind === 'bar' ? barPlace(bar) : `riser:${bar}`;
  const spots: PlaceSpot[] = [];
  const side = sideBar(s, deg, kind);
  if (side) spots.push({ id: place, place, view: 'side', shape: side });
  spots.push({ id: place, place, view: 'end', shape: endBar(s, deg, kind) });
  return spots;
}

function sideBar(s: Situation, deg: number, kind: 'bar' | 'riser'): Shape | null {
  const g = s.layout.side;
  if (!g || s.seen.cradle !== 'armature') return null;
  const [from, to, radius] =
    kind === 'bar' ? [g.x.commLeft, g.x.commRight, g.r.comm] : [g.x.riserLeft, g.x.commLeft, g.r.riser];
  const a = onSide(g.axisY, from + (to - from) * 0.12, radius, deg);
  if (a.facing < FACING_MIN) return null;
  const half = (Math.PI * radius * a.facing) / s.part.bars;
  return { kind: 'bar', a, b: { x: a.x + (to - from) * 0.76, y: a.y }, r: half };
}

function endBar(s: Situation, deg: number, kind: 'bar' | 'riser'): Shape {
  const g = s.layout.end;
  const [inner, outer] = kind === 'bar' ? [g.commInner, g.comm] : [g.comm, g.core * 0.86];
  return { kind: 'wedge', x: g.x, y: g.y, inner, outer, deg, halfDeg: (180 / s.part.bars) * 0.96 };
}

function shaftAndCore(s: Situation): PlaceSpot[] {
  const spots: PlaceSpot[] = [];
  const g = s.layout.side;
  if (g && s.seen.cradle === 'armature') {
    const h = g.r.shaft * 1.5;
    const shaftX = g.x.commRight + g.r.comm * 0.06;
    spots.push({
      id: 'shaft',
      place: 'shaft',
      view: 'side',
      shape: { kind: 'box', x: shaftX, y: g.axisY - h / 2, w: g.x.shaftRight - shaftX, h },
    });
    const w = g.x.coreRight - g.x.coreLeft;
    spots.push({
      id: 'core',
      place: 'core',
      view: 'side',
      shape: { kind: 'box', x: g.x.coreLeft, y: g.axisY - g.r.core * 0.96, w, h: g.r.core * 1.45 },
    });
  }
  const e = s.layout.end;
  spots.push({
    id: 'shaft',
    place: 'shaft',
    view: 'end',
    shape: { kind: 'circle', x: e.x, y: e.y, r: e.shaft },
  });
  spots.push({
    id: 'core',
    place: 'core',
    view: 'end',
    shape: {
      kind: 'wedge',
      x: e.x,
      y: e.y,
      inner: e.core * 0.88,
      outer: e.core * 1.03,
      deg: -140,
      halfDeg: 55,
    },
  });
  return spots;
}

function tipSpot(s: Situation, lead: BenchLead): PlaceSpot {
  const { tip } = leadPose(s, lead);
  const id: Place = `tip:${lead}`;
  return { id, place: id, view: 'bench', shape: { kind: 'circle', x: tip.x, y: tip.y, r: TIP_R } };
}

/** Metal the tip of a lead can be put on: tips first, for they lie over everything else. */
export function metalFor(s: Situation, lead: BenchLead): PlaceSpot[] {
  return [tipSpot(s, otherOf(lead)), ...bars(s), ...shaftAndCore(s)];
}

/** Surfaces the lens can be held to. */
export function surfacesForLens(s: Situation): PlaceSpot[] {
  const risers = Array.from({ length: s.part.bars }, (_, bar) => barSpots(s, bar, 'riser')).flat();
  return [...risers, ...bars(s), ...shaftAndCore(s)];
}

export function barsForChalk(s: Situation): PlaceSpot[] {
  return bars(s);
}

export interface LeadSpot extends Spot {
  readonly lead: BenchLead;
  readonly part: 'handle' | 'tip';
}

/** Handles and bare tips of the leads as targets: a handle is at least four times the size of its tip. */
export function leadSpots(s: Situation): LeadSpot[] {
  return BENCH_LEADS.flatMap((lead): LeadSpot[] => {
    const pose = leadPose(s, lead);
    const build = LEAD_BUILD[setOf(lead)];
    const half = Math.max(pose.scale < 0.7 ? 16 : 14, (build.width * pose.scale) / 2);
    return [
      {
        id: `lead:${lead}:handle`,
        lead,
        part: 'handle',
        view: 'bench',
        shape: {
          kind: 'bar',
          a: alongLead(pose, build.bare + build.neck + 8),
          b: leadTail(pose, lead),
          r: half,
        },
      },
      {
        id: `lead:${lead}:tip`,
        lead,
        part: 'tip',
        view: 'bench',
        shape: { kind: 'circle', ...alongLead(pose, build.bare * 0.5), r: TIP_R },
      },
    ];
  });
}

export function holsterSpots(s: Situation): Spot[] {
  return BENCH_LEADS.map((lead) => ({
    id: `holster:${lead}`,
    view: 'panel',
    shape: { kind: 'box', ...holsterOf(s.layout, lead) },
  }));
}

export function panelSpots(s: Situation): Spot[] {
  const { panel } = s.layout;
  const r = Math.max(18, Math.min(26, panel.selector.w * 0.17));
  return [
    ...(['off', 'low', 'high'] as const).map((to): Spot => {
      const p = selectorMark(panel.selector, to);
      return { id: `selector:${to}`, view: 'panel', shape: { kind: 'circle', ...p, r } };
    }),
    ...RANGES_A.map(
      (range, i): Spot => ({
        id: `range:${range}`,
        view: 'panel',
        shape: { kind: 'box', ...panel.ranges[i as 0 | 1 | 2 | 3] },
      }),
    ),
  ];
}

export function toolSpots(s: Situation): Spot[] {
  return RAIL_TOOLS.map((tool) => ({
    id: tool,
    view: 'bench',
    shape: tool === 'strip' ? stripShape(s) : { kind: 'box', ...s.layout.tools[tool] },
  }));
}

/** Height above the core, mm, at which the strip is drawn when nothing else is said. */
export const STRIP_HEIGHT_MM = 0.5;
/** px of drawn clearance per mm of height: the gap is drawn wider than life, or no one could see it. */
export const STRIP_PX_PER_MM = 5;

/** Where the strip is taken hold of. */
export function stripShape(s: Situation): Shape {
  const { strip } = s.seen;
  if (strip.at === 'rail') return { kind: 'box', ...s.layout.tools.strip };
  if (strip.at === 'hand' || strip.angleDeg === null) {
    const p = stripInHand(s);
    return { kind: 'box', x: p.x - 70, y: p.y - 16, w: 140, h: 32 };
  }
  const p = stripAtEnd(s, strip.angleDeg, strip.heightMm ?? STRIP_HEIGHT_MM);
  return { kind: 'circle', ...p, r: 18 };
}

export function stripInHand(s: Situation): Point {
  const g = s.layout.side;
  if (!g) return { x: s.layout.end.x, y: s.layout.endBox.y + 22 };
  return { x: g.x.coreLeft - g.r.core * 0.35, y: g.axisY - g.r.core * 0.98 };
}

export function stripAtEnd(s: Situation, angleDeg: number, heightMm: number): Point {
  const g = s.layout.end;
  return onEnd(g, g.core + 4 + heightMm * STRIP_PX_PER_MM, angleDeg);
}

/** Ring of the end view in which the strip can be held. */
export function stripRing(s: Situation): { inner: number; outer: number } {
  const { core } = s.layout.end;
  return { inner: core * 0.9, outer: core + Math.max(38, core * 0.34) };
}

/** A few stations of the strip, so that it can be aimed at by name. */
export function stripSpots(s: Situation): Spot[] {
  const spots: Spot[] = [];
  for (let deg: number = STRIP_ARC_DEG.from; deg <= STRIP_ARC_DEG.to; deg += 5) {
    spots.push({
      id: `strip-at:${deg}`,
      view: 'end',
      shape: { kind: 'circle', ...stripAtEnd(s, deg, STRIP_HEIGHT_MM), r: 14 },
    });
  }
  return spots;
}

/** Where the armature is taken to be turned, and where it is taken to be lifted. */
export function armatureSpots(s: Situation): Spot[] {
  const { layout } = s;
  const g = layout.side;
  const spots: Spot[] = [];
  const inCradle = s.seen.cradle === 'armature';
  if (inCradle && g) {
    const lift = liftGrip(s);
    if (lift) spots.push({ id: 'armature:lift', view: 'side', shape: lift });
    const w = g.x.commRight - g.x.windLeft;
    spots.push({
      id: 'core:turn',
      view: 'side',
      shape: { kind: 'box', x: g.x.windLeft, y: g.axisY - g.r.core, w, h: g.r.core * 1.7 },
    });
  }
  if (inCradle) {
    const e = layout.end;
    spots.push({ id: 'core:turn', view: 'end', shape: { kind: 'circle', x: e.x, y: e.y, r: e.core * 1.04 } });
  }
  spots.push({ id: 'mat', view: 'bench', shape: { kind: 'box', ...layout.mat } });
  spots.push({ id: 'cradle', view: g ? 'side' : 'end', shape: cradleShape(s) });
  spots.push({ id: 'stand', view: 'bench', shape: { kind: 'box', ...layout.stand } });
  return spots;
}

/** The drive end of the shaft, by which two hands lift the armature out. */
export function liftGrip(s: Situation): Shape | null {
  const g = s.layout.side;
  if (!g) return null;
  const h = Math.max(44, g.r.shaft * 2.4);
  const w = Math.max(44, g.x.windLeft - g.x.shaftLeft + 6);
  return { kind: 'box', x: g.x.windLeft - w, y: g.axisY - h / 2, w, h };
}

export function cradleShape(s: Situation): Shape {
  const g = s.layout.side;
  if (!g) return { kind: 'circle', x: s.layout.end.x, y: s.layout.end.y, r: s.layout.end.core };
  return {
    kind: 'box',
    x: g.x.coreLeft,
    y: g.axisY - g.r.core * 0.5,
    w: g.x.coreRight - g.x.coreLeft,
    h: g.r.core * 1.4,
  };
}

/** The spot nearest to a point within a margin, px, or null; earlier spots win ties. */
export function nearest<T extends Spot>(spots: readonly T[], p: Point, margin: number): T | null {
  let best: T | null = null;
  let least = margin;
  for (const spot of spots) {
    const d = distanceTo(spot.shape, p);
    if (d < least || (d === 0 && best === null)) {
      best = spot;
      least = d;
      if (d === 0) break;
    }
  }
  return best;
}

/** Where a place lies now, in every view that shows it. */
export function placeSpots(s: Situation, place: Place): PlaceSpot[] {
  const tips = BENCH_LEADS.map((lead) => tipSpot(s, lead));
  return [...surfacesForLens(s), ...tips].filter((spot) => spot.place === place);
}

/** Every touchable thing with a middle and the radius of the round that fits in it, CSS px of the host. */
export function allPlaces(s: Situation): { id: string; x: number; y: number; r: number; view: SpotView }[] {
  const spots: Spot[] = [
    ...leadSpots(s),
    ...bars(s),
    ...Array.from({ length: s.part.bars }, (_, bar) => barSpots(s, bar, 'riser')).flat(),
    ...shaftAndCore(s),
    ...BENCH_LEADS.map((lead) => tipSpot(s, lead)),
    ...panelSpots(s),
    ...holsterSpots(s),
    ...toolSpots(s),
    ...armatureSpots(s),
    ...stripSpots(s),
  ];
  return spots.map(({ id, shape, view }) => ({ id, view, ...roundOf(shape) }));
}

/** A point on the front of the core in the main view to steer a turn by; null in the narrow arrangement. */
export function coreFront(s: Situation): Point | null {
  const g = s.layout.side;
  if (!g) return null;
  return onSide(g.axisY, (g.x.coreLeft + g.x.coreRight) / 2, g.r.core, -108);
}
