import { Container, type Sprite } from 'pixi.js';
import { MAT_PARTS, type MatPart } from '../bench/action.ts';
import type { Observation } from '../bench/observation.ts';
import type { Job } from '../scenario/public/job.ts';
import type { Layout, Rect } from './layout.ts';
import { font, INK, PAPER } from './materials.ts';
import { paintBrushPlate } from './paint/brushPlate.ts';
import { paintFieldBrushes, paintFieldFrame, paintSlip } from './paint/fieldFrame.ts';
import {
  frameContacts,
  frameGeometry,
  PART_WORDS,
  plateContacts,
  plateGeometry,
  putBackTab,
} from './partShape.ts';
import { linear, type Pen, polygon, roundRect, shadowed } from './pen.ts';
import { roundOf, type Shape } from './shapes.ts';
import { still } from './surface.ts';

type Parts = Pick<Job, 'fieldFrame' | 'brushPlate'>;
/** Puts a painted word into the usage the reader chose; null leaves words out. */
type Say = ((text: string) => string) | null;

/** Field frame and brush plate: small where they stand, large on a board of their own when taken up. */
export class PartBoard {
  readonly node = new Container();
  private readonly small: Partial<Record<MatPart, Sprite>> = {};
  private readonly large: Partial<Record<MatPart, Sprite>> = {};
  /** On a phone, where a part that lies forward covers cradle and stand. */
  private readonly empty: Partial<Record<MatPart, Sprite>> = {};
  private readonly coversStands: boolean;
  private readonly brushes: [joined: Sprite, apart: Sprite] | null = null;

  constructor(layout: Layout, parts: Parts, resolution: number, say: Say) {
    this.coversStands = layout.mode !== 'narrow';
    for (const part of MAT_PARTS) {
      const stand = layout.partStands[part];
      if (!stand) continue;
      this.small[part] = still(stand, resolution * 1.5, (pen) => paintSmall(pen, part, parts, stand, say));
      this.large[part] = still(layout.board, resolution, (pen) => paintLarge(pen, part, parts, layout, say));
      this.node.addChild(this.small[part], this.large[part]);
      if (this.coversStands) continue;
      this.empty[part] = still(stand, resolution * 1.5, (pen) => paintEmptyPlace(pen, stand, say));
      this.node.addChild(this.empty[part]);
    }
    const frame = parts.fieldFrame;
    if (!frame || !layout.partStands.fieldFrame) return;
    const loose = (apart: boolean) =>
      still(layout.board, resolution, (pen) => {
        const g = frameGeometry(layout.board, apart);
        paintFieldBrushes(pen, g, frame);
        paintSlip(pen, g, apart);
        if (say) paintBrushWords(pen, layout.board, apart);
      });
    this.brushes = [loose(false), loose(true)];
    this.node.addChild(...this.brushes);
  }

  show(seen: Observation): void {
    const covered = this.coversStands && MAT_PARTS.some((part) => seen.mat[part] === 'forward');
    for (const part of MAT_PARTS) {
      const small = this.small[part];
      const large = this.large[part];
      if (small) small.visible = seen.mat[part] === 'away' && !covered;
      if (large) large.visible = seen.mat[part] === 'forward';
      const empty = this.empty[part];
      if (empty) empty.visible = seen.mat[part] === 'forward';
    }
    if (!this.brushes) return;
    const forward = seen.mat.fieldFrame === 'forward';
    this.brushes[0].visible = forward && !seen.brushesApart;
    this.brushes[1].visible = forward && seen.brushesApart;
  }
}

/** Lower than this a part's place has room for its name only, px. */
const LOW = 32;
/** Narrower than this it has room for half its name, px. */
const HALF = 60;

