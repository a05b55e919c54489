import type { BenchLead } from './benchLeads.ts';
import type { Layout } from './layout.ts';
import { cableEnd, type LeadPose, leadTail, type Situation } from './pose.ts';
import type { Point } from './project.ts';

export const CABLE_POINTS = 28;

/** How the cable of a posed lead lies. */
export function cableOf(s: Situation, lead: BenchLead, pose: LeadPose): Point[] {
  const tail = leadTail(pose, lead);
  const socket = cableEnd(s, lead);
  const out = s.layout.mode === 'narrow' && s.seen.leads[lead].at !== 'holster';
  return out && tail.y < socket.y - 70
    ? roundTheOutside(s.layout, tail, pose.angle, socket)
    : hang(tail, pose.angle, socket, pose.scale);
}

/** On a phone a cable goes down the edge of the picture nearer to its handle, so that no bar lies under it. */
function roundTheOutside({ endBox, end }: Layout, tail: Point, angle: number, socket: Point): Point[] {
  const nth = (socket.x - endBox.x) / 4;
  const edge = tail.x < end.x ? endBox.x + 4 + nth : endBox.x + endBox.w - 2 - nth;
  const turn = { x: edge, y: Math.min(tail.y + 66, socket.y - 40) };
  const leaving = { x: tail.x + Math.cos(angle) * 24, y: tail.y + Math.sin(angle) * 24 };
  const down = { x: edge, y: (turn.y + socket.y) / 2 + 14 };
  const half = CABLE_POINTS / 2;
  return Array.from({ length: CABLE_POINTS }, (_, i) =>
    i < half
      ? bezier(tail, leaving, { x: edge, y: turn.y - 42 }, turn, i / half)
      : bezier(turn, down, { x: socket.x, y: socket.y - 24 }, socket, (i - half) / (half - 1)),
  );
}

/** A cable leaves the handle in its direction, sags to the bench and rises over its edge to the socket. */
function hang(tail: Point, angle: number, socket: Point, scale: number): Point[] {
  const reach = Math.hypot(socket.x - tail.x, socket.y - tail.y);
  const holstered = tail.y > socket.y - 5;
  const pull = Math.min(110, 24 + reach * 0.3);
  const sag = holstered ? 0 : Math.min(150, reach * 0.42);
  const c1 = { x: tail.x + Math.cos(angle) * pull, y: tail.y + Math.sin(angle) * pull + sag * 0.7 };
  const c2 = {
    x: socket.x + Math.sign(tail.x - socket.x) * Math.min(60, reach * 0.16),
    y: socket.y - (holstered ? 64 * scale * scale : 35 + reach * 0.05),
  };
  return Array.from({ length: CABLE_POINTS }, (_, i) => bezier(tail, c1, c2, socket, i / (CABLE_POINTS - 1)));
}

function bezier(p0: Point, p1: Point, p2: Point, p3: Point, t: number): Point {
  const m = 1 - t;
  const [a, b, c, d] = [m * m * m, 3 * m * m * t, 3 * m * t * t, t * t * t];
  return { x: a * p0.x + b * p1.x + c * p2.x + d * p3.x, y: a * p0.y + b * p1.y + c * p2.y + d * p3.y };
}
