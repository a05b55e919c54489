import { disc, grain, linear, type Pen, radial } from '../pen.ts';
import { filament } from './subjects.ts';

export function burntPigtail(pen: Pen, r: number): void {
  const y = r * 0.84;
  pen.fillStyle = linear(pen, -r, y, r, y, [
    [0, 'rgba(20,14,26,0)'],
    [0.3, 'rgba(38,34,74,.75)'],
    [0.55, 'rgba(14,10,10,.96)'],
    [0.8, 'rgba(70,32,58,.7)'],
    [1, 'rgba(20,14,26,0)'],
  ]);
  pen.fillRect(-r, y - r * 0.24, r * 2, r * 0.46);
}

/** A gap where the coil has come away from its pole, and the bright rubbing beside it. */
export function looseFieldCoil(pen: Pen, r: number): void {
  pen.save();
  pen.rotate(-0.09);
  pen.fillStyle = '#050809';
  pen.fillRect(-r * 1.2, -r * 0.98, r * 2.4, r * 0.2);
  pen.fillStyle = 'rgba(255,236,206,.75)';
  for (let i = 0; i < 14; i++) pen.fillRect(-r + i * r * 0.15, -r * 0.77, r * 0.08, r * 0.04);
  pen.restore();
}

export function darkenedInsulator(pen: Pen, r: number): void {
  pen.fillStyle = radial(pen, r * 0.4, r * 0.3, r * 0.05, r * 0.75, [
    [0, 'rgba(6,5,4,.96)'],
    [0.6, 'rgba(28,16,8,.8)'],
    [1, 'rgba(40,22,12,0)'],
  ]);
  pen.fillRect(-r, -r * 0.3, r * 2, r * 1.1);
  for (let i = 0; i < 7; i++) crackFrom(pen, r * 0.4, r * 0.3, (i / 7) * 6.28, r * 0.5, i, '#c98a4e');
}

function crackFrom(
  pen: Pen,
  x: number,
  y: number,
  angle: number,
  length: number,
  seed: number,
  colour: string,
): void {
  pen.strokeStyle = colour;
  pen.lineWidth = 1.4;
  pen.beginPath();
  pen.moveTo(x, y);
  let a = angle;
  for (let k = 1; k <= 4; k++) {
    a += (grain(seed * 7 + k) - 0.5) * 0.9;
    pen.lineTo(x + Math.cos(a) * length * (k / 4), y + Math.sin(a) * length * (k / 4));
  }
  pen.stroke();
}

/** A crack through the handle with metal showing in it. */
export function crackedHandle(pen: Pen, r: number): void {
  for (const [width, colour] of [
    [r * 0.13, '#0a0606'],
    [r * 0.05, '#e6c25e'],
  ] as const) {
    pen.strokeStyle = colour;
    pen.lineWidth = width;
    pen.lineJoin = 'bevel';
    pen.beginPath();
    pen.moveTo(-r * 0.62, -r * 0.5);
    for (const [x, y] of [
      [-0.36, -0.22],
      [-0.46, -0.04],
      [-0.08, 0.14],
      [-0.18, 0.3],
      [0.1, 0.54],
    ] as const) {
      pen.lineTo(x * r, y * r);
    }
    pen.stroke();
  }
}

/** The cable's cover worn through, strands of copper standing out of it. */
export function frayedCable(pen: Pen, r: number): void {
  pen.fillStyle = '#0f1b1f';
  pen.fillRect(r * 0.62, -r * 0.2, r * 0.3, r * 0.4);
  for (let i = 0; i < 22; i++) {
    const y = (i - 11) * r * 0.014;
    pen.strokeStyle = i % 2 ? '#e39a5c' : '#a45f2d';
    pen.lineWidth = 1.5;
    pen.beginPath();
    pen.moveTo(r * 0.58, y);
    pen.quadraticCurveTo(r * 0.74, y * 3, r * (0.78 + 0.16 * grain(i)), (grain(i + 7) - 0.5) * r * 0.8);
    pen.stroke();
  }
}

export function brokenFilament(pen: Pen, r: number): void {
  pen.fillStyle = '#46585d';
  pen.beginPath();
  pen.ellipse(0, -r * 0.1, r * 0.56, r * 0.26, 0, 0, Math.PI * 2);
  pen.fill();
  filament(pen, r, -0.5, -0.14);
  filament(pen, r, 0.2, 0.5);
  disc(pen, -r * 0.12, -r * 0.04, r * 0.045, '#efe6d6');
}

export function blackenedBulb(pen: Pen, r: number): void {
  disc(
    pen,
    0,
    0,
    r * 0.92,
    radial(pen, 0, r * 0.5, r * 0.2, r * 1.4, [
      [0, 'rgba(8,8,8,.05)'],
      [0.5, 'rgba(6,6,6,.5)'],
      [1, 'rgba(4,4,4,.95)'],
    ]),
  );
}
