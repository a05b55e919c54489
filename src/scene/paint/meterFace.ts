import type { RangeA } from '../../bench/action.ts';
import { font, INK, PAPER } from '../materials.ts';
import {
  DIVISIONS,
  figureSize,
  HALF_SWEEP as HALF,
  type PrintedScale,
  sweepAngle,
} from '../panel/meterScale.ts';
import { disc, linear, type Pen, polygon, radial, roundRect, shadowed } from '../pen.ts';

export function paintMeterFace(pen: Pen, w: number, h: number, range: RangeA, scale: PrintedScale): void {
  shadowed(pen, 12, 0, 5, 'rgba(0,0,0,.6)', () => {
    roundRect(pen, 3, 2, w - 6, h - 8, 12);
    pen.fillStyle = '#0d1518';
    pen.fill();
  });
  roundRect(pen, 3, 2, w - 6, h - 8, 12);
  pen.fillStyle = linear(pen, 0, 0, 0, h, [
    [0, '#48565b'],
    [0.1, '#242e32'],
    [1, '#10181b'],
  ]);
  pen.fill();
  pen.save();
  roundRect(pen, 11, 10, w - 22, h - 24, 6);
  pen.clip();
  pen.fillStyle = linear(pen, 0, 0, 0, h, [
    [0, '#d8cfb9'],
    [0.1, PAPER],
    [1, '#e2d7bd'],
  ]);
  pen.fillRect(0, 0, w, h);
  paintScale(pen, w, h, range, scale);
  pen.restore();
}

/** Where a current stands on the scale, 0..1 of the sweep. */
type Law = (amps: number) => number;

function paintScale(pen: Pen, w: number, h: number, range: RangeA, scale: PrintedScale): void {
  const d = DIVISIONS[range];
  // Every place on a scale is one of its short strokes.
  const law: Law = (amps) => scale[Math.round(amps / d.short)]!;
  const p = sweepAngle(w, h);
  paintMirror(pen, p.x, p.y, p.arc * 0.86);
  const at = (fraction: number, r: number): [number, number] => {
    const a = -HALF + 2 * HALF * fraction;
    return [p.x + r * Math.sin(a), p.y - r * Math.cos(a)];
  };
  pen.strokeStyle = INK;
  pen.lineWidth = 1.3;
  pen.beginPath();
  pen.arc(p.x, p.y, p.arc * 0.94, -Math.PI / 2 - HALF, -Math.PI / 2 + HALF);
  pen.stroke();
  for (let i = 0; i * d.short <= range + 1e-9; i++) strokeAt(pen, p.arc, i * d.short, range, d, law, at);
  paintFigures(pen, p, range, d, law, at, w);
  paintLegend(pen, p, w, range);
}

function strokeAt(
  pen: Pen,
  arc: number,
  amps: number,
  range: RangeA,
  d: (typeof DIVISIONS)[RangeA],
  law: Law,
  at: (fraction: number, r: number) => [number, number],
): void {
  const isMultiple = (step: number) => Math.abs(amps / step - Math.round(amps / step)) < 1e-6;
  const long = isMultiple(d.long);
  const figure = isMultiple(d.figure);
  const gap = law(Math.min(range, amps + d.short)) - law(amps);
  const before = law(amps) - law(Math.max(0, amps - d.short));
  if (!long && Math.min(gap, before) * 2 * HALF * arc < 2.6) return;
  const f = law(amps);
  pen.strokeStyle = INK;
  pen.lineWidth = figure ? 2 : long ? 1.4 : 0.9;
  pen.beginPath();
  pen.moveTo(...at(f, arc * 0.94));
  pen.lineTo(...at(f, arc * (figure ? 1.035 : long ? 1.015 : 0.99)));
  pen.stroke();
}

/** Nothing is printed nearer to the rim than this, px. */
const EDGE = 15;

