import { disc, linear, type Pen, shadowed } from '../pen.ts';

/** A metal from dark to bright, CSS colours. */
interface Metal {
  readonly dark: string;
  readonly mid: string;
  readonly light: string;
}

/**
 * The round in which something is seen large: its shadow, what is in it, its rim. Pen's origin at the middle.
 * @param r radius of what is seen, px; @param rim width of the rim, px
 */
export function paintRound(pen: Pen, r: number, metal: Metal, rim: number, inside: () => void): void {
  shadowed(pen, 14, 2, 7, 'rgba(0,0,0,.7)', () => disc(pen, 0, 0, r + 6, metal.dark));
  pen.save();
  pen.beginPath();
  pen.arc(0, 0, r, 0, Math.PI * 2);
  pen.clip();
  inside();
  pen.restore();
  pen.lineWidth = rim;
  pen.strokeStyle = linear(pen, -r, -r, r, r, [
    [0, metal.light],
    [0.5, metal.mid],
    [1, metal.dark],
  ]);
  pen.beginPath();
  pen.arc(0, 0, r + 3, 0, Math.PI * 2);
  pen.stroke();
}
