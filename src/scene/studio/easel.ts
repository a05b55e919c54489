import { ImageSource, Sprite, Texture } from 'pixi.js';
import type { Rect } from '../layout.ts';
import { wholeAround } from '../wholePixels.ts';
import { type Order, type Paint, type Painted, pixelsOf } from './order.ts';
import type { PictureArgs, PictureName } from './pictures.ts';

interface Options {
  /** Device px per CSS px; the easel's own if left out. */
  readonly resolution?: number;
  readonly mipmaps?: boolean;
}

interface Waiting {
  readonly order: Order;
  readonly source: ImageSource;
}

/**
 * Takes orders for the still pictures of one stage and hands out textures at once; they stay empty until their pictures
 * have been painted. What is asked for in one go is painted and comes in one go.
 */
export class Easel {
  readonly resolution: number;
  private readonly paint: Paint;
  private readonly changed: () => void;
  private waiting: Waiting[] = [];
  private first: Promise<void> | null = null;
  private readonly painted = new Set<Painted>();
  private cleared = false;

  /** @param changed told whenever pictures have come after the first set */
  constructor(resolution: number, paint: Paint, changed: () => void) {
    this.resolution = resolution;
    this.paint = paint;
    this.changed = changed;
  }

  /** Kept once all that has been asked for before the first wait is painted. */
  get ready(): Promise<void> {
    return this.first ?? Promise.resolve();
  }

  /** @param box what the picture covers, in the px its painter works in */
  picture<N extends PictureName>(name: N, args: PictureArgs<N>, box: Rect, options: Options = {}): Texture {
    const { resolution = this.resolution, mipmaps = false } = options;
    const order: Order<N> = { name, args, box, resolution };
    const { width, height } = pixelsOf(order);
    const source = new ImageSource({
      resolution,
      width: width / resolution,
      height: height / resolution,
      autoGenerateMipmaps: mipmaps,
      scaleMode: 'linear',
    });
    // Not off by a rounding of 1e-13, or the plain canvas would keep a second copy of the picture.
    source.pixelWidth = width;
    source.pixelHeight = height;
    if (this.waiting.length === 0) this.send();
    this.waiting.push({ order: order as unknown as Order, source });
    return new Texture({ source });
  }

  /**
   * A picture that covers one part of the bench and no more: empty pixels cost as much as painted ones. It lies on whole
   * px, where a renderer copies it instead of blending each px from four.
   * @param box in px of the bench, as its painter works
   */
  still<N extends PictureName>(name: N, args: PictureArgs<N>, box: Rect): Sprite {
    const whole = wholeAround(box);
    return at(new Sprite(this.picture(name, args, whole)), whole);
  }

  /** A picture whose painter begins at its own corner. @param box where it lies */
  placed<N extends PictureName>(name: N, args: PictureArgs<N>, box: Rect): Sprite {
    return at(new Sprite(this.picture(name, args, { x: 0, y: 0, w: box.w, h: box.h })), box);
  }

  hasPainted({ source }: Texture): boolean {
    return this.painted.has(source.resource);
  }

  /** Gives the pictures' memory back; what still comes is dropped. */
  clear(): void {
    this.cleared = true;
    for (const each of this.painted) free(each);
    this.painted.clear();
  }

  private send(): void {
    const isFirst = this.first === null;
    const sent = Promise.resolve().then(() => {
      const set = this.waiting;
      this.waiting = [];
      return this.paint(set.map(({ order }) => order)).then((pictures) => this.hang(set, pictures));
    });
    if (isFirst) this.first = sent;
    else
      void sent.then(() => {
        if (!this.cleared) this.changed();
      });
  }

  private hang(set: readonly Waiting[], pictures: readonly Painted[]): void {
    for (const [i, { source }] of set.entries()) {
      const picture = pictures[i]!;
      if (this.cleared) {
        free(picture);
        continue;
      }
      this.painted.add(picture);
      source.resource = picture;
      source.update();
    }
  }
}

function at(sprite: Sprite, { x, y }: Rect): Sprite {
  sprite.position.set(x, y);
  return sprite;
}

function free(picture: Painted): void {
  if (!(picture instanceof HTMLCanvasElement)) picture.close();
}
