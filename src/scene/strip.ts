import { Container, Graphics } from 'pixi.js';
import type { StripView } from '../bench/observation.ts';
import { GRIP, STRIP_HEIGHT_MM, STRIP_PX_PER_MM, stripInHand, stripLeft } from './handling/stripSpots.ts';
import type { Layout } from './layout.ts';
import type { Makers, Ribbon } from './makers.ts';
import type { Situation } from './pose.ts';
import { onEnd, onSide, type Point } from './project.ts';
import { middleOf, stripHeight, tileRoom } from './railShape.ts';
import type { Easel } from './studio/easel.ts';

const HEIGHT = 34;
/** How far off the core a strip held as low as can be is drawn, and one that lies on the iron, px. */
const STAND_OFF = 7;
const ON_IRON = 1.5;

/** How far the steel gives to a pull along its length: held at the grip, drawn down over the core. */
function bow(share: number): number {
  const t = Math.min(1, Math.max(0, (share - 0.16) / 0.34));
  return t * t * (3 - 2 * t);
}

/** Shape of the vibration: still in the hand, widest at the free end. */
function swing(share: number): number {
  return Math.max(0, share - 0.16) * 1.4;
}

/** The steel strip: on the rail, in a hand, or held along the core, where it bends, blurs and snaps on. */
export class Strip {
  readonly front = new Container();
  readonly back = new Container();
  readonly end = new Graphics();
  private readonly blades: Ribbon[];
  private readonly shadow = new Graphics();
  private readonly veil = new Graphics();
  private readonly length: number;
  private readonly grip: number;
  private shown = '';

  constructor(layout: Layout, easel: Easel, makers: Makers) {
    this.length = layout.side
      ? layout.side.x.coreRight - layout.side.x.coreLeft + layout.side.r.core * 0.62 + GRIP
      : layout.end.core * 2;
    this.grip = layout.side ? GRIP : this.length * 0.24;
    const { length, grip } = this;
    const box = { x: 0, y: 0, w: length + 12, h: HEIGHT };
    const resolution = Math.max(2, easel.resolution);
    const texture = easel.picture('strip', { length, height: HEIGHT, grip }, box, { resolution });
    this.blades = [0, 1, 2].map(() => makers.ribbon(texture));
    this.front.addChild(this.shadow, ...this.blades.map((blade) => blade.node));
  }

  /** @param at where a hand carries it, px, or null where it rests by itself */
  show(s: Situation, view: StripView, at: Point | null): void {
    const held = view.at === 'hand' ? stripInHand(s) : null;
    const shown = JSON.stringify([view, at, held]);
    // Drawn anew it would count as changed, and so would the bench round it.
    if (shown === this.shown) return;
    this.shown = shown;
    this.shadow.clear();
    this.veil.clear();
    this.end.clear();
    for (const { node } of this.blades) node.visible = false;
    if (at) this.flat(at.x - this.length * 0.18, at.y, this.scaleIn(s.layout));
    else if (view.at === 'rail') this.hang(s.layout);
    else if (view.at === 'core' && view.angleDeg !== null) this.overCore(s, view, view.angleDeg);
    else if (held) this.flat(held.x - 20, held.y, this.scaleIn(s.layout));
  }

  private scaleIn(layout: Layout): number {
    return layout.side ? 1 : 0.7;
  }

  /** @param x of the grip's outer end */
  private flat(x: number, y: number, scale: number): void {
    const { node } = this.blades[0]!;
    const w = (this.length + 12) * scale;
    node.visible = true;
    node.alpha = 1;
    this.front.addChild(node);
    this.blades[0]!.lay((share) => ({ x: x - 6 * scale + w * share, y }), HEIGHT * scale);
  }

  private hang(layout: Layout): void {
    const box = layout.tools.strip;
    const scale = Math.min(1, box.w / (this.length + 12));
    this.flat(box.x + 6 * scale, layout.side ? stripHeight(box) : middleOf(tileRoom(box)), scale);
  }

