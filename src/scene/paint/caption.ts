import { font, INK, PAPER } from '../materials.ts';
import { type Pen, roundRect, shadowed } from '../pen.ts';

/** Words on a slip of paper at the lower edge of a round; pen's origin at its middle, r its radius. */
export function paintCaption(pen: Pen, r: number, text: string): void {
  pen.font = font(13, 650);
  const w = Math.min(r * 2 + 56, pen.measureText(text).width + 22);
  shadowed(pen, 6, 0, 3, 'rgba(0,0,0,.5)', () => {
    roundRect(pen, -w / 2, r - 4, w, 26, 5);
    pen.fillStyle = PAPER;
    pen.fill();
  });
  pen.fillStyle = INK;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillText(text, 0, r + 9.5, w - 12);
}
