import { Container, Graphics, Sprite } from 'pixi.js';
import type { Observation } from '../bench/observation.ts';
import type { Place } from '../bench/places.ts';
import { onArmature } from '../bench/state.ts';
import { type Cord, cordRun, inEndView } from './clips.ts';
import type { Layout, Rect } from './layout.ts';
import { font, INK } from './materials.ts';
import { paintFace } from './paint/instrumentFace.ts';
import type { Situation } from './pose.ts';
import { onEnd, type Point } from './project.ts';
import { type Face, faceOf, INSTRUMENTS, type Instrument, isInUse, scaleAngle } from './railShape.ts';
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
const FEED = 0xd0902f;

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
  /** Behind the armature, and over the end view. */
  readonly back = new Graphics();
  readonly end = new Graphics();
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
    for (const pen of [this.wires, this.back, this.end]) pen.clear();
    for (const [which, face] of this.faces) {
      face.node.visible = isInUse(s.seen, which);
      if (!face.node.visible) continue;
      face.show(shownBy(s.seen, which));
      this.join(s, which, face.face);
    }
  }

  private join(s: Situation, which: Instrument, { posts }: Face): void {
    const { leads, drop } = s.seen;
    this.wire(s, posts[0], leads[`${which}.1`].touches, 0, COLOUR[which]);
    this.wire(s, posts[1], leads[`${which}.2`].touches, 1, COLOUR[which]);
    if (which !== 'drop' || drop.feed === null) return;
    this.wire(s, posts[2], drop.feed[0], 2, FEED);
    this.wire(s, posts[2], drop.feed[1], 3, FEED);
  }

  /** A cable from the instrument to a clip on metal, and the clip as the commutator end shows it. */
  private wire(s: Situation, from: Point, place: Place | null, cord: Cord, colour: number): void {
    const run = place === null ? null : cordRun(s, from, place, cord);
    if (place === null || run === null) return;
    const width = cord > 1 ? 5 : 3;
    const small = s.layout.side && onArmature(place) && s.seen.cradle !== 'armature' ? 0.6 : 1;
    layCord(this.wires, run.front, width, colour);
    layCord(this.back, run.behind, width, colour);
    if (run.behind.length > 0) closeJaws(this.back, run.behind, small, colour);
    else closeJaws(this.wires, run.front, small, colour);
    if (!s.layout.side || !onArmature(place)) return;
    const { bearingDeg, ...tip } = inEndView(s, place, cord);
    const stub = [onEnd(tip, 52, bearingDeg), tip];
    layCord(this.end, stub, width, colour);
    closeJaws(this.end, stub, 1, colour);
  }
}

function layCord(pen: Graphics, points: readonly Point[], width: number, colour: number): void {
  const [first, ...rest] = points;
  if (!first) return;
  for (const [wide, tint] of [
    [width + 2, 0x0a1416],
    [width, colour],
  ] as const) {
    pen.moveTo(first.x, first.y);
    for (const { x, y } of rest) pen.lineTo(x, y);
    pen.stroke({ width: wide, color: tint, cap: 'round', join: 'round' });
  }
}

/** Two steel jaws at the end of a cable, and the sleeve a hand presses to open them. */
function closeJaws(pen: Graphics, points: readonly Point[], scale: number, colour: number): void {
  const tip = points.at(-1)!;
  const before = points.at(-2)!;
  const [dx, dy] = [before.x - tip.x, before.y - tip.y];
  const length = Math.hypot(dx, dy) || 1;
  const at = (back: number, aside: number): [number, number] => [
    tip.x + ((dx * back - dy * aside) / length) * scale,
    tip.y + ((dy * back + dx * aside) / length) * scale,
  ];
  pen.poly([...at(-1.5, -2.5), ...at(-1.5, 2.5), ...at(13, 6.5), ...at(13, -6.5)]).fill(0x0a1416);
  pen.poly([...at(0, -1.3), ...at(0, 1.3), ...at(12, 4.6), ...at(12, -4.6)]).fill(0xb9c8ca);
  pen.poly([...at(10, -7), ...at(10, 7), ...at(28, 4.5), ...at(28, -4.5)]).fill(0x0a1416);
  pen.poly([...at(11.5, -5.4), ...at(11.5, 5.4), ...at(26.5, 3.2), ...at(26.5, -3.2)]).fill(colour);
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
    const body = still(box, this.resolution, (pen) => paintFace(pen, box, which, lettering));
    this.needle.visible = length > 0;
    this.needle.poly([-1.6, 3, 1.6, 3, 0.4, -length, -0.4, -length]).circle(0, 0, 4).fill(0x1b2a2e);
    this.needle.position.set(pivot.x, pivot.y);
    this.words.position.set(box.x, box.y);
    this.node.addChild(body, this.needle, this.lights, this.words);
  }

  show({ reading, figures, small, on, warns }: Shown): void {
    this.needle.rotation = scaleAngle(this.which, reading);
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
