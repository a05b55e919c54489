import type { ArmatureView } from '../../scenario/public/job.ts';
import { ENAMEL, MICA, SOLDER } from '../materials.ts';
import { disc, grain, linear, type Pen, polygon, radial } from '../pen.ts';
import type { EndGeometry } from '../project.ts';

const RAD = Math.PI / 180;

/** Points of a ring sector whose middle stands at `deg` from the bottom, counter-clockwise positive. */
function sector(inner: number, outer: number, deg: number, spanDeg: number): [number, number][] {
  const points: [number, number][] = [];
  const steps = 4;
  const at = (r: number, d: number): [number, number] => [r * Math.sin(d * RAD), r * Math.cos(d * RAD)];
  for (let i = 0; i <= steps; i++) points.push(at(outer, deg - spanDeg / 2 + (spanDeg * i) / steps));
  for (let i = steps; i >= 0; i--) points.push(at(inner, deg - spanDeg / 2 + (spanDeg * i) / steps));
  return points;
}

/** The core seen along the shaft, about the pen's origin: a lamination with its slots and what lies in them. */
export function paintCoreDisc(pen: Pen, part: ArmatureView, g: EndGeometry): void {
  const R = g.core;
  disc(
    pen,
    0,
    0,
    R,
    radial(pen, 0, 0, R * 0.5, R, [
      [0, '#6f7c81'],
      [0.8, '#8d9a9e'],
      [1, '#a9b4b6'],
    ]),
  );
  for (let i = 0; i < 26; i++) {
    pen.strokeStyle = `rgba(20,30,34,${0.05 + 0.06 * grain(i)})`;
    pen.lineWidth = 0.7;
    pen.beginPath();
    pen.arc(0, 0, R * (0.6 + 0.4 * grain(i + 50)), 0, Math.PI * 2);
    pen.stroke();
  }
  for (let s = 0; s < part.slots; s++) paintSlotEnd(pen, part, g, (360 * s) / part.slots);
}

function paintSlotEnd(pen: Pen, part: ArmatureView, g: EndGeometry, deg: number): void {
  const R = g.core;
  const pitch = 360 / part.slots;
  const mouth = Math.max(3.2, (part.slotMouth / (2 * Math.PI * part.outerRadius)) * 360 * 1.1);
  pen.fillStyle = '#0c1113';
  polygon(pen, sector(R * 0.93, R * 1.01, deg, mouth));
  pen.fill();
  polygon(pen, sector(R * 0.7, R * 0.955, deg, pitch * 0.5));
  pen.fill();
  for (let layer = 0; layer < 2; layer++) {
    const outer = R * (0.945 - layer * 0.115);
    pen.fillStyle = layer === 0 ? '#d98a4d' : ENAMEL.mid;
    for (let c = 0; c < part.coilsPerSlot; c++) {
      const w = (pitch * 0.42) / part.coilsPerSlot;
      const at = deg + (c - (part.coilsPerSlot - 1) / 2) * w;
      polygon(pen, sector(outer - R * 0.1, outer, at, w * 0.86));
      pen.fill();
    }
  }
  pen.fillStyle = '#9a7446';
  polygon(pen, sector(R * 0.948, R * 0.966, deg, mouth * 1.3));
  pen.fill();
}

/** End winding, risers, bars and mica seen along the shaft. */
export function paintCommutatorDisc(pen: Pen, part: ArmatureView, g: EndGeometry): void {
  paintEndCoils(pen, part, g);
  const pitch = 360 / part.bars;
  disc(pen, 0, 0, g.riser, MICA);
  for (let b = 0; b < part.bars; b++) paintRiserEnd(pen, g, part.barZeroDeg + pitch * b, pitch);
  disc(pen, 0, 0, g.comm + 1.5, '#1a0f09');
  for (let b = 0; b < part.bars; b++) paintBarEnd(pen, g, part.barZeroDeg + pitch * b, pitch, grain(b + 31));
  paintRings(pen, g);
}

/** Two layers of coil ends between core and risers: the lower leans one way in shadow, the upper the other. */
function paintEndCoils(pen: Pen, part: ArmatureView, g: EndGeometry): void {
  disc(pen, 0, 0, g.core * 0.9, 'rgba(16,8,5,.96)');
  const count = part.slots * part.coilsPerSlot * (part.coilsPerSlot > 1 ? 2 : 1);
  const lean = 132 / part.poles;
  coilLayer(pen, g, count, -lean, 0.4);
  coilLayer(pen, g, count, lean, 1);
  pen.lineWidth = 2.5;
  pen.strokeStyle = 'rgba(10,5,3,.7)';
  pen.beginPath();
  pen.arc(0, 0, g.core * 0.895, 0, Math.PI * 2);
  pen.stroke();
}

