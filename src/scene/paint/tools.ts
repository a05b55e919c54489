import type { Layout, Rect } from '../layout.ts';
import { BRASS, font } from '../materials.ts';
import { disc, linear, type Pen, radial, roundRect, shadowed } from '../pen.ts';
import type { Point } from '../project.ts';
import { hangingRoom, LOW_TILE, railBar, stripHeight } from '../railShape.ts';
import { paintHook } from './hook.ts';

/** The lens: a round of glass in brass with a turned handle; origin at the middle of the glass. */
export function paintLensTool(pen: Pen, r: number): void {
  shadowed(pen, 6, 1, 4, 'rgba(0,0,0,.6)', () => {
    pen.save();
    pen.rotate(Math.PI * 0.25);
    roundRect(pen, r * 0.9, -r * 0.2, r * 1.5, r * 0.4, r * 0.2);
    pen.fillStyle = linear(pen, 0, -r * 0.2, 0, r * 0.2, [
      [0, '#6d4524'],
      [0.4, '#b98552'],
      [1, '#3c2410'],
    ]);
    pen.fill();
    pen.restore();
    pen.lineWidth = r * 0.2;
    pen.strokeStyle = BRASS.mid;
    pen.beginPath();
    pen.arc(0, 0, r, 0, Math.PI * 2);
    pen.stroke();
  });
  disc(
    pen,
    0,
    0,
    r * 0.92,
    radial(pen, -r * 0.3, -r * 0.4, r * 0.1, r * 1.1, [
      [0, 'rgba(235,252,255,.75)'],
      [0.5, 'rgba(150,200,206,.35)'],
      [1, 'rgba(60,110,116,.45)'],
    ]),
  );
  pen.lineWidth = r * 0.07;
  pen.strokeStyle = BRASS.light;
  pen.beginPath();
  pen.arc(0, 0, r * 1.05, Math.PI * 1.05, Math.PI * 1.7);
  pen.stroke();
}

/** A stick of chalk, origin at its middle. */
export function paintChalkTool(pen: Pen, length: number): void {
  const h = Math.max(10, length * 0.22);
  pen.rotate(-0.3);
  shadowed(pen, 5, 1, 3, 'rgba(0,0,0,.55)', () => {
    roundRect(pen, -length / 2, -h / 2, length, h, h * 0.3);
    pen.fillStyle = linear(pen, 0, -h / 2, 0, h / 2, [
      [0, '#ffffff'],
      [0.6, '#e6e4d8'],
      [1, '#b6b3a4'],
    ]);
    pen.fill();
  });
  roundRect(pen, length * 0.04, -h / 2 - 0.5, length * 0.46, h + 1, h * 0.2);
  pen.fillStyle = '#4f7f93';
  pen.fill();
}

/** Hooks, tray and words of the rail; the tools themselves move. */
export function paintRailFittings(pen: Pen, l: Layout): void {
  const names = { strip: 'steel strip', lens: 'lens', chalk: 'chalk' } as const;
  for (const key of ['strip', 'lens', 'chalk'] as const) {
    const box = l.tools[key];
    if (l.mode === 'narrow') paintTile(pen, box);
    else paintHooks(pen, box, l.rail, key);
    const name = box.w < HALF && key === 'strip' ? 'strip' : names[key];
    paintToolName(pen, box, name, l.mode === 'narrow');
  }
}

/** Narrower than this a tool has half a row of a phone's column, or little of a rail, px. */
export const HALF = 60;

/** Under the tool what it is called. */
export function paintToolName(pen: Pen, box: Rect, name: string, tile: boolean): void {
  const size = tile ? (box.w < HALF ? 10 : 11) : box.w < HALF ? 11 : 12;
  pen.font = font(size, 600);
  pen.textAlign = 'center';
  pen.textBaseline = 'alphabetic';
  pen.fillStyle = '#cfe0dd';
  const foot = tile && box.h < LOW_TILE ? 3 : 4;
  pen.fillText(name, box.x + box.w / 2, box.y + box.h - foot, box.w - (tile ? 4 : -4));
}

export function paintTile(pen: Pen, box: Rect): void {
  roundRect(pen, box.x, box.y, box.w, box.h, 8);
  pen.fillStyle = 'rgba(6,26,30,.55)';
  pen.fill();
  pen.strokeStyle = 'rgba(150,190,188,.28)';
  pen.lineWidth = 1;
  pen.stroke();
}

/** Brass hooks over the bar: two in which the strip lies, one that the lens hangs from. */
function paintHooks(pen: Pen, box: Rect, rail: Rect, key: 'strip' | 'lens' | 'chalk'): void {
  const { y: top } = railBar(rail);
  if (key === 'chalk') {
    paintTray(pen, box);
    return;
  }
  const xs = key === 'strip' ? [box.x + box.w * 0.46, box.x + box.w * 0.84] : [box.x + box.w / 2 - 6];
  const end = key === 'strip' ? stripHeight(box) - 1 : hangingRoom(box).top + 2;
  for (const x of xs) paintHook(pen, x, top, end, key === 'strip');
}