function paintSmall(pen: Pen, part: MatPart, parts: Parts, box: Rect, say: Say): void {
  roundRect(pen, box.x + 1, box.y + 1, box.w - 2, box.h - 2, 8);
  pen.fillStyle = 'rgba(6,26,30,.5)';
  pen.fill();
  pen.strokeStyle = 'rgba(150,190,188,.35)';
  pen.lineWidth = 1;
  pen.stroke();
  const half = box.w < HALF;
  const name = half ? PART_WORDS[part].split(' ')[1]! : PART_WORDS[part];
  const size = half ? 10 : 11.5;
  if (say && box.h < LOW) {
    words(pen, name, box.x + box.w / 2, box.y + box.h / 2 + 4, size, 'center', box);
    return;
  }
  const space = say ? (half ? 14 : 18) : 4;
  const r = Math.min(box.w, box.h - space) * 0.42;
  const x = box.x + box.w / 2;
  const y = box.y + (box.h - space) / 2 + 2;
  pen.save();
  pen.translate(x, y);
  pen.scale(r / 100, r / 100);
  const whole = { x: -137, y: -198, w: 274, h: 400 };
  if (part === 'fieldFrame' && parts.fieldFrame) {
    const g = { ...frameGeometry(whole, false), x: 0, y: 0, r: 92, terminal: { x: 0, y: -104 } };
    paintFieldFrame(pen, g, parts.fieldFrame);
  } else paintBrushPlate(pen, centredPlate(100));
  pen.restore();
  if (say) words(pen, name, x, box.y + box.h - (half ? 5 : 9), size, 'center', box);
}

function centredPlate(r: number) {
  const g = plateGeometry({ x: -r * 1.2, y: -r * 1.5, w: r * 2.4, h: r * 3 });
  const shift = <T extends { x: number; y: number }>(p: T): T => ({
    ...p,
    x: ((p.x - g.x) * r) / g.r,
    y: ((p.y - g.y) * r) / g.r,
  });
  return {
    x: 0,
    y: 0,
    r,
    holders: {
      'plate:insulated1': shift(g.holders['plate:insulated1']),
      'plate:insulated2': shift(g.holders['plate:insulated2']),
      'plate:earthed1': shift(g.holders['plate:earthed1']),
      'plate:earthed2': shift(g.holders['plate:earthed2']),
    },
  };
}

function paintLarge(pen: Pen, part: MatPart, parts: Parts, { board: box, mode }: Layout, say: Say): void {
  shadowed(pen, 10, 0, 4, 'rgba(0,0,0,.6)', () => {
    roundRect(pen, box.x + 2, box.y + 2, box.w - 4, box.h - 4, 16);
    pen.fillStyle = linear(pen, 0, box.y, 0, box.y + box.h, [
      [0, '#2b3b41'],
      [1, '#1a262b'],
    ]);
    pen.fill();
  });
  pen.strokeStyle = '#4b7273';
  pen.lineWidth = 2;
  pen.stroke();
  if (part === 'fieldFrame' && parts.fieldFrame) {
    paintFieldFrame(pen, frameGeometry(box, false), parts.fieldFrame);
  } else paintBrushPlate(pen, plateGeometry(box));
  paintTab(pen, putBackTab(box), say);
  if (!say) return;
  words(pen, PART_WORDS[part], box.x + 16, box.y + 24, 14, 'left', {
    x: box.x,
    w: putBackTab(box).x - box.x,
  });
  // On a phone nothing else says what has gone.
  if (mode === 'narrow') words(pen, 'lies over cradle and stand', box.x + 16, box.y + 41, 11, 'left', box);
  if (part === 'fieldFrame') paintFrameWords(pen, box);
  else paintPlateWords(pen, box, say, mode === 'narrow' ? 1 : -1);
}

function paintTab(pen: Pen, tab: Rect, say: Say): void {
  shadowed(pen, 6, 0, 2, 'rgba(0,0,0,.5)', () => {
    roundRect(pen, tab.x, tab.y, tab.w, tab.h, 8);
    pen.fillStyle = PAPER;
    pen.fill();
  });
  const y = tab.y + tab.h / 2;
  paintReturn(pen, tab.x + (say ? 15 : tab.w / 2), y, INK);
  if (!say) return;
  pen.font = font(13, 650);
  pen.fillStyle = INK;
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  pen.fillText('put back', tab.x + 28, y + 0.5, tab.w - 34);
}

/** An arrow that turns back to where it came from. */
function paintReturn(pen: Pen, x: number, y: number, colour: string): void {
  pen.strokeStyle = colour;
  pen.fillStyle = colour;
  pen.lineWidth = 2;
  pen.beginPath();
  pen.moveTo(x - 3, y + 5);
  pen.lineTo(x + 2, y + 5);
  pen.arc(x + 2, y + 0.5, 4.5, Math.PI / 2, -Math.PI / 2, true);
  pen.lineTo(x - 3, y - 4);
  pen.stroke();
  polygon(pen, [
    [x - 8, y - 4],
    [x - 2, y - 8.5],
    [x - 2, y + 0.5],
  ]);
  pen.fill();
}

