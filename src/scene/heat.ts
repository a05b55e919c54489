import { Container, Sprite, type Texture } from 'pixi.js';
import { MAT_PARTS } from '../bench/action.ts';
import type { Observation } from '../bench/observation.ts';
import type { Layout } from './layout.ts';
import { font } from './materials.ts';
import { disc, radial, roundRect } from './pen.ts';
import type { Point } from './project.ts';
import { painted } from './surface.ts';

type Heat = Observation['growlerHeat'] | Observation['partHeat'];
const GLOW: Readonly<Record<Heat, number>> = {
  cool: 0,
  warm: 0.16,
  hot: 0.42,
  tooHotToTouch: 0.72,
  smoking: 0.55,
};
const WISPS: Readonly<Record<Heat, number>> = { cool: 0, warm: 0, hot: 1, tooHotToTouch: 3, smoking: 5 };
const WORDS: Readonly<Record<Heat, string>> = {
  cool: '',
  warm: 'growler warm',
  hot: 'growler hot',
  tooHotToTouch: 'growler too hot to touch',
  smoking: 'smoke from the winding',
};

/** Warmth of the growler's winding and of the part: a glow, wisps that rise, and a word. */
export class HeatHaze {
  readonly node = new Container();
  private haze: { readonly glow: Sprite; readonly wisps: readonly Sprite[] } | null = null;
  private readonly tags = new Map<Heat, Sprite>();
  private readonly layout: Layout;
  private readonly resolution: number;
  private readonly lettering: boolean;
  private readonly low: Point;
  private readonly high: Point;

  constructor(layout: Layout, resolution: number, lettering: boolean) {
    const g = layout.side;
    const R = g?.r.core ?? layout.end.core;
    const x = g ? (g.x.coreLeft + g.x.coreRight) / 2 : layout.end.x;
    this.low = { x, y: (g?.axisY ?? layout.end.y) + R * 1.25 };
    // Over the part itself, and not so high that it would rise out of the picture.
    this.high = { x, y: (g?.axisY ?? layout.end.y) - R * (g ? 0.55 : 0.05) };
    this.layout = layout;
    this.resolution = resolution;
    this.lettering = lettering;
  }

  /** Painted with the first warmth: most attempts stay cool. */
  private made(): NonNullable<HeatHaze['haze']> {
    if (this.haze) return this.haze;
    const { layout } = this;
    const R = layout.side?.r.core ?? layout.end.core;
    const glow = centred(
      painted(R * 3, R * 1.8, 0.5, (pen) => {
        pen.scale(1, 0.6);
        disc(
          pen,
          R * 1.5,
          R * 1.5,
          R * 1.5,
          radial(pen, R * 1.5, R * 1.5, 0, R * 1.5, [
            [0, 'rgba(255,120,40,.9)'],
            [0.5, 'rgba(255,80,20,.35)'],
            [1, 'rgba(255,60,10,0)'],
          ]),
        );
      }),
    );
    glow.position.set(this.low.x, this.low.y);
    const wisp = wispTexture(R);
    const wisps = [0, 1, 2, 3, 4].map(() => centred(wisp));
    this.node.addChild(glow, ...wisps);
    if (this.lettering) this.addTags(layout, this.resolution);
    this.haze = { glow, wisps };
    return this.haze;
  }

  /** True while wisps are moving. */
  show(seen: Observation, nowMs: number, still: boolean): boolean {
    const part = seen.partHeat;
    if (part === 'cool' && seen.growlerHeat === 'cool' && !this.haze) return false;
    const { glow, wisps } = this.made();
    const inCradle = seen.cradle === 'armature';
    const narrow = this.layout.side === null;
    // On a phone a part brought forward lies over all of it, and blocks stand where the empty growler would be.
    this.node.visible = !narrow || !MAT_PARTS.some((each) => seen.mat[each] === 'forward');
    const growler: Heat = narrow && !inCradle ? 'cool' : seen.growlerHeat;
    glow.alpha = Math.max(GLOW[growler], inCradle ? GLOW[part] * 0.4 : 0);
    glow.visible = glow.alpha > 0;
    const smoking = part === 'smoking' || part === 'hot';
    const count = Math.max(WISPS[growler], WISPS[part]);
    const from = smoking ? this.overPart(inCradle) : this.low;
    for (const [i, wisp] of wisps.entries()) {
      this.rise(wisp, i, count, from, still ? 900 + i * 400 : nowMs);
    }
    const word: Heat = part === 'smoking' ? 'smoking' : seen.growlerHeat;
    for (const [heat, tag] of this.tags) tag.visible = heat === word;
    return count > 0 && !still;
  }

  private overPart(inCradle: boolean): Point {
    const { mat, side } = this.layout;
    return inCradle || side === null ? this.high : { x: mat.x + mat.w / 2, y: mat.y + mat.h * 0.3 };
  }

  private rise(wisp: Sprite, i: number, count: number, from: Point, nowMs: number): void {
    wisp.visible = i < count;
    if (!wisp.visible) return;
    const phase = (nowMs / 3200 + i * 0.37) % 1;
    wisp.position.set(from.x + (i - 2) * 34 + Math.sin(phase * 5 + i) * 9, from.y - phase * 92);
    wisp.alpha = Math.sin(phase * Math.PI) * 0.85;
    wisp.scale.set(0.6 + phase * 0.7, 0.8 + phase * 0.6);
  }

  private addTags(layout: Layout, resolution: number): void {
    for (const heat of ['warm', 'hot', 'tooHotToTouch', 'smoking'] as const) {
      const text = WORDS[heat];
      const w = text.length * 7.2 + 26;
      const tag = centred(
        painted(w, 26, resolution, (pen) => {
          roundRect(pen, 1, 1, w - 2, 24, 12);
          pen.fillStyle = 'rgba(40,14,4,.86)';
          pen.fill();
          pen.strokeStyle = '#ffad6b';
          pen.stroke();
          pen.fillStyle = '#ffe3c6';
          pen.font = font(13, 650);
          pen.textAlign = 'center';
          pen.textBaseline = 'middle';
          pen.fillText(text, w / 2, 13.5);
        }),
      );
      // On a phone to the left of the stand.
      const { endBox, panel, side } = layout;
      if (side) tag.position.set(this.low.x, panel.frame.y - 17);
      else tag.position.set(Math.min(this.low.x, layout.stand.x - w / 2), endBox.y + 20);
      this.tags.set(heat, tag);
      this.node.addChild(tag);
    }
  }
}

function wispTexture(R: number): Texture {
  return painted(R * 0.5, R * 0.8, 0.7, (pen) => {
    for (let i = 0; i < 7; i++) {
      const x = R * 0.25 + Math.sin(i * 1.1) * R * 0.07;
      const y = R * (0.1 + i * 0.1);
      const r = R * (0.1 + 0.015 * i);
      disc(
        pen,
        x,
        y,
        r,
        radial(pen, x, y, 0, r, [
          [0, 'rgba(226,232,234,.42)'],
          [1, 'rgba(226,232,234,0)'],
        ]),
      );
    }
  });
}

function centred(texture: Texture): Sprite {
  const sprite = new Sprite(texture);
  sprite.anchor.set(0.5);
  return sprite;
}
