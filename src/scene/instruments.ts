import { Container, Graphics, Sprite } from 'pixi.js';
import type { Observation } from '../bench/observation.ts';
import type { Place } from '../bench/places.ts';
import type { Layout, Rect } from './layout.ts';
import { font, INK } from './materials.ts';
import { paintFace } from './paint/instrumentFace.ts';
import { clipPoint, type Situation } from './pose.ts';
import type { Point } from './project.ts';
import { type Face, faceOf, INSTRUMENTS, type Instrument, isInUse, SWEEP, scaleShare } from './railShape.ts';
import { painted, still } from './surface.ts';

/** What one instrument shows. */
interface Shown {
  /** What its needle points at; null, at rest. */
  readonly reading: number | null;
  readonly figures: string;
  readonly small: string;
  /** The button is down. */
  readonly on: boolean;
  /** A warning burns: a voltage that could hurt, or a current that flows. */
  readonly warns: boolean;
}

const COLOUR: Readonly<Record<Instrument, number>> = { tester: 0xa8483b, drop: 0x6a9bb0 };

function shownBy({ tester, drop }: Observation, which: Instrument): Shown {
  if (which === 'tester') {
    const figures = tester.megohms === null ? '– MΩ' : `${tester.over ? '> ' : ''}${tester.megohms} MΩ`;
    const { megohms: reading, pressed: on, charged: warns } = tester;
    return { reading, figures, small: `${tester.volt} V`, on, warns };
  }
  const figures = drop.millivolts === null ? '– mV' : `${drop.over ? '> ' : ''}${drop.millivolts} mV`;
  const { millivolts: reading, feedA } = drop;
  return { reading, figures, small: `${feedA} A`, on: false, warns: feedA > 0 };
}

/** Insulation tester and millivolt-drop set as they lie on the bench while they are in use, with their clips. */
export class Instruments {
  readonly node = new Container();
  private readonly faces: ReadonlyMap<Instrument, InstrumentFace>;
  private readonly wires = new Graphics();

  constructor(layout: Layout, resolution: number, lettering: boolean) {
    this.faces = new Map(
      INSTRUMENTS.flatMap((which) => {
        const box = layout.instruments[which];
        return box ? [[which, new InstrumentFace(which, box, resolution, lettering)]] : [];
      }),
    );
    for (const { node } of this.faces.values()) this.node.addChild(node);
    this.node.addChild(this.wires);
  }

  show(s: Situation): void {
    this.wires.clear();
    for (const [which, face] of this.faces) {
      face.node.visible = isInUse(s.seen, which);
      if (!face.node.visible) continue;
      face.show(shownBy(s.seen, which));
      this.join(s, which, face.face);
    }
  }

  private join(s: Situation, which: Instrument, { posts }: Face): void {
    const { leads, drop } = s.seen;
    this.wire(s, posts[0], leads[`${which}.1`].touches, COLOUR[which]);
    this.wire(s, posts[1], leads[`${which}.2`].touches, COLOUR[which]);
    if (which !== 'drop' || drop.feed === null) return;
    for (const place of drop.feed) this.wire(s, posts[2], place, 0xd0902f, 2);
  }

  /** A cable from the instrument to a clip on metal. */
  private wire(s: Situation, from: Point, place: Place | null, color: number, heavier = 0): void {
    const metal = place === null ? null : clipPoint(s, place);
    if (metal === null) return;
    // A clip of the feed and one of the meter may share a contact: neither hides the other.
    const aside = heavier > 0 ? -5 : 5;
    const to = { x: metal.x + aside, y: metal.y + aside };
    const over = s.layout.mode === 'narrow' ? (from.y + to.y) / 2 + 16 : Math.min(from.y, to.y) - 18;
    // To the armature in the cradle along the growler and up, so that it hides neither core nor bars.
    const { side, sideBox } = s.layout;
    const toCradle = side !== null && to.x < sideBox!.w;
    const sag = toCradle ? { x: to.x, y: from.y } : { x: (from.x + to.x) / 2, y: over };
    for (const [width, tint] of [
      [5 + heavier, 0x0a1416],
      [3 + heavier, color],
    ] as const) {
      this.wires.moveTo(from.x, from.y).quadraticCurveTo(sag.x, sag.y, to.x, to.y);
      this.wires.stroke({ width, color: tint, cap: 'round' });
    }
    this.wires.circle(to.x, to.y, 6 + heavier).fill(0x0a1416);
    this.wires.circle(to.x, to.y, 4 + heavier).fill(color);
  }
}

class InstrumentFace {
  readonly node = new Container();
  private readonly needle = new Graphics();
  private readonly lights = new Graphics();
  private readonly words = new Sprite();
  private readonly which: Instrument;
  private readonly box: Rect;
  readonly face: Face;
  private readonly resolution: number;
  private readonly lettering: boolean;
  private said = '';

  constructor(which: Instrument, box: Rect, resolution: number, lettering: boolean) {
    this.which = which;
    this.face = faceOf(box);
    this.resolution = Math.max(2, resolution);
    this.lettering = lettering;
    this.box = box;
    const { pivot, length } = this.face;
    const body = still(box, this.resolution, (pen) => paintFace(pen, box, which));
    this.needle.visible = length > 0;
    this.needle.poly([-1.6, 3, 1.6, 3, 0.4, -length, -0.4, -length]).fill(0x1b2a2e);
    this.needle.position.set(pivot.x, pivot.y);
    this.words.position.set(box.x, box.y);
    this.node.addChild(body, this.needle, this.lights, this.words);
  }

  show({ reading, figures, small, on, warns }: Shown): void {
    this.needle.rotation = SWEEP * (2 * scaleShare(this.which, reading) - 1);
    const { x, y, r } = this.face.button;
    this.lights.clear();
    if (warns) this.lights.circle(x, y, this.which === 'tester' ? r : 6).fill(0xffa63a);
    if (this.which === 'tester') this.lights.circle(x, y, r - (on ? 5 : 3)).fill(on ? 0x7c1d08 : 0xb5402c);
    this.say(figures, small);
  }

  private say(figures: string, small: string): void {
    const text = `${figures}|${small}`;
    if (!this.lettering || text === this.said) return;
    if (this.said !== '') this.words.texture.destroy(true);
    this.said = text;
    const { box, face } = this;
    const { x, y, h, px } = face.figures;
    this.words.texture = painted(box.w, box.h, this.resolution, (pen) => {
      pen.translate(-box.x, -box.y);
      pen.fillStyle = INK;
      pen.font = font(px, 700);
      pen.textBaseline = 'middle';
      pen.fillText(figures, x + 4, y + h / 2 + 0.5, face.figures.w - 8);
      if (face.small === null) return;
      pen.fillStyle = '#cfe0dd';
      pen.font = font(Math.min(11, Math.max(10, box.w * 0.085)), 600);
      pen.textAlign = 'right';
      pen.textBaseline = 'alphabetic';
      pen.fillText(small, face.small.x, face.small.y);
    });
  }
}
