import { Container, Sprite, Texture } from 'pixi.js';
import type { Layout } from './layout.ts';
import type { Pen } from './pen.ts';
import { painted } from './surface.ts';

export type Say = (text: string) => string;

/** Paints what is seen large. Pen's origin at the middle of the round, r its radius; `say` null leaves words out. */
export type PaintCloseUp<View> = (pen: Pen, r: number, view: View, say: Say | null) => void;

export interface CloseUpOptions {
  /** Words on the bench; false leaves them out. */
  readonly lettering: boolean;
  readonly say: Say;
  /** Asked for once what it paints with has come: it is fetched with the first thing shown. */
  readonly redraw: () => void;
}

/** The round in which something is shown large: what the lens sees, what a gauge shows. */
export class CloseUp<View> {
  readonly node = new Container();
  private readonly picture = new Sprite();
  private readonly round: Layout['lens'];
  private readonly resolution: number;
  private readonly options: CloseUpOptions;
  private readonly fetch: () => Promise<PaintCloseUp<View>>;
  private painter: PaintCloseUp<View> | 'coming' | null = null;
  private shown = '';

  constructor(
    round: Layout['lens'],
    resolution: number,
    options: CloseUpOptions,
    fetch: () => Promise<PaintCloseUp<View>>,
  ) {
    this.round = round;
    this.resolution = resolution;
    this.options = options;
    this.fetch = fetch;
    this.node.addChild(this.picture);
  }

  show(view: View | null): void {
    this.node.visible = view !== null;
    if (view === null) return;
    if (typeof this.painter === 'function') this.paint(view, this.painter);
    else void this.fetchPainter();
  }

  private async fetchPainter(): Promise<void> {
    if (this.painter !== null) return;
    this.painter = 'coming';
    this.painter = await this.fetch();
    this.options.redraw();
  }

  private paint(view: View, painter: PaintCloseUp<View>): void {
    const key = JSON.stringify(view);
    if (key === this.shown) return;
    this.shown = key;
    const { x, y, r } = this.round;
    const w = r * 2 + 60;
    const h = r * 2 + 70;
    const old = this.picture.texture;
    this.picture.texture = painted(w, h, Math.max(this.resolution, 1.5), (pen) => {
      pen.translate(w / 2, r + 14);
      painter(pen, r, view, this.options.lettering ? this.options.say : null);
    });
    this.picture.position.set(x - w / 2, y - r - 14);
    if (old !== Texture.EMPTY) old.destroy(true);
  }
}
