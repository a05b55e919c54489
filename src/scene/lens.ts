import { Container, Graphics, Sprite } from 'pixi.js';
import type { LookView } from '../bench/observation.ts';
import { CloseUp, type CloseUpOptions } from './closeUp.ts';
import type { Layout } from './layout.ts';
import type { Point } from './project.ts';
import { hangingRoom, tileRoom } from './railShape.ts';
import type { Easel } from './studio/easel.ts';
import { around } from './studio/order.ts';

/** The lens as a tool, and the round in which it shows the last place it was held to. */
export class Lens {
  readonly tool: Sprite;
  readonly round = new Container();
  private readonly line = new Graphics();
  private readonly closeUp: CloseUp<LookView>;
  private readonly layout: Layout;
  /** Height of its glass on the rail, px. */
  private readonly restY: number;

  constructor(layout: Layout, easel: Easel, options: CloseUpOptions) {
    this.layout = layout;
    const box = layout.tools.lens;
    const { top, foot } = layout.side ? hangingRoom(box) : tileRoom(box);
    // Its handle ends above its name.
    const r = Math.max(layout.side ? 7 : 4.5, Math.min(22, (foot - top) / 2.8, box.w * 0.26));
    this.restY = top + r * 1.1;
    const fine = { resolution: Math.max(2, easel.resolution) };
    this.tool = new Sprite(easel.picture('lensTool', { r }, around(r * 6), fine));
    this.tool.anchor.set(0.5);
    this.closeUp = new CloseUp(layout, easel.resolution, options, async () => {
      const { paintLook } = await import('./paint/lookView.ts');
      return paintLook;
    });
    this.round.addChild(this.line, this.closeUp.node);
  }

  /**
   * @param shut what it shows has been put out of the way
   * @param at where a hand carries the lens
   * @param target where the place looked at lies now
   */
  show(look: LookView | null, shut: boolean, at: Point | null, target: Point | null): void {
    const box = this.layout.tools.lens;
    this.tool.position.set(at?.x ?? box.x + box.w / 2 - 6, at?.y ?? this.restY);
    this.round.visible = look !== null;
    this.closeUp.show(look, shut);
    if (look !== null) this.pointAt(shut ? null : target);
  }

  private pointAt(target: Point | null): void {
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
}
