import type { Rect } from '../layout.ts';
import { BRASS, font, INK, PAPER } from '../materials.ts';
import { disc, linear, type Pen, roundRect, shadowed } from '../pen.ts';
import type { Point } from '../project.ts';
import {
  DECADES,
  type Face,
  faceOf,
  figureSize,
  type Instrument,
  printedFigures,
  SWEEP,
  scaleAngle,
} from '../railShape.ts';

/** Case, scale and window of an instrument of the rail. Its scale runs by decades. */
export function paintFace(pen: Pen, box: Rect, which: Instrument, lettering: boolean): void {
  const face = faceOf(box);
  const { length, figures, posts, button } = face;
  const top = length > 0 ? 6 : 1;
  shadowed(pen, 8, 1, 3, 'rgba(0,0,0,.6)', () => {
    roundRect(pen, box.x + 3, box.y + top, box.w - 6, box.h - top - 3, 9);
    pen.fillStyle = linear(pen, 0, box.y, 0, box.y + box.h, [
      [0, '#3b555b'],
      [1, '#14242a'],
    ]);
    pen.fill();
  });
  pen.fillStyle = PAPER;
  if (length > 0) {
    const paper = { y: box.y + 12, foot: figures.y + figures.h };
    roundRect(pen, figures.x, paper.y, figures.w, paper.foot - paper.y, 5);
    pen.fill();
    paintScale(pen, which, face, lettering);
  } else {
    roundRect(pen, figures.x, figures.y, figures.w, figures.h, 4);
    pen.fill();
  }
  for (const post of which === 'drop' ? posts : posts.slice(0, 2))
    disc(pen, post.x, post.y + 3, 4, BRASS.mid);
  if (which === 'tester') disc(pen, button.x, button.y, button.r + 1, '#0a1416');
}

/** Marks between two decades, where there is room for them. */
const BETWEEN = [2, 5] as const;

function paintScale(pen: Pen, which: Instrument, { pivot, length }: Face, lettering: boolean): void {
  const [least, most] = DECADES[which];
  pen.strokeStyle = INK;
  pen.lineWidth = 1.2;
  pen.beginPath();
  pen.arc(pivot.x, pivot.y, length, -Math.PI / 2 - SWEEP, -Math.PI / 2 + SWEEP);
  pen.stroke();
  for (let decade = Math.ceil(least); decade <= most; decade++) {
    stroke(pen, pivot, length, scaleAngle(which, 10 ** decade), 7);
    if (length < 30) continue;
    for (const times of BETWEEN) {
      const reading = times * 10 ** decade;
      if (Math.log10(reading) <= most + 0.01) stroke(pen, pivot, length, scaleAngle(which, reading), 4);
    }
  }
  if (lettering) paintFigures(pen, which, { pivot, length });
}

function stroke(pen: Pen, pivot: Point, length: number, angle: number, reach: number): void {
  const [dx, dy] = [Math.sin(angle), -Math.cos(angle)];
  pen.beginPath();
  pen.moveTo(pivot.x + dx * length, pivot.y + dy * length);
  pen.lineTo(pivot.x + dx * (length - reach), pivot.y + dy * (length - reach));
  pen.stroke();
}

function paintFigures(pen: Pen, which: Instrument, { pivot, length }: Pick<Face, 'pivot' | 'length'>): void {
  const size = figureSize(length);
  pen.fillStyle = INK;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.font = font(size, 650);
  for (const reading of printedFigures(which, length)) {
    const angle = scaleAngle(which, reading);
    const figure = String(reading);
    const half = pen.measureText(figure).width / 2;
    const off = length + 2 + size * 0.5 * Math.cos(angle) + half * Math.abs(Math.sin(angle));
    pen.fillText(figure, pivot.x + Math.sin(angle) * off, pivot.y - Math.cos(angle) * off);
  }
}
