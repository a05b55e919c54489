import type { Observation } from '../../bench/observation.ts';
import { font } from '../materials.ts';
import { disc, linear, type Pen, radial, roundRect } from '../pen.ts';

type Supply = Observation['supply'];

export function paintFlags(pen: Pen, w: number, h: number, supply: Supply): void {
  paintPilot(pen, w, h * 0.46, supply === 'on');
  paintCutOut(pen, w, h * 0.5, h * 0.46 - 6, supply);
}

function paintPilot(pen: Pen, w: number, h: number, on: boolean): void {
  const r = Math.min(w * 0.26, h * 0.3);
  const cy = h * 0.4;
  if (on)
    disc(
      pen,
      w / 2,
      cy,
      r * 2,
      radial(pen, w / 2, cy, r * 0.4, r * 2, [
        [0, 'rgba(255,190,90,.55)'],
        [1, 'rgba(255,170,60,0)'],
      ]),
    );
  disc(pen, w / 2, cy, r * 1.22, '#0c1316');
  disc(
    pen,
    w / 2,
    cy,
    r,
    radial(
      pen,
      w / 2 - r * 0.3,
      cy - r * 0.4,
      r * 0.1,
      r * 1.1,
      on
        ? [
            [0, '#fff6d8'],
            [0.4, '#ffc25a'],
            [1, '#b8650f'],
          ]
        : [
            [0, '#6f6657'],
            [0.6, '#3d3629'],
            [1, '#211c14'],
          ],
    ),
  );
  pen.strokeStyle = '#8ea0a4';
  pen.lineWidth = 1.6;
  pen.beginPath();
  pen.arc(w / 2, cy, r * 1.18, 0, Math.PI * 2);
  pen.stroke();
  word(pen, on ? 'on' : 'dark', w / 2, h * 0.88, Math.min(13, w / 4.6), '#dbe7e3');
}

function paintCutOut(pen: Pen, w: number, y: number, h: number, supply: Supply): void {
  const dropped = supply === 'cutOut' || supply === 'isolated';
  roundRect(pen, 4, y, w - 8, h * 0.62, 5);
  pen.fillStyle = '#0a1113';
  pen.fill();
  pen.strokeStyle = '#6f8488';
  pen.lineWidth = 1.4;
  pen.stroke();
  pen.save();
  roundRect(pen, 6, y + 2, w - 12, h * 0.62 - 4, 4);
  pen.clip();
  pen.fillStyle = dropped
    ? '#f0a63a'
    : linear(pen, 0, y, 0, y + h * 0.6, [
        [0, '#2a3a40'],
        [1, '#182428'],
      ]);
  pen.fillRect(6, y + 2, w - 12, h * 0.62);
  if (dropped) stripes(pen, w, y, h * 0.62);
  pen.restore();
  const text = supply === 'isolated' ? 'isolated' : dropped ? 'tripped' : 'set';
  word(pen, text, w / 2, y + h * 0.31, Math.min(13, w / 4.8), dropped ? '#241503' : '#aebfbe');
  word(pen, 'cut-out', w / 2, y + h * 0.82, Math.min(13, w / 5), '#dbe7e3');
}

function stripes(pen: Pen, w: number, y: number, h: number): void {
  pen.strokeStyle = 'rgba(36,21,3,.75)';
  pen.lineWidth = 5;
  for (let x = -h; x < w + h; x += 14) {
    for (const row of [y + 5, y + h - 3]) {
      pen.beginPath();
      pen.moveTo(x, row + 4);
      pen.lineTo(x + 7, row - 4);
      pen.stroke();
    }
  }
}

function word(pen: Pen, text: string, x: number, y: number, size: number, colour: string): void {
  pen.fillStyle = colour;
  pen.font = font(Math.max(9, size), 700);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillText(text, x, y);
}
