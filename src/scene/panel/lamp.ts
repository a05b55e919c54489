import { Container, Graphics, Sprite } from 'pixi.js';
import type { Rect } from '../layout.ts';
import type { Easel } from '../studio/easel.ts';

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

  constructor(box: Rect, easel: Easel, lettering: boolean) {
    this.node.position.set(box.x, box.y);
    const r = Math.min(box.w * 0.34, box.h * (box.h < 120 ? 0.215 : 0.25));
    const cx = box.w / 2;
    const cy = Math.max(r * 1.24, box.h * 0.4 - r * 0.4);
    const round = { box, cx, cy, r, lettering };
    const plate = easel.placed('lampSocket', round, { x: 0, y: 0, w: box.w, h: box.h });
    const glass = easel.placed('lampGlass', round, { x: 0, y: 0, w: box.w, h: box.h });
    this.haloSize = r * 6.4;
    const whole = { x: 0, y: 0, w: this.haloSize, h: this.haloSize };
    const halo = easel.picture('lampHalo', { size: this.haloSize }, whole, { resolution: 1 });
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
    this.halo.alpha = STRENGTH[step]! * 0.75;
    this.halo.scale.set(REACH[step]!);
    this.heart.scale.set(0.12 + 0.34 * REACH[step]!);
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
