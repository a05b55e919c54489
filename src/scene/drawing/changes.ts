import { type Container, Graphics, Matrix, Sprite } from 'pixi.js';
import type { Rect } from '../layout.ts';

/** What a picture or a drawing looks like, and where. */
interface Look {
  readonly figures: readonly number[];
  /** What it covers, px of the root's parent. */
  readonly box: Rect;
}

/** A texture's source, or what a drawing consists of. */
interface Updating {
  on(event: 'update', heard: () => void): unknown;
}

type Looks = Map<Container, Look>;

interface Standing {
  readonly at: Matrix;
  readonly alpha: number;
}

/** Room for what a line's joints and the smoothing of edges add, px. */
const BRIM = 4;
/** Beyond so many places at once, one that holds them all. */
const MOST = 5;

/**
 * Tells which places of a scene have to be drawn again. Everything on it is a picture or a drawing, upright or turned;
 * filters and masks, which would reach beyond their own box, are none of it.
 */
export class Changes {
  private before: Looks = new Map();
  private order: readonly Container[] = [];
  private readonly versions = new WeakMap<Updating, { version: number }>();

  /**
   * What differs from the scene as it was at the last call.
   * @returns boxes in px of the root's parent, none where nothing differs; null where all has to be drawn
   */
  since(root: Container): readonly Rect[] | null {
    const looks: Looks = new Map();
    const order: Container[] = [];
    this.gather(root, { at: new Matrix(), alpha: 1 }, looks, order);
    const sameOrder = isSame(order, this.order);
    const before = this.before;
    this.before = looks;
    this.order = order;
    return sameOrder ? differing(before, looks) : null;
  }

  /** The next call has all drawn. */
  forget(): void {
    this.order = [];
  }

  /** @param parent where the node's parent stands and how much of it shows through; null: it is not seen */
  private gather(node: Container, parent: Standing | null, looks: Looks, order: Container[]): void {
    order.push(node);
    const own = parent && node.visible && node.renderable ? standing(node, parent) : null;
    if (own && (node instanceof Sprite || node instanceof Graphics)) looks.set(node, this.lookOf(node, own));
    for (const child of node.children) this.gather(child, own, looks, order);
  }

  private lookOf(node: Sprite | Graphics, { at, alpha }: Standing): Look {
    const { a, b, c, d, tx, ty } = at;
    const { minX, minY, maxX, maxY } = node.bounds;
    const content =
      node instanceof Sprite
        ? [node.texture.uid, node.texture.source.uid, this.versionOf(node.texture.source)]
        : [node.context.uid, this.versionOf(node.context)];
    const figures = [a, b, c, d, tx, ty, alpha, node.tint, minX, minY, maxX, maxY, ...content];
    const known = this.before.get(node);
    return known && isSame(known.figures, figures) ? known : { figures, box: boxOf(node, at) };
  }

  /** How often something has said that it is not what it was. */
  private versionOf(thing: Updating): number {
    let counted = this.versions.get(thing);
    if (!counted) {
      const counter = { version: 0 };
      thing.on('update', () => {
        counter.version += 1;
      });
      this.versions.set(thing, counter);
      counted = counter;
    }
    return counted.version;
  }
}

function standing(node: Container, { at, alpha }: Standing): Standing {
  node.updateLocalTransform();
  return { at: at.clone().append(node.localTransform), alpha: alpha * node.alpha };
}

function differing(before: Looks, now: Looks): readonly Rect[] {
  const boxes: Rect[] = [];
  for (const [node, look] of now) {
    const old = before.get(node);
    if (old === look) continue;
    boxes.push(look.box);
    if (old) boxes.push(old.box);
  }
  for (const [node, look] of before) if (!now.has(node)) boxes.push(look.box);
  return merged(boxes.filter(({ w, h }) => w > 0 && h > 0));
}

/** Boxes that touch become one, and many become one. */
function merged(boxes: readonly Rect[]): readonly Rect[] {
  const kept: Rect[] = [];
  for (const box of boxes) {
    let whole = box;
    for (let i = kept.findIndex((each) => touch(each, whole)); i >= 0; ) {
      whole = both(whole, kept.splice(i, 1)[0]!);
      i = kept.findIndex((each) => touch(each, whole));
    }
    kept.push(whole);
  }
  return kept.length > MOST ? [kept.reduce(both)] : kept;
}

function touch(a: Rect, b: Rect): boolean {
  return a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
}

function both(a: Rect, b: Rect): Rect {
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y };
}

function boxOf(node: Sprite | Graphics, at: Matrix): Rect {
  const { minX, minY, maxX, maxY } = node.bounds;
  if (!(maxX > minX || maxY > minY)) return { x: 0, y: 0, w: 0, h: 0 };
  const corners = [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: minX, y: maxY },
    { x: maxX, y: maxY },
  ].map((corner) => at.apply(corner));
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const x = Math.min(...xs) - BRIM;
  const y = Math.min(...ys) - BRIM;
  return { x, y, w: Math.max(...xs) + BRIM - x, h: Math.max(...ys) + BRIM - y };
}

function isSame<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((each, i) => each === b[i]);
}
