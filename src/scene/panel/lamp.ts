import { Container, Graphics, Sprite } from 'pixi.js';
import type { Rect } from '../layout.ts';
import { BRASS, font } from '../materials.ts';
import { disc, linear, type Pen, painted, radial, roundRect } from '../surface.ts';

/** Filament colour by what an eye sees: 0 dark, 1 dull red, up to 8 full. */
const FILAMENT = [0x4a4642, 0x7c1d08, 0xb02f0a, 0xd9540f, 0xf27d1c, 0xffa63a, 0xffc766, 0xffe09a, 0xfff3cf];
/** Reach of the light round the bulb, as a share of its full reach. */
const REACH = [0, 0.3, 0.42, 0.52, 0.62, 0.72, 0.82, 0.92, 1];
const STRENGTH = [0, 0.24, 0.4, 0.52, 0.64, 0.74, 0.84, 0.92, 1];

/** The test lamp: a clear bulb whose filament can be watched warming. */
export class TestLamp {
  readonly node = new Container();
  private readonly halo: Sprite;
  private readonly heart: Sprite;
  private readonly filament: Graphics;
  private readonly haloSize: number;

  constructor(box: Rect, resolution: number, lettering: boolean) {
    this.node.position.set(box.x, box.y);
    const r = Math.min(box.w * 0.34, box.h * (box.h < 120 ? 0.215 : 0.25));
    const cx = box.w / 2;
    const cy = Math.max(r * 1.24, box.h * 0.4 - r * 0.4);
    const plate = new Sprite(
      painted(box.w, box.h, resolution, (pen) => paintSocket(pen, box, cx, cy, r, lettering)),
    );
    const glass = new Sprite(painted(box.w, box.h, resolution, (pen) => paintGlass(pen, cx, cy, r)));
    this.haloSize = r * 6.4;
    const halo = painted(this.haloSize, this.haloSize, 1, (pen) => paintHalo(pen, this.haloSize));
    this.halo = new Sprite(halo);
    this.heart = new Sprite(halo);
    for (const light of [this.halo, this.heart]) {
      light.anchor.set(0.5);
      light.position.set(cx, cy);
    }
    this.filament = filamentShape(r);
    this.filament.position.set(cx, cy);
    this.node.addChild(plate, this.filament, this.heart, glass, this.halo);
  }

  show(glow: number): void {
    const step = Math.max(0, Math.min(8, Math.round(glow)));
    this.filament.tint = FILAMENT[step]!;
    this.halo.visible = step > 0;
    this.heart.visible = step > 0;
    this.halo.tint = FILAMENT[step]!;
    this.heart.tint = FILAMENT[step]!;
    this.halo.alpha = STRENGTH[step]! * 0.6;
    this.halo.scale.set(REACH[step]!);
    this.heart.scale.set(0.12 + 0.3 * REACH[step]!);
    this.heart.alpha = STRENGTH[step]!;
  }
}

function filamentShape(r: number): Graphics {
  const shape = new Graphics();
  const points: number[] = [];
  for (let i = 0; i <= 60; i++) {
    const t = i / 60;
    points.push(
      (t - 0.5) * r * 0.95,
      -r * 0.12 - Math.sin(t * Math.PI) * r * 0.16 + Math.sin(t * 62) * r * 0.065,
    );
  }
  shape.moveTo(points[0]!, points[1]!);
  for (let i = 2; i < points.length; i += 2) shape.lineTo(points[i]!, points[i + 1]!);
  shape.stroke({ width: Math.max(1.8, r * 0.05), color: 0xffffff, cap: 'round', join: 'round' });
  return shape;
}

function paintHalo(pen: Pen, size: number): void {
  disc(
    pen,
    size / 2,
    size / 2,
    size / 2,
    radial(pen, size / 2, size / 2, 0, size / 2, [
      [0, 'rgba(255,255,255,.95)'],
      [0.12, 'rgba(255,255,255,.5)'],
      [0.35, 'rgba(255,255,255,.14)'],
      [0.7, 'rgba(255,255,255,.03)'],
      [1, 'rgba(255,255,255,0)'],
    ]),
  );
}

function paintSocket(pen: Pen, box: Rect, cx: number, cy: number, r: number, lettering: boolean): void {
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

function paintGlass(pen: Pen, cx: number, cy: number, r: number): void {
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