function paintTray(pen: Pen, box: Rect): void {
  const y = box.y + box.h * 0.58;
  shadowed(pen, 5, 0, 3, 'rgba(0,0,0,.5)', () => {
    roundRect(pen, box.x + 4, y, box.w - 8, 8, 3);
    pen.fillStyle = linear(pen, 0, y, 0, y + 8, [
      [0, '#9b6c3f'],
      [1, '#4e311a'],
    ]);
    pen.fill();
  });
}

/** Heavy foot, post and two empty jaws of the holding stand. */
export function paintStand(pen: Pen, r: Rect, lettering: boolean): void {
  const x = r.x + r.w / 2;
  const foot = r.y + r.h - (lettering ? 22 : 8);
  shadowed(pen, 8, 2, 4, 'rgba(0,0,0,.6)', () => {
    pen.beginPath();
    pen.ellipse(x, foot, r.w * 0.4, Math.min(12, r.h * 0.1), 0, 0, Math.PI * 2);
    pen.fillStyle = linear(pen, r.x, 0, r.x + r.w, 0, [
      [0, '#1d292d'],
      [0.4, '#61757c'],
      [1, '#182226'],
    ]);
    pen.fill();
  });
  const top = r.y + r.h * 0.2;
  pen.fillStyle = linear(pen, x - 4, 0, x + 4, 0, [
    [0, '#5a686d'],
    [0.4, '#eef4f4'],
    [1, '#3e4a4f'],
  ]);
  pen.fillRect(x - 3.5, top, 7, foot - top);
  roundRect(pen, x - r.w * 0.26, top - 6, r.w * 0.52, 12, 5);
  pen.fillStyle = linear(pen, 0, top - 6, 0, top + 6, [
    [0, '#c9d6d8'],
    [0.5, '#73838a'],
    [1, '#354247'],
  ]);
  pen.fill();
  for (const side of [-1, 1]) disc(pen, x + side * r.w * 0.2, top, 3.4, BRASS.light);
  if (!lettering) return;
  pen.font = font(12, 600);
  pen.fillStyle = '#cfe0dd';
  pen.textAlign = 'center';
  pen.textBaseline = 'alphabetic';
  pen.fillText('stand', x, r.y + r.h - 4);
}

/** The clips the leads stand in, with the words that name the two sets. */
export function paintHolsters(pen: Pen, l: Layout): void {
  const [a1, a2, b1, b2] = l.panel.holsters;
  for (const [first, second, title] of [
    [a1, a2, 'ammeter'],
    [b1, b2, 'lamp'],
  ] as const) {
    const x = first.x + 1;
    const w = second.x + second.w - first.x - 2;
    roundRect(pen, x, first.y, w, first.h, 9);
    pen.fillStyle = linear(pen, 0, first.y, 0, first.y + first.h, [
      [0, 'rgba(6,14,17,.35)'],
      [1, 'rgba(6,14,17,.75)'],
    ]);
    pen.fill();
    pen.strokeStyle = 'rgba(140,180,182,.25)';
    pen.lineWidth = 1;
    pen.stroke();
    for (const box of [first, second]) paintClip(pen, box, l.mode === 'narrow' ? box.y : l.panel.frame.y + 8);
    pen.save();
    pen.translate(x + w / 2, first.y + first.h - 6);
    pen.font = font(l.mode === 'narrow' ? 10 : 11.5, 650);
    pen.fillStyle = '#dbe7e3';
    pen.textAlign = 'center';
    pen.textBaseline = 'alphabetic';
    pen.fillText(title, 0, 0);
    pen.restore();
  }
}

/** Holes a phone's panel lets its cables out by; see cableEnd. */
export function paintGrommets(pen: Pen, holes: readonly Point[]): void {
  for (const { x, y } of holes) {
    disc(pen, x, y, 6, '#5b757c');
    disc(pen, x, y, 4, '#0a1214');
  }
}

function paintClip(pen: Pen, box: Rect, socketY: number): void {
  const x = box.x + box.w * 0.46;
  const y = box.y + box.h * 0.62;
  for (const side of [-1, 1]) {
    roundRect(pen, x + side * 10 - 4, y - 8, 8, 22, 4);
    pen.fillStyle = linear(pen, 0, y - 8, 0, y + 14, [
      [0, '#8ea0a6'],
      [1, '#3a494f'],
    ]);
    pen.fill();
  }
  disc(pen, box.x + box.w * 0.84, socketY, 4.5, '#0a1214');
}
