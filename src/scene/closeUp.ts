import { Container, Sprite, Texture } from 'pixi.js';
import type { Layout, Round } from './layout.ts';
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

/**
 * What is shown large: what the lens sees, what a gauge shows. Put out of the way it is shown small and without words,
 * and a press on that brings it back.
 */
export class CloseUp<View> {
  readonly node = new Container();
  private readonly large: RoundPicture<View>;
  private readonly small: RoundPicture<View>;
  private readonly options: CloseUpOptions;
  private readonly fetch: () => Promise<PaintCloseUp<View>>;
  private painter: PaintCloseUp<View> | 'coming' | null = null;

  constructor(
    { lens, aside }: Pick<Layout, 'lens' | 'aside'>,
    resolution: number,
    options: CloseUpOptions,
    fetch: () => Promise<PaintCloseUp<View>>,
  ) {
    this.large = new RoundPicture(lens, Math.max(resolution, 1.5), options.lettering ? options.say : null);
    this.small = new RoundPicture(aside, Math.max(resolution, 2), null);
    this.options = options;
    this.fetch = fetch;
    this.node.addChild(this.large.node, this.small.node);
  }

  /** @param shut it has been put out of the way */
  show(view: View | null, shut: boolean): void {
    this.node.visible = view !== null;
    if (view === null) return;
    if (typeof this.painter !== 'function') {
      void this.fetchPainter();
      return;
    }
    this.large.node.visible = !shut;
    this.small.node.visible = shut;
    (shut ? this.small : this.large).paint(view, this.painter);
  }

  private async fetchPainter(): Promise<void> {
    if (this.painter !== null) return;
    this.painter = 'coming';
    this.painter = await this.fetch();
    this.options.redraw();
  }
}

/** One round, painted anew when what it shows has changed. */
class RoundPicture<View> {
  readonly node = new Sprite();
  private readonly round: Round;
  private readonly resolution: number;
  private readonly say: Say | null;
  private shown = '';

  constructor(round: Round, resolution: number, say: Say | null) {
    this.round = round;
    this.resolution = resolution;
    this.say = say;
  }

  paint(view: View, painter: PaintCloseUp<View>): void {
    const key = JSON.stringify(view);
    if (key === this.shown) return;
    this.shown = key;
    const { x, y, r } = this.round;
    const w = r * 2 + 60;
    const h = r * 2 + 70;
    const old = this.node.texture;
    this.node.texture = painted(w, h, this.resolution, (pen) => {
      pen.translate(w / 2, r + 14);
      painter(pen, r, view, this.say);
    });
    this.node.position.set(x - w / 2, y - r - 14);
    if (old !== Texture.EMPTY) old.destroy(true);
  }
}
