import type { Rect } from '../layout.ts';
import { BRASS, font } from '../materials.ts';
import { disc, linear, type Pen, radial, roundRect } from '../pen.ts';

export function paintHalo(pen: Pen, size: number): void {
  disc(
    pen,
    size / 2,
    size / 2,
    size / 2,
    radial(pen, size / 2, size / 2, 0, size / 2, [
      [0, 'rgba(255,255,255,.95)'],
      [0.12, 'rgba(255,255,255,.62)'],
      [0.35, 'rgba(255,255,255,.24)'],
      [0.7, 'rgba(255,255,255,.05)'],
      [1, 'rgba(255,255,255,0)'],
    ]),
  );
}

export function paintSocket(
  pen: Pen,
  box: Rect,
  cx: number,
  cy: number,
  r: number,
  lettering: boolean,
): void {
  roundRect(pen, 2, 2, box.w - 4, box.h - 8, 10);
  pen.fillStyle = linear(pen, 0, 0, 0, box.h, [
    [0, '#0c1417'],
    [1, '#162226'],
  ]);
  pen.fill();
  pen.strokeStyle = 'rgba(140,180,182,.28)';
  pen.stroke();
  const baseY = cy + r * 1.12;
  roundRect(pen, cx - r * 0.46, baseY, r * 0.92, r * 0.66, 4);
  pen.fillStyle = linear(pen, cx - r * 0.46, 0, cx + r * 0.46, 0, [
    [0, BRASS.dark],
    [0.3, BRASS.light],
    [0.6, BRASS.mid],
    [1, '#4c3510'],
  ]);
  pen.fill();
  for (let i = 1; i < 4; i++) {
    pen.fillStyle = 'rgba(50,32,6,.55)';
    pen.fillRect(cx - r * 0.46, baseY + (i * r * 0.66) / 4, r * 0.92, 1.4);
  }
  pen.strokeStyle = '#6b7478';
  pen.lineWidth = Math.max(1.2, r * 0.035);
  for (const side of [-1, 1]) {
    pen.beginPath();
    pen.moveTo(cx + side * r * 0.14, cy + r * 1.1);
    pen.lineTo(cx + side * r * 0.16, cy + r * 0.5);
    pen.lineTo(cx + side * r * 0.475, cy - r * 0.12);
    pen.stroke();
  }
  disc(pen, cx, cy + r * 0.78, r * 0.12, 'rgba(180,205,210,.5)');
  if (!lettering) return;
  pen.fillStyle = '#dbe7e3';
  pen.font = font(Math.max(10, Math.min(13, box.w / 9)), 650);
  pen.textAlign = 'center';
  pen.textBaseline = 'alphabetic';
  pen.fillText('test lamp', cx, box.h - 13);
}

export function paintGlass(pen: Pen, cx: number, cy: number, r: number): void {
  pen.beginPath();
  pen.arc(cx, cy, r, Math.PI * 0.72, Math.PI * 2.28);
  pen.quadraticCurveTo(cx + r * 0.46, cy + r * 0.95, cx + r * 0.42, cy + r * 1.16);
  pen.lineTo(cx - r * 0.42, cy + r * 1.16);
  pen.quadraticCurveTo(cx - r * 0.46, cy + r * 0.95, cx - r * 0.64, cy + r * 0.77);
  pen.closePath();
  pen.fillStyle = radial(pen, cx - r * 0.3, cy - r * 0.4, r * 0.1, r * 1.2, [
    [0, 'rgba(225,245,250,.16)'],
    [0.7, 'rgba(180,215,225,.06)'],
    [1, 'rgba(200,230,236,.22)'],
  ]);
  pen.fill();
  pen.strokeStyle = 'rgba(215,238,242,.5)';
  pen.lineWidth = 1.2;
  pen.stroke();
  pen.strokeStyle = 'rgba(255,255,255,.6)';
  pen.lineWidth = r * 0.07;
  pen.lineCap = 'round';
  pen.beginPath();
  pen.arc(cx, cy, r * 0.8, Math.PI * 1.1, Math.PI * 1.42);
  pen.stroke();
}
