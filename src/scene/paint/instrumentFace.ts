import type { Rect } from '../layout.ts';
import { BRASS, INK, PAPER } from '../materials.ts';
import { disc, linear, type Pen, roundRect, shadowed } from '../pen.ts';
import { DECADES, faceOf, type Instrument, SWEEP } from '../railShape.ts';

/** Case, scale and window of an instrument of the rail. Its scale is marked by decades; figures say the rest. */
export function paintFace(pen: Pen, box: Rect, which: Instrument): void {
  const { pivot, length, figures, posts, button } = faceOf(box);
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
    paintScale(pen, which, pivot, length);
  } else {
    roundRect(pen, figures.x, figures.y, figures.w, figures.h, 4);
    pen.fill();
  }
  for (const post of which === 'drop' ? posts : posts.slice(0, 2))
    disc(pen, post.x, post.y + 3, 4, BRASS.mid);
  if (which === 'tester') disc(pen, button.x, button.y, button.r + 1, '#0a1416');
}

function paintScale(pen: Pen, which: Instrument, pivot: { x: number; y: number }, length: number): void {
  const [least, most] = DECADES[which];
  pen.strokeStyle = INK;
  pen.lineWidth = 1;
  pen.beginPath();
  pen.arc(pivot.x, pivot.y, length, -Math.PI / 2 - SWEEP, -Math.PI / 2 + SWEEP);
  pen.stroke();
  for (let decade = Math.ceil(least); decade <= most; decade++) {
    const angle = SWEEP * ((2 * (decade - least)) / (most - least) - 1);
    const [dx, dy] = [Math.sin(angle), -Math.cos(angle)];
    pen.beginPath();
    pen.moveTo(pivot.x + dx * length, pivot.y + dy * length);
    pen.lineTo(pivot.x + dx * (length - 5), pivot.y + dy * (length - 5));
    pen.stroke();
  }
}
