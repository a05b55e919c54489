import { Container, Graphics, Sprite, Texture } from 'pixi.js';
import type { LookView } from '../bench/observation.ts';
import type { Layout } from './layout.ts';
import { paintLensTool } from './paint/tools.ts';
import type { Point } from './project.ts';
import { type Pen, painted } from './surface.ts';

type Say = (text: string) => string;
type PaintLook = (pen: Pen, r: number, look: LookView, say: Say | null) => void;

export interface LensOptions {
  /** Words on the bench; false leaves them out. */
  readonly lettering: boolean;
  readonly say: Say;
  /** Asked for once what a look paints with has come: it is fetched with the first look. */
  readonly redraw: () => void;
}

/** The lens as a tool, and the round in which it shows the last place it was held to. */
export class Lens {
  readonly tool: Sprite;
  readonly round = new Container();
  private readonly line = new Graphics();
  private readonly picture = new Sprite();
  private readonly layout: Layout;
  private readonly resolution: number;
  private readonly options: LensOptions;
  private shown = '';
  private painter: PaintLook | 'coming' | null = null;

  constructor(layout: Layout, resolution: number, options: LensOptions) {
    this.layout = layout;
    this.resolution = resolution;
    this.options = options;
    const box = layout.tools.lens;
    const r = Math.max(10, Math.min(22, box.h * (layout.side ? 0.26 : 0.2), box.w * 0.26));
    const size = r * 6;
    this.tool = new Sprite(
      painted(size, size, Math.max(2, resolution), (pen) => {
        pen.translate(size / 2, size / 2);
        paintLensTool(pen, r);
      }),
    );
    this.tool.anchor.set(0.5);
    this.round.addChild(this.line, this.picture);
  }

  /** @param at where a hand carries the lens; @param target where the place looked at lies now */
  show(look: LookView | null, at: Point | null, target: Point | null): void {
    const box = this.layout.tools.lens;
    this.tool.position.set(
      at?.x ?? box.x + box.w / 2 - 6,
      at?.y ?? box.y + box.h * (this.layout.side ? 0.45 : 0.38),
    );
    this.round.visible = look !== null;
    if (look === null) return;
    this.paint(look);
    this.line.clear();
    if (!target || !this.layout.side) return;
    const { x, y, r } = this.layout.lens;
    const d = Math.hypot(target.x - x, target.y - y) || 1;
    const from = { x: x + ((target.x - x) / d) * r, y: y + ((target.y - y) / d) * r };
    this.line
      .moveTo(from.x, from.y)
      .lineTo(target.x, target.y)
      .stroke({ width: 1.6, color: 0xe9cd84, alpha: 0.8 });
    this.line.circle(target.x, target.y, 9).stroke({ width: 1.8, color: 0xe9cd84 });
  }

  private async fetchPainter(): Promise<void> {
    if (this.painter !== null) return;
    this.painter = 'coming';
    const { paintLook } = await import('./paint/lookView.ts');
    this.painter = paintLook;
    this.options.redraw();
  }

  private paint(look: LookView): void {
    const painter = this.painter;
    if (typeof painter !== 'function') return void this.fetchPainter();
    const key = `${look.place}|${look.sees.join()}`;
    if (key === this.shown) return;
    this.shown = key;
    const { x, y, r } = this.layout.lens;
    const w = r * 2 + 60;
    const h = r * 2 + 70;
    const old = this.picture.texture;
    this.picture.texture = painted(w, h, Math.max(this.resolution, 1.5), (pen) => {
      pen.translate(w / 2, r + 14);
      painter(pen, r, look, this.options.lettering ? this.options.say : null);
    });
    this.picture.position.set(x - w / 2, y - r - 14);
    if (old !== Texture.EMPTY) old.destroy(true);
  }
}
