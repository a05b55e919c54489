import type { Selector } from '../../bench/action.ts';
import type { Rect } from '../layout.ts';
import { font } from '../materials.ts';
import { POSITIONS, selectorLetters, selectorMark, selectorShape } from '../panel/selectorShape.ts';
import { disc, linear, type Pen, radial, roundRect, shadowed } from '../pen.ts';

const RAD = Math.PI / 180;

export function paintSelectorPlate(pen: Pen, box: Rect): void {
  const s = selectorShape(box);
  roundRect(pen, box.x + 2, box.y + 2, box.w - 4, box.h - 8, 10);
  pen.fillStyle = linear(pen, 0, box.y, 0, box.y + box.h, [
    [0, '#1a272c'],
    [1, '#111b1f'],
  ]);
  pen.fill();
  pen.strokeStyle = 'rgba(140,180,182,.28)';
  pen.lineWidth = 1;
  pen.stroke();
  const size = selectorLetters(s);
  for (const { to, deg, word } of POSITIONS) {
    const a = deg * RAD;
    pen.strokeStyle = '#d7e4e0';
    pen.lineWidth = 2.4;
    pen.beginPath();
    pen.moveTo(s.x + s.r * 1.06 * Math.sin(a), s.y - s.r * 1.06 * Math.cos(a));
    pen.lineTo(s.x + s.r * 1.2 * Math.sin(a), s.y - s.r * 1.2 * Math.cos(a));
    pen.stroke();
    const mark = selectorMark(box, to);
    paintFill(pen, mark.x, mark.y - size * 1.2, size * 0.5, to);
    pen.fillStyle = '#eef4ee';
    pen.font = font(size, 750);
    pen.textAlign = 'center';
    pen.textBaseline = 'middle';
    pen.fillText(word, mark.x, mark.y);
  }
}

/** How far the bench is excited, as a shape: an empty, a half and a full round. */
function paintFill(pen: Pen, x: number, y: number, r: number, to: Selector): void {
  pen.strokeStyle = '#eef4ee';
  pen.lineWidth = 1.5;
  pen.beginPath();
  pen.arc(x, y, r, 0, Math.PI * 2);
  pen.stroke();
  if (to === 'off') return;
  pen.fillStyle = '#eef4ee';
  pen.beginPath();
  if (to === 'high') pen.arc(x, y, r, 0, Math.PI * 2);
  else pen.arc(x, y, r, 0, Math.PI);
  pen.fill();
}

export function paintLever(pen: Pen, r: number): void {
  shadowed(pen, r * 0.3, 0, r * 0.12, 'rgba(0,0,0,.75)', () => {
    disc(pen, 0, 0, r, '#11181b');
  });
  disc(
    pen,
    0,
    0,
    r,
    radial(pen, -r * 0.3, -r * 0.4, r * 0.1, r * 1.2, [
      [0, '#5d6d73'],
      [0.5, '#2e3b40'],
      [1, '#141c1f'],
    ]),
  );
  for (let i = 0; i < 36; i++) {
    const a = (i / 36) * Math.PI * 2;
    pen.strokeStyle = i % 2 ? 'rgba(255,255,255,.08)' : 'rgba(0,0,0,.4)';
    pen.lineWidth = 2;
    pen.beginPath();
    pen.moveTo(Math.sin(a) * r * 0.9, Math.cos(a) * r * 0.9);
    pen.lineTo(Math.sin(a) * r, Math.cos(a) * r);
    pen.stroke();
  }
  shadowed(pen, 6, 0, 3, 'rgba(0,0,0,.7)', () => {
    roundRect(pen, -r * 0.19, -r * 1.02, r * 0.38, r * 1.75, r * 0.17);
    pen.fillStyle = linear(pen, -r * 0.2, 0, r * 0.2, 0, [
      [0, '#8a2d22'],
      [0.35, '#d2604d'],
      [1, '#6c1f17'],
    ]);
    pen.fill();
  });
  roundRect(pen, -r * 0.05, -r * 0.96, r * 0.1, r * 0.42, r * 0.05);
  pen.fillStyle = '#fff4df';
  pen.fill();
}