function paintFigures(
  pen: Pen,
  p: { arc: number },
  range: RangeA,
  d: (typeof DIVISIONS)[RangeA],
  law: Law,
  at: (fraction: number, r: number) => [number, number],
  w: number,
): void {
  const size = figureSize(w);
  pen.font = font(size, 650);
  pen.fillStyle = INK;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  let last = -1;
  for (let i = 0; i * d.figure <= range + 1e-9; i++) {
    const f = law(i * d.figure);
    if (i > 0 && (f - last) * 2 * HALF * p.arc < size * 1.25) continue;
    last = f;
    const [x, y] = at(f, p.arc * 1.04 + size * 0.66);
    const figure = String(i * d.figure);
    // The last figure of a long scale would run under the rim.
    const room = EDGE + pen.measureText(figure).width / 2;
    pen.fillText(figure, Math.min(w - room, Math.max(room, x)), y);
  }
}

function paintMirror(pen: Pen, x: number, y: number, r: number): void {
  pen.lineWidth = 8;
  pen.strokeStyle = linear(pen, x - r, 0, x + r, 0, [
    [0, '#8fa0a6'],
    [0.3, '#e9f2f4'],
    [0.5, '#b7c7cc'],
    [0.72, '#f1f7f8'],
    [1, '#8b9ca2'],
  ]);
  pen.beginPath();
  pen.arc(x, y, r, -Math.PI / 2 - HALF, -Math.PI / 2 + HALF);
  pen.stroke();
  pen.lineWidth = 0.8;
  pen.strokeStyle = 'rgba(30,40,44,.45)';
  for (const dr of [-4, 4]) {
    pen.beginPath();
    pen.arc(x, y, r + dr, -Math.PI / 2 - HALF, -Math.PI / 2 + HALF);
    pen.stroke();
  }
}

function paintLegend(pen: Pen, p: { x: number; y: number; arc: number }, w: number, range: RangeA): void {
  const size = Math.max(10, Math.min(20, w / 15));
  const y = p.y - p.arc * 0.56;
  pen.fillStyle = INK;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.font = font(size * 1.15, 700);
  pen.fillText('A', p.x - size * 0.2, y);
  pen.strokeStyle = INK;
  pen.lineWidth = 1.6;
  pen.beginPath();
  for (let i = 0; i <= 12; i++) {
    const x = p.x + size * 0.55 + (i / 12) * size;
    const wave = y - Math.sin((i / 12) * Math.PI * 2) * size * 0.24;
    if (i === 0) pen.moveTo(x, wave);
    else pen.lineTo(x, wave);
  }
  pen.stroke();
  pen.font = font(size * 0.72, 600);
  pen.fillStyle = '#5c5140';
  pen.fillText(`0 – ${range} A`, p.x, y + size * 1.15);
}

/** Glass, bezel and the boss that hides the pivot: drawn over the needle. */
export function paintMeterGlass(pen: Pen, w: number, h: number): void {
  const p = sweepAngle(w, h);
  pen.save();
  roundRect(pen, 11, 10, w - 22, h - 24, 6);
  pen.clip();
  const top = Math.min(p.y - p.arc * 0.24, h - 44);
  pen.fillStyle = linear(pen, 0, top, 0, h, [
    [0, '#2b373c'],
    [0.15, '#1b2428'],
    [1, '#0f1619'],
  ]);
  pen.beginPath();
  pen.moveTo(0, h);
  pen.lineTo(0, top + 16);
  pen.quadraticCurveTo(w / 2, top - 16, w, top + 16);
  pen.lineTo(w, h);
  pen.fill();
  polygon(pen, [
    [w * 0.1, 0],
    [w * 0.42, 0],
    [w * 0.2, h],
    [-w * 0.12, h],
  ]);
  pen.fillStyle = 'rgba(255,255,255,.09)';
  pen.fill();
  pen.restore();
  roundRect(pen, 11, 10, w - 22, h - 24, 6);
  pen.strokeStyle = 'rgba(0,0,0,.6)';
  pen.lineWidth = 2;
  pen.stroke();
  const cy = Math.min(p.y, h - 26);
  disc(
    pen,
    w / 2,
    cy,
    9,
    radial(pen, w / 2 - 3, cy - 3, 0, 9, [
      [0, '#e9eff0'],
      [0.5, '#87959a'],
      [1, '#3b474c'],
    ]),
  );
  pen.fillStyle = '#1b2428';
  pen.fillRect(w / 2 - 6, cy - 1, 12, 2);
}
