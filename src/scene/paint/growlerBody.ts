import { COIL } from '../growlerShape.ts';
import type { GrowlerStage } from '../growlerStage.ts';
import { TAPE } from '../materials.ts';
import { linear, type Pen, polygon, shadowed } from '../pen.ts';

/** How far the winding's ends stand out of the iron, and the height of their upper side over the apex, mm. */
const COIL_BULGE = 17;
const COIL_RISE = 5;

/** The taped end of the winding that stands out of the iron to one side, lying from the near leg to the far one. */
export function coilEnd(pen: Pen, k: GrowlerStage, side: 'left' | 'right'): void {
  const sign = side === 'right' ? 1 : -1;
  const edge = side === 'right' ? k.right : k.left;
  const near = k.at(edge, COIL.left, COIL_RISE);
  const far = k.at(edge, COIL.right, COIL_RISE);
  const b = COIL_BULGE * k.s * sign;
  const r = 7 * k.s;
  const face = side === 'right' ? far[0] + b : near[0] + b;
  pen.save();
  pen.beginPath();
  pen.moveTo(near[0] - sign * 8, k.floor);
  pen.lineTo(near[0] - sign * 8, near[1]);
  pen.lineTo(far[0] - sign * 8, far[1]);
  pen.lineTo(far[0] + b - sign * r, far[1]);
  pen.quadraticCurveTo(far[0] + b, far[1], face, far[1] + r * 1.2);
  pen.lineTo(face, k.floor);
  pen.closePath();
  pen.fillStyle = linear(pen, near[0], 0, face, 0, [
    [0, '#4d4029'],
    [0.4, TAPE.mid],
    [0.66, TAPE.light],
    [1, TAPE.dark],
  ]);
  pen.fill();
  pen.clip();
  tapeTurns(pen, k, near, far, b, r, sign);
  const top = Math.min(near[1], far[1]);
  pen.fillStyle = linear(pen, 0, top, 0, k.floor, [
    [0, 'rgba(255,240,205,.16)'],
    [0.3, 'rgba(0,0,0,.06)'],
    [0.7, 'rgba(0,0,0,.34)'],
    [1, 'rgba(0,0,0,.72)'],
  ]);
  pen.fillRect(Math.min(near[0], face) - 30, top - 4, Math.abs(face - near[0]) + 60, k.floor - top + 8);
  pen.restore();
}

/** Turn upon turn of cotton tape round the bundle, from the near leg to the far one. */
function tapeTurns(
  pen: Pen,
  k: GrowlerStage,
  near: readonly [number, number],
  far: readonly [number, number],
  b: number,
  r: number,
  sign: number,
): void {
  for (let i = -1; i <= 11; i++) {
    const t = i / 11;
    const x = near[0] + (far[0] - near[0]) * t;
    const y = near[1] + (far[1] - near[1]) * t;
    for (const [dx, colour, width] of [
      [0, 'rgba(38,27,12,.62)', 1.5],
      [1.6, 'rgba(255,243,214,.22)', 1.1],
    ] as const) {
      pen.strokeStyle = colour;
      pen.lineWidth = width;
      pen.beginPath();
      pen.moveTo(x - sign * 10, y + dx);
      pen.lineTo(x + b - sign * r, y + dx);
      pen.quadraticCurveTo(x + b, y + dx, x + b + dx, y + r * 1.3);
      pen.lineTo(x + b + dx - sign * 3, k.floor);
      pen.stroke();
    }
  }
}

/** The cast base the growler stands on. */
export function castBase(pen: Pen, k: GrowlerStage): void {
  const front = k.floor + 5;
  const back = k.floor - 22 * k.s;
  const left = k.left - 28 * k.s;
  const right = k.right + 30 * k.s;
  const shift = 16 * k.s;
  shadowed(pen, 26, 10, 8, 'rgba(0,0,0,.6)', () => {
    polygon(pen, [
      [left, front + 30],
      [left, front],
      [left + shift, back],
      [right + shift * 0.6, back],
      [right, front],
      [right, front + 30],
    ]);
    pen.fillStyle = '#1a262b';
    pen.fill();
  });
  polygon(pen, [
    [left, front],
    [left + shift, back],
    [right + shift * 0.6, back],
    [right, front],
  ]);
  pen.fillStyle = linear(pen, left, back, right, front, [
    [0, '#3a4b52'],
    [0.5, '#2a383e'],
    [1, '#1d292e'],
  ]);
  pen.fill();
  pen.fillStyle = linear(pen, 0, front, 0, front + 26, [
    [0, '#55676e'],
    [0.14, '#2a393f'],
    [1, '#10191d'],
  ]);
  pen.fillRect(left, front, right - left, 40);
}
