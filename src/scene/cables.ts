import { BENCH_LEADS, type BenchLead } from './benchLeads.ts';
import type { Layout } from './layout.ts';
import { cableEnd, type LeadPose, leadTail, type Situation } from './pose.ts';
import type { Point } from './project.ts';

export const CABLE_POINTS = 28;

/** How the cable of a posed lead lies. */
export function cableOf(s: Situation, lead: BenchLead, pose: LeadPose): Point[] {
  const tail = leadTail(pose, lead);
  const socket = cableEnd(s, lead, tail);
  const { mode, panel } = s.layout;
  const hanging = () => hang(tail, pose.angle, socket, pose.scale);
  if (s.seen.leads[lead].at === 'holster') return hanging();
  if (mode === 'narrow')
    return tail.y < panel.frame.y - 66 ? roundTheOutside(s.layout, tail, pose.angle, socket) : hanging();
  const share = shareOfGap(s.layout, tail, socket);
  if (share === 0) return hanging();
  const down = downTheGap(s.layout, tail, pose.angle, socket, BENCH_LEADS.indexOf(lead));
  return share === 1 ? down : between(hanging(), down, share);
}

/** Distance over which a cable in a moving hand changes from one way of lying to the other, px. */
const CHANGES_OVER = 60;

/** How much of a cable lies in the gap before the end view, 0..1: all of it where the lead is on the main view. */
function shareOfGap({ endBox, panel }: Layout, tail: Point, socket: Point): number {
  if (socket.x < endBox.x + 20) return 0;
  const left = (endBox.x + 110 - tail.x) / CHANGES_OVER;
  const above = (panel.frame.y - 40 - tail.y) / CHANGES_OVER;
  return Math.max(0, Math.min(1, left, above));
}

/** Between main and end view to the bench's edge and along it, so that no cable hangs across what is read. */
function downTheGap(
  { endBox, panel }: Layout,
  tail: Point,
  angle: number,
  socket: Point,
  nth: number,
): Point[] {
  const x = endBox.x - 2 - 4 * nth;
  const y = panel.frame.y - 3 - 1.6 * nth;
  const reach = Math.min(90, y - tail.y - 20);
  const turn = { x, y: Math.min(y - 26, tail.y + reach) };
  const out = Math.max(30, (x - tail.x) * 0.6);
  const leaving = { x: tail.x + Math.cos(angle) * out, y: tail.y + Math.sin(angle) * out };
  const corner = { x: x + 26, y };
  const last = { x: socket.x - 14, y };
  return [
    ...along(tail, leaving, { x, y: turn.y - reach * 0.5 }, turn, 10),
    ...along(turn, turn, turn, { x, y: y - 24 }, 4),
    ...along({ x, y: y - 24 }, { x, y: y - 8 }, { x: x + 8, y }, corner, 5),
    ...along(corner, corner, last, last, 3),
    ...along(last, { x: socket.x - 4, y }, { x: socket.x, y: socket.y - 5 }, socket, 5),
    socket,
  ];
}

/** The beginning of each of so many even stretches of a curve. */
function along(p0: Point, p1: Point, p2: Point, p3: Point, stretches: number): Point[] {
  return Array.from({ length: stretches }, (_, i) => bezier(p0, p1, p2, p3, i / stretches));
}

function between(a: readonly Point[], b: readonly Point[], share: number): Point[] {
  return a.map((p, i) => ({ x: p.x + (b[i]!.x - p.x) * share, y: p.y + (b[i]!.y - p.y) * share }));
}

/** On a phone a cable goes down the edge of the picture nearer to its handle, so that no bar lies under it. */
function roundTheOutside({ endBox, end }: Layout, tail: Point, angle: number, socket: Point): Point[] {
  const nth = (socket.x - endBox.x) / 3;
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