function coilLayer(pen: Pen, g: EndGeometry, count: number, lean: number, light: number): void {
  const width = ((2 * Math.PI * g.riser) / count) * 0.74;
  const at = (r: number, deg: number): [number, number] => [r * Math.sin(deg * RAD), r * Math.cos(deg * RAD)];
  pen.lineCap = 'butt';
  for (let i = 0; i < count; i++) {
    const a = (360 * (i + 0.5)) / count;
    for (const [w, colour] of [
      [width, '#210d06'],
      [width * 0.74, light === 1 ? ENAMEL.mid : '#552a14'],
      [width * 0.22, light === 1 ? ENAMEL.light : '#7d4422'],
    ] as const) {
      pen.strokeStyle = colour;
      pen.lineWidth = w;
      pen.beginPath();
      pen.moveTo(...at(g.core * 0.9, a));
      pen.bezierCurveTo(
        ...at(g.core * 0.86, a + lean * 0.15),
        ...at(g.riser * 1.03, a + lean * 0.6),
        ...at(g.riser * 0.97, a + lean),
      );
      pen.stroke();
    }
  }
}

function paintRiserEnd(pen: Pen, g: EndGeometry, deg: number, pitch: number): void {
  pen.fillStyle = '#a65c2a';
  polygon(pen, sector(g.comm, g.riser, deg, pitch * 0.84));
  pen.fill();
  pen.fillStyle = SOLDER.dark;
  polygon(pen, sector(g.comm + (g.riser - g.comm) * 0.35, g.riser, deg, pitch * 0.34));
  pen.fill();
  pen.fillStyle = '#b7c0c2';
  polygon(pen, sector(g.comm + (g.riser - g.comm) * 0.5, g.riser * 0.99, deg, pitch * 0.18));
  pen.fill();
}

function paintBarEnd(pen: Pen, g: EndGeometry, deg: number, pitch: number, tone: number): void {
  const gap = Math.min(pitch * 0.22, (2.2 / g.comm) * (180 / Math.PI));
  const points = sector(g.commInner, g.comm, deg, pitch - gap);
  pen.fillStyle = radial(pen, 0, 0, g.commInner, g.comm, [
    [0, '#8d4a22'],
    [0.55, tone > 0.5 ? '#c67a40' : '#bd7038'],
    [0.9, '#dd9a5f'],
    [1, '#f3c491'],
  ]);
  polygon(pen, points);
  pen.fill();
  pen.strokeStyle = 'rgba(255,226,188,.35)';
  pen.lineWidth = 0.8;
  pen.stroke();
}

/** The commutator's own face as it shows in the main view, about the pen's origin. */
export function paintBarFace(pen: Pen, part: ArmatureView, comm: number, shaft: number): void {
  const g = { x: 0, y: 0, core: comm, riser: comm, comm, commInner: comm * 0.6, shaft, pxPerM: 1 };
  const pitch = 360 / part.bars;
  disc(pen, 0, 0, comm, MICA);
  for (let b = 0; b < part.bars; b++) paintBarEnd(pen, g, part.barZeroDeg + pitch * b, pitch, grain(b + 31));
  paintRings(pen, g);
}

/** The step from the risers down to the bars. */
export function paintRiserFace(pen: Pen, part: ArmatureView, riser: number): void {
  const g = { x: 0, y: 0, core: riser, riser, comm: riser * 0.8, commInner: 0, shaft: 0, pxPerM: 1 };
  const pitch = 360 / part.bars;
  disc(pen, 0, 0, riser, MICA);
  for (let b = 0; b < part.bars; b++) paintRiserEnd(pen, g, part.barZeroDeg + pitch * b, pitch);
}

/** The insulated clamp ring that holds the bars, its nut and the shaft's end with its centre. */
function paintRings(pen: Pen, g: EndGeometry): void {
  disc(pen, 0, 0, g.commInner * 1.06, '#140c08');
  disc(
    pen,
    0,
    0,
    g.commInner * 0.99,
    radial(pen, 0, 0, g.shaft, g.commInner, [
      [0, '#59341c'],
      [0.6, '#7c4c2a'],
      [1, '#4a2a16'],
    ]),
  );
  disc(pen, 0, 0, g.commInner * 0.8, '#2a3338');
  disc(pen, 0, 0, g.commInner * 0.77, '#5d6a70');
  for (let i = 0; i < 6; i++) {
    const a = i * 60 * RAD;
    disc(
      pen,
      Math.sin(a) * g.commInner * 0.68,
      Math.cos(a) * g.commInner * 0.68,
      g.commInner * 0.045,
      '#20282c',
    );
  }
}

export function paintShaftEnd(pen: Pen, g: EndGeometry): void {
  const r = g.shaft * 1.02;
  disc(pen, 0, 0, r + 1.2, '#12181b');
  disc(
    pen,
    0,
    0,
    r,
    linear(pen, -r, -r, r, r, [
      [0, '#f0f5f5'],
      [0.35, '#b4bfc2'],
      [0.7, '#808d92'],
      [1, '#aab5b8'],
    ]),
  );
  pen.strokeStyle = 'rgba(30,40,44,.35)';
  pen.lineWidth = 0.7;
  for (const f of [0.82, 0.62, 0.45]) {
    pen.beginPath();
    pen.arc(0, 0, r * f, 0, Math.PI * 2);
    pen.stroke();
  }
  disc(pen, 0, 0, r * 0.24, '#2a3236');
  disc(pen, 0, 0, r * 0.13, '#0c1012');
}
