import { Container, Sprite, type Texture, type TextureSource } from 'pixi.js';
import type { Pen } from './pen.ts';
import { fullTurn, TILT_DEG } from './project.ts';
import { laySkin, type SkinPixels } from './skinLaying.ts';
import { type SkinMap, skinMap } from './skinMap.ts';
import { SKIN_TURNS } from './skinPlan.ts';
import { painted } from './surface.ts';
import type { Ring } from './turningSkin.ts';

/**
 * A turned part for a renderer that only knows upright pictures. Each of its px is mixed from the skin here and all are
 * handed over as one picture, anew only when the part has turned: a canvas that draws slices aslant takes longer.
 */
export class MappedSkin {
  readonly node = new Container();
  private readonly map: SkinMap;
  private readonly source: TextureSource;
  private readonly laid: Texture;
  private readonly pen: Pen;
  private readonly image: ImageData;
  private readonly px: Uint32Array;
  private firstDeg: number | null = null;

  /** @param resolution device px per CSS px of the bench */
  constructor(skin: Texture, axisY: number, rings: readonly Ring[], resolution: number) {
    this.source = skin.source;
    this.map = skinMap(axisY, rings, skin.source, resolution);
    const { box, width, height } = this.map;
    this.image = new ImageData(width, height);
    this.px = new Uint32Array(this.image.data.buffer);
    let pen: Pen | undefined;
    this.laid = painted(box.w, box.h, resolution, (its) => {
      pen = its;
    });
    this.pen = pen!;
    const sprite = new Sprite(this.laid);
    sprite.position.set(box.x, box.y);
    this.node.addChild(sprite);
    this.source.on('update', () => {
      this.firstDeg = null;
    });
  }

  turnTo(rotationDeg: number): void {
    const first = fullTurn(-180 - TILT_DEG - rotationDeg);
    if (first === this.firstDeg) return;
    this.firstDeg = first;
    const down = (first / (360 * SKIN_TURNS)) * this.source.pixelHeight;
    laySkin(this.map, pixelsOf(this.source), down, this.px);
    this.pen.putImageData(this.image, 0, 0);
    this.laid.source.update();
  }
}

/** Read once for all stretches that have a skin in common. */
const read = new WeakMap<object, SkinPixels>();

/** The last line stands twice, for what would lie between it and the next. */
function pixelsOf({ resource, pixelWidth, pixelHeight }: TextureSource): SkinPixels {
  const known = read.get(resource);
  if (known) return known;
  const pen = readingPen(pixelWidth, pixelHeight + 1);
  pen.drawImage(resource, 0, 1);
  pen.drawImage(resource, 0, 0);
  const { data } = pen.getImageData(0, 0, pixelWidth, pixelHeight + 1);
  const pixels = { px: new Uint32Array(data.buffer), stride: pixelWidth };
  read.set(resource, pixels);
  return pixels;
}

function readingPen(width: number, height: number): Pen {
  const canvas = document.createElement('canvas');
  Object.assign(canvas, { width, height });
  return canvas.getContext('2d', { willReadFrequently: true })!;
}

let reads: boolean | null = null;

/** Some browsers hand out noise instead of px, so that nobody is known by how theirs draws. */
export function readsPixels(): boolean {
  reads ??= readsBack([0x40, 0x80, 0xc0, 0xff]);
  return reads;
}

function readsBack([red, green, blue, alpha]: readonly [number, number, number, number]): boolean {
  const size = 4;
  const pen = readingPen(size, size);
  pen.fillStyle = `rgb(${red} ${green} ${blue})`;
  pen.fillRect(0, 0, size, size);
  const painted = [red, green, blue, alpha];
  const { data } = pen.getImageData(0, 0, size, size);
  return data.every((value, i) => Math.abs(value - painted[i % 4]!) <= 3);
}
