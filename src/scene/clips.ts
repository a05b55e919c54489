import { barAngleDeg, wrapDeg } from '../bench/geometry.ts';
import { barOf, type Place } from '../bench/places.ts';
import { onArmature } from '../bench/state.ts';
import type { Layout } from './layout.ts';
import { armatureLie, boardContacts, forwardPart, type Situation } from './pose.ts';
import { endAngleAt, onEnd, onSide, type Point, type SideGeometry } from './project.ts';
import { roundOf } from './shapes.ts';

/** Which cable of an instrument: its two leads, then the two of a feed. */
export type Cord = 0 | 1 | 2 | 3;

/** Where a clip's jaws close in the picture, and whether the part itself hides them. */
export interface ClipPoint extends Point {
  readonly behind: boolean;
}

/** How a cable lies from its instrument to its clip, px of the host: before the armature, and behind it. */
export interface CordRun {
  readonly front: readonly Point[];
  readonly behind: readonly Point[];
}

/** Each cord has its own place along a bar, so that two clips on one bar, or on neighbours, stay two. */
const ALONG_BAR: readonly [number, number, number, number] = [0.52, 0.68, 0.18, 0.34];
/** A bar that faces the eye less than this has its clip round the edge of the commutator. */
const FACING_MIN = 0.25;
/** How far jaws stand off the metal they hold, px. */
const STAND_OFF = 6;

/** Where a clip sits, or null where that is out of sight. */
export function clipPoint(s: Situation, place: Place, cord: Cord = 0): ClipPoint | null {
  const contact = boardContacts(s).find((each) => each.place === place);
  if (contact) {
    // A clip of the feed and one of the meter may share a contact: neither hides the other.
    const aside = cord > 1 ? -5 : 5;
    const { x, y } = roundOf(contact.shape);
    return { x: x + aside, y: y + aside, behind: false };
  }
  if (!onArmature(place)) return null;
  const { side } = s.layout;
  if (side) return isUnderBoard(s) ? null : inMainView(s, side, place, cord);
  return forwardPart(s) === null ? { ...inEndView(s, place, cord), behind: false } : null;
}

/** A part brought forward covers the mat and what lies there. */
function isUnderBoard(s: Situation): boolean {
  return forwardPart(s) !== null && s.seen.cradle !== 'armature';
}

function inMainView(s: Situation, g: SideGeometry, place: Place, cord: Cord): ClipPoint {
  const { facing, ...at } = onMetal(s, g, place, cord);
  const lie = armatureLie(s.layout, g, s.seen.cradle === 'armature');
  return {
    x: lie.x + (at.x - lie.centre.x) * lie.scale,
    y: lie.y + (at.y - lie.centre.y) * lie.scale,
    behind: facing < FACING_MIN,
  };
}

function onMetal(s: Situation, g: SideGeometry, place: Place, cord: Cord): Point & { facing: number } {
  const { x, r, axisY } = g;
  const aside = cord > 1 ? -9 : 0;
  const bar = barOf(place);
  if (bar !== null) {
    const along = x.commLeft + (x.commRight - x.commLeft) * ALONG_BAR[cord];
    return onSide(axisY, along, r.comm + STAND_OFF, barAngleDeg(s.part, bar, s.rotationDeg));
  }
  if (place === 'shaft')
    return { x: x.commRight + (x.shaftRight - x.commRight) * 0.6 + aside, y: axisY, facing: 1 };
  return {
    x: x.coreRight - (x.coreRight - x.coreLeft) * 0.2 + aside,
    y: axisY + r.core * 0.3,
    facing: 1,
  };
}

/** Bearing of a clip on the end view, degrees from the bottom. */
function bearingOf(s: Situation, place: Place, cord: Cord): number {
  const bar = barOf(place);
  const deg = bar === null ? 128 : barAngleDeg(s.part, bar, s.rotationDeg);
  return deg + (cord > 1 ? -2.5 : 2.5);
}

/** Where a clip sits as the commutator end shows it. */
export function inEndView(s: Situation, place: Place, cord: Cord): Point & { bearingDeg: number } {
  const g = s.layout.end;
  const bearingDeg = bearingOf(s, place, cord);
  const radius =
    barOf(place) !== null
      ? g.comm * (cord > 1 ? 0.78 : 0.88)
      : place === 'core'
        ? g.core * 0.95
        : g.shaft * 0.6;
  return { ...onEnd(g, radius, bearingDeg), bearingDeg };
}

/** How the cable of a clip lies, or null where the clip is out of sight. */
export function cordRun(s: Situation, from: Point, place: Place, cord: Cord): CordRun | null {
  const to = clipPoint(s, place, cord);
  if (to === null) return null;
  const { side } = s.layout;
  if (!onArmature(place)) return { front: toBoard(s.layout, from, to), behind: [] };
  if (!side) return { front: roundTheCore(s, from, place, cord), behind: [] };
  const inCradle = s.seen.cradle === 'armature';
  const lie = armatureLie(s.layout, side, inCradle);
  // Down past the commutator, and from there up to the bar: before it, or behind.
  const under = { x: to.x, y: lie.y + side.r.comm * lie.scale + 9 };
  const end = to.behind ? under : to;
  const front = inCradle ? alongGrowler(from, end) : acrossBench(s.layout, from, end);
  return { front, behind: to.behind ? [under, to] : [] };
}

function toBoard({ mode }: Layout, from: Point, to: Point): Point[] {
  const over = mode === 'narrow' ? (from.y + to.y) / 2 + 16 : Math.min(from.y, to.y) - 18;
  const sag = { x: (from.x + to.x) / 2, y: over };
  return curve(from, sag, sag, to);
}

/** To the armature in the cradle along the growler and up, so that it hides neither core nor bars. */
function alongGrowler(from: Point, to: Point): Point[] {
  const foot = { x: to.x, y: Math.max(from.y, to.y + 12) };
  return curve(from, foot, foot, to);
}

/** To the armature on the mat low over the bench, and up from below: its leads cross no metal but what they hold. */
function acrossBench({ mat }: Layout, from: Point, to: Point): Point[] {
  const foot = mat.y + mat.h - 4;
  return curve(from, { x: (from.x + to.x) / 2, y: foot - 26 }, { x: to.x - 4, y: foot + 6 }, to);
}

/** On the end view a cable goes round on the winding, clear of all bars, and comes in to its own from outside. */
function roundTheCore(s: Situation, from: Point, place: Place, cord: Cord): Point[] {
  const g = s.layout.end;
  const goal = inEndView(s, place, cord);
  const start = endAngleAt(g, from.x, from.y);
  const turn = wrapDeg(goal.bearingDeg - start);
  const [far, near] = [from, goal].map((p) => Math.hypot(p.x - g.x, p.y - g.y)) as [number, number];
  const outside = g.core * (0.93 + 0.03 * cord);
  const steps = 32;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const t = i / steps;
    const off = far + (outside - far) * ease(t / 0.4);
    return onEnd(g, off + (near - outside) * ease((t - 0.7) / 0.3), start + turn * ease((t - 0.12) / 0.68));
  });
}

function ease(t: number): number {
  const c = Math.min(1, Math.max(0, t));
  return c * c * (3 - 2 * c);
}

function curve(p0: Point, p1: Point, p2: Point, p3: Point): Point[] {
  const steps = 24;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const t = i / steps;
    const m = 1 - t;
    const [a, b, c, d] = [m * m * m, 3 * m * m * t, 3 * m * t * t, t * t * t];
    return { x: a * p0.x + b * p1.x + c * p2.x + d * p3.x, y: a * p0.y + b * p1.y + c * p2.y + d * p3.y };
  });
}