/** The empty place of a part that lies forward says that it goes back there. */
function paintEmptyPlace(pen: Pen, box: Rect, say: Say): void {
  roundRect(pen, box.x + 1.5, box.y + 1.5, box.w - 3, box.h - 3, 8);
  pen.strokeStyle = PAPER;
  pen.lineWidth = 1.3;
  pen.setLineDash([4, 3]);
  pen.stroke();
  pen.setLineDash([]);
  const low = box.h < LOW;
  const x = box.x + box.w / 2;
  const arrow = say === null || !low;
  if (arrow) paintReturn(pen, x, box.y + (say ? (box.h - 14) / 2 : box.h / 2), PAPER);
  if (say) words(pen, 'put back', x, low ? box.y + box.h / 2 + 4 : box.y + box.h - 5, 10, 'center', box);
}

/** Words of one line; they stay within a box where one is given. */
function words(
  pen: Pen,
  text: string,
  x: number,
  y: number,
  size: number,
  align: CanvasTextAlign = 'center',
  within?: Pick<Rect, 'x' | 'w'>,
): void {
  pen.font = font(size, 650);
  pen.textAlign = 'left';
  pen.textBaseline = 'alphabetic';
  pen.lineWidth = 3;
  pen.strokeStyle = 'rgba(10,20,24,.8)';
  const room = within ? within.w - 8 : Number.POSITIVE_INFINITY;
  const w = Math.min(room, pen.measureText(text).width);
  const wanted = align === 'left' ? x : align === 'right' ? x - w : x - w / 2;
  const left = within ? Math.min(within.x + within.w - 4 - w, Math.max(within.x + 4, wanted)) : wanted;
  pen.strokeText(text, left, y, w);
  pen.fillStyle = '#e4efec';
  pen.fillText(text, left, y, w);
}

function paintFrameWords(pen: Pen, box: Rect): void {
  const g = frameGeometry(box, false);
  words(pen, 'motor terminal', g.terminal.x + g.r * 0.2, g.terminal.y - 2, 12, 'left', box);
  const spot = roundOf(frameContacts(g)['field:case']);
  words(pen, 'case', Math.max(box.x + 8, spot.x - g.r * 0.42), spot.y + g.r * 0.62, 12, 'left', box);
}

function paintBrushWords(pen: Pen, box: Rect, apart: boolean): void {
  const g = frameGeometry(box, apart);
  const [a, b] = g.brushes;
  // Under them, where no lead comes from; outwards of the slip that lies there.
  const foot = a.y + g.brush.h / 2;
  const middle = (a.x + b.x) / 2;
  const aside = Math.max(middle - a.x - g.brush.w / 2 + 2, apart ? 0 : g.r * 0.25 + 5);
  words(pen, 'brush 1', middle - aside, foot + 15, 12, 'right', box);
  words(pen, 'brush 2', middle + aside, foot + 15, 12, 'left', box);
  words(pen, apart ? 'kept apart' : 'touching', middle, foot + 31, 12, 'center', box);
}

/** @param away side of the plate's metal that leads do not come from, 1 or -1 */
function paintPlateWords(pen: Pen, box: Rect, say: NonNullable<Say>, away: 1 | -1): void {
  const g = plateGeometry(box);
  const contacts: Readonly<Record<string, Shape>> = plateContacts(g);
  // Two names side by side never run into each other.
  const left = { x: box.x, w: g.x - box.x - 2 };
  const right = { x: g.x + 2, w: box.x + box.w - g.x - 2 };
  for (const [place, text] of [
    ['plate:insulated1', 'insulated 1'],
    ['plate:insulated2', 'insulated 2'],
    ['plate:earthed1', 'grounded 1'],
    ['plate:earthed2', 'grounded 2'],
  ] as const) {
    const p = roundOf(contacts[place]!);
    const up = p.y < g.y;
    words(
      pen,
      say(text),
      p.x,
      up ? p.y - g.r * 0.36 : p.y + g.r * 0.43,
      12,
      'center',
      p.x < g.x ? left : right,
    );
  }
  words(pen, 'bare plate', g.x + away * 6, g.y + g.r + 18, 12, away > 0 ? 'left' : 'right');
}
