import { barAngleDeg, canReach } from '../../bench/geometry.ts';
import { barPlace, type Place } from '../../bench/places.ts';
import { type BenchLead, otherOf, setOf } from '../benchLeads.ts';
import {
  alongLead,
  boardContacts,
  forwardPart,
  LEAD_BUILD,
  leadPose,
  leadsInSight,
  leadTail,
  type Situation,
  TIP_R,
} from '../pose.ts';
import { onSide } from '../project.ts';
import type { Shape } from '../shapes.ts';
import type { PlaceSpot, Spot } from './spot.ts';

/** Bars nearer to the edge of the main view than this face the eye too little to be aimed at there. */
const FACING_MIN = 0.3;

export function bars(s: Situation): PlaceSpot[] {
  return Array.from({ length: s.part.bars }, (_, bar) => barSpots(s, bar, 'bar')).flat();
}

/** A bar or its riser in both views, where a hand in front can get to it; on the mat it can be got to all round. */
export function barSpots(s: Situation, bar: number, kind: 'bar' | 'riser'): PlaceSpot[] {
  const deg = barAngleDeg(s.part, bar, s.rotationDeg);
  if (s.seen.cradle === 'armature' && !canReach(deg)) return [];
  const place: Place = kind === 'bar' ? barPlace(bar) : `riser:${bar}`;
  const spots: PlaceSpot[] = [];
  const side = sideBar(s, deg, kind);
  if (side) spots.push({ id: place, place, view: 'side', shape: side });
  if (forwardPart(s) === null) spots.push({ id: place, place, view: 'end', shape: endBar(s, deg, kind) });
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

export function shaftAndCore(s: Situation): PlaceSpot[] {
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
  if (forwardPart(s) !== null) return spots;
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

export function tipSpot(s: Situation, lead: BenchLead): PlaceSpot {
  const { tip } = leadPose(s, lead);
  const id: Place = `tip:${lead}`;
  return { id, place: id, view: 'bench', shape: { kind: 'circle', x: tip.x, y: tip.y, r: TIP_R } };
}

export function contacts(s: Situation): PlaceSpot[] {
  return boardContacts(s).map(({ place, shape }) => ({ id: place, place, view: 'bench', shape }));
}

/** Metal the tip of a lead can be put on: tips first, for they lie over everything else. */
export function metalFor(s: Situation, lead: BenchLead): PlaceSpot[] {
  const tips = leadsInSight(s).filter((each) => each === otherOf(lead));
  return [...tips.map((each) => tipSpot(s, each)), ...contacts(s), ...bars(s), ...shaftAndCore(s)];
}

/** Surfaces the lens can be held to. */
export function surfacesForLens(s: Situation): PlaceSpot[] {
  const risers = Array.from({ length: s.part.bars }, (_, bar) => barSpots(s, bar, 'riser')).flat();
  return [...contacts(s), ...risers, ...bars(s), ...shaftAndCore(s), ...benchSurfaces(s)];
}

/** What of the bench itself the lens can be held to: handles with their cables, the bulb. */
export function benchSurfaces(s: Situation): PlaceSpot[] {
  const handles = leadSpots(s).filter((spot) => spot.part === 'handle');
  const bulb: Shape = { kind: 'box', ...s.layout.panel.lamp };
  return [
    ...handles.map(
      ({ lead, shape }): PlaceSpot => ({
        id: `handle:${lead}`,
        place: `handle:${lead}`,
        view: 'bench',
        shape,
      }),
    ),
    { id: 'lampBulb', place: 'lampBulb', view: 'panel', shape: bulb },
  ];
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
  return leadsInSight(s).flatMap((lead): LeadSpot[] => {
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