  private overCore(s: Situation, view: StripView, angle: number): void {
    const height = view.heightMm ?? STRIP_HEIGHT_MM;
    const pull = Math.min(4, view.pull) / 4;
    const clear = STAND_OFF + height * STRIP_PX_PER_MM;
    const g = s.layout.side;
    this.endOn(s, view, angle, clear * (1 - pull) + ON_IRON * pull);
    if (!g) return;
    const front = onSide(g.axisY, 0, g.r.core, angle).facing;
    const home = front < -0.2 ? this.back : this.front;
    const amp = view.buzz * 1.5;
    const left = stripLeft(g);
    const draw = HEIGHT * Math.max(0.24, Math.abs(front) * 0.92);
    [0, amp, -amp].forEach((offset, i) => {
      const blade = this.blades[i]!;
      if (blade.node.parent !== home) home.addChild(blade.node);
      blade.node.visible = i === 0 || view.buzz > 0;
      blade.node.alpha = view.buzz > 0 ? (i === 0 ? 0.8 : 0.4) : 1;
      blade.lay((share) => {
        const bend = pull * bow(share);
        const lift = clear * (1 - bend) + ON_IRON * bend + offset * swing(share);
        return onSide(g.axisY, left + this.length * share, g.r.core + lift, angle);
      }, draw);
    });
    if (amp > 0)
      this.blur(home, (share, way) => {
        const bend = pull * bow(share);
        const lift = clear * (1 - bend) + ON_IRON * bend + way * amp * swing(share);
        const p = onSide(g.axisY, left + this.length * share, g.r.core + lift, angle);
        return { x: p.x, y: p.y + (way * -draw) / 6 };
      });
    this.castShadow(s, angle, clear * (1 - pull) + 1, front);
  }

  /** What the eye keeps of a shaken blade: a veil between its two turning points. */
  private blur(home: Container, at: (share: number, way: 1 | -1) => Point): void {
    if (this.veil.parent !== home) home.addChildAt(this.veil, 0);
    const shares = Array.from({ length: 9 }, (_, i) => 0.2 + 0.1 * i);
    const edge = [
      ...shares.map((share) => at(share, 1)),
      ...shares.toReversed().map((share) => at(share, -1)),
    ];
    this.veil.poly(edge.flatMap(({ x, y }) => [x, y])).fill({ color: 0xe4eef0, alpha: 0.3 });
  }

  /** The nearer the strip, the closer its shadow lies under it. */
  private castShadow(s: Situation, angle: number, lift: number, facing: number): void {
    const g = s.layout.side;
    if (!g || facing < 0) return;
    const p = onSide(g.axisY, g.x.coreLeft, g.r.core, angle);
    const h = 15 * Math.max(0.2, facing);
    this.shadow
      .rect(p.x, p.y - h / 2 + lift * 0.9, g.x.coreRight - g.x.coreLeft, h)
      .fill({ color: 0x000000, alpha: Math.max(0.12, 0.42 - lift * 0.012) });
  }

  /** Seen end-on: thirteen millimetres wide, thinner than a line, straight over the slot it lies on. */
  private endOn(s: Situation, view: StripView, angle: number, lift: number): void {
    const g = s.layout.end;
    const half = (6.5 * g.pxPerM) / 1000;
    const rad = (angle * Math.PI) / 180;
    const along = { x: Math.cos(rad), y: -Math.sin(rad) };
    const amp = view.buzz * 0.7;
    const p = onEnd(g, g.core + lift, angle);
    const a = { x: p.x - along.x * half, y: p.y - along.y * half };
    const b = { x: p.x + along.x * half, y: p.y + along.y * half };
    for (const [width, color, alpha] of [
      [2 * amp + 6, 0x0a1214, 0.8],
      [2 * amp + 3.4, 0xdfe9ea, amp > 0 ? 0.45 : 1],
      [3.4, 0xdfe9ea, 0.9],
    ] as const) {
      this.end.moveTo(a.x, a.y).lineTo(b.x, b.y).stroke({ width, color, alpha, cap: 'round' });
    }
    this.knob(s, angle, lift);
  }

  /** The hand's end of the strip, as something to take hold of in the end view. */
  private knob(s: Situation, angle: number, lift: number): void {
    const p = onEnd(s.layout.end, s.layout.end.core + lift + 14, angle);
    const q = onEnd(s.layout.end, s.layout.end.core + lift + 2, angle);
    this.end.moveTo(q.x, q.y).lineTo(p.x, p.y).stroke({ width: 3, color: 0xc8b184 });
    this.end
      .circle(p.x, p.y, 8)
      .fill(0x7a4f2a)
      .circle(p.x - 2, p.y - 2, 3)
      .fill({ color: 0xf0c896, alpha: 0.8 });
  }
}

/** Strip with its wooden grip at the left: pen's origin at the corner of the picture. */
