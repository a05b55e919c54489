import { type Container, Graphics, Matrix, Sprite } from 'pixi.js';
import type { Rect } from '../layout.ts';

/** What a picture or a drawing looked like when it was last drawn, and where. One for each, written over in every frame. */
interface Look {
  readonly at: Matrix;
  alpha: number;
  tint: number;
  /** Its own px, before it is placed. */
  readonly own: { minX: number; minY: number; maxX: number; maxY: number };
  content: Counted | null;
  version: number;
  /** What it covers, px of the root's parent; null while it is not seen. */
  box: Rect | null;
}

/** A texture's source, or what a drawing consists of. */
type Content = Sprite['texture']['source'] | Graphics['context'];

/** How often a content has said that it is not what it was. */
interface Counted {
  readonly of: Content;
  version: number;
}

/** Room for what a line's joints and the smoothing of edges add, px. */
const BRIM = 4;
/** To go through the scene once more costs as much as drawing so much of it, square px. */
const ONCE_MORE = 200_000;

/**
 * Tells which places of a scene have to be drawn again. Everything on it is a picture or a drawing, upright or turned;
 * filters and masks, which would reach beyond their own box, are none of it. It is asked in every frame, so nothing is
 * made anew where nothing differs.
 */
export class Changes {
  private readonly looks = new WeakMap<Container, Look>();
  private readonly counted = new WeakMap<Content, Counted>();
  /** Everything in the order it lies, seen or not. */
  private readonly order: Container[] = [];
  private sameOrder = true;
  private next = 0;
  private boxes: Rect[] = [];
  /** Where the nodes above the one looked at stand, by depth. */
  private readonly standing: Matrix[] = [new Matrix()];

  /**
   * What differs from the scene as it was at the last call.
   * @returns boxes in px of the root's parent, none where nothing differs; null where all has to be drawn
   */
  since(root: Container): readonly Rect[] | null {
    this.boxes = [];
    this.sameOrder = true;
    this.next = 0;
    this.gather(root, 1, 1, true);
    if (this.next !== this.order.length) this.sameOrder = false;
    this.order.length = this.next;
    return this.sameOrder ? merged(this.boxes) : null;
  }

  /** The next call has all drawn. */
  forget(): void {
    this.order.length = 0;
  }

  /** @param alpha how much of the node's parent shows through @param shown whether that parent is seen at all */
  private gather(node: Container, depth: number, alpha: number, shown: boolean): void {
    if (this.order[this.next] !== node) this.sameOrder = false;
    this.order[this.next] = node;
    this.next += 1;
    const seen = shown && node.visible && node.renderable;
    const own = alpha * node.alpha;
    if (seen) this.place(node, depth);
    if (node instanceof Sprite) this.compare(node, node.texture.source, depth, own, seen);
    else if (node instanceof Graphics) this.compare(node, node.context, depth, own, seen);
    for (const child of node.children) this.gather(child, depth + 1, own, seen);
  }

  private place(node: Container, depth: number): void {
    node.updateLocalTransform();
    this.standing[depth] ??= new Matrix();
    this.standing[depth].copyFrom(this.standing[depth - 1]!).append(node.localTransform);
  }

  private compare(
    node: Sprite | Graphics,
    content: Content,
    depth: number,
    alpha: number,
    seen: boolean,
  ): void {
    const look = this.lookOf(node);
    if (!seen) {
      if (look.box) this.boxes.push(look.box);
      look.box = null;
      return;
    }
    const at = this.standing[depth]!;
    const counted = look.content?.of === content ? look.content : this.countedOf(content);
    const { bounds, tint } = node;
    const same =
      look.box !== null &&
      look.content === counted &&
      look.version === counted.version &&
      look.alpha === alpha &&
      look.tint === tint &&
      look.at.equals(at) &&
      hasSameBounds(look.own, bounds);
    if (same) return;
    if (look.box) this.boxes.push(look.box);
    const { minX, minY, maxX, maxY } = bounds;
    look.at.copyFrom(at);
    Object.assign(look.own, { minX, minY, maxX, maxY });
    Object.assign(look, { alpha, tint, content: counted, version: counted.version, box: boxOf(node, at) });
    if (look.box) this.boxes.push(look.box);
  }

  private lookOf(node: Container): Look {
    let look = this.looks.get(node);
    if (!look) {
      const own = { minX: 0, minY: 0, maxX: 0, maxY: 0 };
      look = { at: new Matrix(), alpha: 0, tint: 0, own, content: null, version: 0, box: null };
      this.looks.set(node, look);
    }
    return look;
  }

  private countedOf(content: Content): Counted {
    const known = this.counted.get(content);
    if (known) return known;
    const counted: Counted = { of: content, version: 0 };
    const count = () => {
      counted.version += 1;
    };
    if ('instructions' in content) content.on('update', count);
    else content.on('update', count);
    this.counted.set(content, counted);
    return counted;
  }
}

function hasSameBounds(own: Look['own'], { minX, minY, maxX, maxY }: Look['own']): boolean {
  return own.minX === minX && own.minY === minY && own.maxX === maxX && own.maxY === maxY;
}

/** Boxes become one where that costs less than drawing each by itself; so do all that touch. */
function merged(boxes: readonly Rect[]): readonly Rect[] {
  const kept: Rect[] = [];
  for (const box of boxes) {
    let whole = box;
    for (let i = kept.findIndex((each) => belong(each, whole)); i >= 0; ) {
      whole = both(whole, kept.splice(i, 1)[0]!);
      i = kept.findIndex((each) => belong(each, whole));
    }
    kept.push(whole);
  }
  return kept;
}

function belong(a: Rect, b: Rect): boolean {
  return touch(a, b) || area(both(a, b)) < area(a) + area(b) + ONCE_MORE;
}

function area({ w, h }: Rect): number {
  return w * h;
}

function touch(a: Rect, b: Rect): boolean {
  return a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
}

function both(a: Rect, b: Rect): Rect {
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y };
}

function boxOf(node: Sprite | Graphics, { a, b, c, d, tx, ty }: Matrix): Rect | null {
  const { minX, minY, maxX, maxY } = node.bounds;
  if (!(maxX > minX || maxY > minY)) return null;
  const x = Math.min(a * minX, a * maxX) + Math.min(c * minY, c * maxY) + tx;
  const y = Math.min(b * minX, b * maxX) + Math.min(d * minY, d * maxY) + ty;
  const w = Math.abs(a) * (maxX - minX) + Math.abs(c) * (maxY - minY);
  const h = Math.abs(b) * (maxX - minX) + Math.abs(d) * (maxY - minY);
  return { x: x - BRIM, y: y - BRIM, w: w + 2 * BRIM, h: h + 2 * BRIM };
}
